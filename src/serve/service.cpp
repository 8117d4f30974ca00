#include "serve/service.h"

#include "rubric/json.h"
#include "serve/api.h"
#include "serve/api_class.h"
#include "serve/assets.h"

namespace retort::serve {
namespace {

Response asset(std::string_view path) {
  if (path == "/base.css") return page_style_sheet();
  const Asset* found = find_asset(path);
  if (found == nullptr) return refusal(404, "There is no such page here.");
  Response out;
  out.type = found->type;
  out.body = found->content;
  return out;
}

}  // namespace

const Fields& safe_headers() {
  // The page's scripts and styles come from this server alone; nothing in the page may reach another address.
  static const Fields kHeaders = {
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self'; style-src 'self' " + report_style_source() +
           "; img-src 'self' blob:; connect-src 'self'; frame-src blob:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"},
      {"X-Frame-Options", "DENY"},
      {"Permissions-Policy", "camera=(), microphone=(), geolocation=()"},
      {"Cache-Control", "no-store"},
  };
  return kHeaders;
}

void Service::warm() {
  for (const Desks::Listed& rubric : desks_.listed()) desks_.open(rubric.id);
}

Response Service::answer(const Request& request, const Place& place) {
  Response out = [&] {
    if (auto refused = guard(request, place)) return *refused;
    return route(request);
  }();
  const Fields& safe = safe_headers();
  out.headers.insert(out.headers.end(), safe.begin(), safe.end());
  return out;
}

Response Service::route(const Request& request) {
  if (request.path.starts_with("/api/")) return api(request);
  if (request.method == "POST") return refusal(405, "Nothing can be sent to this address.");
  return asset(request.path);
}

Response Service::api(const Request& request) {
  std::string_view name = std::string_view(request.path).substr(5);
  if (request.method != "POST") {
    if (name == "rubrics") return list_rubrics(desks_);
    if (name == "rubric") return show_rubric(desks_, request.argument("id"));
    return refusal(404, "There is nothing here to read.");
  }
  if (name == "file") {
    // A type that no form of another site can send without asking first.
    if (request.header("Content-Type") != "application/octet-stream") return refusal(415, "A file is expected here.");
    return read_sent_file(std::string(request.argument("name")), request.body);
  }
  if (!request.header("Content-Type").starts_with("application/json")) return refusal(415, "JSON is expected here.");
  Findings findings;
  Result<json::Value> body = json::parse(request.body, "request", findings);
  if (!body) return problem(400, "This is not valid JSON.", {body.finding()}, request.body);
  if (!body->is(json::Type::object)) return problem(400, "A JSON object is expected.", {}, {});
  if (name == "check") return check_draft(desks_, *body);
  if (name == "results") return work_results(desks_, *body);
  if (name == "rubric") return edit_rubric(desks_, *body);
  if (name == "class") return class_report(desks_, *body);
  return refusal(404, "Nothing can be sent to this address.");
}

}  // namespace retort::serve

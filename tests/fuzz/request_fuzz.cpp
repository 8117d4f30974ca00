// Any request: who may not ask is refused, every answer carries the page's policy, and what says it is JSON is.
// The input is lines: method, path, then "name: value" headers, an empty line, the body.
#include <cstdlib>
#include <memory>
#include <string>
#include <string_view>

#include "intake/rubric_folder.h"
#include "rubric/json.h"
#include "serve/service.h"

namespace {
using namespace retort;
using namespace retort::serve;

constexpr std::uint16_t kPort = 8000;

std::string_view line_of(std::string_view& rest) {
  std::size_t end = rest.find('\n');
  std::string_view out = rest.substr(0, end);
  rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
  return out;
}

Request request_of(std::string_view rest) {
  Request out;
  out.method = line_of(rest);
  std::string_view path = line_of(rest);
  std::size_t mark = path.find('?');
  out.path = path.substr(0, mark);
  if (mark != std::string_view::npos) {
    std::string_view argument = path.substr(mark + 1);
    std::size_t equals = argument.find('=');
    if (equals != std::string_view::npos) out.query.emplace_back(argument.substr(0, equals), argument.substr(equals + 1));
  }
  for (std::string_view line = line_of(rest); !line.empty(); line = line_of(rest)) {
    std::size_t colon = line.find(": ");
    if (colon != std::string_view::npos) out.headers.emplace_back(line.substr(0, colon), line.substr(colon + 2));
  }
  out.body = rest;
  return out;
}

Service& service() {
  static Service* made = [] {
    Result<RubricChoice> choice = choose_rubric(RETORT_SOURCE_DIR "/rubrics/spring-extension.json");
    if (!choice) std::abort();
    return new Service(std::move(choice->folder));  // NOLINT: kept until the end
  }();
  return *made;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Request request = request_of({reinterpret_cast<const char*>(data), size});
  for (const Place& place : {Place{kPort, true, ""}, Place{kPort, false, "0123456789abcdef0123456789abcdef"}}) {
    Response response = service().answer(request, place);
    bool ours = is_our_host(request.header("Host"), place) && request.count("Host") == 1;
    if (response.status < 400 && !ours) std::abort();
    if (response.status < 400 && request.method == "POST" && request.header("Origin").empty()) std::abort();
    bool policy = false;
    for (const auto& [name, value] : response.headers) policy = policy || (name == "Content-Security-Policy" && value.starts_with("default-src 'none'"));
    if (!policy) std::abort();
    Findings findings;
    if (response.type.starts_with("application/json") && !json::parse(response.body, "response", findings)) std::abort();
  }
  return 0;
}

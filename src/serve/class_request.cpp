#include "serve/class_request.h"

#include <thread>

#include "classroom/others.h"
#include "intake/answer.h"
#include "review/in_parallel.h"

namespace retort::serve {
namespace {

unsigned cores() { return std::max(1U, std::thread::hardware_concurrency()); }

// The drafts under `key`; what is wrong with them, or an empty sentence.
std::string read_drafts(const json::Value& body, std::string_view key, std::vector<classroom::Draft>& out) {
  const json::Value* list = body.find(key);
  if (list == nullptr || list->is(json::Type::null)) return "";
  const std::string name = "\"" + std::string(key) + "\"";
  if (!list->is(json::Type::array)) return name + " must be a list of drafts.";
  if (list->items.size() > kMostSentDrafts) return "There are more than " + std::to_string(kMostSentDrafts) + " drafts: send one class at a time.";
  for (const json::Value& item : list->items) {
    const std::string* id = item.is(json::Type::object) ? text_member(item, "id", 1000) : nullptr;
    const std::string* text = item.is(json::Type::object) ? text_member(item, "text", kLongestAnswer) : nullptr;
    if (id == nullptr || text == nullptr) return name + " must hold objects with \"id\" and \"text\".";
    out.push_back({*id, *text, {}, {}});
  }
  return "";
}

bool flag(const json::Value& body, std::string_view key) {
  const json::Value* value = body.find(key);
  return value != nullptr && value->is(json::Type::boolean) && value->boolean;
}

void hold_against_others(Desks& desks, const Desk& own, std::vector<classroom::Draft>& drafts) {
  if (own.rubric().kind != RubricKind::method) return;  // a short answer fits many a question
  std::vector<std::shared_ptr<Desk>> held;
  auto others = [&] {
    std::vector<const Checker*> out;
    for (const Desks::Listed& listed : desks.listed()) {
      if (listed.id == own.rubric().id) continue;
      std::shared_ptr<Desk> desk = desks.open(listed.id);
      if (!desk || desk->rubric().kind != RubricKind::method) continue;
      out.push_back(&desk->checker());
      held.push_back(std::move(desk));
    }
    return out;
  };
  classroom::name_better_fits(drafts, others, cores());
}

}  // namespace

void review_drafts(Desk& desk, std::vector<classroom::Draft>& drafts) {
  in_parallel(cores(), drafts.size(), [&] { return [&](std::size_t i) { drafts[i].review = desk.review(drafts[i].text); }; });
}

SentClass read_class(Desks& desks, const json::Value& body) {
  SentClass out;
  std::string fault = read_drafts(body, "drafts", out.drafts);
  if (fault.empty()) fault = read_drafts(body, "before", out.before);
  if (fault.empty() && out.drafts.empty()) fault = "There are no drafts.";
  if (!fault.empty()) {
    out.asked.why = problem(400, fault, {}, {});
    return out;
  }
  out.asked = open_asked(desks, body);
  if (!out.asked.desk) return out;
  out.with_range = flag(body, "withRange");
  const json::Value* per_sheet = body.find("perSheet");
  out.per_sheet = per_sheet != nullptr && per_sheet->is(json::Type::integer) && per_sheet->integer == 2 ? 2 : 1;
  review_drafts(*out.asked.desk, out.drafts);
  review_drafts(*out.asked.desk, out.before);
  hold_against_others(desks, *out.asked.desk, out.drafts);
  return out;
}

}  // namespace retort::serve

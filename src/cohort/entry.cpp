#include "cohort/entry.h"

#include <array>

#include "cohort/drift.h"

namespace retort::cohort {

using json::Type;

std::string short_name(std::string_view text) {
  if (text.size() > kLongestName) {
    std::size_t end = kLongestName;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    text = text.substr(0, end);
  }
  return std::string(text);
}

namespace {

void count(calc::Verdict verdict, Entry& out) {
  if (verdict == calc::Verdict::right) ++out.right;
  if (verdict == calc::Verdict::wrong) ++out.wrong;
  if (verdict == calc::Verdict::unclear) ++out.unclear;
}

// Reads one object for its members, and keeps the name of the first that cannot be used.
class CheckedReader {
 public:
  explicit CheckedReader(Entry& out) : out_(out) {}

  bool read(const json::Value& object) {
    if (!read_names(object) || !read_marks(object)) return false;
    const json::Value* steps = object.find("steps");
    if (steps == nullptr || !steps->is(Type::array)) return fail("steps");
    for (const json::Value& step : steps->items) {
      if (!read_step(step)) return fail("steps");
    }
    const json::Value* level = object.find("level");
    if (level != nullptr && !read_level(*level)) return fail("level");
    const json::Value* calculations = object.find("calculations");
    if (calculations == nullptr) return true;
    if (!calculations->is(Type::array)) return fail("calculations");
    for (const json::Value& calculation : calculations->items) {
      if (!read_calculation(calculation)) return fail("calculations");
    }
    return true;
  }
  [[nodiscard]] const std::string& fault() const { return fault_; }

 private:
  bool fail(std::string_view what) {
    fault_ = what;
    return false;
  }

  bool read_names(const json::Value& object) {
    const json::Value* id = object.find("id");
    if (id == nullptr || !id->is(Type::string)) return fail("id");
    out_.id = short_name(id->text);
    const json::Value* rubric = object.find("rubric");
    if (rubric == nullptr || !rubric->is(Type::string) || rubric->text.empty()) return fail("rubric");
    out_.rubric = short_name(rubric->text);
    const json::Value* group = object.find("group");
    if (group != nullptr && !group->is(Type::string)) return fail("group");
    if (group != nullptr) out_.group = short_name(group->text);
    return true;
  }

  static bool whole(const json::Value& object, std::string_view key, int& out) {
    const json::Value* value = object.find(key);
    if (value == nullptr || !value->is(Type::integer) || value->integer < 0 || value->integer > kMostMark) return false;
    out = static_cast<int>(value->integer);
    return true;
  }

  bool read_marks(const json::Value& object) {
    if (object.find("mark") != nullptr && !whole(object, "mark", out_.mark)) return fail("mark");
    if (object.find("mark2") != nullptr && !whole(object, "mark2", out_.mark2)) return fail("mark2");
    out_.place = read_place(object);
    return true;
  }

  bool read_step(const json::Value& step) {
    const json::Value* id = step.find("id");
    const json::Value* status = step.find("status");
    if (id == nullptr || !id->is(Type::string) || id->text.empty()) return false;
    Entry::Step read;
    if (status == nullptr || !status->is(Type::string) || !read_status(status->text, read.status)) return false;
    read.id = short_name(id->text);
    const json::Value* core = step.find("core");
    read.core = core != nullptr && core->is(Type::boolean) && core->boolean;
    out_.steps.push_back(std::move(read));
    return true;
  }

  bool read_level(const json::Value& level) {
    out_.has_level = true;
    bool read = whole(level, "low", out_.level.low) && whole(level, "high", out_.level.high) && whole(level, "of", out_.level.of);
    return read && out_.level.low <= out_.level.high && out_.level.high <= out_.level.of;
  }

  bool read_calculation(const json::Value& calculation) {
    const json::Value* verdict = calculation.find("verdict");
    if (verdict == nullptr || !verdict->is(Type::string)) return false;
    bool known = false;
    for (calc::Verdict each : {calc::Verdict::right, calc::Verdict::wrong, calc::Verdict::unclear}) {
      if (verdict->text != calc::name(each)) continue;
      count(each, out_);
      known = true;
    }
    const json::Value* slips = calculation.find("slips");
    if (slips == nullptr) return known;
    if (!slips->is(Type::array)) return false;
    for (const json::Value& slip : slips->items) {
      if (!slip.is(Type::string)) return false;
      if (known_slip(slip.text)) out_.slips.push_back(slip.text);
    }
    return known;
  }

  Entry& out_;
  std::string fault_;
};

std::int64_t place_in(const json::Value& object) {
  const json::Value* place = object.find("position");
  bool good = place != nullptr && place->is(Type::integer) && place->integer >= 0 && place->integer <= kMostPosition;
  return good ? place->integer : -1;
}

}  // namespace

bool known_slip(std::string_view name) {
  for (int i = 0; i <= static_cast<int>(calc::Slip::chain); ++i) {
    if (name == calc::name(static_cast<calc::Slip>(i))) return true;
  }
  return false;
}

std::int64_t read_place(const json::Value& object) {
  std::int64_t place = place_in(object);
  const json::Value* extra = object.find("extra");
  return place >= 0 || extra == nullptr ? place : place_in(*extra);
}

Entry entry_of(const Rubric& rubric, const Review& review) {
  Entry out;
  out.rubric = rubric.id;
  for (std::size_t i = 0; i < review.steps.size(); ++i) out.steps.push_back({rubric.steps[i].id, review.steps[i].status, rubric.steps[i].core});
  out.has_level = true;
  out.level = review.level;
  for (const calc::Calculation& calculation : review.calculations) {
    count(calculation.verdict, out);
    for (calc::Slip slip : calculation.slips) out.slips.emplace_back(calc::name(slip));
  }
  return out;
}

bool read_checked(const json::Value& object, const std::string& where, Entry& out, Findings& findings) {
  out = Entry{};
  const json::Value* format = object.find("format");
  if (format != nullptr && (!format->is(Type::integer) || format->integer != kCheckedFormat)) {
    std::string got = format->is(Type::integer) ? std::to_string(format->integer) : "?";
    findings.push_back(make_finding(Code::format_unsupported, where, {got, std::to_string(kCheckedFormat)}));
    return false;
  }
  CheckedReader reader(out);
  if (reader.read(object)) return true;
  findings.push_back(make_finding(Code::checked_bad, where, {reader.fault()}));
  return false;
}

}  // namespace retort::cohort

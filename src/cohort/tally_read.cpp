#include "cohort/tally_read.h"

#include <charconv>
#include <functional>

namespace retort::cohort {
namespace {

using json::Type;

constexpr std::int64_t kMostSum = 1'000'000'000'000'000'000;  // of the sums of drift

// Reads members of one object; the first that cannot be used is remembered.
class PartReader {
 public:
  explicit PartReader(const json::Value& object) : object_(object) {}

  [[nodiscard]] bool good() const { return fault_.empty(); }
  [[nodiscard]] const std::string& fault() const { return fault_; }

  void rubric(RubricTally& out) {
    if (std::optional<std::int64_t> of = whole(object_.find("of"), 0, kMostMark))
      out.of = static_cast<int>(*of);
    else
      fail("of");
    each("core", Type::string, [&](const json::Value& id) {
      out.core.insert(short_name(id.text));
      return true;
    });
    const json::Value* counts = object_.find("reasons");
    for (std::size_t i = 0; i < kReasons.size(); ++i) {
      bool there = counts != nullptr && counts->is(Type::object);
      if (!there || !count(counts->find(name(kReasons[i])), out.reasons[i])) fail("reasons");
    }
    each("again", Type::object, [&](const json::Value& item) { return again(item, out); });
    each("sample", Type::object, [&](const json::Value& item) { return sample(item, out); });
  }

  void cell(Cell& out) {
    if (!count(object_.find("answers"), out.answers)) fail("answers");
    members("steps", [&](const json::Member& step) {
      StepCounts& counts = out.steps[short_name(step.key)];
      const std::vector<json::Value>& three = step.value.items;
      return three.size() == 3 && count(&three[0], counts.present) && count(&three[1], counts.vague) && count(&three[2], counts.missing);
    });
    std::size_t at = 0;
    each("markers", Type::object, [&](const json::Value& item) { return at < 2 && marker(item, out.markers[at++]); });
    each("crosstab", Type::array, [&](const json::Value& item) { return pair(item, out.crosstab); });
    const json::Value* calculations = object_.find("calculations");
    if (calculations == nullptr || !read(*calculations, out.calculations)) fail("calculations");
    const json::Value* cut = object_.find("steps_cut");
    out.steps_cut = cut != nullptr && cut->boolean;
  }

 private:
  void fail(std::string_view what) {
    if (fault_.empty()) fault_ = what;
  }

  static std::optional<std::int64_t> whole(const json::Value* value, std::int64_t least, std::int64_t most) {
    if (value == nullptr || !value->is(Type::integer) || value->integer < least || value->integer > most) return std::nullopt;
    return value->integer;
  }

  static bool count(const json::Value* value, Count& out) {
    std::optional<std::int64_t> read = whole(value, 0, static_cast<std::int64_t>(kMostAnswers));
    if (read) out = static_cast<Count>(*read);
    return read.has_value();
  }

  void each(std::string_view key, Type type, const std::function<bool(const json::Value&)>& take) {
    const json::Value* list = object_.find(key);
    if (list == nullptr || !list->is(Type::array)) return fail(key);
    for (const json::Value& item : list->items) {
      if (!item.is(type) || !take(item)) return fail(key);
    }
  }

  void members(std::string_view key, const std::function<bool(const json::Member&)>& take) {
    const json::Value* object = object_.find(key);
    if (object == nullptr || !object->is(Type::object)) return fail(key);
    for (const json::Member& member : object->members) {
      if (!take(member)) return fail(key);
    }
  }

  // [mark, count]
  static bool counts(const json::Value* list, int least, std::map<int, Count>& out) {
    if (list == nullptr || !list->is(Type::array)) return false;
    for (const json::Value& item : list->items) {
      std::optional<std::int64_t> mark = item.items.size() == 2 ? whole(&item.items[0], least, kMostMark) : std::nullopt;
      if (!mark || !count(&item.items[1], out[static_cast<int>(*mark)])) return false;
    }
    return true;
  }

  static bool pair(const json::Value& item, Crosstab& out) {
    if (item.items.size() != 3) return false;
    std::optional<std::int64_t> first = whole(&item.items[0], 0, kMostMark);
    std::optional<std::int64_t> second = whole(&item.items[1], 0, kMostMark);
    return first && second && count(&item.items[2], out[{static_cast<int>(*first), static_cast<int>(*second)}]);
  }

  static bool marker(const json::Value& item, MarkerCounts& out) {
    const json::Value* sums = item.find("drift");
    return counts(item.find("marks"), 0, out.marks) && counts(item.find("outside"), -kMostMark, out.outside) &&
           (sums == nullptr || drift(*sums, out.drift));
  }

  static bool drift(const json::Value& item, DriftSums& out) {
    std::optional<std::int64_t> first = whole(item.find("first"), 0, kMostPosition);
    std::optional<std::int64_t> last = whole(item.find("last"), 0, kMostPosition);
    std::optional<std::int64_t> y = whole(item.find("y"), -kMostSum, kMostSum);
    std::optional<std::int64_t> yy = whole(item.find("yy"), 0, kMostSum);
    if (!first || !last || !y || !yy || !count(item.find("n"), out.n)) return false;
    out.first = *first;
    out.last = *last;
    out.y = *y;
    out.yy = static_cast<Count>(*yy);
    return decimal(item.find("x"), out.x) && decimal(item.find("xx"), out.xx) && decimal(item.find("xy"), out.xy) && out.first <= out.last;
  }

  // Up to 36 digits, which 127 bits hold.
  static bool decimal(const json::Value* value, DriftSums::Wide& out) {
    if (value == nullptr || !value->is(Type::string)) return false;
    std::string_view digits = value->text;
    bool below_zero = digits.starts_with('-');
    if (below_zero) digits.remove_prefix(1);
    if (digits.empty() || digits.size() > 36) return false;
    DriftSums::Wide sum = 0;
    for (char c : digits) {
      if (c < '0' || c > '9') return false;
      sum = sum * 10 + static_cast<DriftSums::Wide>(c - '0');
    }
    out = below_zero ? 0 - sum : sum;
    return true;
  }

  static bool read(const json::Value& item, CalculationCounts& out) {
    const json::Value* slips = item.find("slips");
    bool good = count(item.find("answers"), out.answers) && count(item.find("right"), out.right) && count(item.find("wrong"), out.wrong) &&
                count(item.find("unclear"), out.unclear) && slips != nullptr && slips->is(Type::object);
    if (!good) return false;
    for (const json::Member& slip : slips->members) {
      if (!known_slip(slip.key) || !count(&slip.value, out.slips[slip.key])) return false;
    }
    return true;
  }

  // A mark that may be left out: -1.
  static bool optional_mark(const json::Value& item, std::string_view key, int& out) {
    const json::Value* value = item.find(key);
    if (value == nullptr) return true;
    std::optional<std::int64_t> mark = whole(value, 0, kMostMark);
    if (mark) out = static_cast<int>(*mark);
    return mark.has_value();
  }

  static bool text(const json::Value& item, std::string_view key, std::string& out) {
    const json::Value* value = item.find(key);
    if (value == nullptr || !value->is(Type::string)) return false;
    out = short_name(value->text);
    return true;
  }

  static bool script(const json::Value& item, Script& out) {
    return text(item, "key", out.key) && text(item, "id", out.id) && text(item, "group", out.group) && optional_mark(item, "mark", out.mark) &&
           optional_mark(item, "mark2", out.mark2) && optional_mark(item, "low", out.low) && optional_mark(item, "high", out.high) &&
           (out.low < 0) == (out.high < 0);
  }

  static bool again(const json::Value& item, RubricTally& out) {
    std::optional<std::int64_t> weight = whole(item.find("weight"), 0, 1'000'000);
    std::optional<std::int64_t> reasons = whole(item.find("reasons"), 1, (1 << kReasons.size()) - 1);
    Again read;
    if (!weight || !reasons || !script(item, read.script)) return false;
    read.weight = -*weight;
    read.reasons = static_cast<unsigned>(*reasons);
    out.again.insert(std::move(read));
    return true;
  }

  static bool sample(const json::Value& item, RubricTally& out) {
    std::optional<std::int64_t> mark = whole(item.find("of_mark"), 0, kMostMark);
    Script read;
    if (!mark || !script(item, read)) return false;
    out.sample[static_cast<int>(*mark)].insert(std::move(read));
    return true;
  }

  const json::Value& object_;
  std::string fault_;
};

// The seed is written as text: JSON's numbers may lose digits of 64 bits.
bool same_seed(const json::Value& object, const Tally& into, const std::string& where, Findings& findings) {
  const json::Value* seed = object.find("seed");
  if (seed == nullptr || !seed->is(Type::string)) {
    findings.push_back(make_finding(Code::tally_bad, where, {"seed"}));
    return false;
  }
  if (seed->text == std::to_string(into.seed())) return true;
  findings.push_back(make_finding(Code::tally_other_seed, where, {short_name(seed->text), std::to_string(into.seed())}));
  return false;
}

bool same_format(const json::Value& object, const std::string& where, Findings& findings) {
  const json::Value* format = object.find("tally");
  if (format != nullptr && format->is(Type::integer) && format->integer == kTallyFormat) return true;
  std::string got = format != nullptr && format->is(Type::integer) ? std::to_string(format->integer) : "?";
  findings.push_back(make_finding(Code::format_unsupported, where, {got, std::to_string(kTallyFormat)}));
  return false;
}

}  // namespace

bool read_tally(const json::Value& object, const std::string& where, Tally& into, Findings& findings) {
  if (!same_format(object, where, findings) || !same_seed(object, into, where, findings)) return false;
  const json::Value* cut = object.find("rubrics_cut");
  if (cut != nullptr && cut->boolean) {
    into.note_rubrics_cut();
    return true;
  }
  const json::Value* rubric = object.find("rubric");
  const json::Value* group = object.find("group");
  bool other_groups = object.find("other_groups") != nullptr;
  bool named = rubric != nullptr && rubric->is(Type::string) && !rubric->text.empty() && (group == nullptr || group->is(Type::string));
  if (!named) {
    findings.push_back(make_finding(Code::tally_bad, where, {group == nullptr ? "rubric" : "group"}));
    return false;
  }
  PartReader reader(object);
  RubricTally part;
  if (group != nullptr)
    reader.cell(part.groups[short_name(group->text)]);
  else if (other_groups)
    reader.cell(part.other_groups);
  else
    reader.rubric(part);
  if (!reader.good()) {
    findings.push_back(make_finding(Code::tally_bad, where, {reader.fault()}));
    return false;
  }
  into.add(short_name(rubric->text), part);
  return true;
}

}  // namespace retort::cohort

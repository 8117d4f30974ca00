#include "rubric/rubric_edits.h"

#include <algorithm>

#include "rubric/fields.h"

namespace retort {

using json::Type;
using json::Value;

namespace {

std::string quoted(const std::string& text) { return json::quoted(text); }

std::string quoted(const std::vector<std::string>& texts) {
  std::string out = "[";
  for (const std::string& text : texts) out += (out.size() > 1 ? ", " : "") + quoted(text);
  return out + "]";
}

// Changes to a text at places of it, made all at once.
class Patch {
 public:
  void replace(Span span, std::string with) { changes_.push_back({span, std::move(with)}); }

  // Gives the member `key` of `object` the JSON `value`, whether it is there or not.
  void set(const Value& object, std::string_view key, std::string value) {
    if (const Value* old = object.find(key)) return replace(old->span, std::move(value));
    insert_before_end(object, object.members.empty(), quoted(std::string(key)) + ": " + value);
  }
  // Adds texts to the list `key` of `object`.
  void extend(const Value& object, std::string_view key, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    const Value* list = object.find(key);
    if (list == nullptr || !list->is(Type::array)) return set(object, key, quoted(texts));
    std::string inner = quoted(texts);
    insert_before_end(*list, list->items.empty(), inner.substr(1, inner.size() - 2));
  }

  std::string apply(const std::string& source) {
    std::stable_sort(changes_.begin(), changes_.end(), [](const Change& a, const Change& b) { return a.span.begin < b.span.begin; });
    std::string out;
    std::size_t at = 0;
    for (const Change& change : changes_) {
      out.append(source, at, change.span.begin - at);
      out += change.with;
      at = change.span.end;
    }
    return out.append(source, at);
  }

 private:
  struct Change {
    Span span;
    std::string with;
  };
  // After the last item, so that line ends and spaces before the bracket stay.
  void insert_before_end(const Value& holder, bool empty, const std::string& what) {
    auto place = holder.span.end - 1;
    if (!holder.members.empty()) place = holder.members.back().value.span.end;
    if (!holder.items.empty()) place = holder.items.back().span.end;
    replace({place, place}, (empty ? "" : ", ") + what);
  }

  std::vector<Change> changes_;
};

// One object of the edits, read key by key.
class EditFields {
 public:
  EditFields(const Value& object, const std::string& file, Findings& findings, std::vector<std::string> keys)
      : object_(object), file_(file), findings_(findings) {
    for (const json::Member& member : object.members) {
      if (std::find(keys.begin(), keys.end(), member.key) != keys.end()) continue;
      findings.push_back(make_finding(Code::key_unknown, file, member.key_span, {member.key, did_you_mean(member.key, keys), joined(keys)}));
    }
  }

  void wrong(const Value& value, std::string_view name, std::string_view expected) {
    findings_.push_back(make_finding(Code::wrong_type, file_, value.span, {std::string(name), std::string(expected), std::string(expected)}));
  }
  std::optional<std::string> text(std::string_view key) {
    const Value* value = object_.find(key);
    if (value == nullptr || value->is(Type::null)) return std::nullopt;
    if (value->is(Type::string)) return value->text;
    wrong(*value, key, "text in quotes");
    return std::nullopt;
  }
  std::optional<std::vector<std::string>> texts(std::string_view key) {
    const Value* value = object_.find(key);
    if (value == nullptr || value->is(Type::null)) return std::nullopt;
    std::vector<std::string> out;
    bool good = value->is(Type::array);
    for (const Value& item : value->items) {
      good = good && item.is(Type::string);
      if (good && item.text.find_first_not_of(" \t\r\n") != std::string::npos) out.push_back(item.text);
    }
    if (good) return out;
    wrong(*value, key, "a list of texts");
    return std::nullopt;
  }

 private:
  const Value& object_;
  const std::string& file_;
  Findings& findings_;
};

void edit_step(const Value& step, const StepEdit& edit, Patch& patch) {
  if (edit.title) patch.set(step, "title", quoted(*edit.title));
  if (edit.hint) patch.set(step, "hint", quoted(*edit.hint));
  patch.extend(step, "present", edit.also_present);
  patch.extend(step, "vague", edit.also_vague);
}

const Value* find_step(const Value& root, std::string_view id) {
  const Value* steps = root.find("steps");
  if (steps == nullptr) return nullptr;
  for (const Value& step : steps->items) {
    const Value* name = step.is(Type::object) ? step.find("id") : nullptr;
    if (name != nullptr && name->text == id) return &step;
  }
  return nullptr;
}

void edit_given(const Value& root, const RubricEdits& edits, Patch& patch) {
  const Value* given = root.find("given");
  const Value* values = given != nullptr && given->is(Type::object) ? given->find("values") : nullptr;
  std::vector<std::pair<std::string, std::string>> members;
  if (edits.hypothesis) members.emplace_back("hypothesis", quoted(*edits.hypothesis));
  if (edits.apparatus) members.emplace_back("apparatus", quoted(*edits.apparatus));
  if (edits.values && values != nullptr && values->is(Type::object)) {
    patch.set(*values, "list", quoted(*edits.values));
    if (edits.quantity) patch.set(*values, "quantity", quoted(*edits.quantity));
  } else if (edits.values && edits.quantity) {
    members.emplace_back("values", "{\"quantity\": " + quoted(*edits.quantity) + ", \"list\": " + quoted(*edits.values) + "}");
  }
  if (given != nullptr && given->is(Type::object)) {
    for (const auto& [key, value] : members) patch.set(*given, key, value);
    return;
  }
  std::string all;
  for (const auto& [key, value] : members) all += (all.empty() ? "" : ", ") + quoted(key) + ": " + value;
  if (!all.empty()) patch.set(root, "given", "{" + all + "}");
}

// The old examples name the old values.
void edit_value_examples(const Value& root, const std::vector<std::string>& values, Patch& patch) {
  const Value* steps = root.find("steps");
  if (steps == nullptr || values.empty()) return;
  std::string all;
  for (std::size_t i = 0; i < values.size(); ++i) all += (i == 0 ? "" : i + 1 == values.size() ? " and " : ", ") + values[i];
  for (const Value& step : steps->items) {
    const Value* checks = step.is(Type::object) ? step.find("values") : nullptr;
    if (checks == nullptr || !checks->boolean) continue;
    patch.set(step, "examples", "{\"present\": " + quoted(std::vector<std::string>{"Use " + all + "."}) + ", \"missing\": [\"Wear goggles.\"]}");
  }
}

}  // namespace

bool RubricEdits::empty() const { return !id && !title && !question && !hypothesis && !quantity && !values && !apparatus && steps.empty(); }

RubricEdits read_edits(const Value& value, Findings& findings, const std::string& name) {
  RubricEdits out;
  EditFields fields(value, name, findings, {"id", "title", "question", "hypothesis", "quantity", "values", "apparatus", "steps"});
  if (!value.is(Type::object)) {
    fields.wrong(value, "edits", "an object");
    return out;
  }
  out.id = fields.text("id");
  out.title = fields.text("title");
  out.question = fields.text("question");
  out.hypothesis = fields.text("hypothesis");
  out.quantity = fields.text("quantity");
  out.values = fields.texts("values");
  out.apparatus = fields.texts("apparatus");
  const Value* steps = value.find("steps");
  if (steps == nullptr || steps->is(Type::null)) return out;
  if (!steps->is(Type::object)) fields.wrong(*steps, "steps", "an object");
  for (const json::Member& member : steps->members) {
    if (!member.value.is(Type::object)) {
      fields.wrong(member.value, member.key, "an object");
      continue;
    }
    EditFields step(member.value, name, findings, {"title", "hint", "present", "vague"});
    StepEdit edit{member.key, step.text("title"), step.text("hint"), {}, {}};
    edit.also_present = step.texts("present").value_or(std::vector<std::string>{});
    edit.also_vague = step.texts("vague").value_or(std::vector<std::string>{});
    out.steps.push_back(std::move(edit));
  }
  return out;
}

Result<std::string> edited_rubric(const std::string& source, const std::string& name, const RubricEdits& edits) {
  Findings ignored;  // they come again when the edited rubric is loaded
  Result<Value> root = json::parse(source, name, ignored);
  if (!root) return root.finding();
  if (!root->is(Type::object)) return make_finding(Code::json_not_object, name);
  Patch patch;
  if (edits.id) patch.set(*root, "id", quoted(*edits.id));
  if (edits.title) patch.set(*root, "title", quoted(*edits.title));
  if (edits.question) patch.set(*root, "question", quoted(*edits.question));
  if (edits.values) edit_value_examples(*root, *edits.values, patch);
  edit_given(*root, edits, patch);
  for (const StepEdit& edit : edits.steps) {
    const Value* step = find_step(*root, edit.id);
    if (step == nullptr) return make_finding(Code::step_unknown, name, {edit.id, "", "those of the rubric"});
    edit_step(*step, edit, patch);
  }
  return patch.apply(source);
}

}  // namespace retort

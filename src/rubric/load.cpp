#include "rubric/load.h"

#include <algorithm>

#include "base/messages.h"
#include "rubric/loader.h"

namespace retort {

using json::Type;
using json::Value;

namespace {

bool good_id(std::string_view id) {
  if (id.empty() || id.size() > 60 || id.front() == '-' || id.back() == '-') return false;
  bool hyphen = false;
  for (char c : id) {
    bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!letter && (c != '-' || hyphen)) return false;
    hyphen = c == '-';
  }
  return true;
}

}  // namespace

void Loader::read_given(const Value& object, const std::string& file) {
  Fields fields(object, file, findings, {"values", "apparatus", "hypothesis", "data", "expected", "formulas"});
  fields.texts("apparatus", [&](const std::string& text, Span) { rubric.given.apparatus.push_back(text); });
  rubric.given.hypothesis = fields.text("hypothesis");
  read_given_calculations(object, file);
  const Value* values = fields.get("values", Type::object);
  if (values == nullptr) return;
  Fields table(*values, file, findings, {"quantity", "list"});
  if (const Value* quantity = table.need("quantity", Type::string, "\"values\"", "\"force\"")) {
    rubric.given.quantity = quantity->text;
    if (find_quantity_name(quantity->text) == nullptr) {
      findings.push_back(make_finding(Code::value_not_allowed, file, quantity->span,
                                      {quantity->text, "quantity", "length, mass, time, force, temperature, angle, volume, frequency, speed, ..."}));
    }
  }
  table.need("list", Type::array, "\"values\"", "[\"1.5 N\", \"3.0 N\"]");
  table.texts("list", [&](const std::string& text, Span span) {
    Quantity value;
    if (!read_quantity(text, value)) {
      findings.push_back(make_finding(Code::value_unreadable, file, span, {text}));
      return;
    }
    rubric.given.values.push_back(value);
    rubric.given.wordings.push_back(text);
  });
}

void Loader::read_given_calculations(const Value& object, const std::string& file) {
  Fields fields(object, file, findings, {"values", "apparatus", "hypothesis", "data", "expected", "formulas"});
  auto each = [&](std::string_view key, const auto& read) {
    const Value* list = object.find(key);
    if (list == nullptr) return;
    if (!list->is(Type::array)) return fields.wrong_type(*list, key, "a list", "[ ... ]");
    for (const Value& item : list->items) {
      if (item.is(Type::object)) read(item);
      else fields.wrong_type(item, key, "an object", "{ ... }");
    }
  };
  each("data", [&](const Value& item) {
    Fields column(item, file, findings, {"quantity", "list"});
    column.need("quantity", Type::string, "\"data\"", "\"extension\"");
    Given::Column out{column.text("quantity"), {}, keep(file), item.span};
    column.texts("list", [&](const std::string& text, Span) { out.values.push_back(text); });
    rubric.given.data.push_back(std::move(out));
  });
  each("expected", [&](const Value& item) {
    Fields entry(item, file, findings, {"quantity", "value", "within"});
    entry.need("quantity", Type::string, "\"expected\"", "\"spring constant\"");
    entry.need("value", Type::string, "\"expected\"", "\"40 N/m\"");
    rubric.given.expected.push_back({entry.text("quantity"), entry.text("value"), entry.text("within"), keep(file), item.span});
  });
  each("formulas", [&](const Value& item) {
    Fields entry(item, file, findings, {"formula", "source"});
    entry.need("formula", Type::string, "\"formulas\"", "\"speed = distance / time\"");
    rubric.given.formulas.push_back({entry.text("formula"), entry.text("source"), keep(file), item.span});
  });
}

void Loader::read_examples(const Value& object, const std::string& file, Step& step) {
  Fields fields(object, file, findings, {"present", "vague", "missing"});
  for (StepStatus status : {StepStatus::present, StepStatus::vague, StepStatus::missing}) {
    fields.texts(status_word(status), [&](const std::string& text, Span span) { step.examples.push_back({text, status, keep(file), span}); });
  }
}

void Loader::read_step(const Value& object, const std::string& file) {
  Fields fields(object, file, findings,
                {"id", "title", "facet", "core", "present-means", "vague-means", "use", "instrument", "values", "present", "vague", "lacks",
                 "reason", "lacks-reason", "contradicts", "once", "hint", "examples"});
  Step step;
  step.file = keep(file);
  step.span = object.span;
  if (const Value* id = fields.need("id", Type::string, "a step", "\"loaded-reading\"")) {
    step.id = id->text;
    step.span = id->span;
    if (!good_id(step.id)) findings.push_back(make_finding(Code::id_bad, file, id->span, {step.id}));
    if (rubric.step_index(step.id) < rubric.steps.size()) findings.push_back(make_finding(Code::id_repeated, file, id->span, {step.id}));
  }
  if (const Value* facet = fields.need("facet", Type::string, "a step", "\"instrument\"")) {
    step.facet = facet->text;
    if (std::find(kFacets.begin(), kFacets.end(), step.facet) == kFacets.end()) {
      findings.push_back(make_finding(Code::value_not_allowed, file, facet->span,
                                      {step.facet, "facet", joined({kFacets.begin(), kFacets.end()})}));
    }
  }
  if (const Value* core = fields.get("core", Type::boolean)) step.core = core->boolean;
  if (fields.need("title", Type::string, "a step", "\"a few words\"") != nullptr) step.title = fields.text("title");
  step.present_means = fields.text("present-means");
  step.vague_means = fields.text("vague-means");
  step.lacks = fields.text("lacks");
  step.hint = fields.text("hint");
  step.lacks_reason = fields.text("lacks-reason");
  step.once = fields.text("once");
  if (const Value* values = fields.get("values", Type::boolean)) step.checks_values = values->boolean;
  if (const Value* list = fields.get("present", Type::array)) step.present = read_ways(*list, file);
  if (const Value* list = fields.get("vague", Type::array)) step.vague = read_ways(*list, file);
  if (const Value* list = fields.get("reason", Type::array)) step.reason = read_ways(*list, file);
  if (const Value* list = fields.get("contradicts", Type::array)) step.contradicts = read_ways(*list, file);
  if (const Value* instrument = fields.get("instrument", Type::object)) read_instrument(*instrument, file, step);
  fields.texts("use", [&](const std::string& name, Span span) {
    auto found = sets.find(name);
    if (found == sets.end()) {
      std::vector<std::string> known;
      for (const auto& [key, set] : sets) known.push_back(key);
      findings.push_back(make_finding(Code::set_unknown, file, span, {name, did_you_mean(name, known), joined(known)}));
      return;
    }
    step.present.insert(step.present.end(), found->second.present.begin(), found->second.present.end());
    step.vague.insert(step.vague.end(), found->second.vague.begin(), found->second.vague.end());
  });
  if (const Value* examples = fields.get("examples", Type::object)) read_examples(*examples, file, step);
  rubric.steps.push_back(std::move(step));
}

void Loader::read_order(const Value& list, const std::string& file) {
  std::vector<std::string> ids = rubric.step_ids();
  for (const Value& pair : list.items) {
    bool good = pair.is(Type::array) && pair.items.size() == 2 && pair.items[0].is(Type::string) && pair.items[1].is(Type::string);
    if (!good) {
      findings.push_back(make_finding(Code::wrong_type, file, pair.span, {"order", "a list of pairs of step ids", "[[\"first-step\", \"later-step\"]]"}));
      continue;
    }
    std::array<std::size_t, 2> indices{};
    bool known = true;
    for (std::size_t i = 0; i < 2; ++i) {
      const Value& id = pair.items[i];
      indices[i] = rubric.step_index(id.text);
      if (indices[i] < rubric.steps.size()) continue;
      known = false;
      findings.push_back(make_finding(Code::step_unknown, file, id.span, {id.text, did_you_mean(id.text, ids), joined(ids)}));
    }
    if (!known) continue;
    if (indices[0] == indices[1]) {
      findings.push_back(make_finding(Code::order_self, file, pair.span, {pair.items[0].text}));
      continue;
    }
    rubric.order.push_back(indices);
  }
}

void Loader::read_kind(const Fields& fields, const std::string& file) {
  if (const Value* kind = fields.get("kind", Type::string)) {
    if (kind->text == "points") rubric.kind = RubricKind::points;
    else if (kind->text != "method") findings.push_back(make_finding(Code::value_not_allowed, file, kind->span, {kind->text, "kind", joined({"method", "points"})}));
  }
  if (rubric.kind == RubricKind::points) rubric.marks = 1;
  if (const Value* marks = fields.get("marks", Type::integer)) {
    constexpr int kMostMarks = 20;
    if (marks->integer >= 1 && marks->integer <= kMostMarks) rubric.marks = static_cast<int>(marks->integer);
    else findings.push_back(make_finding(Code::value_not_allowed, file, marks->span, {std::to_string(marks->integer), "marks", "1 to 20"}));
  }
}

void Loader::read_rubric(const Value& object, const std::string& file) {
  Fields fields(object, file, findings,
                {"$schema", "format", "about", "kind", "marks", "id", "title", "question", "given", "results", "cautions", "include", "words", "sets",
                 "steps", "order"});
  read_format(fields, file);
  rubric.file = file;
  if (const Value* id = fields.need("id", Type::string, "the rubric", "\"spring-extension\"")) {
    rubric.id = id->text;
    if (!good_id(rubric.id)) findings.push_back(make_finding(Code::id_bad, file, id->span, {rubric.id}));
  }
  if (fields.need("title", Type::string, "the rubric", "\"...\"") != nullptr) rubric.title = fields.text("title");
  if (fields.need("question", Type::string, "the rubric", "\"...\"") != nullptr) rubric.question = fields.text("question");
  read_kind(fields, file);
  fields.texts("cautions", [&](const std::string& text, Span) { rubric.cautions.push_back(text); });
  read_includes(object, file);
  read_words(object, file);
  read_sets(object, file);
  if (const Value* given = fields.get("given", Type::object)) read_given(*given, file);
  if (const Value* table = fields.get("results", Type::object)) read_results(*table, file);
  if (const Value* steps = fields.need("steps", Type::array, "the rubric", "[{\"id\": ...}]")) {
    for (const Value& step : steps->items) {
      if (step.is(Type::object)) {
        read_step(step, file);
      } else {
        findings.push_back(make_finding(Code::json_not_object, file, step.span));
      }
    }
  }
  if (const Value* order = fields.get("order", Type::array)) read_order(*order, file);
}

const ParsedFiles::Parsed& ParsedFiles::parse(const std::string& name, std::string_view content) {
  auto known = known_.find(name);
  if (known != known_.end()) return known->second;
  Parsed& parsed = known_[name];
  Result<Value> root = json::parse(content, name, parsed.findings);
  if (root) {
    parsed.root = std::move(root).value();
  } else {
    parsed.findings.push_back(root.finding());
  }
  return parsed;
}

Loaded load_rubric(const std::string& name, const SourceFiles& files) {
  ParsedFiles parsed;
  return load_rubric(name, files, parsed);
}

Loaded load_rubric(const std::string& name, const SourceFiles& files, ParsedFiles& parsed) {
  Loader loader{files, parsed, {}, {}, {}, {}, {}, {}};
  auto found = files.find(name);
  if (found == files.end()) return {std::nullopt, {make_finding(Code::file_missing, name)}};
  if (files.contains(std::string(kVocabularyFile))) loader.include(std::string(kVocabularyFile), name, {});
  loader.open.push_back(name);
  Result<Value> root = json::parse(found->second, name, loader.findings);
  if (!root) {
    loader.findings.push_back(root.finding());
    return {std::nullopt, std::move(loader.findings)};
  }
  if (!root->is(Type::object)) {
    loader.findings.push_back(make_finding(Code::json_not_object, name, root->span));
    return {std::nullopt, std::move(loader.findings)};
  }
  loader.read_rubric(*root, name);
  return {std::move(loader.rubric), std::move(loader.findings)};
}

bool has_error(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return message(f.code).severity == Severity::error; });
}

}  // namespace retort

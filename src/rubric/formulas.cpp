#include "rubric/formulas.h"

#include <optional>

#include "rubric/fields.h"

namespace retort {
namespace {

class Loader {
 public:
  Loader(const std::string& file, calc::FormulaBook& book, Findings& findings) : file_(file), book_(book), findings_(findings) {}

  void run(const json::Value& root) {
    Fields fields(root, file_, findings_, {"$schema", "format", "about", "quantities", "formulas", "constants"});
    if (const json::Value* list = fields.get("quantities", json::Type::array)) {
      for (const json::Value& item : list->items) quantity(item);
    }
    if (const json::Value* list = fields.get("formulas", json::Type::array)) {
      for (const json::Value& item : list->items) formula(item);
    }
    if (const json::Value* list = fields.get("constants", json::Type::array)) {
      for (const json::Value& item : list->items) constant(item);
    }
  }

 private:
  bool is_object(const json::Value& item) {
    if (item.is(json::Type::object)) return true;
    findings_.push_back(make_finding(Code::wrong_type, file_, item.span,
                                     {"this entry", "an object { ... }", std::string(json::type_words(item.type)), "{\"name\": ...}"}));
    return false;
  }

  std::optional<CompoundUnit> unit(const std::string& text, Span span) {
    if (text == "1") return CompoundUnit{};
    std::optional<CompoundUnit> read = read_unit(text);
    if (!read) findings_.push_back(make_finding(Code::unit_unknown, file_, span, {text}));
    return read;
  }

  std::optional<Exact> bound(const Fields& fields, std::string_view key) {
    const json::Value* text = fields.get(key, json::Type::string);
    if (text == nullptr) return std::nullopt;
    std::optional<Decimal> number = read_decimal(text->text);
    if (!number) {
      findings_.push_back(make_finding(Code::value_unreadable, file_, text->span, {text->text}));
      return std::nullopt;
    }
    return number->value;
  }

  void quantity(const json::Value& item) {
    if (!is_object(item)) return;
    Fields fields(item, file_, findings_, {"name", "unit", "units", "symbols", "words", "verbs", "count", "named", "leads", "least", "most"});
    calc::QuantityEntry entry;
    const json::Value* name = fields.need("name", json::Type::string, "a quantity", "\"name\": \"force\"");
    const json::Value* symbol = fields.need("unit", json::Type::string, "a quantity", "\"unit\": \"N\"");
    if (name == nullptr || symbol == nullptr) return;
    entry.name = name->text;
    std::optional<CompoundUnit> base = unit(symbol->text, symbol->span);
    if (!base) return;
    entry.unit = *base;
    fields.texts("units", [&](const std::string& text, Span span) {
      if (auto other = unit(text, span)) entry.others.push_back(*other);
    });
    fields.texts("symbols", [&](const std::string& text, Span) { entry.symbols.push_back(text); });
    fields.texts("words", [&](const std::string& text, Span) { entry.words.push_back(text); });
    fields.texts("verbs", [&](const std::string& text, Span) { entry.verbs.push_back(text); });
    if (const json::Value* flag = fields.get("count", json::Type::boolean)) entry.count = flag->boolean;
    if (const json::Value* flag = fields.get("named", json::Type::boolean)) entry.named_only = flag->boolean;
    entry.least = bound(fields, "least");
    entry.most = bound(fields, "most");
    if (const json::Value* flag = fields.get("leads", json::Type::boolean)) entry.leads = flag->boolean;
    book_.add_quantity(std::move(entry));
  }

  void formula(const json::Value& item) {
    if (!is_object(item)) return;
    Fields fields(item, file_, findings_, {"formula", "source", "when"});
    const json::Value* text = fields.need("formula", json::Type::string, "a formula", "\"formula\": \"speed = distance / time\"");
    if (text == nullptr) return;
    fields.need("source", json::Type::string, "a formula", "\"source\": \"common practice, no source\"");
    std::vector<std::string> when;
    fields.texts("when", [&](const std::string& word, Span) { when.push_back(word); });
    if (!book_.add_formula(text->text, fields.text("source"), std::move(when)))
      findings_.push_back(make_finding(Code::formula_unreadable, file_, text->span, {text->text}));
  }

  void constant(const json::Value& item) {
    if (!is_object(item)) return;
    Fields fields(item, file_, findings_, {"value", "unit", "about", "only-if-needed"});
    const json::Value* value = fields.need("value", json::Type::string, "a constant", "\"value\": \"9.8\"");
    const json::Value* symbol = fields.need("unit", json::Type::string, "a constant", "\"unit\": \"N/kg\"");
    if (value == nullptr || symbol == nullptr) return;
    std::optional<Decimal> number = read_decimal(value->text);
    if (!number) findings_.push_back(make_finding(Code::value_unreadable, file_, value->span, {value->text}));
    std::optional<CompoundUnit> base = unit(symbol->text, symbol->span);
    const json::Value* needed = fields.get("only-if-needed", json::Type::boolean);
    if (number && base) book_.add_constant({number->value, *base, needed != nullptr && needed->boolean});
  }

  const std::string& file_;
  calc::FormulaBook& book_;
  Findings& findings_;
};

}  // namespace

void load_formulas(std::string_view source, const std::string& file, calc::FormulaBook& book, Findings& findings) {
  Result<json::Value> root = json::parse(source, file, findings);
  if (!root) {
    findings.push_back(root.finding());
    return;
  }
  if (!root->is(json::Type::object)) {
    findings.push_back(make_finding(Code::json_not_object, file, root->span));
    return;
  }
  Loader(file, book, findings).run(*root);
}

}  // namespace retort

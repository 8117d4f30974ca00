#include "review/given.h"

namespace retort {
namespace {

// "3.8 cm" as a leaf without a place in the answer.
bool read_leaf(std::string_view text, calc::Leaf& out) {
  calc::Tokens tokens;
  read_tokens(text, tokens);
  if (tokens.size() != 1 || !tokens.is(0, calc::TokenKind::number) || tokens.number(0).too_large) return false;
  const calc::Number& number = tokens.number(0);
  out = {number.decimal.value, number.decimal.figures, number.decimal.last_place, number.unit, false, {}, false};
  return true;
}

class Reading {
 public:
  Reading(const calc::FormulaBook& book, Findings& findings) : book_(book), findings_(findings) {}

  calc::Given run(const Rubric& rubric) {
    calc::QuantityId id = book_.find(rubric.given.quantity);
    for (const std::string& value : rubric.given.wordings) add(value, id);
    for (const Given::Column& column : rubric.given.data) column_of(column);
    for (const Given::Expected& expected : rubric.given.expected) result(expected);
    return std::move(out_);
  }

 private:
  void add(const std::string& text, calc::QuantityId id) {
    calc::Fact fact;
    if (!read_leaf(text, fact.leaf)) return;
    fact.token = SIZE_MAX;
    fact.leaf.source = {UINT32_MAX - 1, UINT32_MAX};  // stands in no answer
    if (id != calc::kNoQuantity) fact.names = {id};
    out_.facts.push_back(std::move(fact));
  }
  calc::QuantityId known(const std::string& name, std::string_view file, Span span) {
    calc::QuantityId id = book_.find(name);
    if (id == calc::kNoQuantity) findings_.push_back(make_finding(Code::quantity_unknown, file, span, {name}));
    return id;
  }
  void column_of(const Given::Column& column) {
    calc::QuantityId id = known(column.quantity, column.file, column.span);
    for (const std::string& value : column.values) {
      calc::Leaf leaf;
      if (!read_leaf(value, leaf))
        findings_.push_back(make_finding(Code::value_unreadable, column.file, column.span, {value}));
      else
        add(value, id);
    }
  }
  void result(const Given::Expected& expected) {
    calc::QuantityId id = known(expected.quantity, expected.file, expected.span);
    calc::Leaf value;
    calc::Leaf within;
    std::string room = expected.within.empty() ? "10 %" : expected.within;
    bool good =
        read_leaf(expected.value, value) && value.unit && value.value > 0 && read_leaf(room, within) && within.unit && within.unit->symbol == "%";
    if (!good) findings_.push_back(make_finding(Code::value_unreadable, expected.file, expected.span, {expected.value}));
    if (!good || id == calc::kNoQuantity) return;
    out_.expected.push_back({id, value.value * exact(value.unit->scale), *value.unit, within.value / 100, expected.value});
  }

  const calc::FormulaBook& book_;
  Findings& findings_;
  calc::Given out_;
};

}  // namespace

calc::Given given_for_calculations(const Rubric& rubric, const calc::FormulaBook& book, Findings& findings) {
  return Reading(book, findings).run(rubric);
}

std::shared_ptr<const calc::FormulaBook> with_own_formulas(const calc::FormulaBook& book, const Rubric& rubric, Findings& findings) {
  if (rubric.given.formulas.empty()) return nullptr;
  auto own = std::make_shared<calc::FormulaBook>(book);
  for (const Given::OwnFormula& formula : rubric.given.formulas) {
    if (!own->add_formula(formula.text, formula.source))
      findings.push_back(make_finding(Code::formula_unreadable, formula.file, formula.span, {formula.text}));
  }
  return own;
}

}  // namespace retort

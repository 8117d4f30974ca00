// The formulas of school science, as data: the quantities with their units, symbols and names, the
// formulas between them, and constants that pupils write without a unit.
//
// Lifetime: a FormulaBook is built once and then read-only; threads may share it.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "calc/expression.h"
#include "calc/spelling.h"

namespace retort::calc {

using QuantityId = std::uint16_t;
constexpr QuantityId kNoQuantity = 0xFFFF;

struct QuantityEntry {
  std::string name;                  // "spring constant"
  CompoundUnit unit;                 // the coherent one, for answers without a unit
  std::vector<CompoundUnit> others;  // other units in common use
  std::vector<std::string> symbols;  // as written: "k", "F"
  std::vector<std::string> words;    // folded phrases, the name among them
  std::vector<std::string> verbs;    // words that name it only where nothing else does ("took")
  bool count = false;                // a number of things (waves, loops, readings)
  bool named_only = false;           // bound by its name alone, never by its unit
  std::optional<Exact> least;        // no value of it can be smaller, or larger
  std::optional<Exact> most;
  bool leads = false;  // its name says what is worked out even where others follow ("mean time")
};

struct Formula {
  std::string text;  // "spring constant = force / extension"
  std::string source;
  QuantityId result = kNoQuantity;
  Expression tree;                    // of the right-hand side
  std::vector<QuantityId> variables;  // by leaf of `tree`; kNoQuantity for a constant
  bool turned = false;                // made by turning another formula round
  std::vector<std::string> when;      // words of which the text must have one
};

struct Constant {
  Exact value;
  CompoundUnit unit;
  bool only_if_needed = false;  // a number as common as 10: taken for the constant only where the units fit by it alone
};

class FormulaBook {
 public:
  // Adds a quantity; the first of equal names counts.
  QuantityId add_quantity(QuantityEntry entry);
  // Adds "result = expression" and, where it is a product of powers, the same formula solved for each
  // of the others. False if it cannot be read or names an unknown quantity.
  // `when`: the formula counts, before others for the same quantity, if the text has one of these words.
  bool add_formula(std::string_view text, std::string_view source, std::vector<std::string> when = {});
  void add_constant(Constant constant) { constants_.push_back(std::move(constant)); }

  [[nodiscard]] const std::vector<QuantityEntry>& quantities() const { return quantities_; }
  [[nodiscard]] const QuantityEntry& quantity(QuantityId id) const { return quantities_[id]; }
  [[nodiscard]] const std::vector<Formula>& formulas() const { return formulas_; }
  // Indices of the formulas that give `result`.
  [[nodiscard]] const std::vector<std::uint16_t>& giving(QuantityId result) const;
  // The formulas for `result` that a text's words allow.
  [[nodiscard]] std::vector<const Formula*> for_text(QuantityId result, const Tokens& tokens) const;
  [[nodiscard]] QuantityId find(std::string_view name) const;
  [[nodiscard]] const NameWords& words() const { return words_; }

  // The quantities that a symbol stands for, by its case if that decides.
  [[nodiscard]] std::vector<QuantityId> by_symbol(std::string_view raw) const;
  // The longest phrase of the book that begins at word `at`, and the quantities it names.
  // `verb` (may be null) is set if it is one that names only where nothing else does.
  [[nodiscard]] std::size_t phrase_at(const Tokens& tokens, std::size_t at, std::vector<QuantityId>& out, bool* verb = nullptr) const;

  // The unit of a number that is a known constant ("9.8", "4200"); null if it is none.
  [[nodiscard]] const CompoundUnit* constant_unit(const Exact& value, bool if_needed = false) const;
  // Whether `scale` is a usual one for a quantity of this dimension; true for dimensions without a name.
  [[nodiscard]] bool usual_scale(const Dimension& dimension, const Scale& scale, bool& known) const;

 private:
  void turn_round(const Formula& formula);

  struct Phrase {
    std::vector<std::string> words;
    QuantityId quantity;
    bool verb = false;
  };
  std::vector<QuantityEntry> quantities_;
  std::vector<Formula> formulas_;
  std::vector<Constant> constants_;
  std::vector<std::vector<std::uint16_t>> giving_;
  std::vector<Phrase> phrases_;
  NameWords words_;
  std::unordered_multimap<std::string, std::uint32_t> by_first_word_;
  std::unordered_multimap<std::string, QuantityId> by_symbol_;
};

}  // namespace retort::calc

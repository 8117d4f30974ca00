// What the text states: each number with what it is a number of ("the wavelength was 2.5 cm", "u = 2 m/s",
// "8 Hz", "10 waves"), so that a calculation can be given its units and a formula its values.
#pragma once
#include <cstdint>
#include <vector>

#include "calc/formula.h"

namespace retort::calc {

struct Fact {
  std::size_t token = 0;
  Leaf leaf;
  std::vector<QuantityId> names;  // what the words beside it name, the likeliest first; may be empty
  bool counted = false;           // a whole number of things ("10 waves")
};

// All numbers of the text in order, with what they count but without other names.
void find_facts(const Tokens& tokens, const FormulaBook& book, std::vector<Fact>& out);
// Names those that count nothing.
void name_facts(const Tokens& tokens, const FormulaBook& book, std::vector<Fact>& facts);

// What the words before token `at` name ("speed = ...", "so the spring constant is ..."); `symbol` is set
// if it was a single symbol. Empty if nothing is named.
struct NameFound {
  std::vector<QuantityId> quantities;
  bool symbol = false;
  std::size_t end = 0;  // the token behind the name
  bool verb = false;    // a verb that goes with it, which may be any word ("in the water")
};
NameFound find_name(const Tokens& tokens, const FormulaBook& book, std::size_t at, std::size_t reach = 7);
std::vector<QuantityId> named_before(const Tokens& tokens, const FormulaBook& book, std::size_t at, bool& symbol, std::size_t reach = 7);

// How well a stated number fits a variable: 0 not at all.
int fit(const FormulaBook& book, QuantityId variable, const Leaf& leaf, const std::vector<QuantityId>& names);

}  // namespace retort::calc

// Which number of a sum is which variable of a formula.
#pragma once
#include "calc/judge_helpers.h"

namespace retort::calc {

// All ways to give a formula's variables the leaves of an expression, each used once.
class Assignments {
 public:
  Assignments(const FormulaBook& book, const Formula& formula, const Expression& e, const std::vector<std::vector<QuantityId>>& names)
      : book_(book), formula_(formula), e_(e), names_(names), chosen_(formula.variables.size(), nullptr), used_(e.leaves.size(), false) {}

  struct One {
    std::vector<const Leaf*> chosen;
    int score = 0;
  };
  // With one variable taken from what the text states elsewhere.
  std::vector<One> run_with_one_of(const std::vector<Fact>& facts) {
    if (e_.leaves.size() > 8 || e_.leaves.size() < 2) return {};
    others_ = &facts;
    next(0, 0);
    return std::move(found_);
  }
  // `loose`: how many variables may take a number that has neither a unit nor a name.
  std::vector<One> run(int loose) {
    if (e_.leaves.size() > 8) return {};
    next(0, 0);
    if (found_.empty() && loose > 0) {
      loose_ = loose;
      nameless_ = true;
      next(0, 0);
    }
    std::stable_sort(found_.begin(), found_.end(), [](const One& a, const One& b) { return a.score > b.score; });
    return std::move(found_);
  }

 private:
  void next(std::size_t variable, int score) {
    if (found_.size() >= 24) return;
    if (variable == formula_.variables.size()) {
      if (others_ == nullptr && rest_is_pure()) found_.push_back({chosen_, score});
      return;
    }
    if (formula_.variables[variable] == kNoQuantity) return next(variable + 1, score);
    if (others_ != nullptr) from_elsewhere(variable, score);
    for (std::size_t i = 0; i < e_.leaves.size(); ++i) {
      if (used_[i] || e_.leaves[i].figures == 0) continue;
      int s = fit(book_, formula_.variables[variable], e_.leaves[i], names_[i]);
      bool free =
          s == 0 && loose_ > 0 && !e_.leaves[i].unit && names_[i].empty() && !book_.quantity(formula_.variables[variable]).count && in_order(i);
      if (s == 0 && !free) continue;
      if (free) {
        --loose_;
        used_[i] = true;
        chosen_[variable] = &e_.leaves[i];
        next(variable + 1, score);
        chosen_[variable] = nullptr;
        used_[i] = false;
        ++loose_;
        continue;
      }
      used_[i] = true;
      chosen_[variable] = &e_.leaves[i];
      next(variable + 1, score + s);
      chosen_[variable] = nullptr;
      used_[i] = false;
    }
  }
  void from_elsewhere(std::size_t variable, int score) {
    const std::vector<Fact>* facts = others_;
    const Fact* only = nullptr;
    for (const Fact& fact : *facts) {
      bool in_sum = std::any_of(e_.leaves.begin(), e_.leaves.end(), [&](const Leaf& leaf) { return leaf.value == fact.leaf.value; });
      if (in_sum || !fact.leaf.unit || fit(book_, formula_.variables[variable], fact.leaf, fact.names) < 2) continue;
      if (only != nullptr) return;
      only = &fact;
    }
    if (only == nullptr) return;
    others_ = nullptr;
    chosen_[variable] = &only->leaf;
    next(variable + 1, score + 2);
    chosen_[variable] = nullptr;
    others_ = facts;
  }
  // Numbers without a name are taken in the order in which they stand.
  bool in_order(std::size_t leaf) const {
    for (std::size_t i = leaf + 1; i < used_.size(); ++i) {
      if (used_[i] && !e_.leaves[i].unit && names_[i].empty()) return false;
    }
    return true;
  }
  // What is left over must be a number of the formula itself, or the same reading once more.
  bool rest_is_pure() const {
    for (std::size_t i = 0; i < e_.leaves.size(); ++i) {
      if (used_[i] || e_.leaves[i].value == 1 || e_.leaves[i].value == 100 || is_constant_of_formula(e_.leaves[i])) continue;
      bool again = false;
      // where the numbers have no names, a repeated one proves nothing
      for (std::size_t k = 0; k < e_.leaves.size() && !nameless_; ++k) again = again || (used_[k] && e_.leaves[k].value == e_.leaves[i].value);
      if (!again) return false;
    }
    return true;
  }

  bool is_constant_of_formula(const Leaf& leaf) const {
    for (std::size_t i = 0; i < formula_.variables.size(); ++i) {
      if (formula_.variables[i] == kNoQuantity && abs(formula_.tree.leaves[i].value - leaf.value) < Exact(1, 100)) return true;
    }
    return false;
  }

  const FormulaBook& book_;
  const Formula& formula_;
  const Expression& e_;
  const std::vector<std::vector<QuantityId>>& names_;
  std::vector<const Leaf*> chosen_;
  std::vector<bool> used_;
  const std::vector<Fact>* others_ = nullptr;
  int loose_ = 0;  // how many variables may take a number that nothing names
  bool nameless_ = false;
  std::vector<One> found_;
};

}  // namespace retort::calc

// The calculations of a text, in one line each, for tables of tests.
#pragma once
#include <string>

#include "../support.h"
#include "calc/calculations.h"

namespace retort::test {

// The book that comes with the program.
inline const calc::FormulaBook& book() {
  static const std::shared_ptr<const calc::FormulaBook> shared = [] {
    Findings findings;
    auto made = open_formulas(shipped().files, findings);
    EXPECT_TRUE(findings.empty());
    return made;
  }();
  return *shared;
}

// "40 right; 0.4 wrong power-of-ten (40 N/m); 12 right, unit-missing"
inline std::string shown(const std::string& text, const calc::Given& given = {}) {
  calc::Calculator calculator(book());
  std::string out;
  for (const calc::Calculation& c : calculator.check(text, given)) {
    out += (out.empty() ? "" : "; ") + std::string(c.result.of(text)) + " " + std::string(name(c.verdict));
    for (calc::Slip slip : c.slips) out += " " + std::string(name(slip));
    for (calc::Remark remark : c.remarks) out += ", " + std::string(name(remark));
    if (c.verdict == calc::Verdict::wrong) out += " (" + c.correct + ")";
  }
  return out;
}

}  // namespace retort::test

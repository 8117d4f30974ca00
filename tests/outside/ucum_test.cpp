// Conversions that keep significant figures, from the functional tests of UCUM (see data/README.md), written as
// pupils write them: "6.3 mm = 0.0063 m". Stated so it is right; with another last digit it is wrong.
#include <set>

#include "calc/calculations.h"
#include "table.h"

namespace retort {
namespace {

// UCUM's codes as they are written at school. Codes that are missing are no units of ours: inches and light-years,
// numbers inside a unit ("4.s/m"), the siemens, mercury columns, constants.
const std::map<std::string, std::string> kWritten = {
    {"m", "m"},         {"cm", "cm"},       {"mm", "mm"},         {"s", "s"},          {"s/m", "s/m"},         {"s.m-1", "s m-1"},           {"s.mm-1", "s mm-1"},
    {"s.mm-2", "s mm-2"}, {"s.m-2", "s m-2"}, {"s/m/g", "s/m/g"},   {"ms/m/g", "ms/m/g"}, {"s/mm/g", "s/mm/g"},   {"s/m/mg", "s/m/mg"},         {"s.m-1.g-1", "s m-1 g-1"},
    {"ms/m", "ms/m"},   {"s/mm", "s/mm"},   {"ms/mm", "ms/mm"},   {"g.m", "g\u00B7m"}, {"m.g", "m\u00B7g"},    {"s/m.mg", "s\u00B7mg/m"}, {"s.m-1.g", "s\u00B7g/m"}, {"g.m.s-2.A-2", "g\u00B7m s-2 A-2"},
    {"g.m.C-2", "g\u00B7m C-2"},
};
const std::set<std::string> kSkipped = {"3-113", "3-114", "3-115", "3-118", "3-119", "3-121", "3-122", "3-123", "3-124", "3-125", "3-126", "3-127", "3-128"};

// Units of the same size on both sides: our program takes such a line for no conversion, and says nothing of it.
const std::set<std::string> kSameSize = {"3-101", "3-104", "3-108", "3-117", "3-120", "3-129"};

struct Case {
  std::string id;
  std::string left;
  std::string value;
  std::string unit;
};

std::vector<Case> cases(std::set<std::string>& skipped) {
  std::vector<Case> out;
  for (const test::TableRow& row : test::read_table("ucum_conversions.tsv")) {
    auto from = kWritten.find(row.at("srcUnit"));
    auto to = kWritten.find(row.at("dstUnit"));
    if (from == kWritten.end() || to == kWritten.end()) {
      skipped.insert(row.at("id"));
      continue;
    }
    out.push_back({row.at("id"), row.at("value") + " " + from->second, row.at("outcome"), to->second});
  }
  return out;
}

// Another last figure: "0.0063" → "0.0065", "6300" → "6500".
std::string altered(std::string value) {
  for (std::size_t i = value.size(); i-- > 0;) {
    if (value[i] < '1' || value[i] > '9') continue;
    value[i] = value[i] > '7' ? static_cast<char>(value[i] - 2) : static_cast<char>(value[i] + 2);
    break;
  }
  return value;
}

std::string verdict(const std::string& text) {
  Findings findings;
  static const std::shared_ptr<const calc::FormulaBook> book = open_formulas(test::shipped().files, findings);
  std::vector<calc::Calculation> found = calc::Calculator(*book).check(text);
  if (found.size() != 1) return std::to_string(found.size()) + " calculations";
  return std::string(calc::name(found[0].verdict));
}

void check(bool same_size, std::size_t expected) {
  std::set<std::string> skipped;
  std::size_t checked = 0;
  for (const Case& one : cases(skipped)) {
    if (kSameSize.contains(one.id) != same_size) continue;
    ++checked;
    if (same_size) {  // "6.3 m = 6.3 m" says little: it is right, or no conversion at all
      EXPECT_NE(verdict(one.left + " = " + one.value + " " + one.unit), "wrong") << one.id;
      continue;
    }
    EXPECT_EQ(verdict(one.left + " = " + one.value + " " + one.unit), "right") << one.id << ": " << one.left << " = " << one.value << " " << one.unit;
    std::string other = altered(one.value);
    EXPECT_EQ(verdict(one.left + " = " + other + " " + one.unit), "wrong") << one.id << ": " << one.left << " = " << other << " " << one.unit;
  }
  EXPECT_EQ(skipped, kSkipped);
  EXPECT_EQ(checked, expected);
}

TEST(Ucum, ConversionsOfOurUnitsAreRightAndWrongOnesWrong) { check(false, 11); }
TEST(Ucum, TheSameUnitAgainIsNeverWrong) { check(true, 6); }

}  // namespace
}  // namespace retort

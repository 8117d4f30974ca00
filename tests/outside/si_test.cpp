// Prefixes and units against the BIPM's own data (SI Digital Framework 1.0.0, after the SI Brochure, 9th edition;
// see data/README.md).
#include <numbers>
#include <set>

#include "decimals.h"
#include "quantity/compound.h"
#include "table.h"

namespace retort {
namespace {

TEST(Si, OurPrefixesAreThoseOfTheBrochure) {
  std::map<std::string, test::TableRow> known;
  for (test::TableRow& row : test::read_table("si_prefixes.tsv")) known[row["name"]] = row;
  ASSERT_EQ(known.size(), 24U);
  for (const Prefix& prefix : prefixes()) {
    ASSERT_TRUE(known.contains(std::string(prefix.name))) << prefix.name;
    test::TableRow& row = known[std::string(prefix.name)];
    EXPECT_EQ(std::to_string(prefix.exponent), row["exponent"]) << prefix.name;
    if (prefix.name == "micro") {  // the Greek letter there, the sign for micro here
      EXPECT_EQ(read_unit(row["symbol"] + "s"), read_unit("\u00B5s"));
    } else {
      EXPECT_EQ(prefix.symbol, row["symbol"]);
    }
  }
}

Dimension dimension_of(const test::TableRow& row) {
  auto n = [&](const char* unit) { return static_cast<std::int8_t>(std::stoi(row.at(unit))); };
  return {n("metre"), n("kilogram"), n("second"), n("ampere"), n("kelvin"), n("mole"), n("candela"), n("radian")};
}

// Units that practicals at school do not need.
const std::set<std::string> kNotOurs = {"arcminute", "arcsecond", "astronomical unit", "becquerel", "dalton", "gray",   "hectare",   "henry",
                                        "katal",     "lumen",     "lux",               "radian",    "siemens", "sievert", "steradian", "weber"};
// Symbols that pupils' texts use for something else ("t" is the time, "d" a distance, ′ closes a quotation).
const std::set<std::string> kSymbolsNotOurs = {"d", "t"};

TEST(Si, OurUnitsHaveTheDimensionAndFactorOfTheBrochure) {
  std::size_t compared = 0;
  std::set<std::string> skipped;
  for (const test::TableRow& row : test::read_table("si_units.tsv")) {
    const std::string& name = row.at("name");
    SCOPED_TRACE(name);
    std::optional<CompoundUnit> ours = read_unit(name);
    if (!ours) {
      skipped.insert(name);
      continue;
    }
    ++compared;
    EXPECT_TRUE(ours->dimension == dimension_of(row));
    std::optional<Exact> factor = test::printed_number(row.at("factor"));
    ASSERT_TRUE(factor.has_value());
    if (name == "degree") {  // our base unit of the angle; there it is the radian
      EXPECT_NEAR(factor->get_d() * 180.0, std::numbers::pi, 1e-15);
      EXPECT_EQ(exact(ours->scale), 1);
    } else {
      EXPECT_EQ(exact(ours->scale), *factor);
    }
    const std::string& symbol = row.at("symbol");
    if (kSymbolsNotOurs.contains(symbol)) continue;
    std::optional<CompoundUnit> by_symbol = read_unit(symbol);
    ASSERT_TRUE(by_symbol.has_value()) << symbol;
    EXPECT_EQ(by_symbol->dimension, ours->dimension) << symbol;
    EXPECT_EQ(by_symbol->scale, ours->scale) << symbol;
  }
  EXPECT_EQ(skipped, kNotOurs);
  EXPECT_EQ(compared, 25U);
}

}  // namespace
}  // namespace retort

#include "quantity/compound.h"

#include "../support.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  const char* text;
  const char* expected;  // symbol, value in SI base units of one, bytes left over; or "none"
};

std::string shown(const std::string& text) {
  auto reading = read_unit_prefix(text);
  if (!reading) return "none";
  char number[40];
  std::snprintf(number, sizeof number, "%g", reading->unit.scale.value());
  std::string rest = text.substr(reading->length);
  return reading->unit.symbol + " " + number + (rest.empty() ? "" : " |" + rest);
}

class CompoundUnit_ : public ::testing::TestWithParam<Row> {};
TEST_P(CompoundUnit_, IsRead) {
  EXPECT_EQ(shown(GetParam().text), GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(
    Units, CompoundUnit_,
    ::testing::Values(
        Row{"simple", "cm", "cm 0.01"}, Row{"then words", "N of force", "N 1 | of force"}, Row{"slash", "m/s", "m/s 1"},
        Row{"index", "m s\u207B\u00B9", "m/s 1"}, Row{"glued index", "ms-1", "m/s 1"}, Row{"glued superscript", "ms\u207B\u00B2", "m/s\u00B2 1"},
        Row{"milliseconds", "ms", "ms 0.001"}, Row{"centimetres per second", "cms-1", "cm/s 0.01"}, Row{"squared below", "m/s2", "m/s\u00B2 1"},
        Row{"caret", "m/s^2", "m/s\u00B2 1"}, Row{"twice divided", "m/s/s", "m/s\u00B2 1"}, Row{"per", "N per cm", "N/cm 100"},
        Row{"words", "newtons per metre", "N/m 1"}, Row{"words squared", "metres per second squared", "m/s\u00B2 1"},
        Row{"per per", "metres per second per second", "m/s\u00B2 1"}, Row{"specific heat", "J/kg\u00B0C", "J/(kg \u00B0C) 1"},
        Row{"specific heat without the ring", "J/kg C", "J/(kg \u00B0C) 1"}, Row{"specific heat per and per", "J/kg/C", "J/(kg \u00B0C) 1"},
        Row{"energy of a charge", "J/C", "J/C 1"}, Row{"specific heat in brackets", "J/(kg \u00B0C)", "J/(kg \u00B0C) 1"},
        Row{"specific heat spaced", "J/kg \u00B0C", "J/(kg \u00B0C) 1"}, Row{"specific heat twice divided", "J/kg/\u00B0C", "J/(kg \u00B0C) 1"},
        Row{"specific heat by index", "J kg-1 K-1", "J/(kg K) 1"}, Row{"volume", "cm\u00B3", "cm\u00B3 1e-06"},
        Row{"volume plain", "cm3", "cm\u00B3 1e-06"}, Row{"cubic", "cubic centimetres", "cm\u00B3 1e-06"}, Row{"density", "g/cm3", "g/cm\u00B3 1000"},
        Row{"density by index", "kg m-3", "kg/m\u00B3 1"}, Row{"newton metre", "Nm", "N m 1"}, Row{"newton per metre by index", "Nm-1", "N/m 1"},
        Row{"newton centimetre", "Ncm", "N cm 0.01"}, Row{"newton millimetre then words", "Nmm of", "N mm 0.001 | of"},
        Row{"momentum by index", "kg m s-1", "kg m/s 1"}, Row{"momentum by superscript", "kg m s\u207B\u00B9 and", "kg m/s 1 | and"},
        Row{"kilograms then metres", "kg m and", "kg 1 | m and"}, Row{"kilowatt hour", "kWh", "kW h 3.6e+06"},
        Row{"wrong capital", "KHz", "kHz 1000"}, Row{"wrong capitals", "HZ", "Hz 1"}, Row{"kg wrong", "Kg", "kg 1"},
        Row{"ohm sign", "\u03A9", "\u03A9 1"}, Row{"kiloohm", "k\u2126", "k\u03A9 1000"}, Row{"micro", "\u03BCs", "\u00B5s 1e-06"},
        Row{"degree", "\u00B0", "\u00B0 1"}, Row{"degrees celsius", "degrees C", "\u00B0C 1"},
        Row{"ring for degree",
            "\u00BA"
            "C",
            "\u00B0C 1"},
        Row{"degrees then words", "degrees and", "\u00B0 1 | and"}, Row{"in is a word", "in the lab", "none"},
        Row{"as is a word", "as before", "none"}, Row{"at is a word", "at the top", "none"}, Row{"a is a word", "a ruler", "none"},
        Row{"mass is a word", "mass", "none"}, Row{"so is a word", "so", "none"}, Row{"metres squared", "m squared", "m\u00B2 1"},
        Row{"then a number", "cm 20", "cm 0.01 | 20"}, Row{"unit then division", "m / 2", "m 1 | / 2"}, Row{"spaced slash", "m / s", "m/s 1"},
        Row{"capitals all through", "M/S", "m/s 1"}, Row{"kilometres an hour", "km/h", "km/h 0.277778"}, Row{"mph", "mph", "mile/h 0.44704"},
        Row{"percent", "%", "% 0.01"}, Row{"concentration", "mol/dm3", "mol/dm\u00B3 1000"}, Row{"concentration by index", "g dm-3", "g/dm\u00B3 1"},
        Row{"pressure", "N/cm2", "N/cm\u00B2 10000"}, Row{"cc", "cc", "cm\u00B3 1e-06"}, Row{"misspelled", "newtens", "N 1"},
        Row{"seconds", "secs", "s 1"}, Row{"rate", "cm3/s", "cm\u00B3/s 1e-06"}, Row{"rate per minute", "cm3 per min", "cm\u00B3/min 1.66667e-08"},
        Row{"hostile", "m/m/m/m/m/m/m/m/m/m/m/m", "1/m\u2074 1 |/m/m/m/m/m/m"}),
    test::row_name<Row>);

TEST(CompoundUnits, AreCombinedAsATeacherWritesThem) {
  auto unit = [](const char* text) { return *read_unit(text); };
  EXPECT_EQ(unit_quotient(unit("N"), unit("cm")).symbol, "N/cm");
  EXPECT_EQ(unit_quotient(unit("m/s"), unit("s")).symbol, "m/s\u00B2");
  EXPECT_EQ(unit_product(unit("m/s"), unit("s")).symbol, "m");
  EXPECT_EQ(unit_quotient(unit("cm"), unit("N")).scale, (Scale{1, 1, -2}));
  EXPECT_EQ(unit_quotient(unit("km"), unit("h")).scale, unit("km/h").scale);
}

}  // namespace
}  // namespace retort

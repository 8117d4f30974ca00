#include "quantity/unit.h"

#include <array>
#include <numbers>
#include <unordered_map>

namespace retort {
namespace {

using namespace dimension;

constexpr double kDegree = std::numbers::pi / 180.0;

// Factors: SI Brochure, 9th edition, tables 2, 4, 7 and 8 (prefixes: table 7; min, h, L, °: table 8).
constexpr std::array kUnits = {
    Unit{"m", "m metre metres meter meters mtrs mtr metrs meteres", kLength, 1.0},
    Unit{"cm", "cm cms centimetre centimetres centimeter centimeters", kLength, 1e-2},
    Unit{"mm", "mm mms millimetre millimetres millimeter millimeters", kLength, 1e-3},
    Unit{"km", "km kilometre kilometres kilometer kilometers", kLength, 1e3},
    Unit{"kg", "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes", kMass, 1.0},
    Unit{"g", "g gs gram grams gramme grammes grms grm", kMass, 1e-3},
    Unit{"mg", "mg milligram milligrams", kMass, 1e-6},
    Unit{"s", "s sec secs second seconds secand secands seconde seccond secconds", kTime, 1.0},
    Unit{"ms", "ms millisecond milliseconds", kTime, 1e-3},
    Unit{"min", "min mins minute minutes minit minits minuets minuet minets minite minites minuts minuite minuites", kTime, 60.0},
    Unit{"h", "h hr hrs hour hours", kTime, 3600.0},
    Unit{"N", "n ns newton newtons newten newtens nuton nutons newtans newtan neutons", kForce, 1.0},
    Unit{"kN", "kn kilonewton kilonewtons", kForce, 1e3},
    Unit{"°C", "c celsius centigrade celcius \u00B0c degc \u2103", kTemperature, 1.0, 273.15},
    Unit{"K", "k kelvin kelvins", kTemperature, 1.0},
    Unit{"°", "\u00B0 deg degs degree degrees degres degree's digree digrees degreese", kAngle, kDegree},
    Unit{"cm³", "cm3 cc ccs cubic", kVolume, 1e-6},
    Unit{"ml", "ml mls millilitre millilitres milliliter milliliters mil mils mill mills", kVolume, 1e-6},
    Unit{"dm³", "dm3", kVolume, 1e-3},
    Unit{"l", "l litre litres liter liters", kVolume, 1e-3},
    Unit{"m³", "m3", kVolume, 1.0},
    Unit{"Hz", "hz hertz herz hertzs hurtz", kFrequency, 1.0},
    Unit{"kHz", "khz kilohertz", kFrequency, 1e3},
    Unit{"J", "j joule joules joles jole jouls joul jules jule", kEnergy, 1.0},
    Unit{"kJ", "kj kilojoule kilojoules", kEnergy, 1e3},
    Unit{"W", "w watt watts wats wat wattes", kPower, 1.0},
    Unit{"kW", "kw kilowatt kilowatts", kPower, 1e3},
    Unit{"V", "v volt volts vlts", kVoltage, 1.0},
    Unit{"A", "amp amps ampere amperes", kCurrent, 1.0},
    Unit{"mA", "ma milliamp milliamps", kCurrent, 1e-3},
    Unit{"Ω", "\u03C9 ohm ohms", kResistance, 1.0},
    Unit{"Pa", "pa pascal pascals", kPressure, 1.0},
    Unit{"mol", "mol mole moles", kAmount, 1.0},
};

struct NamedQuantity {
  std::string_view name;
  Dimension dimension;
};

constexpr std::array kQuantities = {
    NamedQuantity{"length", kLength},           NamedQuantity{"mass", kMass},
    NamedQuantity{"time", kTime},               NamedQuantity{"force", kForce},
    NamedQuantity{"temperature", kTemperature}, NamedQuantity{"angle", kAngle},
    NamedQuantity{"volume", kVolume},           NamedQuantity{"frequency", kFrequency},
    NamedQuantity{"speed", kSpeed},             NamedQuantity{"acceleration", kAcceleration},
    NamedQuantity{"energy", kEnergy},           NamedQuantity{"power", kPower},
    NamedQuantity{"potential difference", kVoltage}, NamedQuantity{"current", kCurrent},
    NamedQuantity{"resistance", kResistance},   NamedQuantity{"pressure", kPressure},
    NamedQuantity{"density", kDensity},         NamedQuantity{"area", kArea},
    NamedQuantity{"amount", kAmount},           NamedQuantity{"number", kNumber},  // of layers, of turns
};

using Index = std::unordered_map<std::string_view, const Unit*>;

Index make_index() {
  Index index;
  for (const Unit& unit : kUnits) {
    std::string_view rest = unit.spellings;
    while (!rest.empty()) {
      std::size_t end = rest.find(' ');
      index.emplace(rest.substr(0, end), &unit);
      rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
    }
  }
  return index;
}

}  // namespace

std::span<const Unit> units() { return kUnits; }

const Unit* find_unit(std::string_view folded) {
  static const Index index = make_index();
  auto found = index.find(folded);
  return found == index.end() ? nullptr : found->second;
}

const Dimension* find_quantity_name(std::string_view name) {
  for (const NamedQuantity& entry : kQuantities) {
    if (entry.name == name) return &entry.dimension;
  }
  return nullptr;
}

std::string_view quantity_name(const Dimension& dimension) {
  for (const NamedQuantity& entry : kQuantities) {
    if (entry.dimension == dimension) return entry.name;
  }
  return {};
}

}  // namespace retort

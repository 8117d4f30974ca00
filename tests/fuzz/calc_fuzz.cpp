// Any bytes as a text with calculations.
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "calc/calculations.h"
#include "rubric/formulas.h"

namespace {

const retort::calc::FormulaBook& book() {
  static const retort::calc::FormulaBook made = [] {
    retort::calc::FormulaBook out;
    retort::Findings findings;
    retort::load_formulas(R"json({"format": 1,
      "quantities": [{"name": "force", "unit": "N", "symbols": ["F"]}, {"name": "extension", "unit": "m", "symbols": ["e"]}, {"name": "spring constant", "unit": "N/m", "symbols": ["k"]},
        {"name": "speed", "unit": "m/s", "symbols": ["v"]}, {"name": "frequency", "unit": "Hz", "symbols": ["f"]}, {"name": "wavelength", "unit": "m", "symbols": ["λ"]},
        {"name": "loops", "unit": "1", "words": ["loop"], "count": true}, {"name": "mean", "unit": "1", "words": ["average"], "leads": true},
        {"name": "refractive index", "unit": "1", "symbols": ["n"], "least": "1"}, {"name": "angle of incidence", "unit": "°", "symbols": ["i"]}, {"name": "angle of refraction", "unit": "°", "symbols": ["r"]},
        {"name": "first value", "unit": "1", "words": ["start"], "named": true}, {"name": "last value", "unit": "1", "words": ["end"], "named": true}, {"name": "change", "unit": "1", "verbs": ["rise"], "named": true}],
      "formulas": [{"formula": "spring constant = force / extension", "source": "-"}, {"formula": "speed = frequency * wavelength", "source": "-"}, {"formula": "change = last value - first value", "source": "-"},
        {"formula": "refractive index = sin(angle of incidence) / sin(angle of refraction)", "source": "-"}, {"formula": "wavelength = 2 * extension / loops", "source": "-"}],
      "constants": [{"value": "9.8", "unit": "N/kg"}]})json",
                          "formulas.json", out, findings);
    if (!findings.empty()) std::abort();
    return out;
  }();
  return made;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view text(reinterpret_cast<const char*>(data), size);
  retort::calc::Calculator calculator(book());
  for (const retort::calc::Calculation& c : calculator.check(text)) {
    if (c.span.end > size || c.span.begin > c.span.end || c.result.end > c.span.end || c.result.begin < c.span.begin) std::abort();
  }
  return 0;
}

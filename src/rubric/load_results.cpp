#include "rubric/loader.h"

namespace retort {

using json::Type;
using json::Value;

namespace {

constexpr const char* kGradientSample = "{\"stands-for\": \"1 / spring constant\", \"name\": \"spring constant\", \"of\": \"inverse\", \"unit\": \"N/m\"}";

}  // namespace

// "results": {"x": ["force"], "y": ["extension"], "gradient": {...}}
void Loader::read_results(const Value& object, const std::string& file) {
  Fields fields(object, file, findings, {"x", "y", "gradient"});
  results::Guide guide;
  auto names = [&](std::string_view key, std::string_view sample, std::vector<std::string>& out) {
    if (fields.need(key, Type::array, "\"results\"", sample) == nullptr) return;
    fields.texts(key, [&](const std::string& name, Span) { out.push_back(name); });
  };
  names("x", "[\"force\"]", guide.x);
  names("y", "[\"extension\"]", guide.y);
  if (const Value* gradient = fields.get("gradient", Type::object)) read_gradient(*gradient, file, guide);
  rubric.results = std::move(guide);
}

void Loader::read_gradient(const Value& object, const std::string& file, results::Guide& guide) {
  Fields fields(object, file, findings, {"stands-for", "name", "of", "unit"});
  results::GradientMeaning meaning;
  if (fields.need("name", Type::string, "\"gradient\"", kGradientSample) != nullptr) meaning.name = fields.text("name");
  meaning.stands_for = fields.text("stands-for");
  if (meaning.stands_for.empty()) meaning.stands_for = meaning.name;
  if (const Value* of = fields.need("of", Type::string, "\"gradient\"", "\"gradient\" or \"inverse\" or \"sines\"")) {
    if (of->text == "inverse") meaning.from = results::ConstantFrom::inverse;
    else if (of->text == "sines") meaning.from = results::ConstantFrom::sines;
    else if (of->text != "gradient") findings.push_back(make_finding(Code::value_not_allowed, file, of->span, {of->text, "of", "gradient, inverse, sines"}));
  }
  if (const Value* unit = fields.need("unit", Type::string, "\"gradient\"", "\"N/m\", or \"1\" for a number without a unit")) {
    bool none = unit->text == "1";
    if (!none) meaning.unit = read_unit(unit->text);
    if (!none && !meaning.unit) findings.push_back(make_finding(Code::unit_unknown, file, unit->span, {unit->text}));
  }
  guide.gradient = std::move(meaning);
}

}  // namespace retort

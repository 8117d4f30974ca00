#include <charconv>
#include <cmath>
#include <string>

#include "quantity/number_words.h"
#include "quantity/quantity.h"
#include "text/reader.h"

namespace retort {
namespace {

struct Scan {
  const Document& document;
  std::size_t at = 0;  // first token not read yet

  [[nodiscard]] bool more(std::size_t i) const {
    return i < document.tokens.size() && document.tokens[i].before <= Break::none;
  }
  [[nodiscard]] std::string_view form(std::size_t i) const { return document.form(i); }
  [[nodiscard]] WordValue word(std::size_t i) const {
    return document.tokens[i].kind == TokenKind::word ? number_word(form(i)) : WordValue{};
  }
};

bool same(std::string_view a, std::string_view b) { return a == b; }

// "twenty five", "one hundred and fifty", "one point five", "half", "quarter".
bool read_words(Scan& scan, double& value) {
  std::size_t i = scan.at;
  WordValue first = scan.word(i);
  if (first.kind == NumberWord::none || first.kind == NumberWord::point) return false;
  value = first.value;
  ++i;
  if (first.kind == NumberWord::half || first.kind == NumberWord::quarter) {
    // "half a minute", "quarter of an hour"
    if (scan.more(i) && same(scan.form(i), "of")) ++i;
    if (scan.more(i) && (same(scan.form(i), "a") || same(scan.form(i), "an"))) ++i;
    scan.at = i;
    return true;
  }
  if (first.kind == NumberWord::ten && scan.more(i) && scan.word(i).kind == NumberWord::unit) value += scan.word(i++).value;
  if (scan.more(i) && scan.word(i).kind == NumberWord::hundred) {
    value *= 100;
    ++i;
    if (scan.more(i) && same(scan.form(i), "and") && scan.more(i + 1)) {
      WordValue tail = scan.word(i + 1);
      if (tail.kind == NumberWord::ten || tail.kind == NumberWord::teen) {
        value += tail.value;
        i += 2;
      }
    }
  }
  if (scan.more(i + 1) && scan.more(i) && scan.word(i).kind == NumberWord::point && scan.word(i + 1).kind == NumberWord::unit) {
    value += scan.word(i + 1).value / 10;
    i += 2;
  }
  scan.at = i;
  return true;
}

// The unit at the scan, if there is one; "degrees C" and "° C" are the Celsius degree.
const Unit* read_unit(Scan& scan, bool glued_only) {
  if (!scan.more(scan.at)) return nullptr;
  const Token& token = scan.document.tokens[scan.at];
  if (glued_only && token.spaced) return nullptr;
  if (token.kind == TokenKind::number) return nullptr;
  const Unit* unit = find_unit(scan.form(scan.at));
  if (unit == nullptr) return nullptr;
  ++scan.at;
  if (unit->dimension == dimension::kAngle && scan.more(scan.at)) {
    const Unit* next = find_unit(scan.form(scan.at));
    if (next != nullptr && next->symbol == "°C") {
      ++scan.at;
      return next;
    }
  }
  if (unit->symbol == "cm³" && scan.more(scan.at) && scan.form(scan.at - 1) == "cubic") ++scan.at;  // cubic centimetres
  return unit;
}

bool read_one(Scan& scan, Quantity& out) {
  out = Quantity{};
  out.first = static_cast<std::uint32_t>(scan.at);
  const Token& token = scan.document.tokens[scan.at];
  if (token.kind == TokenKind::number) {
    if (!read_digits(scan.document.form(token), out.value)) return false;
    ++scan.at;
    // "1 1/2" is rare; "20g's" and "1.5s" are plurals the unit table knows
    out.unit = read_unit(scan, false);
  } else if (token.kind == TokenKind::word) {
    if (!read_words(scan, out.value)) return false;
    out.in_words = true;
    out.unit = read_unit(scan, false);
  } else {
    return false;
  }
  out.last = static_cast<std::uint32_t>(scan.at - 1);
  return true;
}

// Stands for every quotient of units where only simple quantities are looked for: 40 N/m is no force, and 4200 J/kg no
// energy. Its dimension is that of nothing else.
constexpr Unit kQuotient{"", "", {99, 99, 99, 99, 99, 99, 99, 99}};

// Whether a unit goes on as "/m" or "/kg".
bool quotient_follows(const Scan& scan) {
  std::size_t sign = scan.at;
  if (!scan.more(sign + 1) || !scan.more(sign) || scan.form(sign) != "/") return false;
  const Token& below = scan.document.tokens[sign + 1];
  return !scan.document.tokens[sign].spaced && !below.spaced && below.kind != TokenKind::number && find_unit(scan.form(sign + 1)) != nullptr;
}

}  // namespace

bool read_digits(std::string_view form, double& out) {
  std::string plain;
  std::size_t commas = 0;
  for (char c : form) commas += c == ',' ? 1U : 0U;
  bool point = form.find('.') != std::string_view::npos;
  std::size_t comma = form.find(',');
  bool decimal_comma = commas == 1 && !point && (form.size() - comma - 1 != 3 || form[0] == '0');
  for (char c : form) {
    if (c == ',') {
      if (decimal_comma) plain += '.';
      continue;
    }
    plain += c;
  }
  auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), out);
  return error == std::errc{} && end == plain.data() + plain.size() && std::isfinite(out);
}

void find_quantities(const Document& document, std::vector<Quantity>& out) {
  Scan scan{document};
  while (scan.at < document.tokens.size()) {
    std::size_t start = scan.at;
    Quantity quantity;
    if (document.tokens[start].kind != TokenKind::symbol && read_one(scan, quantity)) {
      if (quantity.unit != nullptr && quotient_follows(scan)) quantity.unit = &kQuotient;
      out.push_back(quantity);
    } else {
      scan.at = start + 1;
    }
  }
}

bool read_quantity(std::string_view text, Quantity& out) {
  Reader reader;
  Document document = reader.read(text);
  if (document.tokens.empty()) return false;
  Scan scan{document};
  return read_one(scan, out) && scan.at == document.tokens.size();
}

}  // namespace retort

// Marks, numbers and words of a text. What the words mean as operators is in operator_words.cpp.
#include <algorithm>
#include <charconv>

#include "calc/number_text.h"
#include "calc/operator_words.h"
#include "calc/settle_labels.h"
#include "calc/settle_units.h"
#include "calc/token.h"

namespace retort::calc {
namespace {

struct Sign {
  std::string_view bytes;
  TokenKind kind;
};

// Longest first where one begins another.
constexpr Sign kSigns[] = {
    {"-->", TokenKind::equals},    {"->", TokenKind::equals},     {"=>", TokenKind::equals},     {"==", TokenKind::equals},
    {"~=", TokenKind::equals},     {"=", TokenKind::equals},      {"\u2248", TokenKind::equals}, {"\u2192", TokenKind::equals},
    {"\u21D2", TokenKind::equals}, {"\u2245", TokenKind::equals}, {"\u2243", TokenKind::equals}, {"+", TokenKind::plus},
    {"-", TokenKind::minus},       {"\u2212", TokenKind::minus},  {"\u2013", TokenKind::minus},  {"**", TokenKind::power},
    {"*", TokenKind::times},       {"\u00D7", TokenKind::times},  {"\u2715", TokenKind::times},  {"\u00B7", TokenKind::times},
    {"\u22C5", TokenKind::times},  {"/", TokenKind::divide},      {"\u00F7", TokenKind::divide}, {"\u2215", TokenKind::divide},
    {"\u2044", TokenKind::divide}, {"^", TokenKind::power},       {"\u221A", TokenKind::root},   {"(", TokenKind::open},
    {")", TokenKind::close},       {"[", TokenKind::open},        {"]", TokenKind::close},       {",", TokenKind::comma},
    {":", TokenKind::colon},       {";", TokenKind::stop},        {"!", TokenKind::stop},        {"?", TokenKind::stop},
    {"\n", TokenKind::line},       {"\r", TokenKind::line},       {"\u03C0", TokenKind::pi},     {"\u00B2", TokenKind::squared},
    {"\u00B3", TokenKind::cubed},
};

struct Fraction {
  std::string_view bytes;
  int numerator;
  int denominator;
};
constexpr Fraction kFractions[] = {{"\u00BD", 1, 2}, {"\u00BC", 1, 4}, {"\u00BE", 3, 4}, {"\u2153", 1, 3}, {"\u2154", 2, 3}};

class Lexer : private NumberText {
 public:
  Lexer(std::string_view text, Tokens& out) : NumberText(text), out_(out) {}

  void run() {
    decimal_commas_ = writes_decimal_commas();
    while (at_ < text_.size()) step();
  }

 private:
  Token& add(TokenKind kind, std::size_t begin, std::size_t end) {
    Token token;
    token.kind = kind;
    token.source = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    token.glued = begin == last_end_;
    last_end_ = end;
    at_ = end;
    out_.all.push_back(token);
    return out_.all.back();
  }

  TokenKind last() const { return out_.all.empty() ? TokenKind::stop : out_.all.back().kind; }
  bool after_operand() const {
    TokenKind kind = last();
    if (kind == TokenKind::word) {
      std::string_view word = out_.word(out_.size() - 1);
      return word == "squared" || word == "cubed";
    }
    return kind == TokenKind::number || kind == TokenKind::close || kind == TokenKind::pi || kind == TokenKind::squared || kind == TokenKind::cubed;
  }

  void step() {
    if (std::size_t n = spaces(at_)) {
      at_ += n;
      return;
    }
    char c = text_[at_];
    if (is_digit(c) || (c == '.' && is_digit(byte(at_ + 1)) && !(at_ > 0 && (is_letter(text_[at_ - 1]) || is_digit(text_[at_ - 1])))))
      return number();
    if (last() == TokenKind::close && unit_of_bracket()) return;
    if (is_letter(c)) return word();
    if (c == '.') {
      add(TokenKind::stop, at_, at_ + 1);
      return;
    }
    for (const Fraction& fraction : kFractions) {
      if (fraction.bytes[0] == c && starts(at_, fraction.bytes)) return simple_fraction(fraction);
    }
    if (sign()) return;
    if (other_letters()) return;
    if (starts(at_, "\u00B1")) return word_token(at_, at_ + 2);
    if (c == '%') return word_token(at_, at_ + 1);
    ++at_;
  }

  // "(2.35 − 0.75) m s⁻¹ ÷ 0.80 s"
  bool unit_of_bracket() {
    auto unit = read_unit_prefix(text_.substr(at_, 64));
    if (!unit) return false;
    std::size_t next = at_ + unit->length;
    next += spaces(next);
    bool ends = next >= text_.size() || std::any_of(std::begin(kSigns), std::end(kSigns), [&](const Sign& s) { return starts(next, s.bytes); });
    if (!ends || byte(next) == '(') return false;
    out_.units.push_back(unit->unit);
    add(TokenKind::unit, at_, at_ + unit->length).number = static_cast<std::uint32_t>(out_.units.size() - 1);
    return true;
  }

  bool sign() {
    // A rule of dashes or equals signs is no operator.
    if ((text_[at_] == '-' || text_[at_] == '=' || text_[at_] == '_') && byte(at_ + 1) == text_[at_] && byte(at_ + 2) == text_[at_]) {
      std::size_t end = at_;
      while (byte(end) == text_[at_]) ++end;
      add(text_[at_] == '-' ? TokenKind::word : TokenKind::line, at_, end);
      return true;
    }
    for (const Sign& entry : kSigns) {
      if (entry.bytes[0] != text_[at_] || !starts(at_, entry.bytes)) continue;
      add(entry.kind, at_, at_ + entry.bytes.size());
      return true;
    }
    return false;
  }

  // Greek letters and the like make words of their own.
  bool other_letters() {
    auto c = static_cast<unsigned char>(text_[at_]);
    if (c < 0xC3 || c > 0xCF) return false;
    std::size_t end = at_;
    while (end < text_.size() &&
           (is_letter(text_[end]) || is_digit(text_[end]) ||
            (static_cast<unsigned char>(text_[end]) >= 0xC3 && static_cast<unsigned char>(text_[end]) <= 0xCF && end + 1 < text_.size()))) {
      end += static_cast<unsigned char>(text_[end]) >= 0xC3 ? 2 : 1;
      if (starts(end, "\u00D7") || starts(end, "\u03C0")) break;
    }
    if (end == at_) ++end;  // half of a letter, at the end
    word_token(at_, std::min(end, text_.size()));
    return true;
  }

  void word() {
    std::size_t end = at_;
    auto goes_on = [&](std::size_t i) {
      if (is_letter(byte(i)) || is_digit(byte(i))) return true;
      return byte(i) == '\'' && is_letter(byte(i + 1));
    };
    // "x" between numbers is an operator: "8x2.5", "4 x 10"
    if ((text_[at_] == 'x' || text_[at_] == 'X') && !is_letter(byte(at_ + 1))) {
      std::size_t next = at_ + 1 + spaces(at_ + 1);
      if (after_operand() || is_digit(byte(next)) || byte(next) == '.' || byte(next) == '(') {
        add(TokenKind::times, at_, at_ + 1);
        return;
      }
    }
    // "1.5xsin30"
    if ((text_[at_] == 'x' || text_[at_] == 'X') && after_operand() && at_ == last_end_ &&
        (starts(at_ + 1, "sin") || starts(at_ + 1, "cos") || starts(at_ + 1, "tan"))) {
      add(TokenKind::times, at_, at_ + 1);
      return;
    }
    while (goes_on(end)) ++end;
    if (end < text_.size() && text_[end] == '\xE2' && starts(end, "\u2019") && is_letter(byte(end + 3))) {
      end += 3;
      while (goes_on(end)) ++end;
    }
    if (function(end)) return;
    word_token(at_, end);
  }

  // "sin40", "sin-1", "cos⁻¹"; with the number behind it left to be read.
  bool function(std::size_t end) {
    std::size_t letters = at_;
    while (letters < end && is_letter(text_[letters])) ++letters;
    TokenKind kind = function_word(text_.substr(at_, letters - at_));
    if (kind == TokenKind::word || (letters < end && !is_digit(text_[letters]))) return false;
    std::size_t stop = letters;
    for (std::string_view inverse : {"-1", "^-1", "\u207B\u00B9", "\u2212\u0031", "^(-1)"}) {
      std::size_t at = stop + spaces(stop);
      std::size_t behind = at + inverse.size();
      if (starts(at, inverse) && !is_digit(byte(behind)) && byte(behind) != '.') {
        kind = inverse_of(kind);
        stop = behind;
        break;
      }
    }
    add(kind, at_, stop);
    return true;
  }

  void word_token(std::size_t begin, std::size_t end) {
    Token& token = add(TokenKind::word, begin, end);
    token.form = static_cast<std::uint32_t>(out_.forms.size());
    for (std::size_t i = begin; i < end; ++i) {
      char c = text_[i];
      if (is_letter(c)) {
        out_.forms += static_cast<char>(c | 0x20);
        continue;
      }
      if (c == '\'') continue;
      if (static_cast<unsigned char>(c) == 0xE2 && starts(i, "\u2019")) {
        i += 2;
        continue;
      }
      out_.forms += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    }
    token.length = static_cast<std::uint16_t>(std::min<std::size_t>(out_.forms.size() - token.form, 65535));
    token.hint = hint_of(std::string_view(out_.forms).substr(token.form, token.length));
  }

  // The digits from `i`, thousands' separators taken out; where they end.
  std::size_t digits(std::size_t i, std::string& plain) const {
    while (is_digit(byte(i))) plain += text_[i++];
    std::size_t whole = plain.size();
    auto group = [&](std::size_t from) {
      return is_digit(byte(from)) && is_digit(byte(from + 1)) && is_digit(byte(from + 2)) && !is_digit(byte(from + 3));
    };
    while (whole >= 1 && whole <= 3 && plain != "0" && byte(i) == ',' && group(i + 1)) {
      plain += text_.substr(i + 1, 3);
      i += 4;
    }
    bool grouped = plain.size() > whole;
    if (!grouped && whole >= 1 && whole <= 3) {
      // "12 000", "3 000 000"; "2 100 g masses" is not one number
      while (true) {
        std::size_t gap = starts(i, "\u2009") || starts(i, "\u202F") ? 3U : byte(i) == ' ' ? 1U : 0U;
        bool thin = gap == 3;
        if (gap == 0 || !group(i + gap)) break;
        if (!thin && text_.compare(i + gap, 3, "000") != 0 && !after_sign()) break;
        plain += text_.substr(i + gap, 3);
        i += gap + 3;
        grouped = true;
      }
    }
    if (!grouped && byte(i) == ',' && is_digit(byte(i + 1)) && decimal_comma(i, plain)) {
      plain += '.';
      for (++i; is_digit(byte(i));) plain += text_[i++];
      return i;
    }
    if (byte(i) == '.' && is_digit(byte(i + 1))) {
      plain += '.';
      for (++i; is_digit(byte(i));) plain += text_[i++];
    }
    return i;
  }
  // "= 12 600 J", "0.40 x 4 200": a number with a space in it is trusted only behind a sign.
  bool after_sign() const {
    TokenKind kind = last();
    return kind == TokenKind::equals || kind == TokenKind::open || (kind >= TokenKind::plus && kind <= TokenKind::divide);
  }

  bool decimal_comma(std::size_t comma, const std::string& whole) const { return single_comma(comma) && (decimal_commas_ || whole == "0"); }

  void number() {
    std::size_t begin = at_;
    std::string plain;
    std::size_t end = digits(begin, plain);
    // times of day, ratios and scales ("11:20", "1:50"), ordinals, "1)" of a list
    if ((byte(end) == ':' && is_digit(byte(end + 1))) || ordinal(end)) return as_word(end);
    std::optional<Decimal> decimal = read_decimal(plain);
    std::size_t behind = end;
    if (std::optional<int> power = power_of_ten_behind(behind)) {
      std::optional<Decimal> large = decimal ? scaled(*decimal, *power) : std::nullopt;
      if (!large) return too_large(begin, behind);
      decimal = large;
      end = behind;
    } else if (plain == "10" &&
               (byte(end) == '^' ||
                std::any_of(std::begin(kSuperscripts), std::end(kSuperscripts), [&](std::string_view s) { return starts(end, s); }) ||
                starts(end, "\u207B"))) {
      std::size_t i = byte(end) == '^' ? end + 1 : end;
      if (auto n = exponent(i, false)) {
        Decimal one;
        one.value = 1;
        one.figures = 1;
        std::optional<Decimal> large = scaled(one, *n);
        if (!large) return too_large(begin, i);
        decimal = large;
        end = i;
      }
    }
    if (!decimal) return too_large(begin, end);
    put_number(*decimal, begin, end, plain.size() > 1 && plain[0] == '0' && plain[1] != '.');
  }

  bool ordinal(std::size_t end) const {
    for (std::string_view ending : {"st", "nd", "rd", "th"}) {
      if (starts(end, ending) && !is_letter(byte(end + 2))) return true;
    }
    return false;
  }
  void as_word(std::size_t end) {
    while (is_digit(byte(end)) || byte(end) == ':' || is_letter(byte(end))) ++end;
    word_token(at_, end);
  }
  // A number beyond all measurement stays a number that nothing is reckoned with.
  void too_large(std::size_t begin, std::size_t end) {
    while (is_digit(byte(end))) ++end;
    Decimal none;
    none.figures = 1;
    put_number(none, begin, end, false);
    out_.numbers.back().too_large = true;
  }

  void simple_fraction(const Fraction& fraction) {
    Decimal decimal;
    decimal.value = Exact(fraction.numerator, fraction.denominator);
    decimal.figures = kMostDigits;
    put_number(decimal, at_, at_ + fraction.bytes.size(), false);
  }

  void put_number(const Decimal& decimal, std::size_t begin, std::size_t end, bool leading_zero) {
    Number number{decimal, {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)}, std::nullopt};
    std::size_t stop = end;
    std::size_t at = end + spaces(end);
    bool symbols_follow = decimal.figures == kMostDigits && at == end;  // "½mv²"
    if (at < text_.size() && !symbols_follow) {
      auto unit = read_unit_prefix(text_.substr(at, 64));
      if (unit && !is_symbol_instead(at, at + unit->length)) {
        number.unit = unit->unit;
        stop = at + unit->length;
      }
    }
    out_.numbers.push_back(number);
    Token& token = add(TokenKind::number, begin, stop);
    token.number = static_cast<std::uint32_t>(out_.numbers.size() - 1);
    token.leading_zero = leading_zero;
  }

  // "½ m v²", "2 g h": one letter that another single letter follows is a symbol of a formula.
  bool is_symbol_instead(std::size_t begin, std::size_t end) const {
    if (text_.substr(begin, 2) == "mv")  // "1/2 mv^2"
      return byte(begin + 2) == '^' || byte(begin + 2) == '2' || starts(begin + 2, "\u00B2");
    if (end - begin != 1 || !is_letter(text_[begin])) return false;
    std::size_t next = end + spaces(end);
    // "2s / t²"
    bool glued = begin > 0 && is_digit(text_[begin - 1]);
    if (glued && (byte(next) == '/' || byte(next) == '*' || starts(next, "\u00D7") || starts(next, "\u00F7"))) {
      std::size_t behind = next + (static_cast<unsigned char>(text_[next]) >= 0xC3 ? 2 : 1);
      behind += spaces(behind);
      if (is_letter(byte(behind)) && !is_letter(byte(behind + 1))) return true;
    }
    if (!is_letter(byte(next)) || byte(next) == 'x' || byte(next) == 'X' || byte(next) == 'a' || byte(next) == 'I' || byte(next) == 'i') return false;
    return !is_letter(byte(next + 1)) && byte(next + 1) != '\'';
  }

  Tokens& out_;
  std::size_t at_ = 0;
  std::size_t last_end_ = std::string_view::npos;
  bool decimal_commas_ = false;
};

}  // namespace

void read_tokens(std::string_view source, Tokens& out) {
  out.clear();
  out.source = source;
  Lexer(source, out).run();
  read_operator_words(out);
  settle_units(out);
  settle_labels(out);
}

}  // namespace retort::calc

#include "text/reader.h"

#include <unicode/brkiter.h>
#include <unicode/locid.h>
#include <unicode/uchar.h>
#include <unicode/utf16.h>

#include <algorithm>
#include <array>
#include <cstdlib>

#include "text/normal_form.h"
#include "text/split.h"
#include "text/utf16.h"

namespace retort {
namespace {

using Iterator = std::unique_ptr<icu::BreakIterator>;

Iterator make(icu::BreakIterator* (*create)(const icu::Locale&, UErrorCode&)) {
  UErrorCode status = U_ZERO_ERROR;
  Iterator iterator(create(icu::Locale::getRoot(), status));
  if (U_FAILURE(status) || iterator == nullptr) std::abort();  // ICU without its own data: a broken install
  return iterator;
}

// Short forms whose full stop does not end a sentence when a small letter follows.
constexpr std::array<std::u16string_view, 24> kShortForms = {
    u"eg",   u"ie",   u"approx", u"vol",  u"temp", u"dist", u"no",  u"norm", u"min",  u"max", u"orig", u"freq",
    u"ext",  u"rad",  u"thermom", u"wt",  u"sec",  u"vs",   u"fig", u"diff", u"equal", u"ea",  u"indep", u"dep"};

bool same_folded(std::u16string_view word, std::u16string_view lower) {
  std::size_t at = 0;
  for (char16_t c : word) {
    if (c == u'.') continue;
    char16_t small = (c >= u'A' && c <= u'Z') ? static_cast<char16_t>(c + 32) : c;
    if (at == lower.size() || lower[at] != small) return false;
    ++at;
  }
  return at == lower.size();
}

bool is_short_form(std::u16string_view word) {
  return word.size() == 1 ||
         std::any_of(kShortForms.begin(), kShortForms.end(), [&](auto form) { return same_folded(word, form); });
}

bool is_space(char16_t c) { return c == u' ' || c == u'\t' || c == u'\u00A0' || u_isspace(c); }
bool is_newline(char16_t c) { return c == u'\n' || c == u'\r' || c == u'\u2028' || c == u'\u2029'; }

// Marks that become tokens of their own.
bool carries_meaning(UChar32 c) {
  switch (c) {
    case '=': case '+': case '/': case '*': case '^': case '<': case '>': case '%': case '&': case '@': case '~': case '#': case '$':
      return true;
    default: break;
  }
  if (c < 0x80) return false;
  if (c == 0x2212 || c == 0x2022 || c == 0x00B7 || c == 0x2219 || c == 0x25CF) return false;  // bullets
  int type = u_charType(c);
  return type == U_MATH_SYMBOL || type == U_OTHER_SYMBOL || type == U_OTHER_NUMBER || type == U_CURRENCY_SYMBOL;
}

// Nothing to split, as in most segments.
bool all_letters(std::u16string_view word) {
  return std::all_of(word.begin(), word.end(), [](char16_t c) { return (c | 0x20) >= u'a' && (c | 0x20) <= u'z'; });
}

}  // namespace

struct Reader::Impl {
  Iterator words = make(&icu::BreakIterator::createWordInstance);
  Iterator sentences = make(&icu::BreakIterator::createSentenceInstance);
  Utf16Text wide;
  std::vector<Piece> pieces;
  Document* out = nullptr;
  Break pending = Break::none;
  bool spaced = false;

  void read(std::string_view bytes, Document& document);
  void segment(std::int32_t begin, std::int32_t end);
  void mark(std::int32_t begin, std::int32_t end);
  void add(std::int32_t begin, std::int32_t end, TokenKind kind, Break before);
  void at_least(Break strength) { pending = std::max(pending, strength); }
  void punctuation(UChar32 c, std::int32_t at, std::int32_t next);
  void full_stop(std::int32_t at, std::int32_t next);
  bool is_minus(std::int32_t next) const;
  bool in_formula() const;
  bool superscript_of_last(UChar32 c, std::int32_t begin, std::int32_t end);
  void icu_sentences();
};

void Reader::Impl::add(std::int32_t begin, std::int32_t end, TokenKind kind, Break before) {
  Token token;
  token.source = {wide.byte(begin), wide.byte(end)};
  token.form = static_cast<std::uint32_t>(out->forms.size());
  token.kind = kind;
  token.before = std::max(pending, before);
  token.spaced = spaced || token.before != Break::none;
  std::u16string_view word = std::u16string_view(wide.units()).substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
  append_normal_form(word, out->forms);
  std::size_t length = out->forms.size() - token.form;
  bool plain = length == word.size() && all_letters(word);
  if (kind == TokenKind::symbol && (word == u"\u2212" || word == u"\u2013")) {
    out->forms.resize(token.form);
    out->forms += '-';
    length = 1;
  }
  if (kind == TokenKind::word && !plain) {  // "e.g" loses its dot
    auto tail = out->forms.begin() + static_cast<std::ptrdiff_t>(token.form);
    out->forms.erase(std::remove_if(tail, out->forms.end(), [](char c) { return c == '.' || c == '_'; }), out->forms.end());
    length = out->forms.size() - token.form;
  }
  token.length = static_cast<std::uint16_t>(std::min<std::size_t>(length, 65535));
  pending = Break::none;
  spaced = false;
  out->tokens.push_back(token);
}

void Reader::Impl::segment(std::int32_t begin, std::int32_t end) {
  if (all_letters(std::u16string_view(wide.units()).substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin)))) {
    add(begin, end, TokenKind::word, Break::none);
    return;
  }
  pieces.clear();
  split_segment(std::u16string_view(wide.units()).substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin)), pieces);
  for (const Piece& piece : pieces) add(begin + piece.begin, begin + piece.end, piece.kind, piece.before);
}

// A full stop ends a sentence when space follows, except after a short form before a small letter.
void Reader::Impl::full_stop(std::int32_t at, std::int32_t next) {
  const std::u16string& text = wide.units();
  auto size = static_cast<std::int32_t>(text.size());
  std::int32_t after = next;
  while (after < size && is_space(text[static_cast<std::size_t>(after)]) && !is_newline(text[static_cast<std::size_t>(after)])) ++after;
  bool apart = after > next || after >= size || is_newline(text[static_cast<std::size_t>(after)]);
  if (!apart && !u_isupper(text[static_cast<std::size_t>(after)])) return;
  if (after < size && !u_isupper(text[static_cast<std::size_t>(after)])) {
    std::int32_t begin = at;
    while (begin > 0 && (u_isalpha(text[static_cast<std::size_t>(begin - 1)]) || text[static_cast<std::size_t>(begin - 1)] == u'.')) --begin;
    auto word = std::u16string_view(text).substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(at - begin));
    if (!word.empty() && is_short_form(word)) return;
  }
  at_least(Break::sentence);
}

// Whether an equals sign or an opening bracket stands a little before, on the same line: "rise = end - start".
bool Reader::Impl::in_formula() const {
  constexpr std::uint32_t kReach = 40;
  std::string_view before = out->source.substr(0, out->tokens.back().source.end);
  for (std::uint32_t n = 0; n < kReach && n < before.size(); ++n) {
    char c = before[before.size() - 1 - n];
    if (c == '=' || c == '(') return true;
    if (c == '\n' || c == '.' || c == ')') return false;
  }
  return false;
}

// A dash between two symbols ("v - u", "L2-L1"), or between two numbers before an equals sign.
bool Reader::Impl::is_minus(std::int32_t next) const {
  constexpr std::int32_t kReach = 24;
  if (out->tokens.empty() || pending > Break::comma) return false;
  const Token& left = out->tokens.back();
  const std::u16string& text = wide.units();
  auto size = static_cast<std::int32_t>(text.size());
  while (next < size && text[static_cast<std::size_t>(next)] == u' ') ++next;
  std::int32_t end = next;
  bool letters = false;
  bool digits = false;
  for (; end < size && end < next + 8; ++end) {
    char16_t c = text[static_cast<std::size_t>(end)];
    bool digit = (c >= u'0' && c <= u'9') || (c == u'.' && digits);
    if (!digit && !u_isalpha(c)) break;
    digits = digits || digit;
    letters = letters || !digit;
  }
  if (end == next) return false;
  if (spaced && in_formula()) return true;
  bool right_symbol = letters && end - next <= 2;
  bool left_symbol = left.kind == TokenKind::word && left.length <= 2;
  if (left_symbol && right_symbol) return true;
  if (left.kind != TokenKind::number && !left_symbol) return false;
  if (!digits) return false;
  std::size_t equals = std::u16string_view(text).substr(static_cast<std::size_t>(end), kReach).find_first_of(u"=\n");
  return equals != std::u16string_view::npos && text[static_cast<std::size_t>(end) + equals] == u'=';
}

void Reader::Impl::punctuation(UChar32 c, std::int32_t at, std::int32_t next) {
  switch (c) {
    case ',': case 0x060C: case 0x3001: at_least(Break::comma); return;
    case ';': case ':': case 0x2014: case 0x2022: case '|': at_least(Break::clause); return;
    case '(': case ')': case '[': case ']': case '"': case 0x201C: case 0x201D: at_least(Break::comma); return;
    case '-': case 0x2212: case 0x2013: {
      bool apart = next < static_cast<std::int32_t>(wide.units().size()) && is_space(wide.units()[static_cast<std::size_t>(next)]);
      if (spaced && apart) at_least(Break::clause);
      return;
    }
    case '!': case '?': case 0x061F: case 0x3002: at_least(Break::sentence); return;
    case '.': case 0x2026: full_stop(at, next); return;
    default: return;
  }
}

// "cm" followed by "³" is one word, "cm3".
bool Reader::Impl::superscript_of_last(UChar32 c, std::int32_t begin, std::int32_t end) {
  bool digit = c < 0x10000 && superscript_digit(static_cast<char16_t>(c)) != 0;
  if (!digit || out->tokens.empty() || spaced || pending != Break::none) return false;
  Token& last = out->tokens.back();
  if (last.kind != TokenKind::word || last.source.end != wide.byte(begin)) return false;
  std::size_t before = out->forms.size();
  append_normal_form(std::u16string_view(wide.units()).substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin)), out->forms);
  last.length = static_cast<std::uint16_t>(last.length + (out->forms.size() - before));
  last.source.end = wide.byte(end);
  return true;
}

void Reader::Impl::mark(std::int32_t begin, std::int32_t end) {
  const std::u16string& text = wide.units();
  auto size = static_cast<std::int32_t>(text.size());
  for (std::int32_t i = begin; i < end;) {
    std::int32_t start = i;
    UChar32 c = 0;
    U16_NEXT(text.data(), i, size, c);
    if (is_newline(static_cast<char16_t>(c))) {
      bool again = pending >= Break::line && !(c == '\n' && start > 0 && text[static_cast<std::size_t>(start - 1)] == u'\r');
      at_least(again ? Break::paragraph : Break::line);
      spaced = true;
    } else if (c < 0x10000 && is_space(static_cast<char16_t>(c))) {
      spaced = true;
    } else if (superscript_of_last(c, start, i)) {
      continue;
    } else if (carries_meaning(c)) {
      add(start, i, TokenKind::symbol, Break::none);
    } else if ((c == '-' || c == 0x2212 || c == 0x2013) && is_minus(i)) {
      add(start, i, TokenKind::symbol, Break::none);
    } else {
      punctuation(c, start, i);
    }
  }
}

// ICU's sentence ends, for the marks of other scripts that punctuation() does not know.
void Reader::Impl::icu_sentences() {
  sentences->setText(icu::UnicodeString(false, wide.units().data(), static_cast<std::int32_t>(wide.units().size())));
  std::size_t at = 0;
  for (std::int32_t end = sentences->next(); end != icu::BreakIterator::DONE; end = sentences->next()) {
    std::uint32_t byte = wide.byte(end);
    while (at < out->tokens.size() && out->tokens[at].source.begin < byte) ++at;
    if (at == out->tokens.size()) return;
    if (at > 0) out->tokens[at].before = std::max(out->tokens[at].before, Break::sentence);
  }
}

void Reader::Impl::read(std::string_view bytes, Document& document) {
  out = &document;
  document.source = bytes;
  document.forms.clear();
  document.tokens.clear();
  pending = Break::none;
  spaced = false;
  wide.assign(bytes);
  document.invalid_bytes = wide.invalid_bytes();
  document.nul_bytes = wide.nul_bytes();
  icu::UnicodeString alias(false, wide.units().data(), static_cast<std::int32_t>(wide.units().size()));
  words->setText(alias);
  std::int32_t begin = words->first();
  for (std::int32_t end = words->next(); end != icu::BreakIterator::DONE; begin = end, end = words->next()) {
    if (words->getRuleStatus() >= UBRK_WORD_NONE_LIMIT) {
      segment(begin, end);
    } else {
      mark(begin, end);
    }
  }
  if (!wide.ascii()) icu_sentences();
}

Reader::Reader() : impl_(std::make_unique<Impl>()) {}
Reader::~Reader() = default;
Reader::Reader(Reader&&) noexcept = default;
Reader& Reader::operator=(Reader&&) noexcept = default;

void Reader::read(std::string_view bytes, Document& out) { impl_->read(bytes, out); }

Document Reader::read(std::string_view bytes) {
  Document out;
  impl_->read(bytes, out);
  return out;
}

namespace {

std::vector<std::uint32_t> boundaries(Iterator iterator, std::string_view text) {
  Utf16Text wide;
  wide.assign(text);
  icu::UnicodeString alias(false, wide.units().data(), static_cast<std::int32_t>(wide.units().size()));
  iterator->setText(alias);
  std::vector<std::uint32_t> out;
  for (std::int32_t at = iterator->first(); at != icu::BreakIterator::DONE; at = iterator->next()) out.push_back(wide.byte(at));
  return out;
}

}  // namespace

std::vector<std::uint32_t> word_boundaries(std::string_view text) {
  return boundaries(make(&icu::BreakIterator::createWordInstance), text);
}
std::vector<std::uint32_t> sentence_boundaries(std::string_view text) {
  return boundaries(make(&icu::BreakIterator::createSentenceInstance), text);
}

}  // namespace retort

#include "text/normal_form.h"

#include <unicode/normalizer2.h>
#include <unicode/unistr.h>

#include "text/reader.h"
#include "text/utf16.h"

namespace retort {
namespace {

bool is_apostrophe(char16_t c) {
  return c == u'\'' || c == u'\u2019' || c == u'\u2018' || c == u'\u02BC' || c == u'`' || c == u'\u00B4';
}

// Superscripts and letterlike twins that folding leaves alone.
char16_t plain(char16_t c) {
  if (c == u'\u00B5') return u'\u03BC';  // micro sign to Greek mu
  char16_t digit = superscript_digit(c);
  return digit != 0 ? digit : c;
}

void append_wide(std::u16string_view word, std::string& out) {
  UErrorCode status = U_ZERO_ERROR;
  const icu::Normalizer2* nfc = icu::Normalizer2::getNFCInstance(status);
  icu::UnicodeString kept;
  for (char16_t c : word) {
    if (!is_apostrophe(c)) kept.append(plain(c));
  }
  kept.foldCase(U_FOLD_CASE_DEFAULT);
  icu::UnicodeString normal = U_SUCCESS(status) ? nfc->normalize(kept, status) : kept;
  normal.toUTF8String(out);
}

}  // namespace

char16_t superscript_digit(char16_t c) {
  switch (c) {
    case u'\u00B9': return u'1';
    case u'\u00B2': return u'2';
    case u'\u00B3': return u'3';
    case u'\u2070': return u'0';
    default: return c >= u'\u2074' && c <= u'\u2079' ? static_cast<char16_t>(u'4' + (c - u'\u2074')) : u'\0';
  }
}

void append_normal_form(std::u16string_view word, std::string& out) {
  std::size_t start = out.size();
  for (char16_t c : word) {
    if (c >= 0x80) {
      out.resize(start);
      append_wide(word, out);
      return;
    }
    if (c >= u'A' && c <= u'Z') {
      out += static_cast<char>(c + 32);
    } else if (!is_apostrophe(c)) {
      out += static_cast<char>(c);
    }
  }
}

std::string normal_form(std::string_view word) {
  Utf16Text wide;
  wide.assign(word);
  std::string out;
  append_normal_form(wide.units(), out);
  return out;
}

}  // namespace retort

// A Document is one text, read: its tokens in normal form, each with the bytes it came from, and
// the breaks between them. It holds no copy of the source.
//
// Lifetime: `source` must outlive the Document. Threads: a finished Document is read-only data.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"
#include "base/span.h"

namespace retort {

enum class TokenKind : std::uint8_t {
  word,    // letters, perhaps with digits behind them (t1, cm3)
  number,  // digits, with a decimal point or decimal comma inside
  symbol,  // one mark that carries meaning (= + × ÷ / → ° ...)
};

// What stands between a token and the one before it, weakest first.
enum class Break : std::uint8_t { none, comma, clause, sentence, line, paragraph };

struct Token {
  Span source;                // bytes in Document::source
  std::uint32_t form = 0;     // where the normal form begins in Document::forms
  std::uint16_t length = 0;   // bytes of the normal form (cut at 65535)
  TokenKind kind{};
  Break before{};             // none for the first token only if nothing but spaces came before
  bool spaced = false;        // white space or a break stands before it
};

struct Document {
  std::string_view source;
  std::string forms;          // normal forms, one after the other
  std::vector<Token> tokens;  // in the order of the source; never overlapping
  std::uint32_t invalid_bytes = 0;  // bytes that were not valid UTF-8
  std::uint32_t nul_bytes = 0;

  // The token's normal form: NFC, case folded, apostrophes dropped, superscript digits as digits.
  [[nodiscard]] std::string_view form(const Token& token) const {
    return std::string_view(forms).substr(token.form, token.length);
  }
  [[nodiscard]] std::string_view form(std::size_t index) const { return form(tokens[index]); }
  [[nodiscard]] std::string_view raw(const Token& token) const { return token.source.of(source); }
};

}  // namespace retort

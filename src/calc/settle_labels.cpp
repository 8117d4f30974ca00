#include "calc/settle_labels.h"

#include <algorithm>

namespace retort::calc {
namespace {

bool counts_readings(std::string_view word) {
  static constexpr std::string_view kWords[] = {"time",   "trial",  "test", "reading", "run",    "go",   "attempt",
                                                "repeat", "result", "try",  "swing",   "length", "value"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}

}  // namespace

void settle_labels(Tokens& tokens) {
  for (std::size_t i = 1; i + 2 < tokens.size(); ++i) {
    bool between = tokens.is(i, TokenKind::number) && tokens.is(i + 2, TokenKind::number) &&
                   (tokens.is(i + 1, TokenKind::equals) || tokens.is(i + 1, TokenKind::colon));
    if (!between || tokens.all[i].in_words || !counts_readings(tokens.word(i - 1))) continue;
    const Number& number = tokens.number(i);
    if (number.unit || number.decimal.value.get_den() != 1 || number.decimal.value < 1 || number.decimal.value > 20) continue;
    tokens.all[i].kind = TokenKind::word;
    tokens.all[i].length = 0;
    tokens.all[i].hint = 0;
  }
}

bool is_label_sign(const Tokens& tokens, std::size_t i) {
  return i > 0 && (tokens.is(i, TokenKind::equals) || tokens.is(i, TokenKind::colon)) && tokens.is(i - 1, TokenKind::word) &&
         tokens.all[i - 1].length == 0;
}

}  // namespace retort::calc

#include "calc/naming.h"

namespace retort::calc {
namespace {

// "F = ma so m = F/a = ...": another statement begins.
bool begins_statement(std::string_view word) {
  return word == "so" || word == "therefore" || word == "thus" || word == "hence" || word == "meaning" || word == "rearranged" ||
         word == "rearrange" || word == "rearranges" || word == "rearranging" || word == "becomes";
}

}  // namespace

std::size_t first_sign_from(const Tokens& tokens, std::size_t at) {
  constexpr std::size_t kReach = 28;
  std::size_t first = at;
  for (std::size_t n = 0; n < kReach && at > 0; ++n, --at) {
    TokenKind kind = tokens.kind(at);
    if (kind == TokenKind::equals) first = at;
    if (kind == TokenKind::line && !tokens.is(at + 1, TokenKind::equals)) break;
    if (kind == TokenKind::stop || kind == TokenKind::comma) break;
    if (kind == TokenKind::open && tokens.is(at + 1, TokenKind::word) && tokens.is(at + 2, TokenKind::equals)) break;  // "(d = 0.4)"
    if (kind == TokenKind::word && begins_statement(tokens.word(at)) && !tokens.is(at + 1, TokenKind::equals)) break;
    if (kind == TokenKind::number && !is_symbolic_number(tokens, at)) break;
  }
  return first;
}

bool is_symbolic_number(const Tokens& tokens, std::size_t i) {
  if (tokens.number(i).unit) return false;
  TokenKind next = tokens.kind(i + 1);
  return next == TokenKind::word || next == TokenKind::times || next == TokenKind::divide || next == TokenKind::open || next == TokenKind::pi;
}

}  // namespace retort::calc

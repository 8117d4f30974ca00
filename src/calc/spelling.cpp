#include "calc/spelling.h"

#include <algorithm>
#include <array>

namespace retort::calc {
namespace {

constexpr std::size_t kShortest = 6;
constexpr std::size_t kLongest = 24;
constexpr std::size_t kMostRemembered = 8192;

// Letters to change, leave out, put in or exchange with their neighbour (Damerau 1964, optimal string alignment).
std::size_t distance(std::string_view a, std::string_view b) {
  std::array<std::array<std::size_t, kLongest + 1>, kLongest + 1> d{};
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      std::size_t change = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  }
  return d[a.size()][b.size()];
}

bool letters(std::string_view word) {
  return std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

}  // namespace

void NameWords::add(std::string_view word) {
  if (!known_.emplace(word, true).second) return;
  if (word.size() >= kShortest && word.size() <= kLongest && letters(word)) by_letter_[word[0] - 'a'].emplace_back(word);
}

std::string_view NameWords::nearest(std::string_view word) const {
  if (word.size() + 1 < kShortest || word.size() > kLongest || !letters(word) || known_.contains(std::string(word))) return {};
  std::string_view best;
  std::size_t least = 3;
  for (const std::string& candidate : by_letter_[word[0] - 'a']) {
    std::size_t room = candidate.size() >= 9 ? 2 : 1;
    if (candidate.size() > word.size() + room || word.size() > candidate.size() + room) continue;
    std::size_t d = distance(word, candidate);
    if (d > room) continue;
    if (d == least) best = {};
    if (d < least) best = candidate;
    least = std::min(least, d);
  }
  // a plural of a name is no misspelling of it
  bool plural = word.size() == best.size() + 1 && word.back() == 's' && word.starts_with(best);
  return plural ? std::string_view{} : best;
}

void NameSpeller::run(Tokens& tokens) {
  if (memo_.size() > kMostRemembered) memo_.clear();
  for (Token& token : tokens.all) {
    if (token.kind != TokenKind::word || token.length + 1U < kShortest) continue;
    std::string form = tokens.forms.substr(token.form, token.length);
    auto [at, fresh] = memo_.try_emplace(form);
    if (fresh) at->second = words_.nearest(form);
    if (at->second.empty()) continue;
    token.form = static_cast<std::uint32_t>(tokens.forms.size());
    token.length = static_cast<std::uint16_t>(at->second.size());
    tokens.forms += at->second;
  }
}

}  // namespace retort::calc

#include "calc/links.h"

#include <algorithm>
#include <array>

namespace retort::calc {
namespace {

template <std::size_t N>
bool in(const std::array<std::string_view, N>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

constexpr std::array<std::string_view, 43> kLinking = {
    "is",         "are",    "was",   "gives",   "gave",   "give",   "giving",    "got",    "get",    "gets",      "getting",
    "so",         "comes",  "came",  "come",    "makes",  "made",   "make",      "making", "equals", "equalling", "means",
    "thats",      "its",    "works", "worked",  "answer", "result", "therefore", "hence",  "which",  "equal",     "be",
    "calculated", "leaves", "left",  "becomes", "thus",   "turns",  "ends",      "totals", "been",   "were"};
constexpr std::array<std::string_view, 40> kFiller = {
    "and", "that",       "it",     "i",      "we", "you", "to",   "out",  "as",   "at",     "about",   "roughly", "approximately", "around",
    "a",   "an",         "the",    "of",     "me", "my",  "us",   "then", "just", "nearly", "exactly", "final",   "this",          "total",
    "for", "altogether", "almost", "approx", "up", "in",  "your", "have", "only", "our",    "on",      "with"};
constexpr std::array<std::string_view, 11> kReason = {"because", "from", "doing", "since", "cos", "cause", "by", "did", "as", "becuase", "working"};
constexpr std::array<std::string_view, 18> kConverting = {"change", "changed", "convert", "converted", "converting", "turn",
                                                          "turned", "into",    "same",    "in",        "i.e",        "ie",
                                                          "or",     "which",   "thats",   "being",     "each",       "rounded"};

}  // namespace

bool is_linking_word(std::string_view word) {
  return in(kLinking, word);
}
bool is_filler_word(std::string_view word) {
  return word.empty() || in(kFiller, word) || in(kLinking, word);
}
bool is_reason_word(std::string_view word) {
  return in(kReason, word);
}
bool is_converting_word(std::string_view word) {
  return in(kConverting, word);
}

}  // namespace retort::calc

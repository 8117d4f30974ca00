// Runs of words, to see what a pupil copied from the question.
#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

#include "quantity/unit.h"
#include "text/document.h"
#include "vocabulary/vocabulary.h"

namespace retort {

// How many words in a row, the small ones left out, must be the question's own to count as copied.
inline constexpr std::size_t kCopiedRun = 6;

// Whether a folded word is one that sentences are made with, and lists are not: a run without any ("matt
// black, shiny black, ...") may be a pupil's own list of what is given.
inline bool binds_a_sentence(std::string_view form) {
  for (std::string_view word : {"is", "are", "was", "has", "have", "that", "which", "how", "can", "could", "to", "in", "on", "from", "by", "with",
                                "for", "each", "into", "their", "its", "at", "than", "always", "out", "over"}) {
    if (form == word) return true;
  }
  return false;
}

namespace copied {

inline std::uint64_t hash_word(std::string_view form) {
  std::uint64_t hash = 1469598103934665603ULL;  // FNV-1a
  for (char c : form) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return hash;
}

constexpr std::uint64_t kBase = 0x9E3779B97F4A7C15ULL;

constexpr std::uint64_t power(std::size_t exponent) {
  std::uint64_t out = 1;
  for (std::size_t i = 0; i < exponent; ++i) out *= kBase;
  return out;
}

}  // namespace copied

// Calls `each(hash, first, last)` for every run of kCopiedRun words; `first` and `last` are its slots. Numbers
// and their units are passed over: they part no run, and do not count for one.
template <typename Each>
void for_each_run(const Document& document, const std::vector<Slot>& slots, Each each) {
  constexpr std::uint64_t kDrop = copied::power(kCopiedRun);
  struct Word {
    std::uint64_t hash = 0;
    std::size_t slot = 0;
  };
  Word window[kCopiedRun];
  std::uint64_t hash = 0;
  std::size_t length = 0;
  bool after_number = false;
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const Token& token = document.tokens[slots[i].token];
    std::string_view form = document.form(token);
    bool unit = after_number && find_unit(form) != nullptr;
    after_number = token.kind == TokenKind::number;
    if (token.kind != TokenKind::word || unit) continue;
    Word& place = window[length % kCopiedRun];
    std::uint64_t word = copied::hash_word(form);
    hash = hash * copied::kBase + word;
    if (length >= kCopiedRun) hash -= place.hash * kDrop;
    place = {word, i};
    ++length;
    if (length >= kCopiedRun) each(hash, window[length % kCopiedRun].slot, i);
  }
}

}  // namespace retort

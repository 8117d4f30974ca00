// Runs of words, to see what a pupil copied from the question.
#pragma once
#include <cstdint>
#include <functional>
#include <vector>

#include "text/document.h"
#include "vocabulary/vocabulary.h"

namespace retort {

// Whether a folded word is one that sentences are made with, and lists are not: a run without any ("matt
// black, shiny black, ...") may be a pupil's own list of what is given.
inline bool binds_a_sentence(std::string_view form) {
  for (std::string_view word : {"is", "are", "was", "has", "have", "that", "which", "how", "can", "could", "to", "in", "on", "from", "by", "with",
                                "for", "each", "into", "their", "its", "at", "than", "always", "out", "over"}) {
    if (form == word) return true;
  }
  return false;
}

// Calls `each(hash, slot)` for every run of kCopiedRun words without a number among them; `slot` is the
// run's last.
template <typename Each>
void for_each_run(const Document& document, const std::vector<Slot>& slots, Each each);

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

template <typename Each>
void for_each_run(const Document& document, const std::vector<Slot>& slots, Each each) {
  constexpr std::size_t kRun = 6;  // = kCopiedRun
  constexpr std::uint64_t kDrop = copied::power(kRun);
  std::uint64_t window[kRun] = {};
  std::uint64_t hash = 0;
  std::size_t length = 0;
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const Token& token = document.tokens[slots[i].token];
    if (token.kind != TokenKind::word) {  // numbers and marks part runs: values of the table are not "copied"
      length = 0;
      hash = 0;
      continue;
    }
    std::uint64_t word = copied::hash_word(document.form(token));
    std::uint64_t& slot = window[length % kRun];
    hash = hash * copied::kBase + word;
    if (length >= kRun) hash -= slot * kDrop;
    slot = word;
    ++length;
    if (length >= kRun) each(hash, i);
  }
}

}  // namespace retort

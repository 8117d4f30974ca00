#include "vocabulary/spelling.h"

#include <algorithm>
#include <array>
#include <bit>

namespace retort {
namespace {

constexpr std::size_t kLongest = 32;

std::uint32_t letters_of(std::string_view word) {
  std::uint32_t mask = 0;
  for (char c : word) {
    if (c >= 'a' && c <= 'z') mask |= 1U << (c - 'a');
  }
  return mask;
}

bool is_vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u' || c == 'y'; }

bool soft(char next) { return next == 'e' || next == 'i' || next == 'y'; }

struct Sound {
  std::string_view letters;
  std::string_view key;
};

// Longest first where one begins another.
constexpr std::array kSounds = {
    Sound{"tion", "xn"}, Sound{"sion", "xn"}, Sound{"cion", "xn"}, Sound{"shun", "xn"}, Sound{"tial", "xl"}, Sound{"cial", "xl"},
    Sound{"ture", "cr"}, Sound{"cher", "cr"}, Sound{"dge", "j"},   Sound{"tch", "c"},   Sound{"sch", "sk"},  Sound{"ph", "f"},
    Sound{"gh", ""},     Sound{"kn", "n"},    Sound{"wr", "r"},    Sound{"wh", "w"},    Sound{"ck", "k"},    Sound{"sh", "x"},
    Sound{"th", "t"},    Sound{"ch", "c"},    Sound{"qu", "kw"},   Sound{"mb", "m"},
};

char simple_sound(char c, char next) {
  switch (c) {
    case 'c': return soft(next) ? 's' : 'k';
    case 'g': return soft(next) ? 'j' : 'g';
    case 'q': return 'k';
    case 'z': return 's';
    case 'v': return 'f';
    default: return c;
  }
}

// The same letters in another order: "hwole" is "whole" rather than "hole".
bool same_letters(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  std::array<int, 256> counts{};
  for (std::size_t i = 0; i < a.size(); ++i) {
    ++counts[static_cast<unsigned char>(a[i])];
    --counts[static_cast<unsigned char>(b[i])];
  }
  return std::all_of(counts.begin(), counts.end(), [](int n) { return n == 0; });
}

// How far apart a word of this length may be and still be meant.
int allowed(std::size_t length, bool sounds_alike) {
  if (length <= 3) return 0;
  if (length == 4) return sounds_alike ? 2 : 1;
  if (length <= 6) return sounds_alike ? 2 : 1;
  if (length <= 8) return sounds_alike ? 3 : 2;
  return sounds_alike ? 4 : 2;
}

}  // namespace

int edit_distance(std::string_view a, std::string_view b, int limit) {
  if (a.size() > kLongest || b.size() > kLongest) return a == b ? 0 : limit + 1;
  int difference = static_cast<int>(a.size()) - static_cast<int>(b.size());
  if (difference > limit || -difference > limit) return limit + 1;
  std::array<std::array<int, kLongest + 1>, 3> rows{};
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto& row = rows[i % 3];
    const auto& up = rows[(i + 2) % 3];
    const auto& up2 = rows[(i + 1) % 3];
    row[0] = static_cast<int>(i);
    int least = row[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      int cost = a[i - 1] == b[j - 1] ? 0 : 1;
      int value = std::min({up[j] + 1, row[j - 1] + 1, up[j - 1] + cost});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) value = std::min(value, up2[j - 2] + 1);
      row[j] = value;
      least = std::min(least, value);
    }
    if (least > limit) return limit + 1;
  }
  return std::min(rows[a.size() % 3][b.size()], limit + 1);
}

std::string sound_key(std::string_view word) {
  std::string key;
  for (std::size_t i = 0; i < word.size();) {
    std::string_view rest = word.substr(i);
    const auto* found = std::find_if(kSounds.begin(), kSounds.end(), [&](const Sound& s) { return rest.starts_with(s.letters); });
    std::string piece;
    if (found != kSounds.end()) {
      piece = found->key;
      i += found->letters.size();
    } else {
      char next = i + 1 < word.size() ? word[i + 1] : '\0';
      if (!is_vowel(word[i]) && word[i] != 'h') {
        piece = simple_sound(word[i], next);
      } else if (i == 0) {
        piece = is_vowel(word[i]) ? 'a' : 'h';
      }
      ++i;
    }
    for (char c : piece) {
      if (key.empty() || key.back() != c) key += c;
    }
  }
  return key;
}

void Speller::add(Candidate candidate) {
  if (candidate.word.size() < 4 || candidate.word.size() > kLongest) return;
  candidate.letters = letters_of(candidate.word);
  candidates_.push_back(std::move(candidate));
}

const Speller::Sounds::Pair& Speller::Sounds::of(const Candidate& candidate, std::size_t index) {
  if (index >= known_.size()) known_.resize(index + 1);
  Pair& pair = known_[index];
  if (pair.word.empty()) pair = {sound_key(candidate.word), sound_key(candidate.stem)};
  return pair;
}

std::uint32_t Speller::best(std::string_view word, std::string_view stem, Sounds& sounds, const std::function<bool(const Candidate&)>& counts) const {
  if (word.size() < 4 || word.size() > kLongest) return kNone;
  std::uint32_t letters = letters_of(word);
  std::string sound;
  struct Best {
    int score = 1000;
    std::uint32_t id = kNone;
    void take(int other, std::uint32_t candidate) {
      if (other < score) {
        score = other;
        id = candidate;
      } else if (other == score && candidate != id) {
        id = kNone;
      }
    }
  } real, misspelt;
  for (std::size_t index = 0; index < candidates_.size(); ++index) {
    const Candidate& candidate = candidates_[index];
    if (std::popcount(letters ^ candidate.letters) > 6) continue;
    int gap = static_cast<int>(word.size()) - static_cast<int>(candidate.word.size());
    if (gap > 4 || gap < -4) continue;
    if (sound.empty()) sound = sound_key(word);
    const Sounds::Pair& theirs = sounds.of(candidate, index);
    bool alike = sound.size() > 1 && (sound == theirs.word || sound == theirs.stem);
    std::size_t shorter = std::min(word.size(), candidate.word.size());
    bool shuffled = letters == candidate.letters && same_letters(word, candidate.word);
    int limit = allowed(shorter, alike || (shuffled && shorter > 4));
    int distance = edit_distance(word, candidate.word, limit);
    if (!stem.empty() && stem.size() >= 4 && candidate.stem.size() >= 4) {
      int stem_limit = allowed(std::min(stem.size(), candidate.stem.size()), alike);
      distance = std::min(distance, edit_distance(stem, candidate.stem, std::min(limit, stem_limit)));
    }
    if (distance > limit) continue;
    bool same_start = word[0] == candidate.word[0];
    if (shorter == 4 && !same_start) continue;
    if (!same_start && !alike && distance > 1) continue;
    if (counts && !counts(candidate)) continue;
    int score = distance * 4 - (alike || shuffled ? 3 : 0) + (same_start ? 0 : 2);
    (candidate.real ? real : misspelt).take(score, candidate.id);
  }
  constexpr int kWorse = 4;  // one more letter wrong
  return real.id != kNone && real.score <= misspelt.score + kWorse ? real.id : misspelt.id != kNone ? misspelt.id : real.id;
}

}  // namespace retort

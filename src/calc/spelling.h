// Misspelt names of quantities ("extention", "wavelenght", "lenth") put right before they are looked up.
#pragma once
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "calc/token.h"

namespace retort::calc {

// The words of a book's phrases. Threads: read-only once filled.
class NameWords {
 public:
  void add(std::string_view word);
  // The one word of six letters or more that is one letter (from nine letters on: two) away from `word`, with the
  // same first letter; empty if there is none, more than one, or `word` is known itself.
  [[nodiscard]] std::string_view nearest(std::string_view word) const;

 private:
  std::unordered_map<std::string, bool> known_;
  std::vector<std::string> by_letter_[26];
};

// Puts the words of a text right, with a memory of those it has met (bounded).
class NameSpeller {
 public:
  explicit NameSpeller(const NameWords& words) : words_(words) {}
  void run(Tokens& tokens);

 private:
  const NameWords& words_;
  std::unordered_map<std::string, std::string_view> memo_;
};

}  // namespace retort::calc

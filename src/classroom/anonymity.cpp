#include "classroom/anonymity.h"

#include <map>

namespace retort::classroom {
namespace {

constexpr std::size_t kShortestNumber = 3;  // digits

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

// A space wherever a file name joins words: at marks, and between a small and a capital letter.
std::string parted(std::string_view label) {
  std::string out;
  for (std::size_t i = 0; i < label.size(); ++i) {
    char c = label[i];
    bool hump = i > 0 && c >= 'A' && c <= 'Z' && label[i - 1] >= 'a' && label[i - 1] <= 'z';
    if (hump) out += ' ';
    out += c == '_' || c == '-' || c == '.' || c == '/' ? ' ' : c;
  }
  return out;
}

bool tells(std::string_view form, TokenKind kind) {
  if (kind == TokenKind::symbol) return false;
  if (kind == TokenKind::number) return form.size() >= kShortestNumber;
  return form.size() >= 2 && letter(form[0]);
}

}  // namespace

std::set<std::string> Anonymity::words_of_label(std::string_view label) {
  std::set<std::string> out;
  for (const std::string& form : {std::string(label), parted(label)}) {
    reader_.read(form, document_);
    for (const Token& token : document_.tokens) {
      std::string_view word = document_.form(token);
      if (tells(word, token.kind)) out.emplace(word);
    }
  }
  return out;
}

Anonymity::Anonymity(const std::vector<std::string_view>& labels) {
  std::map<std::string, std::size_t> uses;
  for (std::string_view label : labels) {
    for (const std::string& word : words_of_label(label)) ++uses[word];
  }
  for (const auto& [word, count] : uses) {
    bool common = labels.size() >= 3 && count * 2 > labels.size();
    if (!common) names_.insert(word);
  }
}

bool Anonymity::names_nobody(std::string_view quote) {
  for (const std::string& form : {std::string(quote), parted(quote)}) {
    reader_.read(form, document_);
    for (const Token& token : document_.tokens) {
      std::string_view word = document_.form(token);
      if (names_.contains(word)) return false;
      if (word.size() > 2 && word.ends_with('s') && names_.contains(word.substr(0, word.size() - 1))) return false;
    }
  }
  return true;
}

}  // namespace retort::classroom

#include "rubric/pattern.h"

#include <algorithm>

namespace retort {
namespace {

constexpr std::size_t kDeepestGroup = 8;

class Parser {
 public:
  Parser(std::string_view text, Span span, const std::string& file, Findings& findings)
      : text_(text), span_(span), file_(file), findings_(findings) {}

  Pattern run() {
    Pattern pattern = alternative(0);
    if (!failed_ && at_ < text_.size()) fault("'" + std::string(1, text_[at_]) + "' has no partner", "take it out, or write the opening one");
    pattern.text = std::string(text_);
    pattern.span = span_;
    return pattern;
  }

 private:
  void fault(std::string what, std::string todo) {
    if (!failed_) findings_.push_back(make_finding(Code::pattern_syntax, file_, place(at_), {std::move(what), std::move(todo)}));
    failed_ = true;
    at_ = text_.size();
  }

  // Right for texts without escapes, which is nearly all of them; otherwise within the string.
  Span place(std::size_t offset) const {
    auto at = static_cast<std::uint32_t>(std::min<std::size_t>(span_.begin + 1 + offset, span_.end));
    return {at, at};
  }

  void skip_spaces() {
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t' || text_[at_] == '\n')) ++at_;
  }

  // A pattern up to '|', ')' or the end.
  Pattern alternative(std::size_t depth) {
    Pattern pattern;
    Sequence sequence;
    std::size_t start = at_;
    bool gap_given = false;
    std::uint32_t gap = kNear;
    bool after_word = false;
    for (skip_spaces(); at_ < text_.size() && text_[at_] != '|' && text_[at_] != ')'; skip_spaces()) {
      if (text_.substr(at_).starts_with("...")) {
        if (sequence.items.empty()) return fault("'...' stands at the start", "write what comes before it"), pattern;
        gap = kFar;
        gap_given = true;
        at_ += 3;
        continue;
      }
      if (text_[at_] == '+') {
        if (sequence.items.empty()) return fault("'+' stands at the start", "write what comes before it"), pattern;
        gap = 0;
        gap_given = true;
        ++at_;
        continue;
      }
      if (text_[at_] == '&') {
        if (sequence.items.empty()) return fault("'&' has nothing before it", "write what should be near"), pattern;
        pattern.parts.push_back(std::move(sequence));
        sequence = {};
        gap_given = after_word = false;
        gap = kNear;
        ++at_;
        continue;
      }
      Item item = next_item(depth);
      if (failed_) return pattern;
      bool joins = item.kind == Item::Kind::phrase && after_word && !gap_given;
      if (joins) {
        sequence.items.back().text += " " + item.text;
        sequence.items.back().span.end = item.span.end;
      } else {
        item.gap = gap;
        sequence.items.push_back(std::move(item));
      }
      after_word = sequence.items.back().kind == Item::Kind::phrase;
      gap_given = false;
      gap = kNear;
    }
    if (gap_given) return fault("nothing comes after '...' or '+'", "write what should follow"), pattern;
    if (sequence.items.empty()) return fault("something is missing here", "write a word, a {list} or a (group)"), pattern;
    pattern.parts.push_back(std::move(sequence));
    pattern.text = std::string(text_.substr(start, at_ - start));
    pattern.span = hull(place(start), place(at_));
    return pattern;
  }

  Item next_item(std::size_t depth) {
    if (text_[at_] == '{') return list();
    if (text_[at_] == '(') return group(depth);
    if (text_[at_] == '}') return fault("'}' has no '{' before it", "write {name of a word list}"), Item{};
    return word();
  }

  Item list() {
    std::size_t start = at_;
    std::size_t end = text_.find('}', at_);
    if (end == std::string_view::npos) return fault("'{' is not closed", "write '}' after the name of the word list"), Item{};
    Item item;
    item.kind = Item::Kind::list;
    item.text = std::string(text_.substr(at_ + 1, end - at_ - 1));
    at_ = end + 1;
    item.span = hull(place(start), place(at_));
    return item;
  }

  Item group(std::size_t depth) {
    std::size_t start = at_;
    if (depth >= kDeepestGroup) return fault("the brackets are nested too deep", "give the inner part a name under \"words\""), Item{};
    Item item;
    item.kind = Item::Kind::group;
    do {
      ++at_;  // '(' or '|'
      item.any.push_back(alternative(depth + 1));
    } while (!failed_ && at_ < text_.size() && text_[at_] == '|');
    if (failed_) return item;
    if (at_ >= text_.size()) return fault("'(' is not closed", "write ')' after the last choice"), item;
    ++at_;
    item.text = std::string(text_.substr(start, at_ - start));
    item.span = hull(place(start), place(at_));
    return item;
  }

  Item word() {
    std::size_t start = at_;
    while (at_ < text_.size() && std::string_view(" \t\n{}()|&+").find(text_[at_]) == std::string_view::npos) {
      if (text_.substr(at_).starts_with("...")) break;
      ++at_;
    }
    Item item;
    item.text = std::string(text_.substr(start, at_ - start));
    item.span = hull(place(start), place(at_));
    return item;
  }

  std::string_view text_;
  Span span_;
  const std::string& file_;
  Findings& findings_;
  std::size_t at_ = 0;
  bool failed_ = false;
};

}  // namespace

Pattern parse_pattern(std::string_view text, Span span, const std::string& file, Findings& findings) {
  if (text.find_first_not_of(" \t\n") == std::string_view::npos) {
    findings.push_back(make_finding(Code::pattern_empty, file, span));
    return {};
  }
  return Parser(text, span, file, findings).run();
}

bool is_pattern(std::string_view wording) {
  return wording.find_first_of("{(&+|") != std::string_view::npos || wording.find("...") != std::string_view::npos;
}

}  // namespace retort

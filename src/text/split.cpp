#include "text/split.h"

#include <unicode/uchar.h>

#include "text/normal_form.h"

namespace retort {
namespace {

bool is_digit(char16_t c) { return c >= u'0' && c <= u'9'; }
bool is_lower_or_upper(char16_t c, char16_t lower) { return c == lower || c == lower - 32; }
bool is_apostrophe(char16_t c) { return c == u'\'' || c == u'\u2019' || c == u'\u2018'; }
bool is_letter(char16_t c) {
  if (c < 0x80) return (c >= u'a' && c <= u'z') || (c >= u'A' && c <= u'Z');
  return !u_isdigit(c) && !is_apostrophe(c);  // ICU has already kept the marks of scripts together
}
bool is_ordinal_ending(std::u16string_view rest) {
  if (rest.size() != 2) return false;
  auto is = [&](char16_t a, char16_t b) {
    return is_lower_or_upper(rest[0], a) && is_lower_or_upper(rest[1], b);
  };
  return is(u's', u't') || is(u'n', u'd') || is(u'r', u'd') || is(u't', u'h');
}

// Whether the commas of a digit run part the items of a list ("15,25,35"), rather than being a
// decimal comma ("1,5") or marking thousands ("1,000").
bool commas_list(std::u16string_view run) {
  std::vector<std::size_t> groups;
  std::size_t length = 0;
  bool point = false;
  for (char16_t c : run) {
    if (c == u',') {
      groups.push_back(length);
      length = 0;
    } else {
      point = point || c == u'.';
      ++length;
    }
  }
  groups.push_back(length);
  if (groups.size() == 1) return false;
  if (point && groups.size() == 2) return groups[0] > 1 && run.find(u'.') < run.find(u',');
  bool threes = true;
  for (std::size_t i = 1; i < groups.size(); ++i) threes = threes && groups[i] == 3;
  if (threes) return groups[0] == 3;
  if (groups.size() > 2) return true;
  return groups[0] >= 2 && groups[0] == groups[1] && run[0] != u'0';
}

class Splitter {
 public:
  Splitter(std::u16string_view segment, std::vector<Piece>& out) : text_(segment), out_(out) {}

  void run() {
    while (at_ < size()) {
      if (is_digit(text_[at_])) {
        number();
      } else if (is_letter(text_[at_])) {
        word();
      } else {
        ++at_;
      }
    }
  }

 private:
  std::size_t size() const { return text_.size(); }
  bool digit_at(std::size_t i) const { return i < size() && is_digit(text_[i]); }
  bool letter_at(std::size_t i) const { return i < size() && is_letter(text_[i]); }

  void add(std::size_t begin, std::size_t end, TokenKind kind) {
    out_.push_back({static_cast<std::int32_t>(begin), static_cast<std::int32_t>(end), kind, pending_});
    pending_ = Break::none;
  }

  void number() {
    std::size_t end = at_;
    while (digit_at(end) || (end < size() && (text_[end] == u'.' || text_[end] == u',') && digit_at(end + 1))) ++end;
    if (is_ordinal_ending(text_.substr(end))) {
      add(at_, size(), TokenKind::word);
      at_ = size();
      return;
    }
    std::u16string_view run = text_.substr(at_, end - at_);
    if (!commas_list(run)) {
      add(at_, end, TokenKind::number);
    } else {
      std::size_t begin = at_;
      for (std::size_t i = at_; i <= end; ++i) {
        if (i < end && text_[i] != u',') continue;
        if (begin != at_) pending_ = Break::comma;
        add(begin, i, TokenKind::number);
        begin = i + 1;
      }
    }
    at_ = end;
  }

  void word() {
    std::size_t end = at_;
    while (letter_at(end) || (end < size() && is_apostrophe(text_[end]))) ++end;
    std::size_t letters = end - at_;
    bool times = letters == 1 && is_lower_or_upper(text_[at_], u'x');
    if (letters <= 2 && !times) {
      while (digit_at(end) || (end < size() && superscript_digit(text_[end]) != 0)) ++end;
    }
    bool dotted = end + 1 < size() && text_[end] == u'.' && letter_at(end + 1);
    if (dotted && letters == 1 && end + 2 <= size()) {
      // "e.g", "i.e": one word without its dots
      std::size_t stop = end;
      while (stop + 1 < size() && text_[stop] == u'.' && letter_at(stop + 1) && !letter_at(stop + 2)) stop += 2;
      if (stop > end) {
        add(at_, stop, TokenKind::word);
        at_ = stop;
        return;
      }
    }
    add(at_, end, TokenKind::word);
    if (dotted && letters > 2) pending_ = Break::sentence;
    if (end < size() && text_[end] == u':') pending_ = Break::clause;
    at_ = end;
  }

  std::u16string_view text_;
  std::vector<Piece>& out_;
  std::size_t at_ = 0;
  Break pending_ = Break::none;
};

}  // namespace

void split_segment(std::u16string_view segment, std::vector<Piece>& out) { Splitter(segment, out).run(); }

}  // namespace retort

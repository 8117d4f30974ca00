#include "author/plain_points.h"

#include <algorithm>
#include <cctype>

namespace retort::author {
namespace {

constexpr std::size_t kMostPoints = 40;
constexpr std::size_t kLongestPoint = 300;

bool blank(char c) {
  return c == ' ' || c == '\t' || c == '\r';
}
bool digit(char c) {
  return c >= '0' && c <= '9';
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

// "- ", "* ", "• ", "3. ", "(3) ", "3) "
std::string_view without_bullet(std::string_view line) {
  for (std::string_view bullet : {"- ", "* ", "\u2022 ", "\u2013 ", "\u00b7 "}) {
    if (line.starts_with(bullet)) return trimmed(line.substr(bullet.size()));
  }
  std::size_t at = line.starts_with('(') ? 1 : 0;
  std::size_t first = at;
  while (at < line.size() && digit(line[at])) ++at;
  bool numbered = at > first && at - first <= 2 && at + 1 < line.size() && (line[at] == '.' || line[at] == ')') && blank(line[at + 1]);
  return numbered ? trimmed(line.substr(at + 1)) : line;
}

// "[1 mark]", "(1)", "(2 marks)" at the end
std::string_view without_marks(std::string_view line) {
  std::size_t open = line.find_last_of("[(");
  if (open == std::string_view::npos || open == 0 || (line.back() != ']' && line.back() != ')')) return line;
  std::string_view inside = line.substr(open + 1, line.size() - open - 2);
  std::size_t end = 0;
  while (end < inside.size() && digit(inside[end])) ++end;
  std::string_view word = trimmed(inside.substr(end));
  return end > 0 && (word.empty() || word == "mark" || word == "marks") ? trimmed(line.substr(0, open)) : line;
}

// What follows "Title:" and the like, in any case of letters; nothing if the line does not begin so.
bool after_label(std::string_view line, std::string_view label, std::string& out) {
  if (line.size() <= label.size() || line[label.size()] != ':') return false;
  bool same = std::equal(label.begin(), label.end(), line.begin(), [](char a, char b) { return a == std::tolower(static_cast<unsigned char>(b)); });
  if (same) out = trimmed(line.substr(label.size() + 1));
  return same;
}

// "force 1.5 N, 3.0 N" → "force" and the values
void read_table(std::string_view text, PlainPoints& out) {
  std::size_t first = 0;
  while (first < text.size() && !digit(text[first]) && text[first] != '-') ++first;
  out.quantity = trimmed(text.substr(0, first));
  while (!out.quantity.empty() && (out.quantity.back() == ':' || out.quantity.back() == '='))
    out.quantity = trimmed(std::string_view(out.quantity).substr(0, out.quantity.size() - 1));
  text.remove_prefix(first);
  while (!text.empty()) {
    std::size_t comma = std::min({text.find(','), text.find(" and "), text.size()});
    std::string_view value = trimmed(text.substr(0, comma));
    if (value.starts_with("and ")) value = trimmed(value.substr(4));
    if (!value.empty()) out.values.emplace_back(value);
    text.remove_prefix(std::min(comma + 1, text.size()));
  }
  // "2, 4 and 6 cm": the last one's unit is that of all.
  std::string_view last = out.values.empty() ? std::string_view() : std::string_view(out.values.back());
  std::size_t number = last.find_first_not_of("0123456789.-");
  std::string unit(number == std::string_view::npos ? std::string_view() : last.substr(number));
  for (std::string& one : out.values) {
    if (!unit.empty() && one.find_first_not_of("0123456789.-") == std::string::npos) one += unit;
  }
}

void read_line(std::string_view line, Span span, const std::string& name, PlainPoints& out, Findings& findings) {
  std::string table;
  if (after_label(line, "title", out.title) || after_label(line, "question", out.question)) return;
  if (after_label(line, "table", table)) return read_table(table, out);
  std::string_view text = without_marks(without_bullet(line));
  PlainPoint point{std::string(text), true, span};
  for (std::string_view extra : {"(extra)", "(optional)"}) {
    if (!point.text.ends_with(extra)) continue;
    point.core = false;
    point.text = trimmed(std::string_view(point.text).substr(0, point.text.size() - extra.size()));
  }
  if (point.text.empty()) return;
  if (point.text.size() > kLongestPoint) return findings.push_back(make_finding(Code::point_too_long, name, span, {std::to_string(kLongestPoint)}));
  if (out.points.size() == kMostPoints) return findings.push_back(make_finding(Code::points_too_many, name, span, {std::to_string(kMostPoints)}));
  out.points.push_back(std::move(point));
}

}  // namespace

std::vector<std::string> alternatives(const std::string& text) {
  std::vector<std::string> out;
  std::string_view rest = text;
  // "upright, clamped or against a wall": what stands before the "or" is a list of alternatives too
  for (std::size_t last = text.find(" or "), comma = 0; last != std::string::npos && (comma = rest.find(", ")) != std::string_view::npos;) {
    if (static_cast<std::size_t>(rest.data() - text.data()) + comma > last) break;
    out.emplace_back(trimmed(rest.substr(0, comma)));
    rest.remove_prefix(comma + 2);
  }
  for (;;) {
    std::size_t at = std::string_view::npos;
    std::size_t size = 0;
    for (std::string_view between : {" or ", " OR ", " / ", "; ", " // "}) {
      std::size_t found = rest.find(between);
      if (found < at) at = found, size = between.size();
    }
    out.emplace_back(trimmed(rest.substr(0, at)));
    if (at == std::string_view::npos) return out;
    rest.remove_prefix(at + size);
  }
}

PlainPoints read_plain_points(std::string_view content, const std::string& name, Findings& findings) {
  PlainPoints out;
  for (std::size_t at = 0; at < content.size();) {
    std::size_t end = std::min(content.find('\n', at), content.size());
    std::string_view line = trimmed(content.substr(at, end - at));
    if (!line.empty()) {
      auto begin = static_cast<std::uint32_t>(line.data() - content.data());
      read_line(line, {begin, begin + static_cast<std::uint32_t>(line.size())}, name, out, findings);
    }
    at = end + 1;
  }
  if (out.points.empty()) findings.push_back(make_finding(Code::points_none, name));
  return out;
}

}  // namespace retort::author

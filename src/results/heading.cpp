#include "results/heading.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "quantity/unit.h"

namespace retort::results {
namespace {

constexpr std::size_t kLongestUnit = 24;  // bytes of a unit that is not known, such as "counts per minute"

// Words for one go at a reading, and for what is worked out from several.
constexpr std::array<std::string_view, 14> kRunWords = {"run",  "trial", "repeat", "reading", "attempt", "test", "try",
                                                        "take", "go",    "no",     "no.",     "number",  "#",    "result"};
constexpr std::array<std::string_view, 5> kMeanWords = {"mean", "average", "avg", "ave", "av"};
constexpr std::array<std::string_view, 7> kSpreadWords = {"uncertainty", "range", "error", "spread", "\xC2\xB1", "+/-", "deviation"};

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// White space of any kind as single spaces.
std::string one_line(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    bool space = static_cast<unsigned char>(text[i]) <= 0x20;
    if (text.substr(i).starts_with("\xC2\xA0")) {
      space = true;
      ++i;
    }
    if (!space) out += text[i];
    if (space && !out.empty() && out.back() != ' ') out += ' ';
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string at;
  for (char c : folded(text)) {
    if (c != ' ') at += c;
    if (c == ' ' && !at.empty()) out.push_back(std::exchange(at, {}));
  }
  if (!at.empty()) out.push_back(at);
  return out;
}

template <std::size_t N>
bool one_of(std::string_view word, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Takes `unit` for the heading's, if it can be one. `marked`: something says that it is one, so that an unknown one counts.
bool take_unit(std::string_view unit, bool marked, Heading& out) {
  unit = trimmed(unit);
  if (unit.empty()) return false;
  std::optional<CompoundUnit> known = read_unit(unit);
  if (known) {
    out.unit = known->symbol;
    out.compound = known;
    return true;
  }
  bool plausible = marked && unit.size() <= kLongestUnit && !std::any_of(unit.begin(), unit.end(), digit);
  for (const std::string& word : words_of(unit)) plausible = plausible && !one_of(word, kRunWords) && !one_of(word, kMeanWords) && !one_of(word, kSpreadWords);
  if (plausible) out.unit = unit;
  return plausible;
}

// "Force (N)", "Force [N]".
bool unit_in_brackets(std::string_view& text, Heading& out) {
  if (text.empty() || (text.back() != ')' && text.back() != ']')) return false;
  std::size_t open = text.rfind(text.back() == ')' ? '(' : '[');
  if (open == std::string_view::npos) return false;
  std::string_view inside = text.substr(open + 1, text.size() - open - 2);
  if (!take_unit(inside, open > 0, out)) return false;
  text = trimmed(text.substr(0, open));
  if (text.ends_with('/')) text = trimmed(text.substr(0, text.size() - 1));
  return true;
}

// "v / m/s": the first mark whose rest is a unit.
bool unit_behind(std::string_view& text, std::string_view mark, bool marked, Heading& out) {
  for (std::size_t at = text.find(mark); at != std::string_view::npos; at = text.find(mark, at + 1)) {
    std::string_view rest = text.substr(at + mark.size());
    if (!take_unit(rest, marked, out)) continue;
    text = trimmed(text.substr(0, at));
    return true;
  }
  return false;
}

// "length cm", "Force N": only a unit that fits the word before it or cannot be a name.
bool unit_last(std::string_view& text, Heading& out) {
  std::size_t space = text.rfind(' ');
  if (space == std::string_view::npos) return false;
  std::string_view word = text.substr(space + 1);
  std::optional<CompoundUnit> unit = read_unit(word);
  if (!unit) return false;
  bool fits = word.size() > 1 && unit->as_written;
  for (const std::string& name : words_of(text.substr(0, space))) {
    const Dimension* dimension = find_quantity_name(name);
    fits = fits || (dimension != nullptr && *dimension == unit->dimension);
  }
  if (!fits) return false;
  take_unit(word, false, out);
  text = trimmed(text.substr(0, space));
  return true;
}

// "Temperature / C" is no charge.
void mend_celsius(std::string_view name, Heading& out) {
  std::vector<std::string> words = words_of(name);
  bool temperature = std::any_of(words.begin(), words.end(), [](const std::string& w) { return w == "temperature" || w == "temp" || w == "temp."; });
  if (!temperature || out.unit != "C") return;
  out.compound = read_unit("\u00B0C");
  out.unit = out.compound->symbol;
}

void find_unit_of(std::string_view& text, Heading& out) {
  if (unit_in_brackets(text, out)) return;
  if (unit_behind(text, " / ", true, out) || unit_behind(text, "/", false, out)) return;
  if (unit_behind(text, " in ", false, out) || unit_behind(text, ", ", false, out) || unit_behind(text, ",", false, out)) return;
  if (unit_last(text, out)) return;
  // one letter alone is a name: T, m and s are quantities too
  if (text.size() > 1 && take_unit(text, false, out)) text = {};
}

// The number of a repeat at the end: "Time 2", "run 3", "t2", "Time (2)". 0 if there is none.
int take_number(std::string_view& text) {
  std::string_view rest = text;
  bool bracket = !rest.empty() && rest.back() == ')';
  if (bracket) rest.remove_suffix(1);
  std::size_t end = rest.size();
  while (end > 0 && digit(rest[end - 1])) --end;
  std::size_t count = rest.size() - end;
  if (count == 0 || count > 2) return 0;
  int value = 0;
  for (char c : rest.substr(end)) value = value * 10 + (c - '0');
  rest = rest.substr(0, end);
  if (bracket) {
    if (!rest.ends_with('(')) return 0;
    rest.remove_suffix(1);
  }
  if (rest.ends_with('.') || rest.ends_with('-') || rest.ends_with('/') || rest.ends_with('^')) return 0;
  text = trimmed(rest);
  return value;
}

void drop_run_word(std::string_view& text) {
  std::size_t space = text.rfind(' ');
  std::string_view last = space == std::string_view::npos ? text : text.substr(space + 1);
  std::string word = folded(last);
  if (!one_of(word, kRunWords)) return;
  text = space == std::string_view::npos ? std::string_view{} : trimmed(text.substr(0, space));
  if (text.ends_with(',') || text.ends_with('-') || text.ends_with(':')) text = trimmed(text.substr(0, text.size() - 1));
}

void find_role(std::string_view text, Heading& out) {
  std::string bare(text);
  for (char& c : bare) c = c == '(' || c == ')' || c == ':' || c == ',' ? ' ' : c;
  std::vector<std::string> words = words_of(bare);
  bool mean = std::any_of(words.begin(), words.end(), [](const std::string& w) { return one_of(w, kMeanWords) || w == "ave."; });
  bool spread = std::any_of(words.begin(), words.end(), [](const std::string& w) { return one_of(w, kSpreadWords); });
  bool run = !words.empty() && words.size() <= 2 && std::all_of(words.begin(), words.end(), [](const std::string& w) { return one_of(w, kRunWords); });
  if (spread) out.role = ColumnRole::uncertainty;
  else if (mean) out.role = ColumnRole::mean;
  else if (run && out.unit.empty()) out.role = ColumnRole::label;
}

// "Mean time" and "time (mean)" are means of the time.
std::string without_mean_words(std::string_view text) {
  std::string out;
  std::string_view rest = text;
  while (!rest.empty()) {
    std::size_t space = rest.find(' ');
    std::string_view word = rest.substr(0, space);
    std::string bare = folded(word);
    std::erase_if(bare, [](char c) { return c == '(' || c == ')' || c == '.'; });
    bool skip = one_of(bare, kMeanWords) || (bare == "of" && out.empty());
    if (!skip) out += (out.empty() ? "" : " ") + std::string(word);
    rest = space == std::string_view::npos ? std::string_view{} : rest.substr(space + 1);
  }
  return out;
}

}  // namespace

std::string folded(std::string_view text) {
  std::string out = one_line(text);
  for (char& c : out) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return out;
}

bool has_words(std::string_view text, std::string_view words) {
  std::string in = " " + folded(text) + " ";
  std::string wanted = folded(words);
  return !wanted.empty() && in.find(" " + wanted + " ") != std::string::npos;
}

bool is_unit_alone(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('/')) text = trimmed(text.substr(1));
  bool brackets = text.size() > 2 && ((text.front() == '(' && text.back() == ')') || (text.front() == '[' && text.back() == ']'));
  if (brackets) text = trimmed(text.substr(1, text.size() - 2));
  return !text.empty() && !digit(text.front()) && read_unit(text).has_value();
}

Heading read_heading(std::string_view text) {
  Heading out;
  out.text = one_line(text);
  std::string_view rest = out.text;
  int in_front = 0;
  if (int number = take_number(rest); number > 0 && out.text[rest.size()] == ' ') in_front = number;  // "Time / s (2)"
  if (in_front > 0) drop_run_word(rest);  // "Time (s) run 2"
  if (in_front == 0) rest = out.text;
  find_unit_of(rest, out);
  if (in_front > 0 && out.unit.empty()) rest = out.text;
  mend_celsius(rest, out);
  out.plain = rest;
  find_role(rest, out);
  if (out.role == ColumnRole::mean) {
    out.quantity = without_mean_words(rest);
    out.plain = out.quantity;
    return out;
  }
  out.repeat = take_number(rest);
  if (in_front > 0 && out.repeat == 0) out.repeat = in_front;
  if (out.repeat > 0 || out.role == ColumnRole::label) drop_run_word(rest);
  out.quantity = rest;
  return out;
}

}  // namespace retort::results

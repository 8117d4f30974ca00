#include "match/markers.h"

#include <re2/re2.h>

#include <charconv>

namespace retort {
namespace {

bool ends_with_step(std::string_view before) {
  for (std::string_view word : {"step", "stage", "part"}) {
    if (before.size() < word.size()) continue;
    std::string_view tail = before.substr(before.size() - word.size());
    bool same = true;
    for (std::size_t i = 0; i < word.size(); ++i) same = same && (tail[i] | 0x20) == word[i];
    if (same) return true;
  }
  return false;
}

// At the start of a line or after a space: "1.", "1)", "(1)", "Step 1", "1 " before a word.
const RE2& marker_pattern() {
  static const RE2 pattern(R"((?i)(?:^|\n|[ \t])[ \t]*[-*>]?[ \t]*\(?(?:step|stage|part)?[ \t]*(\d{1,2})[ \t]?[.):\-]?[ \t]+[a-z"'(])");
  return pattern;
}

}  // namespace

void find_markers(std::string_view source, std::vector<std::uint32_t>& out) {
  out.clear();
  re2::StringPiece rest(source.data(), source.size());
  re2::StringPiece digits;
  int expected = 1;
  while (RE2::FindAndConsume(&rest, marker_pattern(), &digits)) {
    int number = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    auto at = static_cast<std::size_t>(digits.data() - source.data());
    std::size_t before = at;
    while (before > 0 && (source[before - 1] == ' ' || source[before - 1] == '(')) --before;
    bool line_start = before == 0 || source[before - 1] == '\n' || source[before - 1] == '-' || source[before - 1] == '*';
    char after = at + digits.size() < source.size() ? source[at + digits.size()] : '\0';
    bool marked = after == ')' || after == '.' || after == ':' || ends_with_step(source.substr(0, before));
    // The numbers of a list count up; a lone "20 degrees" at the start of a line does not.
    bool next = number == expected || number == 1;  // a second list may start again
    if (next && (line_start || marked)) {
      out.push_back(static_cast<std::uint32_t>(at));
      expected = number + 1;
    }
    // The last letter taken may begin the next item's word only, so nothing is lost; step back over spaces.
    rest = re2::StringPiece(rest.data() - 1, rest.size() + 1);
  }
}

}  // namespace retort

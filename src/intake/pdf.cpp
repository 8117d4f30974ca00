#include "intake/pdf.h"

#include <sys/stat.h>

#include <algorithm>
#include <cctype>
#include <string_view>
#include <vector>

#include "base/messages.h"
#include "intake/answer.h"

namespace retort {
namespace {

constexpr int kForbidden = 3;  // pdftotext(1): an error related to PDF permissions

bool has_text(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](unsigned char c) { return c >= 0x80 || std::isalnum(c) != 0; });
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    while (line.ends_with(' ')) line.remove_suffix(1);
    out.push_back(line);
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  }
  return out;
}

std::string why(const ChildResult& result, const ChildLimits& limits) {
  switch (result.end) {
    case ChildResult::End::timed_out:
      return "it took more than " + std::to_string(limits.seconds) + " seconds";
    case ChildResult::End::killed:
      return "it takes too much time or memory";
    case ChildResult::End::not_started:
      return "the program that reads PDF files could not be started";
    default:
      break;
  }
  if (result.status == kForbidden) return "its maker does not allow text to be taken out of it";
  std::string_view first = std::string_view(result.err).substr(0, result.err.find('\n'));
  return first.empty() ? "status " + std::to_string(result.status) : printable(first, 120);
}

// "1.", "a)", a dash, a bullet: the beginning of an item of a list.
bool begins_item(std::string_view line) {
  if (line.starts_with("\u2022") || line.starts_with("\u2013 ") || line.starts_with("- ")) return true;
  std::size_t size = 0;
  while (size < line.size() && size < 3 && std::isdigit(static_cast<unsigned char>(line[size])) != 0) ++size;
  if (size == 0 && !line.empty() && std::isalpha(static_cast<unsigned char>(line[0])) != 0) {
    return line.size() > 1 && line[1] == ')';
  }
  bool mark = size > 0 && size < line.size() && (line[size] == '.' || line[size] == ')');
  return mark && (size + 1 == line.size() || std::isdigit(static_cast<unsigned char>(line[size + 1])) == 0);
}

}  // namespace

std::string mark_powers(std::string_view text) {
  constexpr std::string_view kMinus = "\u2212";
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    out += text[i];
    if (!out.ends_with("10") || out.size() < 3) continue;
    std::string_view before = std::string_view(out).substr(0, out.size() - 2);
    while (before.ends_with(' ')) before.remove_suffix(1);
    bool times = before.ends_with("\u00D7") ||
                 (before.ends_with('x') && (before.size() == 1 || std::isalpha(static_cast<unsigned char>(before[before.size() - 2])) == 0));
    std::string_view rest = text.substr(i + 1);
    std::size_t sign = rest.starts_with('-') ? 1 : rest.starts_with(kMinus) ? kMinus.size() : 0;
    bool power = times && sign > 0 && sign < rest.size() && std::isdigit(static_cast<unsigned char>(rest[sign])) != 0;
    if (power) out += '^';
  }
  return out;
}

std::string join_wrapped(std::string_view text) {
  std::vector<std::string_view> lines = lines_of(text);
  std::size_t widest = 0;
  for (std::string_view line : lines) widest = std::max(widest, characters(line));
  std::size_t full = widest - widest / 10;  // letters differ in width
  constexpr std::size_t kProse = 40;        // narrower than this it is a list or a table
  std::string out;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    out += lines[i];
    if (i + 1 == lines.size()) break;
    std::string_view next = lines[i + 1];
    std::size_t word = characters(next.substr(0, next.find(' ')));
    bool wrapped = widest >= kProse && !lines[i].empty() && !next.empty() && !begins_item(next) && characters(lines[i]) + 1 + word > full;
    out += wrapped ? ' ' : '\n';
  }
  return out;
}

Result<std::string> read_pdf(int fd, const std::string& file, const std::string& reader, const ChildLimits& limits) {
  struct stat info {};
  if (::fstat(fd, &info) != 0 || !S_ISREG(info.st_mode)) return make_finding(Code::pdf_failed, file, {"it is no ordinary file"});
  std::string program = find_program(reader);
  if (program.empty()) return make_finding(Code::pdf_reader_missing, file, {reader});
  std::string input = "/proc/self/fd/" + std::to_string(kChildInput);
  ChildResult result = run_child(program, {"-enc", "UTF-8", "-eol", "unix", "-nopgbrk", input, "-"}, fd, limits);
  if (result.end == ChildResult::End::too_much || result.out.size() > kLongestAnswer) {
    return make_finding(Code::answer_too_long, file, {"more than " + std::to_string(kLongestAnswer), std::to_string(kLongestAnswer)});
  }
  if (result.err.find("ncorrect password") != std::string::npos) return make_finding(Code::document_protected, file);
  if (result.end != ChildResult::End::exited || result.status != 0) return make_finding(Code::pdf_failed, file, {why(result, limits)});
  if (!has_text(result.out)) return make_finding(Code::pdf_no_text, file);
  std::string text = join_wrapped(mark_powers(result.out));
  while (text.ends_with('\n')) text.pop_back();
  return text;
}

}  // namespace retort

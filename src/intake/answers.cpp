#include "intake/answers.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include "base/messages.h"
#include "intake/files.h"

namespace retort {
namespace fs = std::filesystem;
namespace {

std::string ending(const std::string& path) {
  std::string out = fs::path(path).extension().string();
  std::transform(out.begin(), out.end(), out.begin(), [](unsigned char c) { return c < 0x80 ? static_cast<char>(std::tolower(c)) : static_cast<char>(c); });
  return out;
}

std::string why(int error) { return std::strerror(error); }  // NOLINT

}  // namespace

AnswerStream::AnswerStream(std::vector<std::string> inputs) : inputs_(std::move(inputs)) {
  if (inputs_.empty()) inputs_.emplace_back("-");
  std::reverse(inputs_.begin(), inputs_.end());
}

AnswerStream::~AnswerStream() { close(); }

void AnswerStream::close() {
  lines_.reset();
  if (fd_ > 0) ::close(fd_);
  fd_ = -1;
}

void AnswerStream::fail(Finding finding, Findings& findings) {
  ++failed_;
  findings.push_back(std::move(finding));
}

bool AnswerStream::ready() const { return lines_ ? lines_->buffered() : !inputs_.empty() && inputs_.back() != "-"; }

bool AnswerStream::next(Answer& out, Findings& findings) {
  for (;;) {
    if (lines_) {
      if (next_line(out, findings)) return true;
      close();
      continue;
    }
    if (inputs_.empty()) return false;
    std::string input = std::move(inputs_.back());
    inputs_.pop_back();
    if (open(input, out, findings)) return true;
  }
}

// Opens an input; true if it is one answer, which is then in `out`.
bool AnswerStream::open(const std::string& input, Answer& out, Findings& findings) {
  if (input == "-") return open_descriptor(0, "standard input", out, findings);
  std::error_code error;
  if (fs::is_directory(input, error)) {
    expand(input, findings);
    return false;
  }
  std::string end = ending(input);
  if (end == ".txt" || end == ".md") return whole(input, out, findings);
  if (end != ".jsonl") {
    bool there = fs::exists(input, error);
    fail(there ? make_finding(Code::ending_unknown, input, {end}) : make_finding(Code::file_missing, input), findings);
    return false;
  }
  int fd = ::open(input.c_str(), O_RDONLY | O_CLOEXEC);
  if (fd < 0) {
    fail(errno == ENOENT ? make_finding(Code::file_missing, input) : make_finding(Code::file_unreadable, input, {why(errno)}), findings);
    return false;
  }
  fd_ = fd;
  name_ = input;
  lines_ = std::make_unique<LineReader>(fd, kLongestLine);
  return false;
}

// Standard input is one object a line if it begins with a brace, else one answer.
bool AnswerStream::open_descriptor(int fd, const std::string& name, Answer& out, Findings& findings) {
  fd_ = fd;
  name_ = name;
  lines_ = std::make_unique<LineReader>(fd, kLongestLine);
  if (lines_->peek() == '{') return false;
  bool good = whole_from_lines(name, out, findings);
  close();
  return good;
}

bool AnswerStream::whole_from_lines(const std::string& name, Answer& out, Findings& findings) {
  out = Answer{};
  out.id = name;
  out.origin = name;
  LineReader::Got got = lines_->rest(out.text);
  if (got == LineReader::Got::failed) {
    fail(make_finding(Code::file_unreadable, name, {why(lines_->error())}), findings);
    return false;
  }
  if (got == LineReader::Got::too_long || out.text.size() > kLongestAnswer) {
    fail(make_finding(Code::answer_too_long, name, {"more than " + std::to_string(kLongestAnswer), std::to_string(kLongestAnswer)}), findings);
    return false;
  }
  return true;
}

bool AnswerStream::whole(const std::string& path, Answer& out, Findings& findings) {
  Result<std::string> content = read_file(path, kLongestAnswer);
  if (!content) {
    fail(content.finding(), findings);
    return false;
  }
  out = Answer{};
  out.id = fs::path(path).stem().string();
  out.origin = path;
  out.text = std::move(*content);
  return true;
}

void AnswerStream::expand(const std::string& folder, Findings& findings) {
  Result<std::vector<std::string>> files = list_folder(folder);
  if (!files) {
    fail(files.finding(), findings);
    return;
  }
  if (files->empty()) fail(make_finding(Code::folder_empty, folder), findings);
  inputs_.insert(inputs_.end(), files->rbegin(), files->rend());
}

bool AnswerStream::next_line(Answer& out, Findings& findings) {
  std::string_view line;
  for (;;) {
    switch (lines_->next(line)) {
      case LineReader::Got::end: return false;
      case LineReader::Got::failed:
        fail(make_finding(Code::file_unreadable, name_, {why(lines_->error())}), findings);
        return false;
      case LineReader::Got::too_long:
        fail(make_finding(Code::line_too_long, name_, {std::to_string(lines_->number()), std::to_string(kLongestLine)}), findings);
        continue;
      case LineReader::Got::line: break;
    }
    if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
    if (read_answer_line(line, name_, lines_->number(), out, findings)) return true;
    ++failed_;
  }
}

}  // namespace retort

#include "intake/line_source.h"

#include <algorithm>
#include <cstring>

namespace retort {

LineSource::LineSource(std::vector<std::string> inputs, std::size_t longest) : inputs_(std::move(inputs)), longest_(longest) {
  if (inputs_.empty()) inputs_.emplace_back("-");
  std::reverse(inputs_.begin(), inputs_.end());
}

void LineSource::fail(Finding finding, Findings& findings) {
  ++failed_;
  findings.push_back(std::move(finding));
}

// Opens the next input that can be opened; false if there is none left.
bool LineSource::open(Findings& findings) {
  while (!inputs_.empty()) {
    std::string input = std::move(inputs_.back());
    inputs_.pop_back();
    if (input == "-") {
      name_ = "standard input";
      lines_ = std::make_unique<LineReader>(0, longest_);
      return true;
    }
    Result<Descriptor> opened = open_file(input, input);
    if (!opened) {
      fail(opened.finding(), findings);
      continue;
    }
    file_ = std::move(*opened);
    name_ = std::move(input);
    lines_ = std::make_unique<LineReader>(file_.get(), longest_);
    return true;
  }
  return false;
}

bool LineSource::next(std::string& line, Findings& findings) {
  for (;;) {
    if (lines_ == nullptr && !open(findings)) return false;
    std::string_view got;
    switch (lines_->next(got)) {
      case LineReader::Got::end:
        lines_.reset();
        continue;
      case LineReader::Got::failed:
        fail(make_finding(Code::file_unreadable, name_, {std::strerror(lines_->error())}), findings);  // NOLINT
        lines_.reset();
        continue;
      case LineReader::Got::too_long:
        fail(make_finding(Code::line_too_long, name_, {std::to_string(lines_->number()), std::to_string(longest_)}), findings);
        continue;
      case LineReader::Got::line:
        break;
    }
    if (got.find_first_not_of(" \t\r") == std::string_view::npos) continue;
    line = got;
    return true;
  }
}

}  // namespace retort

#include "intake/answers.h"

#include <algorithm>
#include <cstring>
#include <filesystem>

#include "document/document.h"
#include "intake/csv_answers.h"
#include "intake/files.h"
#include "intake/jsonl.h"
#include "intake/utf16_bytes.h"

namespace retort {
namespace fs = std::filesystem;

namespace {

Result<std::string> read_single(const Descriptor& file, const std::string& ending, const std::string& name, Findings& findings) {
  if (ending == ".docx") return read_docx(file.get(), name, findings);
  Result<std::string> content = read_rest(file, name, kLongestAnswer);
  if (!content) return content.finding();
  return from_utf16(std::move(*content));
}

}  // namespace

AnswerStream::AnswerStream(std::vector<std::string> inputs, IntakeOptions options) : options_(std::move(options)), inputs_(std::move(inputs)) {
  if (inputs_.empty()) inputs_.emplace_back("-");
  std::reverse(inputs_.begin(), inputs_.end());
}

void AnswerStream::close() {
  failed_ += source_->failed();
  source_.reset();
}

void AnswerStream::fail(Finding finding, Findings& findings) {
  ++failed_;
  findings.push_back(std::move(finding));
}

bool AnswerStream::ready() const {
  if (source_) return source_->ready();
  return !files_.empty() || (!inputs_.empty() && inputs_.back() != "-");
}

bool AnswerStream::next(Answer& out, Findings& findings) {
  for (;;) {
    if (source_) {
      if (source_->next(out, findings)) return true;
      close();
    } else if (!files_.empty()) {
      InputFile file = std::move(files_.back());
      files_.pop_back();
      if (open_file_input(file, out, findings)) return true;
    } else if (!inputs_.empty()) {
      std::string input = std::move(inputs_.back());
      inputs_.pop_back();
      if (open_input(input, out, findings)) return true;
    } else {
      return false;
    }
  }
}

// Opens an input; true if it is one answer, which is then in `out`.
bool AnswerStream::open_input(const std::string& input, Answer& out, Findings& findings) {
  if (input == "-") return open_standard_input(out, findings);
  std::error_code error;
  if (fs::is_directory(input, error)) {
    expand(input, findings);
    return false;
  }
  if (!fs::exists(input, error)) {
    fail(make_finding(Code::file_missing, input), findings);
    return false;
  }
  return open_file_input(file_named(input), out, findings);
}

// Standard input is one object a line if it begins with a brace, else one answer.
bool AnswerStream::open_standard_input(Answer& out, Findings& findings) {
  const std::string name = "standard input";
  auto lines = std::make_unique<LineReader>(0, kLongestLine);
  if (lines->peek() == '{') {
    source_ = open_jsonl(Descriptor(), std::move(lines), name, options_);
    return false;
  }
  out = Answer{};
  out.id = out.origin = name;
  out.labelled = false;
  LineReader::Got got = lines->rest(out.text);
  if (got == LineReader::Got::failed) {
    fail(make_finding(Code::file_unreadable, name, {std::strerror(lines->error())}), findings);  // NOLINT
    return false;
  }
  if (got == LineReader::Got::too_long || out.text.size() > kLongestAnswer) {
    fail(make_finding(Code::answer_too_long, name, {"more than " + std::to_string(kLongestAnswer), std::to_string(kLongestAnswer)}), findings);
    return false;
  }
  return true;
}

bool AnswerStream::open_file_input(const InputFile& file, Answer& out, Findings& findings) {
  std::string ending = ending_of(file.rest);
  if (ending == ".txt" || ending == ".md" || ending == ".docx") return open_single(file, ending, out, findings);
  if (ending != ".jsonl" && ending != ".csv" && ending != ".tsv") {
    fail(make_finding(Code::ending_unknown, shown_name(file, options_), {ending}), findings);
    return false;
  }
  std::string name = file.root + file.rest;
  Result<Descriptor> opened = open_file(file.path, name);
  if (!opened) {
    fail(opened.finding(), findings);
    return false;
  }
  if (ending != ".jsonl") {
    source_ = open_csv_answers(std::move(*opened), name, options_);
    return false;
  }
  auto lines = std::make_unique<LineReader>(opened->get(), kLongestLine);
  source_ = open_jsonl(std::move(*opened), std::move(lines), name, options_);
  return false;
}

// A file that is one answer.
bool AnswerStream::open_single(const InputFile& file, const std::string& ending, Answer& out, Findings& findings) {
  out = Answer{};
  out.id = file.label;
  out.origin = shown_name(file, options_);
  Result<Descriptor> opened = open_file(file.path, out.origin);
  Result<std::string> content = opened ? read_single(*opened, ending, out.origin, findings) : opened.finding();
  if (!content) {
    fail(content.finding(), findings);
    return false;
  }
  out.text = std::move(*content);
  disguise(out, options_.pseudonyms);
  return true;
}

void AnswerStream::expand(const std::string& folder, Findings& findings) {
  Result<std::vector<std::string>> files = list_folder(folder);
  if (!files) {
    fail(files.finding(), findings);
    return;
  }
  if (files->empty()) fail(make_finding(Code::folder_empty, folder), findings);
  std::string root = folder.ends_with('/') ? folder : folder + "/";
  std::vector<std::string> names;
  for (const std::string& path : *files) names.push_back(path.substr(root.size()));
  files_ = files_below(root, names);
  std::reverse(files_.begin(), files_.end());
}

}  // namespace retort

#include "intake/answers.h"

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <iterator>

#include "document/document.h"
#include "intake/csv_answers.h"
#include "intake/endings.h"
#include "intake/files.h"
#include "intake/jsonl.h"
#include "intake/pdf.h"
#include "intake/utf16_bytes.h"
#include "intake/windows_text.h"
#include "intake/zip_answers.h"

namespace retort {
namespace fs = std::filesystem;

AnswerStream::AnswerStream(std::vector<std::string> inputs, IntakeOptions options) : options_(std::move(options)), inputs_(std::move(inputs)) {
  if (inputs_.empty()) inputs_.emplace_back("-");
  std::reverse(inputs_.begin(), inputs_.end());
}

AnswerStream::AnswerStream(IntakeOptions options, InputFile file) : options_(std::move(options)) { files_.push_back(std::move(file)); }

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

// Opens a file; true if it is one answer, which is then in `out`.
bool AnswerStream::open_file_input(const InputFile& file, Answer& out, Findings& findings) {
  std::string ending = ending_of(file.rest);
  std::optional<FileKind> kind = kind_of(ending);
  if (!kind) {
    fail(why_not(ending, shown_name(file, options_)), findings);
    return false;
  }
  bool many = *kind == FileKind::csv || *kind == FileKind::jsonl || *kind == FileKind::zip;
  if (many) open_many(file, *kind, findings);
  return !many && open_single(file, *kind, out, findings);
}

// A file that holds many answers.
void AnswerStream::open_many(const InputFile& file, FileKind kind, Findings& findings) {
  std::string name = file.root + file.rest;
  if (kind == FileKind::zip && file.archive != nullptr) return fail(make_finding(Code::archive_nested, name), findings);
  Result<Descriptor> opened = open_input_file(file, name);
  if (!opened) return fail(opened.finding(), findings);
  if (kind == FileKind::zip) return expand_zip(*opened, name, findings);
  if (kind == FileKind::csv) {
    source_ = open_csv_answers(std::move(*opened), name, options_);
    return;
  }
  auto lines = std::make_unique<LineReader>(opened->get(), kLongestLine);
  source_ = open_jsonl(std::move(*opened), std::move(lines), name, options_);
}

Result<std::string> AnswerStream::read_single(const InputFile& file, FileKind kind, const std::string& name, Findings& findings) const {
  Result<Descriptor> opened = open_input_file(file, name);
  if (!opened) return opened.finding();
  if (kind == FileKind::docx) return read_docx(opened->get(), name, findings);
  if (kind == FileKind::odt) return read_odt(opened->get(), name, findings);
  if (kind == FileKind::pdf) return read_pdf(opened->get(), name, options_.pdf_reader);
  Result<std::string> content = read_rest(*opened, name, kLongestAnswer);
  if (!content) return content.finding();
  std::size_t odd = 0;
  std::string text = as_utf8(from_utf16(std::move(*content)), odd);
  if (odd > 0) findings.push_back(make_finding(Code::csv_not_utf8, name, {std::to_string(odd)}));
  if (text.size() > kLongestAnswer) return make_finding(Code::answer_too_long, name, {std::to_string(text.size()), std::to_string(kLongestAnswer)});
  return text;
}

// A file that is one answer.
bool AnswerStream::open_single(const InputFile& file, FileKind kind, Answer& out, Findings& findings) {
  out = Answer{};
  out.id = file.label;
  out.origin = shown_name(file, options_);
  Result<std::string> content = read_single(file, kind, out.origin, findings);
  if (!content) {
    fail(content.finding(), findings);
    return false;
  }
  out.text = std::move(*content);
  disguise(out, options_.pseudonyms);
  return true;
}

void AnswerStream::take_files(std::vector<InputFile> files) {
  std::reverse(files.begin(), files.end());
  files_.insert(files_.end(), std::make_move_iterator(files.begin()), std::make_move_iterator(files.end()));
}

void AnswerStream::expand_zip(const Descriptor& opened, const std::string& name, Findings& findings) {
  std::size_t before = findings.size();
  Result<std::vector<InputFile>> files = files_in_zip(opened, name, findings);
  failed_ += findings.size() - before;
  if (files)
    take_files(std::move(*files));
  else
    fail(files.finding(), findings);
}

void AnswerStream::expand(const std::string& folder, Findings& findings) {
  Result<std::vector<std::string>> files = list_folder(folder);
  if (!files) {
    fail(files.finding(), findings);
    return;
  }
  std::string root = folder.ends_with('/') ? folder : folder + "/";
  std::vector<std::string> names;
  for (const std::string& path : *files) {
    if (!is_litter(path.substr(root.size()))) names.push_back(path.substr(root.size()));
  }
  if (names.empty()) fail(make_finding(Code::folder_empty, folder), findings);
  take_files(files_below(root, names));
}

}  // namespace retort

#include "cli/support.h"

#include <cstdio>
#include <filesystem>

#include "base/messages.h"
#include "cli/sink.h"

namespace retort::cli {

void print(const Findings& findings, const SourceFiles& files, const std::string& folder) {
  for (Finding finding : findings) {
    auto source = files.find(finding.file);
    std::string_view text = source == files.end() ? std::string_view() : std::string_view(source->second);
    if (source != files.end()) finding.file = (std::filesystem::path(folder) / finding.file).lexically_normal().string();
    std::fprintf(stderr, "%s\n", describe(finding, text).c_str());
  }
}

void print(const Finding& finding) {
  std::fprintf(stderr, "retort: %s\n", describe(finding, {}).c_str());
}

int write_out(const Options& options, std::string_view text) {
  Sink sink(options.output);
  if (!sink.good()) {
    print(sink.finding());
    return kWrong;
  }
  sink.write(text);
  if (sink.close()) return kDone;
  print(sink.finding());
  return kSomeInputFailed;
}

std::unique_ptr<Ready> make_ready(const std::string& rubric) {
  Result<RubricChoice> choice = choose_rubric(rubric);
  if (!choice) {
    print(choice.finding());
    return nullptr;
  }
  auto ready = std::make_unique<Ready>();
  ready->choice = std::move(*choice);
  const RubricFolder& folder = ready->choice.folder;
  Checker::Made made = Checker::make(ready->choice.name, folder.files, folder.real_words);
  if (!made.checker) {
    print(made.findings, folder.files, folder.path);
    return nullptr;
  }
  ready->checker = std::move(made.checker);
  return ready;
}

bool Keyed::open(const std::string& path) {
  if (path.empty()) return true;
  Result<Pseudonyms> opened = Pseudonyms::open(path);
  if (opened)
    codes_ = std::move(*opened);
  else
    print(opened.finding());
  return opened.ok();
}

bool Keyed::save() {
  if (!codes_) return true;
  Status saved = codes_->save();
  if (!saved) print(saved.finding());
  return saved.ok();
}

}  // namespace retort::cli

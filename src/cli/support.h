// What the commands share: findings to standard error, output to a file or standard output.
#pragma once
#include <memory>
#include <optional>
#include <string>

#include "cli/command.h"
#include "intake/pseudonyms.h"
#include "intake/rubric_folder.h"
#include "review/checker.h"

namespace retort::cli {

// Prints findings to standard error, one a line. `files` gives the sources of located ones.
void print(const Findings& findings, const SourceFiles& files, const std::string& folder);
void print(const Finding& finding);

// Writes to `options.output` (whole or not at all) or standard output; the exit status.
int write_out(const Options& options, std::string_view text);

// A rubric ready for checking, with what it stands on.
struct Ready {
  RubricChoice choice;
  std::unique_ptr<Checker> checker;
};

// Loads the rubric named in the options; prints why not, and returns none.
std::unique_ptr<Ready> make_ready(const std::string& rubric);

// The codes of --pseudonyms, if that is asked for.
class Keyed {
 public:
  // Opens the key file at `path`; no path, no codes. Prints why not, and is false then.
  [[nodiscard]] bool open(const std::string& path);
  // The codes; none if there is no key file.
  Pseudonyms* get() { return codes_ ? &*codes_ : nullptr; }
  // Writes the key file if it has changed. Prints why not, and is false then.
  [[nodiscard]] bool save();

 private:
  std::optional<Pseudonyms> codes_;
};

}  // namespace retort::cli

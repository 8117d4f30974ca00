// Any bytes as a rubric: loaded, compiled, linted; if it is a good one, used.
#include <string>

#include "base/messages.h"
#include "proof/lint.h"
#include "review/review.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace retort;
  SourceFiles files;
  files["vocabulary.json"] = R"({"format": 1, "skip": ["the"], "words": {"not": ["not", "dont"], "measure": ["measure", "read"], "it": {"kind": "thing", "words": ["spring"]}}})";
  files["fuzz.json"].assign(reinterpret_cast<const char*>(data), size);
  LintResult result = lint("fuzz.json", files, "spring\n");
  for (const Finding& finding : result.findings) {
    auto source = files.find(finding.file);
    describe(finding, source == files.end() ? std::string_view() : std::string_view(source->second));
  }
  Checker::Made made = Checker::make("fuzz.json", files, "spring\n");
  if (made.checker) Reviewer(*made.checker).review("measure the spring, don't read it. 1.5 N then 3 N");
  return 0;
}

// Helpers for the tests: files of the project, small rubrics made on the spot.
#pragma once
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

#include "intake/rubric_folder.h"
#include "review/checker.h"
#include "review/review.h"

namespace retort::test {

inline std::string source_path(const std::string& inside) { return std::string(RETORT_SOURCE_DIR) + "/" + inside; }

inline std::string read_all(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  EXPECT_TRUE(in.good()) << path;
  return {std::istreambuf_iterator<char>(in), {}};
}

// The rubrics folder of the source tree, read once.
inline const RubricFolder& shipped() {
  static const RubricFolder folder = [] {
    setenv("RETORT_RUBRICS", source_path("rubrics").c_str(), 1);
    Result<RubricFolder> opened = open_rubrics();
    EXPECT_TRUE(opened.ok());
    return std::move(opened).value();
  }();
  return folder;
}

// A checker for a rubric given as text, with the shipped vocabulary.
struct Small {
  explicit Small(const std::string& json) {
    SourceFiles files = shipped().files;
    files["small.json"] = json;
    Checker::Made made = Checker::make("small.json", files, shipped().real_words);
    findings = std::move(made.findings);
    checker = std::move(made.checker);
  }
  Review review(const std::string& text) const { return Reviewer(*checker).review(text); }
  std::string status(const std::string& text, std::size_t step = 0) const {
    return std::string(status_word(review(text).steps[step].status));
  }

  Findings findings;
  std::unique_ptr<Checker> checker;
};

// A rubric with one step: `steps` is the inside of its object after the facet.
inline std::string one_step(const std::string& rest, const std::string& more = "") {
  return R"({"format": 1, "id": "small", "title": "t", "question": "Describe how the student could find how long the spring becomes.")" + more +
         R"(, "steps": [{"id": "s", "title": "s", "facet": "set-up", "hint": "What else?", )" + rest + "}]}";
}

// Test names from row names.
template <typename Row>
std::string row_name(const ::testing::TestParamInfo<Row>& info) {
  std::string out;
  for (char c : std::string(info.param.name)) out += std::isalnum(static_cast<unsigned char>(c)) != 0 ? c : '_';
  return out;
}

}  // namespace retort::test

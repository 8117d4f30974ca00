// retort rubric new: a working rubric from plain marking points.
#include <cstdio>
#include <filesystem>

#include "author/new_rubric.h"
#include "base/messages.h"
#include "cli/support.h"
#include "intake/files.h"
#include "report/page.h"
#include "review/shelf.h"

namespace retort::cli {
namespace {

constexpr std::size_t kLargestPoints = 1U << 20;

std::string id_from(const Options& options) {
  std::string out = options.rubric.empty() ? std::filesystem::path(options.inputs.at(0)).stem().string() : options.rubric;
  for (char& c : out) {
    bool good = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    else if (!good) c = '-';
  }
  return out;
}

// What was made of each point, for a person to confirm.
std::string for_people(const author::NewRubric& made) {
  std::string out = "What became of each point. Read it, and change the file where it is wrong.\n";
  for (std::size_t i = 0; i < made.placed.size(); ++i) {
    const author::Placed& p = made.placed[i];
    append_wrapped(p.point, 80, "\n" + std::to_string(i + 1) + ". ", "   ", out);
    std::string words;
    for (const std::string& word : p.looked_for) words += (words.empty() ? "" : ", ") + word;
    append_wrapped(p.facet + (words.empty() ? "" : "; looked for: " + words), 80, "   ", "   ", out);
    if (!p.present.empty()) append_wrapped(p.present.front(), 80, "   there: ", "          ", out);
    if (!p.vague.empty()) append_wrapped(p.vague.front(), 80, "   vague: ", "          ", out);
  }
  return out;
}

}  // namespace

int run_rubric_new(const Options& options) {
  const std::string& path = options.inputs.at(0);
  Result<std::string> content = read_file(path, kLargestPoints);
  if (!content) {
    print(content.finding());
    return kWrong;
  }
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  Findings findings;
  author::PlainPoints points = author::read_plain_points(*content, path, findings);
  print(findings, {{path, *content}}, "");
  if (points.points.empty()) return kWrong;
  Result<author::NewRubric> made = author::make_rubric(id_from(options), points, path, *folder);
  if (!made) {
    print(made.finding());
    return kWrong;
  }
  print(made->findings, {{path, *content}}, "");
  if (made->placed.empty()) return kWrong;
  int status = write_out(options, made->file);
  if (status == kDone && !options.output.empty() && !options.quiet) {
    std::fputs(for_people(*made).c_str(), stdout);
    std::printf("\nNext: retort rubric lint %s; retort rubric test %s\n", options.output.c_str(), options.output.c_str());
  }
  return status;
}

}  // namespace retort::cli

#include "intake/rubric_folder.h"

#include <cstdlib>
#include <filesystem>

#include "intake/files.h"
#include "rubric/fields.h"

namespace retort {
namespace fs = std::filesystem;
namespace {

constexpr std::size_t kLargestFile = 8U << 20;
constexpr std::string_view kRealWords = "real-words.txt";

std::vector<std::string> candidates() {
  if (const char* set = std::getenv("RETORT_RUBRICS"); set != nullptr && *set != '\0') return {set};
  std::vector<std::string> out;
  std::error_code error;
  fs::path program = fs::read_symlink("/proc/self/exe", error);
  if (!error) {
    fs::path folder = program.parent_path();
    out.push_back((folder.parent_path() / "share" / "retort" / "rubrics").string());  // installed
    // from a build folder inside the project: build/src/retort, build/release/src/retort
    for (int up = 0; up < 4; ++up, folder = folder.parent_path()) out.push_back((folder / "rubrics").string());
  }
  return out;
}

Status read_json_files(const std::string& path, RubricFolder& out) {
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(path, error)) {
    std::error_code ignored;
    std::string name = entry.path().filename().string();
    if (entry.path().extension() != ".json" || name.starts_with('.') || out.files.contains(name)) continue;
    if (!entry.is_regular_file(ignored)) continue;
    Result<std::string> content = read_file(entry.path().string(), kLargestFile);
    if (content) out.files.emplace(std::move(name), std::move(*content));
  }
  if (error) return make_finding(Code::file_unreadable, path, {error.message()});
  return Done{};
}

}  // namespace

Result<RubricFolder> open_rubrics() {
  std::vector<std::string> looked = candidates();
  for (const std::string& path : looked) {
    std::error_code ignored;
    if (!fs::is_regular_file(fs::path(path) / kVocabularyFile, ignored)) continue;
    RubricFolder folder;
    folder.path = path;
    Status read = read_json_files(path, folder);
    if (!read) return read.finding();
    Result<std::string> words = read_file((fs::path(path) / kRealWords).string(), kLargestFile);
    if (words) folder.real_words = std::move(*words);
    return folder;
  }
  return make_finding(Code::rubrics_folder_missing, "", {joined(looked)});
}

Result<RubricChoice> choose_rubric(const std::string& named) {
  Result<RubricFolder> shipped = open_rubrics();
  std::error_code ignored;
  bool a_path = named.find('/') != std::string::npos || named.ends_with(".json");
  if (!a_path) {
    if (!shipped) return shipped.finding();
    if (shipped->files.contains(named + ".json")) return RubricChoice{std::move(*shipped), named + ".json"};
    std::vector<std::string> ids;
    for (const auto& [name, content] : shipped->files) ids.push_back(name.substr(0, name.size() - 5));
    return make_finding(Code::rubric_not_found, "", {named, did_you_mean(named, ids)});
  }
  Result<std::string> content = read_file(named, kLargestFile);
  if (!content) return content.finding();
  RubricChoice choice;
  fs::path path(named);
  choice.name = path.filename().string();
  choice.folder.path = path.has_parent_path() ? path.parent_path().string() : ".";
  choice.folder.files.emplace(choice.name, std::move(*content));
  Status read = read_json_files(choice.folder.path, choice.folder);
  if (!read) return read.finding();
  if (shipped) {
    for (auto& [name, text] : shipped->files) choice.folder.files.emplace(name, std::move(text));
    choice.folder.real_words = std::move(shipped->real_words);
  }
  return choice;
}

}  // namespace retort

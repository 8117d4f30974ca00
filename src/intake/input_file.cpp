#include "intake/input_file.h"

#include <algorithm>
#include <filesystem>
#include <map>

#include "intake/pseudonyms.h"

namespace retort {
namespace fs = std::filesystem;
namespace {

std::string without_ending(const std::string& path) {
  fs::path out(path);
  return out.replace_extension().string();
}

// How many of the labels made by `make` are the same.
template <typename Make>
std::map<std::string, int> count(const std::vector<std::string>& names, Make make) {
  std::map<std::string, int> out;
  for (const std::string& name : names) ++out[make(name)];
  return out;
}

Result<Descriptor> in_memory(std::string_view content, const std::string& name) {
  Descriptor out = memory_file(content);
  if (out.get() < 0) return make_finding(Code::file_unreadable, name, {"there is not enough memory"});
  return out;
}

}  // namespace

InputFile file_named(const std::string& path) {
  std::string folder = fs::path(path).parent_path().string();
  bool slash = !folder.empty() && !folder.ends_with('/');
  return {path, slash ? folder + "/" : folder, fs::path(path).filename().string(), fs::path(path).stem().string(), nullptr, 0};
}

InputFile file_in_memory(const std::string& name, std::string content) {
  InputFile out = file_named(name);
  out.root.clear();
  out.content = std::make_shared<const std::string>(std::move(content));
  return out;
}

std::vector<InputFile> files_below(const std::string& root, const std::vector<std::string>& names) {
  auto stem = [](const std::string& name) { return fs::path(name).stem().string(); };
  std::map<std::string, int> stems = count(names, stem);
  std::map<std::string, int> paths = count(names, without_ending);
  std::vector<InputFile> out;
  for (const std::string& name : names) {
    std::string label = stem(name);
    if (stems[label] > 1) label = without_ending(name);
    if (stems[stem(name)] > 1 && paths[label] > 1) label = name;
    out.push_back({root + name, root, name, label, nullptr, 0});
  }
  return out;
}

std::string ending_of(std::string_view path) {
  std::string out = fs::path(path).extension().string();
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return c < 0x80 ? static_cast<char>(std::tolower(c)) : static_cast<char>(c); });
  return out;
}

Result<Descriptor> open_input_file(const InputFile& file, const std::string& name) {
  if (file.content != nullptr) return in_memory(*file.content, name);
  if (file.archive == nullptr) return open_file(file.path, name);
  Result<std::string> content = file.archive->read(file.entry);
  if (content) return in_memory(*content, name);
  Finding finding = content.finding();
  finding.file = name;
  return finding;
}

std::string shown_name(const InputFile& file, const IntakeOptions& options) {
  if (options.pseudonyms == nullptr) return file.root + file.rest;
  return file.root + options.pseudonyms->code(file.label) + ending_of(file.rest);
}

}  // namespace retort

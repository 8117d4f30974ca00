#include "intake/zip_answers.h"

#include <algorithm>
#include <utility>

#include "base/messages.h"
#include "intake/endings.h"

namespace retort {

Result<std::vector<InputFile>> files_in_zip(const Descriptor& file, const std::string& name, Findings& findings) {
  Result<Archive> opened = Archive::open(file.get(), name);
  if (!opened) return opened.finding();
  auto archive = std::make_shared<Archive>(std::move(*opened));
  std::vector<std::pair<std::string, std::uint64_t>> entries;
  bool refused = false;
  for (std::uint64_t i = 0; i < archive->size(); ++i) {
    std::string entry = archive->entry_name(i);
    if (!stays_inside(entry)) {
      findings.push_back(make_finding(Code::archive_path_unsafe, name + "/" + printable(entry)));
      refused = true;
    } else if (!entry.ends_with('/') && !is_litter(entry)) {
      entries.emplace_back(std::move(entry), i);
    }
  }
  if (entries.empty() && !refused) return make_finding(Code::archive_empty, name);
  std::sort(entries.begin(), entries.end());
  std::vector<std::string> names;
  for (const auto& [entry, index] : entries) names.push_back(entry);
  std::vector<InputFile> files = files_below(name + "/", names);
  for (std::size_t i = 0; i < files.size(); ++i) {
    files[i].archive = archive;
    files[i].entry = entries[i].second;
  }
  return files;
}

}  // namespace retort

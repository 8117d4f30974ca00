#include "intake/endings.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <string_view>

namespace retort {
namespace {

constexpr const char* kSaveDocument = "open it in a word processor and save it as .docx, .odt or .pdf";
constexpr const char* kSaveSheet = "open it in a spreadsheet and save the sheet as .csv";
constexpr const char* kSaveText = "open it, copy the text into a document and save that";
constexpr const char* kUnpack = "unpack it, and name the folder";

struct Other {
  std::string_view ending;
  const char* advice;
};
constexpr std::array<Other, 27> kOthers = {{{".doc", kSaveDocument},   {".dot", kSaveDocument}, {".dotx", kSaveDocument}, {".rtf", kSaveDocument},
                                            {".pages", kSaveDocument}, {".wps", kSaveDocument}, {".wpd", kSaveDocument},  {".sxw", kSaveDocument},
                                            {".fodt", kSaveDocument},  {".ott", kSaveDocument}, {".gdoc", kSaveDocument}, {".xls", kSaveSheet},
                                            {".xlsx", kSaveSheet},     {".ods", kSaveSheet},    {".numbers", kSaveSheet}, {".ppt", kSaveText},
                                            {".pptx", kSaveText},      {".odp", kSaveText},     {".key", kSaveText},      {".html", kSaveText},
                                            {".htm", kSaveText},       {".rar", kUnpack},       {".7z", kUnpack},         {".gz", kUnpack},
                                            {".tar", kUnpack},         {".tgz", kUnpack},       {".eml", kSaveText}}};
constexpr std::array<std::string_view, 5> kMacros = {".docm", ".dotm", ".xlsm", ".pptm", ".xlsb"};
constexpr std::array<std::string_view, 11> kPictures = {".jpg", ".jpeg", ".png", ".gif", ".heic", ".heif", ".bmp", ".tif", ".tiff", ".webp", ".svg"};

}  // namespace

std::optional<FileKind> kind_of(const std::string& ending) {
  static const std::map<std::string_view, FileKind> kinds = {{".txt", FileKind::text}, {".md", FileKind::text},     {".docx", FileKind::docx},
                                                             {".odt", FileKind::odt},  {".pdf", FileKind::pdf},     {".csv", FileKind::csv},
                                                             {".tsv", FileKind::csv},  {".jsonl", FileKind::jsonl}, {".zip", FileKind::zip}};
  auto found = kinds.find(ending);
  if (found == kinds.end()) return std::nullopt;
  return found->second;
}

Finding why_not(const std::string& ending, const std::string& file) {
  if (std::find(kMacros.begin(), kMacros.end(), ending) != kMacros.end()) return make_finding(Code::document_macros, file, {ending});
  if (std::find(kPictures.begin(), kPictures.end(), ending) != kPictures.end()) return make_finding(Code::document_picture, file);
  for (const Other& other : kOthers) {
    if (other.ending == ending) return make_finding(Code::document_other_format, file, {ending, other.advice});
  }
  return make_finding(Code::ending_unknown, file, {ending});
}

bool is_litter(const std::string& path) {
  for (const std::filesystem::path& part : std::filesystem::path(path)) {
    if (part.string().starts_with('.') || part == "__MACOSX") return true;
  }
  std::string name = std::filesystem::path(path).filename().string();
  return name.starts_with("~$") || name == "Thumbs.db" || name == "desktop.ini";
}

}  // namespace retort

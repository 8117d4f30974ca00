// Each folder includes only folders before it; ICU only in text, RE2 only in match, and so on.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <string>

namespace {
namespace fs = std::filesystem;

// Rank of each stage: a file may include its own folder and those of a lower rank.
const std::map<std::string, int> kRank = {{"base", 0},  {"text", 1},   {"document", 1}, {"quantity", 2}, {"vocabulary", 3}, {"calc", 3}, {"results", 3},
                                          {"rubric", 4}, {"match", 5}, {"review", 6},   {"proof", 7}, {"cohort", 7}, {"classroom", 7},      {"intake", 8}, {"report", 9},
                                          {"serve", 10}, {"author", 10}, {"cli", 11}};

// Third-party headers by how they begin, and the only folder that may include them.
const std::map<std::string, std::string> kOnlyIn = {{"unicode/", "text"}, {"re2/", "match"},        {"nlohmann/", "rubric"},
                                                    {"CLI/", "cli"},      {"libstemmer", "vocabulary"}, {"gmp", "quantity"},  {"csv.h", "intake"}, {"microhttpd", "serve"},
                                                    {"zip.h", "document"}, {"expat", "document"},
                                                    {"nettle/", "base"}};

std::vector<std::string> faults(const std::string& folder, const std::string& file, const std::string& line) {
  std::size_t start = line.find("#include ");
  if (start != 0) return {};
  std::string name = line.substr(10, line.find_first_of("\">", 10) - 10);
  std::vector<std::string> out;
  for (const auto& [prefix, only] : kOnlyIn) {
    if (name.starts_with(prefix) && folder != only) out.push_back(file + " includes " + name + ", which belongs in " + only);
  }
  auto other = kRank.find(name.substr(0, name.find('/')));
  if (line[9] == '"' && other != kRank.end() && other->first != folder && other->second >= kRank.at(folder)) {
    out.push_back(file + " includes " + name + " of a later stage");
  }
  return out;
}

TEST(Layers, EachFolderIncludesOnlyThoseBeforeIt) {
  std::size_t files = 0;
  for (const auto& entry : fs::recursive_directory_iterator(std::string(RETORT_SOURCE_DIR) + "/src")) {
    std::string ending = entry.path().extension().string();
    if (ending != ".h" && ending != ".cpp") continue;
    std::string folder = entry.path().parent_path().filename().string();
    ASSERT_TRUE(kRank.contains(folder)) << folder << " has no rank in this test";
    ++files;
    std::ifstream in(entry.path());
    for (std::string line; std::getline(in, line);) {
      for (const std::string& fault : faults(folder, entry.path().filename().string(), line)) ADD_FAILURE() << fault;
    }
  }
  EXPECT_GT(files, 40U);
}

TEST(Layers, TheCheckSeesWrongIncludes) {
  EXPECT_EQ(faults("text", "x.cpp", "#include \"match/matcher.h\"").size(), 1U);
  EXPECT_EQ(faults("cli", "x.cpp", "#include <re2/re2.h>").size(), 1U);
  EXPECT_EQ(faults("match", "x.cpp", "#include <re2/re2.h>").size(), 0U);
  EXPECT_EQ(faults("match", "x.cpp", "#include \"rubric/rubric.h\"").size(), 0U);
  EXPECT_EQ(faults("rubric", "x.cpp", "#include \"proof/lint.h\"").size(), 1U);
}

// Two types of one name in one namespace are one type to the linker, which then takes either's functions for both.
TEST(Layers, NoTwoHeadersDefineATypeOfTheSameName) {
  std::map<std::string, std::string> home;
  for (const auto& entry : fs::recursive_directory_iterator(std::string(RETORT_SOURCE_DIR) + "/src")) {
    if (entry.path().extension() != ".h") continue;
    std::ifstream in(entry.path());
    std::string space;
    for (std::string line; std::getline(in, line);) {
      if (line.starts_with("namespace ")) space = line.substr(10, line.find(' ', 10) - 10);
      for (const char* kind : {"struct ", "class ", "enum class "}) {
        if (!line.starts_with(kind) || line.find('{') == std::string::npos) continue;
        std::size_t from = std::string(kind).size();
        std::string name = space + "::" + line.substr(from, line.find_first_of(" :{", from) - from);
        auto [known, fresh] = home.try_emplace(name, entry.path().string());
        EXPECT_TRUE(fresh) << name << " is in " << known->second << " and in " << entry.path().string();
      }
    }
  }
  EXPECT_GT(home.size(), 100U);
}

}  // namespace

// Runs a program of Debian once over many lines.
#pragma once
#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

namespace retort::test {

// The lines that `command` prints when the name of a file of `input` is put behind it. No settings of whoever
// runs the tests: the home folder is an empty one.
inline std::vector<std::string> lines_of(const std::string& command, const std::vector<std::string>& input) {
  std::string folder = ::testing::TempDir() + "retort-XXXXXX";
  if (mkdtemp(folder.data()) == nullptr) {
    ADD_FAILURE() << "no temporary folder";
    return {};
  }
  std::string file = folder + "/lines";
  {
    std::ofstream out(file);
    for (const std::string& line : input) out << line << '\n';
  }
  std::string whole = "HOME=" + folder + " XDG_CONFIG_HOME=" + folder + " XDG_DATA_HOME=" + folder + " LC_ALL=C.UTF-8 " + command + " " + file;
  std::vector<std::string> lines;
  if (FILE* pipe = popen(whole.c_str(), "r")) {
    std::string all;
    char buffer[4096];
    for (std::size_t n = 0; (n = fread(buffer, 1, sizeof buffer, pipe)) > 0;) all.append(buffer, n);
    pclose(pipe);
    for (std::size_t at = 0; at < all.size();) {
      std::size_t end = std::min(all.find('\n', at), all.size());
      lines.push_back(all.substr(at, end - at));
      at = end + 1;
    }
  }
  std::system(("rm -rf '" + folder + "'").c_str());
  return lines;
}

}  // namespace retort::test

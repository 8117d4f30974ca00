#include "intake/pseudonyms.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <numeric>

#include "intake/csv.h"
#include "intake/files.h"
#include "intake/windows_text.h"

namespace retort {
namespace {

constexpr std::size_t kLargestKeyFile = 64U << 20;
constexpr std::string_view kHeadings = "label,code\n";

// As the key file gives it back: UTF-8 without control characters or spaces around it.
std::string plain(const std::string& label) {
  std::size_t ignored = 0;
  std::string out = as_utf8(label, ignored);
  for (char& c : out) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  }
  std::size_t begin = out.find_first_not_of(' ');
  if (begin == std::string::npos) return "no name";
  return out.substr(begin, out.find_last_not_of(' ') - begin + 1);
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

bool write_all(int fd, std::string_view content) {
  while (!content.empty()) {
    ssize_t written = ::write(fd, content.data(), content.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    content.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// A new file beside `path`, which takes its name once it is whole. mkstemp makes it readable by its owner alone.
bool replace_file(const std::string& path, std::string_view content) {
  std::string draft = path + ".XXXXXX";
  int fd = ::mkstemp(draft.data());
  if (fd < 0) return false;
  bool good = write_all(fd, content) && ::fsync(fd) == 0;
  int error = errno;
  ::close(fd);
  if (good && ::rename(draft.c_str(), path.c_str()) == 0) return true;
  if (good) error = errno;
  ::unlink(draft.c_str());
  errno = error;
  return false;
}

bool is_heading(const std::vector<Cell>& row) {
  return row.size() >= 2 && row[0].text == "label" && row[1].text == "code";
}

}  // namespace

Result<Pseudonyms> Pseudonyms::open(const std::string& path) {
  Pseudonyms out;
  out.path_ = path;
  Result<std::string> content = read_file(path, kLargestKeyFile);
  if (!content && content.finding().code == Code::file_missing) return out;
  if (!content) return content.finding();
  Findings findings;
  Result<Table> table = read_csv(*content, path, findings, {kLargestKeyFile, 4'000'000});
  if (!table) return table.finding();
  for (const Finding& finding : findings) {
    if (finding.code == Code::csv_quote_open) return finding;
  }
  for (const std::vector<Cell>& row : table->rows) {
    if (is_heading(row)) continue;
    std::string line = std::to_string(row[0].line);
    bool pair = row.size() >= 2 && !row[0].text.empty() && !row[1].text.empty();
    if (!pair) return make_finding(Code::key_file_bad, path, {line});
    if (!out.taken_.insert(row[1].text).second) return make_finding(Code::key_file_repeated, path, {line, row[1].text});
    if (!out.codes_.emplace(plain(row[0].text), row[1].text).second) return make_finding(Code::key_file_repeated, path, {line, row[0].text});
  }
  return out;
}

// The next number at random of 1 to 99; once they are used up, of 100 to 999, and so on.
std::string Pseudonyms::draw() {
  for (;;) {
    if (numbers_.empty()) {
      std::uint32_t end = std::max<std::uint32_t>(100, next_block_ * 10);
      numbers_.resize(end - next_block_);
      std::iota(numbers_.begin(), numbers_.end(), next_block_);
      std::shuffle(numbers_.begin(), numbers_.end(), random_);
      next_block_ = end;
    }
    std::uint32_t number = numbers_.back();
    numbers_.pop_back();
    std::string code = (number < 10 ? "P0" : "P") + std::to_string(number);
    if (taken_.insert(code).second) return code;
  }
}

const std::string& Pseudonyms::code(const std::string& label) {
  auto [place, is_new] = codes_.try_emplace(plain(label));
  if (is_new) {
    place->second = draw();
    changed_ = true;
  }
  return place->second;
}

std::vector<std::string> Pseudonyms::labels() const {
  std::vector<std::string> out;
  for (const auto& [label, code] : codes_) out.push_back(label);
  return out;
}

Status Pseudonyms::save() {
  if (!changed_) return Done{};
  std::string content(kHeadings);
  for (const auto& [label, code] : codes_) content += quoted(label) + "," + quoted(code) + "\n";
  if (!replace_file(path_, content)) return make_finding(Code::write_failed, path_, {std::strerror(errno)});  // NOLINT
  changed_ = false;
  return Done{};
}

}  // namespace retort

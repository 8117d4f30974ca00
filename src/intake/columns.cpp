#include "intake/columns.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <set>
#include <span>

#include "base/messages.h"

namespace retort {
namespace {

constexpr std::size_t kNone = AnswerColumns::kNone;
using Words = std::span<const std::string_view>;

// Headings in small letters, words alone, the likelier first.
constexpr std::array<std::string_view, 22> kAnswer = {"answer",
                                                      "your answer",
                                                      "response",
                                                      "your response",
                                                      "pupil answer",
                                                      "pupils answer",
                                                      "student answer",
                                                      "students answer",
                                                      "pupil response",
                                                      "student response",
                                                      "students response",
                                                      "pupils response",
                                                      "written answer",
                                                      "written response",
                                                      "answer text",
                                                      "response text",
                                                      "extended answer",
                                                      "your method",
                                                      "text",
                                                      "answers",
                                                      "responses",
                                                      "draft"};
constexpr std::array<std::string_view, 11> kName = {"label",          "pupil", "student",   "candidate", "pupil name",    "student name",
                                                    "candidate name", "name",  "full name", "your name", "your full name"};
constexpr std::array<std::string_view, 13> kNumber = {
    "pupil number", "student number", "candidate number", "candidate no", "pupil id",      "student id", "candidate id",
    "id",           "code",           "user name",        "username",     "email address", "email"};
constexpr std::array<std::string_view, 4> kFirstName = {"first name", "forename", "given name", "firstname"};
constexpr std::array<std::string_view, 5> kSurname = {"surname", "last name", "family name", "lastname", "second name"};
constexpr std::array<std::string_view, 9> kMark = {"mark", "marks", "mark 1", "mark1", "score", "total mark", "total marks", "total score", "points"};
constexpr std::array<std::string_view, 8> kMark2 = {"mark 2",        "mark2",   "second mark",    "mark by second marker",
                                                    "second marker", "score 2", "moderated mark", "second score"};
constexpr std::array<std::string_view, 8> kGroup = {"group", "class",      "class name", "teaching group",
                                                    "set",   "your class", "your group", "class group"};
constexpr std::array<std::string_view, 1> kRubric = {"rubric"};
// Columns that hold texts which are not the pupil's begin so.
constexpr std::array<std::string_view, 4> kOthers = {"feedback", "comment", "right answer", "model answer"};

// Small letters and digits; anything else parts words, but an apostrophe.
std::string plain(std::string_view heading) {
  std::string out;
  for (std::size_t i = 0; i < heading.size(); ++i) {
    auto c = static_cast<unsigned char>(heading[i]);
    if (c == '\'') continue;
    if (heading.substr(i).starts_with("\xE2\x80\x99")) {
      i += 2;
      continue;
    }
    bool word = std::isalnum(c) != 0 || c >= 0x80;
    if (word)
      out += static_cast<char>(c < 0x80 ? std::tolower(c) : c);
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  while (out.ends_with(' ')) out.pop_back();
  return out;
}

std::string_view cell(const CsvRow& row, std::size_t column) {
  return column < row.cells.size() ? std::string_view(row.cells[column]) : std::string_view();
}

class Finder {
 public:
  Finder(const std::vector<std::string>& headings, const std::vector<CsvRow>& rows, const std::string& file, Findings& findings)
      : headings_(headings), rows_(rows), file_(file), findings_(findings), columns_(headings.size()) {
    for (const std::string& heading : headings) plain_.push_back(plain(heading));
    for (const CsvRow& row : rows) columns_ = std::max(columns_, row.cells.size());
    plain_.resize(columns_);
  }

  Result<AnswerColumns> find(const IntakeOptions& options) {
    named(options.answer_column, "--answer-column", out_.answer);
    named(options.label_column, "--label-column", out_.label);
    named(options.mark_column, "--mark-column", out_.mark);
    named(options.mark2_column, "--mark2-column", out_.mark2);
    named(options.group_column, "--group-column", out_.group);
    if (fault_) return *fault_;
    by_headings();
    if (out_.answer == kNone) guess();
    if (out_.answer == kNone) return make_finding(Code::answers_no_column, file_, {all_headings()});
    return out_;
  }

 private:
  // By heading as it stands, else by heading without case and signs, else by number.
  [[nodiscard]] std::size_t column_called(const std::string& name) const {
    auto exact = std::find(headings_.begin(), headings_.end(), name);
    if (exact != headings_.end()) return static_cast<std::size_t>(exact - headings_.begin());
    auto near = std::find(plain_.begin(), plain_.end(), plain(name));
    if (near != plain_.end() && !near->empty()) return static_cast<std::size_t>(near - plain_.begin());
    bool number = !name.empty() && name.size() <= 4 && std::all_of(name.begin(), name.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
    std::size_t from_left = number ? std::stoul(name) : 0;
    return from_left >= 1 && from_left <= columns_ ? from_left - 1 : kNone;
  }

  void named(const std::string& name, const char* option, std::size_t& out) {
    if (name.empty() || fault_) return;
    out = column_called(name);
    if (out == kNone) {
      fault_ = make_finding(Code::answers_column_missing, file_, {printable(name), option, all_headings()});
      return;
    }
    for (const auto& [column, other] : named_) {
      if (column == out) fault_ = make_finding(Code::answers_column_twice, file_, {heading(out), other, option});
    }
    named_.emplace_back(out, option);
  }

  void by_headings() {
    if (out_.answer == kNone) out_.answer = first_of(kAnswer);
    if (out_.answer == kNone) out_.answer = numbered_answer();
    if (out_.label == kNone) find_label();
    if (out_.mark2 == kNone) out_.mark2 = first_of(kMark2);
    if (out_.mark == kNone) out_.mark = first_of(kMark);
    if (out_.group == kNone) out_.group = first_of(kGroup);
    out_.rubric = first_of(kRubric);
  }

  [[nodiscard]] bool taken(std::size_t column) const {
    return column == out_.answer || column == out_.label || column == out_.surname || column == out_.mark || column == out_.mark2 ||
           column == out_.group || column == out_.rubric;
  }

  [[nodiscard]] std::size_t first_of(Words words) const {
    for (std::string_view word : words) {
      for (std::size_t i = 0; i < columns_; ++i) {
        if (plain_[i] == word && !taken(i)) return i;
      }
    }
    return kNone;
  }

  // "Answer 1", if there is no "Answer 2".
  [[nodiscard]] std::size_t numbered_answer() const {
    std::size_t found = kNone;
    for (std::size_t i = 0; i < columns_; ++i) {
      std::string_view name = plain_[i];
      bool numbered = (name.starts_with("answer ") || name.starts_with("response ")) &&
                      name.find_first_not_of("0123456789", name.find(' ') + 1) == std::string_view::npos;
      if (!numbered || taken(i)) continue;
      if (found != kNone) return kNone;
      found = i;
    }
    return found;
  }

  // A label tells pupils apart: a column that is empty, or the same for all ("anonymous"), is passed over.
  [[nodiscard]] bool tells_apart(std::size_t column) const {
    std::set<std::string_view> different;
    for (const CsvRow& row : rows_) different.insert(cell(row, column));
    different.erase("");
    return rows_.size() < 2 ? true : different.size() >= 2;
  }

  void find_label() {
    auto usable = [&](Words words) {
      std::size_t found = first_of(words);
      return found != kNone && tells_apart(found) ? found : kNone;
    };
    auto any_of = [&](Words words) {
      for (std::string_view word : words) {
        if (std::size_t found = usable(Words(&word, 1)); found != kNone) return found;
      }
      return kNone;
    };
    out_.label = any_of(kName);
    if (out_.label != kNone) return;
    std::size_t first = any_of(kFirstName);
    std::size_t last = any_of(kSurname);
    out_.label = first != kNone ? first : last;
    if (first != kNone && last != kNone) out_.surname = last;
    if (out_.label == kNone) out_.label = any_of(kNumber);
  }

  [[nodiscard]] bool somebody_elses(std::size_t column) const {
    return std::any_of(kOthers.begin(), kOthers.end(), [&](std::string_view word) { return plain_[column].starts_with(word); });
  }

  // The column whose texts are longest on the whole, have several words and are not all the same.
  void guess() {
    std::size_t most = 0;
    for (std::size_t i = 0; i < columns_; ++i) {
      if (taken(i) || somebody_elses(i) || (rows_.size() >= 2 && !tells_apart(i))) continue;
      std::size_t bytes = 0;
      bool words = false;
      for (const CsvRow& row : rows_) {
        std::string_view text = cell(row, i);
        bytes += text.size();
        words = words || std::count(text.begin(), text.end(), ' ') >= 2;
      }
      if (!words || bytes <= most) continue;
      most = bytes;
      out_.answer = i;
    }
    if (out_.answer != kNone) findings_.push_back(make_finding(Code::answers_column_guessed, file_, {heading(out_.answer), all_headings()}));
  }

  [[nodiscard]] std::string heading(std::size_t column) const {
    bool there = column < headings_.size() && !headings_[column].empty();
    return there ? printable(headings_[column], 60) : "column " + std::to_string(column + 1);
  }

  [[nodiscard]] std::string all_headings() const {
    constexpr std::size_t kShown = 20;
    std::string out;
    for (std::size_t i = 0; i < std::min(columns_, kShown); ++i) out += (i == 0 ? "'" : ", '") + heading(i) + "'";
    if (columns_ > kShown) out += " and " + std::to_string(columns_ - kShown) + " more";
    return out.empty() ? "none" : out;
  }

  const std::vector<std::string>& headings_;
  const std::vector<CsvRow>& rows_;
  const std::string& file_;
  Findings& findings_;
  std::size_t columns_;
  std::vector<std::string> plain_;
  std::vector<std::pair<std::size_t, std::string>> named_;
  std::optional<Finding> fault_;
  AnswerColumns out_;
};

}  // namespace

Result<AnswerColumns> find_answer_columns(const std::vector<std::string>& headings, const std::vector<CsvRow>& rows, const IntakeOptions& options,
                                          const std::string& file, Findings& findings) {
  return Finder(headings, rows, file, findings).find(options);
}

}  // namespace retort

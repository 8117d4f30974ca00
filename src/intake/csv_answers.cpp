#include "intake/csv_answers.h"

#include <cctype>
#include <cstring>
#include <deque>

#include "base/messages.h"
#include "intake/columns.h"
#include "intake/csv_rows.h"
#include "intake/pseudonyms.h"

namespace retort {
namespace {

constexpr std::size_t kRowsLookedAt = 50;
constexpr std::size_t kBlankNamed = 100;

// "4", "4.0", "4 / 6" → 4; -1 if it is none of these.
int read_mark(std::string_view text) {
  std::size_t slash = text.find('/');
  text = text.substr(0, slash);
  while (text.ends_with(' ')) text.remove_suffix(1);
  std::size_t digits = 0;
  int value = 0;
  while (digits < text.size() && digits < 4 && std::isdigit(static_cast<unsigned char>(text[digits])) != 0)
    value = value * 10 + (text[digits++] - '0');
  std::string_view rest = text.substr(digits);
  bool zeros = rest.size() > 1 && (rest[0] == '.' || rest[0] == ',') && rest.find_first_not_of('0', 1) == std::string_view::npos;
  return digits > 0 && value <= 100 && (rest.empty() || zeros) ? value : -1;
}

class CsvAnswers : public AnswerSource {
 public:
  CsvAnswers(Descriptor file, std::string name, const IntakeOptions& options)
      : file_(std::move(file)), rows_(file_.get()), name_(std::move(name)), options_(options) {}

  bool next(Answer& out, Findings& findings) override {
    if (!begun_ && !begin(findings)) return false;
    CsvRow row;
    while (next_row(row, findings)) {
      if (take(row, out, findings)) return true;
    }
    finish(findings);
    return false;
  }

  [[nodiscard]] bool ready() const override { return begun_ && (!ahead_.empty() || rows_.ready()); }

 private:
  bool begin(Findings& findings) {
    begun_ = true;
    CsvRow row;
    while (ahead_.size() <= kRowsLookedAt && read_row(row, findings)) ahead_.push_back(std::move(row));
    if (!ahead_.empty()) {
      headings_ = std::move(ahead_.front().cells);
      ahead_.pop_front();
    }
    std::vector<CsvRow> looked(ahead_.begin(), ahead_.end());
    Result<AnswerColumns> columns = find_answer_columns(headings_, looked, options_, name_, findings);
    if (!columns) {
      fail(columns.finding(), findings);
      ahead_.clear();
      done_ = true;
      return false;
    }
    columns_ = *columns;
    return true;
  }

  bool next_row(CsvRow& row, Findings& findings) {
    if (ahead_.empty()) return !done_ && read_row(row, findings);
    row = std::move(ahead_.front());
    ahead_.pop_front();
    return true;
  }

  bool read_row(CsvRow& row, Findings& findings) {
    if (done_) return false;
    CsvRows::Got got = rows_.next(row);
    if (got == CsvRows::Got::row) return true;
    done_ = true;
    if (got == CsvRows::Got::failed) fail(make_finding(Code::file_unreadable, name_, {std::strerror(rows_.error())}), findings);  // NOLINT
    if (got == CsvRows::Got::too_long)
      fail(make_finding(Code::answers_row_too_long, name_, {std::to_string(row.number), std::to_string(row.line), std::to_string(kLongestLine)}),
           findings);
    return false;
  }

  static std::string cell(CsvRow& row, std::size_t column) { return column < row.cells.size() ? std::move(row.cells[column]) : std::string(); }

  bool take(CsvRow& row, Answer& out, Findings& findings) {
    out = Answer{};
    out.origin = name_;
    out.text = cell(row, columns_.answer);
    out.id = cell(row, columns_.label);
    std::string surname = cell(row, columns_.surname);
    if (!surname.empty()) out.id += (out.id.empty() ? "" : " ") + surname;
    out.labelled = !out.id.empty();
    if (!out.labelled) out.id = "row " + std::to_string(row.number);
    disguise(out, options_.pseudonyms);
    if (out.text.find_first_not_of(" \t\r\n") == std::string::npos) {
      note_blank(row.number, out.id, findings);
      return false;
    }
    if (out.text.size() > kLongestAnswer) {
      std::string where = name_ + ", row " + std::to_string(row.number);
      fail(make_finding(Code::answer_too_long, where, {std::to_string(out.text.size()), std::to_string(kLongestAnswer)}), findings);
      return false;
    }
    out.mark = mark(row, columns_.mark, findings);
    out.mark2 = mark(row, columns_.mark2, findings);
    out.group = cell(row, columns_.group);
    out.rubric = cell(row, columns_.rubric);
    return true;
  }

  void note_blank(std::size_t number, const std::string& id, Findings& findings) {
    if (++blank_ <= kBlankNamed) findings.push_back(make_finding(Code::answers_blank, name_, {std::to_string(number), printable(id)}));
  }

  int mark(CsvRow& row, std::size_t column, Findings& findings) {
    std::string text = cell(row, column);
    if (text.empty()) return -1;
    int value = read_mark(text);
    std::string heading = column < headings_.size() ? printable(headings_[column]) : "column " + std::to_string(column + 1);
    if (value < 0) findings.push_back(make_finding(Code::answer_mark_bad, name_, {std::to_string(row.line), heading}));
    return value;
  }

  void finish(Findings& findings) {
    if (finished_) return;
    finished_ = true;
    if (blank_ > kBlankNamed) findings.push_back(make_finding(Code::answers_more_blank, name_, {std::to_string(blank_ - kBlankNamed)}));
    if (rows_.odd_bytes() > 0) findings.push_back(make_finding(Code::csv_not_utf8, name_, {std::to_string(rows_.odd_bytes())}));
    if (rows_.quote_open()) findings.push_back(make_finding(Code::csv_quote_open, name_ + ", row " + std::to_string(rows_.last())));
  }

  Descriptor file_;
  CsvRows rows_;
  std::string name_;
  IntakeOptions options_;
  std::vector<std::string> headings_;
  AnswerColumns columns_;
  std::deque<CsvRow> ahead_;  // read to find the columns
  std::size_t blank_ = 0;
  bool begun_ = false;
  bool done_ = false;
  bool finished_ = false;
};

}  // namespace

std::unique_ptr<AnswerSource> open_csv_answers(Descriptor file, std::string name, const IntakeOptions& options) {
  return std::make_unique<CsvAnswers>(std::move(file), std::move(name), options);
}

}  // namespace retort

#include "intake/csv.h"

#include <csv.h>

#include <algorithm>
#include <array>
#include <map>
#include <memory>

#include "intake/windows_text.h"

namespace retort {
namespace {

constexpr std::string_view kDelimiters = "\t;|,";  // of equal ones the first: commas may be decimal
constexpr std::size_t kLinesLookedAt = 100;

bool blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

// Takes the parser's cells, which come one byte after they end.
class Builder {
 public:
  Builder(std::string_view content, std::size_t begin, const std::string& file, Findings& findings, std::size_t most)
      : content_(content), file_(file), findings_(findings), cell_begin_(begin), most_(most) {
    row_.reserve(16);
    text_end_ = content.size();
    while (text_end_ > 0 && blank(content[text_end_ - 1])) --text_end_;
  }

  void cell(std::string_view text) {
    Cell out;
    out.span = place();
    out.line = line_at(out.span.begin);
    out.text = as_utf8(text, odd_bytes_);
    if (odd_bytes_ > 0 && odd_.empty()) odd_ = out.span;
    if (left_open(out.span)) findings_.push_back(make_finding(Code::csv_quote_open, file_, out.span));
    any_ = any_ || !out.text.empty();
    row_.push_back(std::move(out));
    ++cells_;
    cell_begin_ = at_ + 1;
  }

  void row() {
    if (any_) table_.rows.push_back(std::move(row_));
    row_.clear();
    any_ = false;
  }

  void at(std::size_t offset) { at_ = offset; }
  [[nodiscard]] bool full() const { return cells_ > most_; }

  Table finish() {
    if (odd_bytes_ > 0) findings_.push_back(make_finding(Code::csv_not_utf8, file_, odd_, {std::to_string(odd_bytes_)}));
    return std::move(table_);
  }

 private:
  // The bytes of the cell that ends before the byte now read.
  [[nodiscard]] Span place() const {
    std::size_t begin = cell_begin_;
    std::size_t end = std::min(at_, content_.size());
    while (begin < end && blank(content_[begin])) ++begin;
    while (end > begin && blank(content_[end - 1])) --end;
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  }

  std::uint32_t line_at(std::size_t offset) {
    for (; counted_ < offset; ++counted_) {
      bool lone_return = content_[counted_] == '\r' && (counted_ + 1 == content_.size() || content_[counted_ + 1] != '\n');
      if (content_[counted_] == '\n' || lone_return) ++line_;
    }
    return line_;
  }

  // A quote that is opened and not closed takes in the rest of the file.
  [[nodiscard]] bool left_open(Span span) const {
    std::string_view raw = span.of(content_);
    return raw.starts_with('"') && std::count(raw.begin(), raw.end(), '"') % 2 == 1 && span.end == text_end_;
  }

  std::string_view content_;
  const std::string& file_;
  Findings& findings_;
  Table table_;
  std::vector<Cell> row_;
  std::size_t cell_begin_;
  std::size_t at_ = 0;       // the byte now read
  std::size_t counted_ = 0;  // bytes whose line ends are counted
  std::uint32_t line_ = 1;
  std::size_t cells_ = 0;
  std::size_t most_;
  std::size_t text_end_;     // behind the last byte that is no blank
  std::size_t odd_bytes_ = 0;
  Span odd_;
  bool any_ = false;
};

void on_cell(void* text, std::size_t size, void* builder) {
  static_cast<Builder*>(builder)->cell({static_cast<const char*>(text), size});
}
void on_row(int, void* builder) { static_cast<Builder*>(builder)->row(); }

struct Parser {
  csv_parser state{};
  bool ready = csv_init(&state, 0) == 0;
  Parser() = default;
  Parser(const Parser&) = delete;
  Parser& operator=(const Parser&) = delete;
  ~Parser() {
    if (ready) csv_free(&state);
  }
};

// Where the first cell begins: behind the byte order mark and the line "sep=;", whose delimiter is given back.
std::size_t skip_head(std::string_view content, char& delimiter) {
  std::size_t begin = content.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  std::string_view rest = content.substr(begin);
  bool named = rest.starts_with("sep=") && rest.size() > 5 && (rest[5] == '\r' || rest[5] == '\n');
  if (!named) return begin;
  delimiter = rest[4];
  return begin + 5;
}

// How often each delimiter stands in each of the first lines, outside quotes.
std::vector<std::array<std::size_t, 4>> count_delimiters(std::string_view content) {
  std::vector<std::array<std::size_t, 4>> lines;
  std::array<std::size_t, 4> counts{};
  bool quoted = false;
  bool any = false;
  for (char c : content) {
    if (c == '"') quoted = !quoted;
    bool end = !quoted && (c == '\n' || c == '\r');
    if (end && any) lines.push_back(counts);
    if (lines.size() == kLinesLookedAt) return lines;
    if (end) {
      counts = {};
      any = false;
      continue;
    }
    std::size_t which = quoted ? std::string_view::npos : kDelimiters.find(c);
    if (which != std::string_view::npos) ++counts[which];
    any = any || !blank(c);
  }
  if (any) lines.push_back(counts);
  return lines;
}

}  // namespace

char find_delimiter(std::string_view content) {
  auto lines = count_delimiters(content);
  char best = ',';
  std::size_t most = 0;
  for (std::size_t d = 0; d < kDelimiters.size(); ++d) {
    std::map<std::size_t, std::size_t> same;  // count in a line → lines
    for (const auto& line : lines) {
      if (line[d] > 0) ++same[line[d]];
    }
    for (const auto& [count, of_lines] : same) {
      if (of_lines <= most) continue;
      most = of_lines;
      best = kDelimiters[d];
    }
  }
  return best;
}

Result<Table> read_csv(std::string_view content, const std::string& file, Findings& findings, const CsvLimits& limits) {
  if (content.size() > limits.bytes) {
    return make_finding(Code::file_too_large, file, {std::to_string(content.size()), std::to_string(limits.bytes)});
  }
  bool wide = content.starts_with("\xFF\xFE") || content.starts_with("\xFE\xFF");
  if (wide || content.find('\0') != std::string_view::npos) return make_finding(Code::csv_not_text, file);
  char delimiter = '\0';
  std::size_t begin = skip_head(content, delimiter);
  if (delimiter == '\0') delimiter = find_delimiter(content.substr(begin));
  Parser parser;
  csv_set_delim(&parser.state, static_cast<unsigned char>(delimiter));
  Builder builder(content, begin, file, findings, limits.cells);
  for (std::size_t i = begin; parser.ready && i < content.size(); ++i) {
    builder.at(i);
    // one byte at a time, since the parser does not say where its cells stood
    if (csv_parse(&parser.state, &content[i], 1, on_cell, on_row, &builder) != 1) {
      return make_finding(Code::csv_syntax, file, Span{static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(i + 1)}, {csv_strerror(csv_error(&parser.state))});
    }
    if (builder.full()) return make_finding(Code::csv_too_many_cells, file, {std::to_string(limits.cells)});
  }
  builder.at(content.size());
  csv_fini(&parser.state, on_cell, on_row, &builder);
  Table table = builder.finish();
  table.delimiter = delimiter;
  return table;
}

}  // namespace retort

#include "intake/csv_rows.h"

#include <unistd.h>

#include <cerrno>

#include "intake/answer.h"
#include "intake/csv.h"
#include "intake/windows_text.h"

namespace retort {
namespace {

constexpr std::size_t kHead = 1U << 18;  // bytes looked at to find encoding and delimiter
constexpr std::size_t kChunk = 1U << 16;
constexpr int kBetweenRows = 0;  // libcsv's ROW_NOT_BEGUN

bool blank(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

}  // namespace

CsvRows::CsvRows(int fd) : fd_(fd), ready_(csv_init(&parser_, 0) == 0) {
  csv_set_blk_size(&parser_, kChunk);
}

CsvRows::~CsvRows() {
  if (ready_) csv_free(&parser_);
}

void CsvRows::on_cell(void* text, std::size_t size, void* self) {
  auto& rows = *static_cast<CsvRows*>(self);
  if (rows.row_.cells.size() >= kMostColumns) return;
  rows.row_.cells.push_back(as_utf8({static_cast<const char*>(text), size}, rows.odd_bytes_));
  rows.any_ = rows.any_ || !blank(rows.row_.cells.back());
}

void CsvRows::on_row(int, void* self) {
  auto& rows = *static_cast<CsvRows*>(self);
  rows.row_.number = rows.number_++;
  if (rows.any_) rows.rows_.push_back(std::move(rows.row_));
  rows.row_ = {};
  rows.any_ = false;
  rows.row_bytes_ = 0;
}

bool CsvRows::read_more(std::string& raw) {
  std::size_t before = raw.size();
  raw.resize(before + kChunk);
  ssize_t got = 0;
  do {
    got = ::read(fd_, raw.data() + before, kChunk);
  } while (got < 0 && errno == EINTR);
  if (got < 0) error_ = errno;
  raw.resize(before + (got > 0 ? static_cast<std::size_t>(got) : 0));
  end_ = got <= 0;
  return !end_;
}

// Reads enough to know how the file is written.
void CsvRows::begin() {
  begun_ = true;
  std::string raw;
  while (raw.size() < kHead && read_more(raw)) {
  }
  Utf16Order order = utf16_order(raw);
  std::string head;
  if (order == Utf16Order::none) {
    head = std::move(raw);
  } else {
    utf16_.emplace(order == Utf16Order::big);
    utf16_->append(raw, head);
  }
  std::string_view text = head;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  bool named = text.starts_with("sep=") && text.size() > 5 && (text[5] == '\r' || text[5] == '\n');
  char delimiter = named ? text[4] : find_delimiter(text);
  csv_set_delim(&parser_, static_cast<unsigned char>(delimiter));
  if (text.find('\n') == std::string_view::npos && text.find('\r') != std::string_view::npos) line_end_ = '\r';
  if (named) {
    std::size_t stop = text.find(line_end_);
    text.remove_prefix(stop == std::string_view::npos ? text.size() : stop + 1);
    ++line_;
  }
  feed(text);
}

void CsvRows::feed(std::string_view text) {
  while (!text.empty() && !too_long_) {
    std::size_t stop = text.find(line_end_);
    std::size_t size = stop == std::string_view::npos ? text.size() : stop + 1;
    feed_line(text.substr(0, size));
    if (stop != std::string_view::npos) ++line_;
    text.remove_prefix(size);
  }
}

void CsvRows::feed_line(std::string_view line) {
  if (parser_.pstate == kBetweenRows) {
    row_.line = line_;
    if (blank(line) && line.ends_with(line_end_) && parser_.delim_char != '\t') ++number_;
  }
  row_bytes_ += line.size();
  if (row_bytes_ > kLongestLine) {
    too_long_ = true;
    return;
  }
  if (csv_parse(&parser_, line.data(), line.size(), on_cell, on_row, this) != line.size()) {
    error_ = ENOMEM;  // without CSV_STRICT, all that can fail
    end_ = true;
  }
  if (parser_.pstate == kBetweenRows) row_bytes_ = 0;
}

void CsvRows::finish() {
  csv_set_opts(&parser_, CSV_STRICT | CSV_STRICT_FINI);  // only so does it tell of an open quote
  if (csv_fini(&parser_, on_cell, on_row, this) == 0) return;
  quote_open_ = true;
  csv_set_opts(&parser_, 0);
  csv_fini(&parser_, on_cell, on_row, this);
}

CsvRows::Got CsvRows::next(CsvRow& out) {
  if (!ready_) error_ = ENOMEM;
  if (!begun_ && ready_) begin();
  std::string raw;
  std::string text;
  bool finished = false;
  while (rows_.empty() && !too_long_ && error_ == 0 && !finished) {
    raw.clear();
    text.clear();
    bool more = !end_ && read_more(raw);
    if (utf16_) utf16_->append(raw, text);
    if (utf16_ && !more) utf16_->finish(text);
    feed(utf16_ ? std::string_view(text) : std::string_view(raw));
    if (!more && error_ == 0 && !too_long_) finish();
    finished = !more;
  }
  if (!rows_.empty()) {
    out = std::move(rows_.front());
    rows_.pop_front();
    return Got::row;
  }
  out = {{}, number_, row_.line};
  if (too_long_) return Got::too_long;
  return error_ != 0 ? Got::failed : Got::end;
}

}  // namespace retort

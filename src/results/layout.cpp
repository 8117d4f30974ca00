#include "results/layout.h"

#include <algorithm>

#include "results/comma.h"

namespace retort::results {
namespace {

using Row = std::vector<Cell>;

constexpr std::size_t kMostHeadingRows = 3;
constexpr std::size_t kMostColumns = 100;

class Finder {
 public:
  Finder(const Table& table, const Wanted& wanted, const std::string& file, Findings& findings)
      : table_(table), wanted_(wanted), file_(file), findings_(findings) {
    layout_.comma = find_comma(table);
  }

  std::optional<Layout> run() {
    for (const Row& row : table_.rows) columns_ = std::max(columns_, row.size());
    if (columns_ > kMostColumns) {
      findings_.push_back(make_finding(Code::results_too_many_columns, file_, {std::to_string(columns_), std::to_string(kMostColumns)}));
      return std::nullopt;
    }
    find_first_row();
    read_headings();
    count_numbers();
    if (!choose_x() || !choose_y()) return std::nullopt;
    choose_mean();
    share_units();
    list_unused();
    return std::move(layout_);
  }

 private:
  [[nodiscard]] const std::string& text(std::size_t row, std::size_t column) const {
    static const std::string kNone;
    const Row& cells = table_.rows[row];
    return column < cells.size() ? cells[column].text : kNone;
  }
  [[nodiscard]] bool number(std::size_t row, std::size_t column) const {
    auto got = read_number(text(row, column), layout_.comma);
    return got && (got->rest.empty() || read_unit(got->rest).has_value());
  }

  // "1, 2, 3" under or beside a heading: numbers of repeats, not readings.
  [[nodiscard]] bool numbers_of_repeats(std::size_t row) const {
    int next = 1;
    bool other = false;
    for (std::size_t c = 0; c < table_.rows[row].size(); ++c) {
      if (text(row, c) == std::to_string(next)) ++next;
      else if (number(row, c)) return false;
      else other = other || next == 1;
    }
    return next > 2 && other;
  }

  void find_first_row() {
    std::size_t r = 0;
    for (; r < table_.rows.size(); ++r) {
      bool any = false;
      for (std::size_t c = 0; c < table_.rows[r].size(); ++c) any = any || number(r, c);
      if (any && !numbers_of_repeats(r)) break;
    }
    layout_.first_row = r;
  }

  // A row with a lone text in its first cell is a title, unless it is the only one above the readings.
  [[nodiscard]] bool title(std::size_t row) const {
    std::size_t filled = 0;
    for (const Cell& cell : table_.rows[row]) filled += cell.text.empty() ? 0U : 1U;
    return filled == 1 && !text(row, 0).empty() && row + 1 < layout_.first_row && columns_ > 1;
  }

  void read_headings() {
    std::size_t first = layout_.first_row > kMostHeadingRows ? layout_.first_row - kMostHeadingRows : 0;
    while (first < layout_.first_row && title(first)) ++first;
    std::vector<std::string> texts(columns_);
    for (std::size_t r = first; r < layout_.first_row; ++r) {
      bool last = r + 1 == layout_.first_row;
      std::string carried;
      for (std::size_t c = 0; c < columns_; ++c) {
        std::string part = text(r, c);
        if (!part.empty()) carried = part;
        // a merged heading stands in the first of its columns only
        bool below = last ? has_number(c) : !text(r + 1, c).empty();
        if (part.empty() && below && texts[c].empty() && c > 0) part = carried;
        join(texts[c], part);
      }
    }
    for (const std::string& heading : texts) layout_.headings.push_back(read_heading(heading));
    if (layout_.first_row == 0) findings_.push_back(make_finding(Code::results_no_headings, file_));
  }

  static void join(std::string& heading, const std::string& part) {
    if (part.empty()) return;
    bool unit = !heading.empty() && is_unit_alone(part);
    // the unit of a merged heading goes to the end: "Time / s" over "1" is "Time 1 / s"
    if (!heading.empty() && !unit) {
      Heading above = read_heading(heading);
      heading = above.quantity + " " + part + (above.unit.empty() ? "" : " / " + above.unit);
      return;
    }
    bool marked = part.starts_with('/') || part.starts_with('(') || part.starts_with('[');
    heading += unit && !marked ? " / " + part : (heading.empty() ? "" : " ") + part;
  }

  bool has_number(std::size_t column) const {
    for (std::size_t r = layout_.first_row; r < table_.rows.size(); ++r) {
      if (number(r, column)) return true;
    }
    return false;
  }

  void count_numbers() {
    for (std::size_t c = 0; c < columns_; ++c) {
      if (has_number(c)) usable_.push_back(c);
    }
  }

  [[nodiscard]] std::string name_of(std::size_t column) const {
    const Heading& heading = layout_.headings[column];
    return heading.text.empty() ? "column " + std::to_string(column + 1) : heading.text;
  }

  // The column that a user means by `name`: its heading, its quantity, or its number.
  [[nodiscard]] std::optional<std::size_t> named(const std::string& name) const {
    std::string wanted = folded(name);
    auto by = [&](auto matches) -> std::optional<std::size_t> {
      for (std::size_t c : usable_) {
        if (matches(layout_.headings[c])) return c;
      }
      return std::nullopt;
    };
    if (auto c = by([&](const Heading& h) { return folded(h.text) == wanted; })) return c;
    if (auto c = by([&](const Heading& h) { return h.role == ColumnRole::reading && (folded(h.quantity) == wanted || folded(h.plain) == wanted); })) return c;
    if (auto c = by([&](const Heading& h) { return has_words(h.text, wanted); })) return c;
    for (std::size_t c : usable_) {
      if (wanted == std::to_string(c + 1)) return c;
    }
    return std::nullopt;
  }

  std::optional<std::size_t> wanted_column(const std::string& name, bool& good) {
    if (name.empty()) return std::nullopt;
    auto column = named(name);
    if (column) return column;
    std::string known;
    for (std::size_t c : usable_) known += (known.empty() ? "'" : ", '") + name_of(c) + "'";
    findings_.push_back(make_finding(Code::results_no_column, file_, {name, known}));
    good = false;
    return std::nullopt;
  }

  [[nodiscard]] std::optional<std::size_t> guided(const std::vector<std::string>& names) const {
    for (const std::string& name : names) {
      for (std::size_t c : usable_) {
        const Heading& heading = layout_.headings[c];
        if (heading.role == ColumnRole::reading && (folded(heading.quantity) == folded(name) || has_words(heading.quantity, name))) return c;
      }
    }
    return std::nullopt;
  }

  bool choose_x() {
    bool good = true;
    std::optional<std::size_t> x = wanted_column(wanted_.x, good);
    if (!good) return false;
    if (usable_.size() < 2) {
      findings_.push_back(make_finding(Code::results_too_few_columns, file_));
      return false;
    }
    if (!x && wanted_.guide != nullptr) x = guided(wanted_.guide->x);
    // "Run, Force / N, Length / cm": the number of the run is no variable
    bool label = layout_.headings[usable_[0]].role == ColumnRole::label && usable_.size() > 2 && !all_labels();
    layout_.x = x ? *x : usable_[label ? 1 : 0];
    return true;
  }

  [[nodiscard]] bool all_labels() const {
    return std::all_of(usable_.begin(), usable_.end(), [&](std::size_t c) { return layout_.headings[c].role == ColumnRole::label; });
  }

  [[nodiscard]] bool may_be_y(std::size_t column) const {
    return column != layout_.x && layout_.headings[column].role == ColumnRole::reading;
  }

  // Columns of the same quantity and unit as `column`: its repeats.
  [[nodiscard]] std::vector<std::size_t> repeats_of(std::size_t column) const {
    const Heading& first = layout_.headings[column];
    std::vector<std::size_t> out;
    for (std::size_t c : usable_) {
      const Heading& heading = layout_.headings[c];
      bool same = folded(heading.quantity) == folded(first.quantity) && heading.unit == first.unit;
      if (may_be_y(c) && same) out.push_back(c);
    }
    return out;
  }

  bool choose_y() {
    bool good = true;
    std::optional<std::size_t> y = wanted_column(wanted_.y, good);
    if (!good) return false;
    if (!y && wanted_.guide != nullptr) {
      y = guided(wanted_.guide->y);
      if (y && *y == layout_.x) y.reset();
    }
    if (y) {
      layout_.y = layout_.headings[*y].role == ColumnRole::reading ? repeats_of(*y) : std::vector<std::size_t>{*y};
      if (layout_.y.empty() || std::find(layout_.y.begin(), layout_.y.end(), *y) == layout_.y.end()) layout_.y = {*y};
      if (*y != layout_.x) return true;
      findings_.push_back(make_finding(Code::results_same_column, file_, {name_of(*y)}));
      return false;
    }
    choose_last_y();
    if (!layout_.y.empty()) return true;
    findings_.push_back(make_finding(Code::results_too_few_columns, file_));
    return false;
  }

  // The last group of repeats; without repeats the last column of readings, or of means.
  void choose_last_y() {
    for (std::size_t c : usable_) {
      if (!may_be_y(c)) continue;
      std::vector<std::size_t> group = repeats_of(c);
      if (group.size() > 1 || layout_.y.size() <= 1) layout_.y = group;
    }
    if (!layout_.y.empty()) return;
    for (std::size_t c : usable_) {
      if (c != layout_.x && layout_.headings[c].role == ColumnRole::mean) layout_.y = {c};
    }
    for (std::size_t i = usable_.size(); layout_.y.empty() && i-- > 0;) {
      if (usable_[i] != layout_.x) layout_.y = {usable_[i]};
    }
  }

  [[nodiscard]] bool is_y(std::size_t column) const { return std::find(layout_.y.begin(), layout_.y.end(), column) != layout_.y.end(); }

  // The mean of this quantity, or one that names none and stands behind the readings.
  void choose_mean() {
    const Heading& y = layout_.headings[layout_.y[0]];
    for (std::size_t c : usable_) {
      const Heading& heading = layout_.headings[c];
      if (heading.role != ColumnRole::mean || is_y(c) || c == layout_.x) continue;
      bool same = folded(heading.quantity) == folded(y.quantity) || heading.quantity.empty() || y.quantity.empty();
      bool unit = heading.unit == y.unit || heading.unit.empty() || y.unit.empty();
      if (same && unit && c > layout_.y[0] && !layout_.mean) layout_.mean = c;
    }
  }

  // "run 1, run 2, mean time / s": quantity and unit stand over the mean alone.
  void share_units() {
    if (!layout_.mean) return;
    Heading& mean = layout_.headings[*layout_.mean];
    for (std::size_t c : layout_.y) {
      Heading& heading = layout_.headings[c];
      if (heading.quantity.empty()) heading.quantity = mean.quantity;
      if (!heading.unit.empty()) continue;
      heading.unit = mean.unit;
      heading.compound = mean.compound;
    }
  }

  void list_unused() {
    for (std::size_t c : usable_) {
      bool used = c == layout_.x || is_y(c) || (layout_.mean && c == *layout_.mean);
      if (!used && layout_.headings[c].role == ColumnRole::reading) layout_.unused.push_back(c);
    }
  }

  const Table& table_;
  const Wanted& wanted_;
  const std::string& file_;
  Findings& findings_;
  Layout layout_;
  std::size_t columns_ = 0;
  std::vector<std::size_t> usable_;  // columns with any number in them
};

}  // namespace

std::optional<Layout> find_layout(const Table& table, const Wanted& wanted, const std::string& file, Findings& findings) {
  return Finder(table, wanted, file, findings).run();
}

}  // namespace retort::results

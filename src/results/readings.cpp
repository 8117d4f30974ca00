#include "results/readings.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/messages.h"

namespace retort::results {
namespace {

constexpr std::array<std::string_view, 11> kNoReading = {"-", "--", "\u2013", "\u2014", "n/a", "na", "none", ".", "...", "\u2026", "?"};

bool no_reading(std::string_view text) {
  std::string small = folded(text);
  return small.empty() || std::find(kNoReading.begin(), kNoReading.end(), small) != kNoReading.end();
}

constexpr std::size_t kLongestName = 60;  // bytes; a name stands in many sentences

Quantity quantity_of(const Heading& heading, bool numbered, std::string_view otherwise) {
  Quantity out;
  const std::string& name = numbered ? heading.plain : heading.quantity;
  out.name = name.empty() ? std::string(otherwise) : printable(name, kLongestName);
  out.unit = heading.unit;
  out.compound = heading.compound;
  return out;
}

class Gatherer {
 public:
  Gatherer(const Table& table, const Layout& layout, const std::string& file, Findings& findings)
      : table_(table), layout_(layout), file_(file), findings_(findings) {
    out_.x = quantity_of(layout.headings[layout.x], alone(layout.x), "x");
    out_.y = quantity_of(layout.headings[layout.y[0]], alone(layout.y[0]), "y");
  }

  Readings run() {
    for (std::size_t r = layout_.first_row; r < table_.rows.size(); ++r) add_row(r);
    return std::move(out_);
  }

 private:
  // A lone column keeps the number at its end: "v1" is a name, "time 1" beside "time 2" is a repeat.
  [[nodiscard]] bool alone(std::size_t column) const {
    const Heading& own = layout_.headings[column];
    auto same = [&](const Heading& h) { return h.role == ColumnRole::reading && folded(h.quantity) == folded(own.quantity) && h.unit == own.unit; };
    return std::count_if(layout_.headings.begin(), layout_.headings.end(), same) <= 1;
  }
  [[nodiscard]] const Cell* cell(std::size_t row, std::size_t column) const {
    const auto& cells = table_.rows[row];
    return column < cells.size() ? &cells[column] : nullptr;
  }
  // Where a cell is, or would be: the end of its row.
  [[nodiscard]] Span place(std::size_t row, std::size_t column) const {
    if (const Cell* at = cell(row, column)) return at->span;
    std::uint32_t end = table_.rows[row].back().span.end;
    return {end, end};
  }
  void report(Code code, std::size_t row, std::size_t column, std::vector<std::string> notes = {}) {
    notes.insert(notes.begin(), column_name(layout_, column));
    findings_.push_back(make_finding(code, file_, place(row, column), std::move(notes)));
  }

  void add_row(std::size_t row) {
    std::optional<Reading> x = read(row, layout_.x, out_.x, false);
    bool any = std::any_of(layout_.y.begin(), layout_.y.end(), [&](std::size_t c) { return cell(row, c) != nullptr && !no_reading(cell(row, c)->text); });
    if (!x) {
      const Cell* at = cell(row, layout_.x);
      bool blank = at == nullptr || at->text.empty();
      if (!any && blank) return;
      if (!blank || out_.groups.empty()) {
        if (any) report(Code::results_row_without_x, row, layout_.x);
        return;
      }
      report(Code::results_x_from_above, row, layout_.x);  // as merged cells come out
      add_readings(row, out_.groups[last_]);
      return;
    }
    auto [known, fresh] = index_.emplace(x->value, out_.groups.size());
    if (fresh) out_.groups.push_back({*x, {}, {}});
    last_ = known->second;
    add_readings(row, out_.groups[last_]);
  }

  void add_readings(std::size_t row, Group& group) {
    for (std::size_t column : layout_.y) {
      if (auto reading = read(row, column, out_.y, true)) group.readings.push_back(std::move(*reading));
    }
    if (!layout_.mean || group.pupil_mean) return;
    const Cell* at = cell(row, *layout_.mean);
    if (at != nullptr && !no_reading(at->text)) group.pupil_mean = read(row, *layout_.mean, out_.y, true);
  }

  // The number in a cell, in the unit of `quantity`; a finding if there is none and `report_blank`, or if it is no number.
  std::optional<Reading> read(std::size_t row, std::size_t column, Quantity& quantity, bool report_blank) {
    const Cell* at = cell(row, column);
    if (at == nullptr || no_reading(at->text)) {
      if (report_blank) report(Code::results_cell_blank, row, column);
      return std::nullopt;
    }
    auto number = read_number(at->text, layout_.comma);
    if (!number) {
      report(Code::results_cell_no_number, row, column, {printable(at->text, 60)});
      return std::nullopt;
    }
    Reading out;
    out.value = number->number.value;
    out.last_place = number->number.last_place;
    out.figures = number->number.figures;
    out.span = at->span;
    out.line = at->line;
    out.column = column;
    if (!number->rest.empty() && !with_unit(row, column, number->rest, quantity, out)) return std::nullopt;
    return out;
  }

  // A cell with a unit of its own.
  bool with_unit(std::size_t row, std::size_t column, std::string_view rest, Quantity& quantity, Reading& reading) {
    std::optional<CompoundUnit> unit = read_unit(rest);
    if (!unit) {
      report(Code::results_cell_no_number, row, column, {printable(table_.rows[row][column].text, 60)});
      return false;
    }
    if (quantity.unit.empty()) {
      quantity.unit = unit->symbol;
      quantity.compound = unit;
      report(Code::results_unit_in_cell, row, column, {unit->symbol});
      return true;
    }
    bool same = quantity.compound && quantity.compound->dimension == unit->dimension && quantity.compound->celsius == unit->celsius;
    if (!same) {
      report(Code::results_unit_other, row, column, {unit->symbol, quantity.unit});
      return false;
    }
    if (unit->scale == quantity.compound->scale) return true;
    convert(exact(unit->scale) / exact(quantity.compound->scale), reading);
    report(Code::results_unit_converted, row, column, {printable(table_.rows[row][column].text, 60), written(reading.value, reading.figures), quantity.unit});
    return true;
  }

  static void convert(const Exact& factor, Reading& reading) {
    reading.value *= factor;
    // as many significant figures as before
    if (reading.value != 0) reading.last_place = first_place(reading.value) - reading.figures + 1;
  }

  const Table& table_;
  const Layout& layout_;
  const std::string& file_;
  Findings& findings_;
  Readings out_;
  std::map<Exact, std::size_t> index_;  // value of x → group
  std::size_t last_ = 0;
};

}  // namespace

std::string column_name(const Layout& layout, std::size_t column) {
  const std::string& text = layout.headings[column].text;
  return text.empty() ? "column " + std::to_string(column + 1) : printable(text, kLongestName);
}

Readings read_readings(const Table& table, const Layout& layout, const std::string& file, Findings& findings) {
  return Gatherer(table, layout, file, findings).run();
}

}  // namespace retort::results

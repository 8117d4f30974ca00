#include "report/results_text.h"

#include <algorithm>
#include <array>

#include "base/messages.h"
#include "report/page.h"
#include "report/results_words.h"

namespace retort {
namespace {

using namespace results;

constexpr std::size_t kColumns = 6;  // x, readings, mean, range, uncertainty, percentage
constexpr std::size_t kReadings = 1;
constexpr std::size_t kWideHeading = 18;
constexpr std::size_t kLeast = 10;  // columns of the page that a column of the table needs

using TextRow = std::array<std::string, kColumns>;

std::string readings_text(const Group& group) {
  std::string out;
  for (const Reading& reading : group.readings) {
    out += (out.empty() ? "" : "  ") + written_to_place(reading.value, reading.last_place) + (reading.kept ? "" : "*");
  }
  return out.empty() ? "none" : out;
}

std::vector<TextRow> lines_of(const Analysis& a) {
  std::vector<TextRow> out;
  auto unit = [](const std::string& name, const std::string& symbol) { return symbol.empty() ? name : name + " / " + symbol; };
  const std::string& y = a.readings.y.unit;
  out.push_back({printable(a.readings.x.label(), 40), printable(a.readings.y.label(), 40), unit("mean", y), unit("range", y), unit("\u00B1", y), "\u00B1 %"});
  for (std::size_t g = 0; g < a.summaries.size(); ++g) {
    const Summary& s = a.summaries[g];
    const Group& group = a.readings.groups[g];
    TextRow line{written_to_place(group.x.value, group.x.last_place), readings_text(group), "", "", "", ""};
    if (s.kept > 0) line[2] = mean_text(s) + (a.off_line(g) ? "#" : "");
    if (s.kept > 1) {
      line[3] = written_to_place(s.range, s.place);
      line[4] = uncertainty_text(s);
      line[5] = percent_text(s);
    }
    out.push_back(std::move(line));
  }
  return out;
}

std::string padded(const std::string& text, std::size_t width, bool right) {
  std::size_t used = columns(text);
  std::string gap(width > used ? width - used : 0, ' ');
  return right ? gap + text : text + gap;
}

// `text` in lines of at most `width` columns.
std::vector<std::string> wrapped(const std::string& text, std::size_t width) {
  std::string all;
  append_wrapped(text, std::max<std::size_t>(width, 10), "", "", all);
  std::vector<std::string> out;
  for (std::size_t at = 0; at < all.size();) {
    std::size_t end = all.find('\n', at);
    out.push_back(all.substr(at, end - at));
    at = end == std::string::npos ? all.size() : end + 1;
  }
  if (out.empty()) out.emplace_back();
  return out;
}

class TableText {
 public:
  TableText(std::vector<TextRow> lines, std::size_t width) : lines_(std::move(lines)) { choose_widths(width); }

  void append(std::string& out) const {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      row(lines_[i], i == 0, out);
      if (i == 0) rule(out);
    }
  }

 private:
  // The readings take what the other columns leave. On a narrow page headings are broken, then columns left out.
  void choose_widths(std::size_t width) {
    measure(kWideHeading);
    if (others() + kLeast > width) measure(kLeast);
    while (others() + kLeast > width && drop_last()) {
    }
    if (others() + kLeast > width) {
      for (std::size_t& column : widths_) column = std::min(column, kLeast);
    }
    widths_[kReadings] = std::min(widths_[kReadings], std::max(kLeast, width - std::min(width, others())));
  }

  void measure(std::size_t heading) {
    for (std::size_t c = 0; c < kColumns; ++c) {
      std::size_t body = 0;
      for (std::size_t i = 1; i < lines_.size(); ++i) body = std::max(body, columns(lines_[i][c]));
      used_[c] = body > 0 || c < 3;
      widths_[c] = std::max(body, std::min(columns(lines_[0][c]), std::max(heading, longest_word(lines_[0][c]))));
    }
  }

  // A heading is broken between its words, if none is longer than a wide heading.
  static std::size_t longest_word(const std::string& text) {
    std::size_t longest = 0;
    for (std::size_t at = 0; at < text.size();) {
      std::size_t end = std::min(text.find(' ', at), text.size());
      longest = std::max(longest, columns(std::string_view(text).substr(at, end - at)));
      at = end + 1;
    }
    return std::min(longest, kWideHeading);
  }

  // What all but the readings take, with the gaps.
  [[nodiscard]] std::size_t others() const {
    std::size_t sum = 4;
    for (std::size_t c = 0; c < kColumns; ++c) sum += c != kReadings && used_[c] ? widths_[c] + 2 : 0;
    return sum;
  }

  // The percentage goes first, then the range, then the uncertainty.
  bool drop_last() {
    for (std::size_t c : {std::size_t{5}, std::size_t{3}, std::size_t{4}}) {
      if (!used_[c]) continue;
      used_[c] = false;
      return true;
    }
    return false;
  }

  void row(const TextRow& line, bool heading, std::string& out) const {
    std::array<std::vector<std::string>, kColumns> parts;
    std::size_t height = 1;
    for (std::size_t c = 0; c < kColumns; ++c) {
      if (!used_[c]) continue;
      parts[c] = wrapped(line[c], widths_[c]);
      height = std::max(height, parts[c].size());
    }
    for (std::size_t i = 0; i < height; ++i) {
      std::string text = " ";
      for (std::size_t c = 0; c < kColumns; ++c) {
        if (!used_[c]) continue;
        text += " " + padded(i < parts[c].size() ? parts[c][i] : "", widths_[c], c != kReadings && !heading) + " ";
      }
      text.erase(text.find_last_not_of(' ') + 1);
      out += text + "\n";
    }
  }

  void rule(std::string& out) const {
    std::string text = " ";
    for (std::size_t c = 0; c < kColumns; ++c) {
      if (used_[c]) text += " " + std::string(widths_[c], '-') + " ";
    }
    text.pop_back();
    out += text + "\n";
  }

  std::vector<TextRow> lines_;
  std::array<std::size_t, kColumns> widths_{};
  std::array<bool, kColumns> used_{};
};

void section(std::string_view title, const std::vector<std::string>& sentences, std::size_t width, std::string& out) {
  if (sentences.empty()) return;
  out += "\n" + std::string(title) + "\n";
  for (const std::string& sentence : sentences) append_wrapped(sentence, width, "  - ", "    ", out);
}

}  // namespace

std::string results_text(const Analysis& analysis, std::size_t width) {
  std::string out;
  TableText(lines_of(analysis), width).append(out);
  bool anomaly = std::any_of(analysis.summaries.begin(), analysis.summaries.end(), [](const Summary& s) { return !s.anomalies.empty(); });
  if (analysis.repeats()) append_wrapped("\u00B1 is the uncertainty: half the range of the readings kept.", width, "  ", "  ", out);
  if (anomaly) append_wrapped("* an anomaly, left out of the mean", width, "  ", "  ", out);
  if (!analysis.line.left_out.empty()) append_wrapped("# off the line of best fit, left out of it", width, "  ", "  ", out);
  ResultsWords words = results_words(analysis);
  section("Readings", words.readings, width, out);
  section("Means in the table", words.means, width, out);
  section("Graph", words.line, width, out);
  section("What it shows", words.relation, width, out);
  section("What the gradient stands for", words.constant, width, out);
  return out;
}

}  // namespace retort

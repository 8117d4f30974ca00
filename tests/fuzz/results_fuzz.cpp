// Any bytes as a results table: read, worked through, written in all three forms.
#include <cstdlib>
#include <string>

#include "base/messages.h"
#include "intake/csv.h"
#include "report/results_json.h"
#include "report/results_svg.h"
#include "report/results_text.h"
#include "rubric/json.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace retort;
  std::string content(reinterpret_cast<const char*>(data), size);
  Findings findings;
  Result<Table> table = read_csv(content, "fuzz", findings);
  for (const Finding& finding : findings) describe(finding, content);
  if (!table) return 0;
  for (const auto& row : table->rows) {
    for (const Cell& cell : row) {
      if (cell.span.end > content.size() || cell.span.begin > cell.span.end) std::abort();
    }
  }
  results::Guide guide{{"force"}, {"extension"}, results::GradientMeaning{"1 / k", "k", results::ConstantFrom::inverse, read_unit("N/m")}};
  Result<results::Analysis> analysis = results::analyse(*table, "fuzz", {"", "", &guide});
  if (!analysis) return 0;
  for (const Finding& finding : analysis->findings) describe(finding, content);
  results_text(*analysis, 40);
  if (!results_svg(*analysis).ends_with("</svg>\n")) std::abort();
  std::string json = results_json(*analysis, content);
  if (!json::parse(json, "json", findings)) std::abort();
  return 0;
}

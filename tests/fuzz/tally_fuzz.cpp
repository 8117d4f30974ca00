// Any bytes as lines of checked answers and of tallies: what is read adds up the same forth and back, and can be reported.
#include <cstdlib>
#include <string>
#include <vector>

#include "base/messages.h"
#include "cohort/moderation.h"
#include "cohort/tally_read.h"
#include "report/moderation_csv.h"
#include "report/moderation_html.h"
#include "report/moderation_json.h"
#include "report/moderation_text.h"
#include "report/tally_json.h"
#include "rubric/json.h"

namespace {
using namespace retort;

std::vector<std::string> lines(const std::string& content) {
  std::vector<std::string> out(1);
  for (char c : content) {
    if (c == '\n')
      out.emplace_back();
    else
      out.back() += c;
  }
  return out;
}

void read(const std::string& line, cohort::Tally& into, Findings& findings) {
  Result<json::Value> value = json::parse(line, "fuzz", findings);
  if (!value || !value->is(json::Type::object)) return;
  cohort::Entry entry;
  if (value->find("tally") != nullptr)
    cohort::read_tally(*value, "fuzz", into, findings);
  else if (cohort::read_checked(*value, "fuzz", entry, findings))
    into.add(entry);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::vector<std::string> all = lines(std::string(reinterpret_cast<const char*>(data), size));
  Findings findings;
  cohort::Tally forth(1), back(1), again(1);
  for (const std::string& line : all) read(line, forth, findings);
  for (auto line = all.rbegin(); line != all.rend(); ++line) {
    cohort::Tally part(1);
    read(*line, part, findings);
    back.add(part);
  }
  std::string written = tally_json(forth);
  if (written != tally_json(back)) std::abort();
  for (const std::string& line : lines(written)) read(line, again, findings);
  cohort::Moderation moderation = cohort::moderate(forth, {}, 20);
  moderation_text(moderation, 60);
  moderation_csv(moderation);
  moderation_html(moderation);
  std::string report = moderation_json(moderation);
  if (!json::parse(report, "report", findings)) std::abort();
  for (const Finding& finding : findings) describe(finding, {});
  return 0;
}

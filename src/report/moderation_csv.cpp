#include "report/moderation_csv.h"

#include "report/csv_writer.h"
#include "report/moderation_words.h"

namespace retort {
namespace {

class Csv {
 public:
  explicit Csv(std::string& out) : csv_(out) {
    for (const char* name : {"part", "rubric", "group", "item", "value", "count", "of", "low", "high", "note"}) csv_.text(name);
    csv_.end_row();
  }

  void rubric(const cohort::RubricPart& part) {
    rubric_ = part.id;
    for (const cohort::StepPart& step : part.steps) {
      share("step", "", "missing: " + step.title, step.missing, "");
      share("step", "", "vague: " + step.title, step.vague, "");
      for (const cohort::StepGroup& group : step.groups) {
        std::string note = group.differs == cohort::Differs::no     ? ""
                           : group.differs == cohort::Differs::more ? "more often than elsewhere"
                                                                    : "less often than elsewhere";
        share("step", group_name(group.group), "missing: " + step.title, group.missing, note);
      }
    }
    agreement(part);
    for (std::size_t i = 0; i < part.markers.size(); ++i) marker(part.markers[i], marker_name(i));
    for (const auto& [slip, count] : part.calculations.slips) {
      begin("slip", "", slip).empty().number(static_cast<std::int64_t>(count)).empty().empty().empty().empty().end_row();
    }
    for (const cohort::Again& again : part.again) script("again", again.script, reason_words(again));
    for (const cohort::Script& each : part.sample) script("sample", each, "");
  }

 private:
  CsvWriter& begin(std::string_view part, std::string_view group, std::string_view item) {
    return csv_.text(part).text(rubric_).text(group).text(item);
  }

  void share(std::string_view part, std::string_view group, const std::string& item, const cohort::Share& share, std::string_view note) {
    begin(part, group, item).real(100 * share.value, 1).number(static_cast<std::int64_t>(share.count)).number(static_cast<std::int64_t>(share.of));
    csv_.real(100 * share.interval.low, 1).real(100 * share.interval.high, 1).text(note).end_row();
  }

  void figure(std::string_view part, std::string_view group, const std::string& item, double value, cohort::Count of,
              const std::optional<cohort::Interval>& interval) {
    begin(part, group, item).real(value, 3).empty().number(static_cast<std::int64_t>(of));
    if (interval)
      csv_.real(interval->low, 3).real(interval->high, 3);
    else
      csv_.empty().empty();
    csv_.empty().end_row();
  }

  void agreement(const cohort::RubricPart& part) {
    const cohort::MarkerAgreement& all = part.agreement;
    if (all.answers == 0) return;
    share("agreement", "", "same mark", all.exact, "");
    share("agreement", "", "within one mark", all.within_one, "");
    if (all.kappa) figure("agreement", "", "Cohen's kappa", all.kappa->value, all.answers, all.kappa->interval);
    if (all.weighted) figure("agreement", "", "quadratic-weighted kappa", all.weighted->value, all.answers, all.weighted->interval);
    for (const cohort::GroupAgreement& group : part.group_agreement) {
      share("agreement", group_name(group.group), "same mark", group.exact, "");
      share("agreement", group_name(group.group), "within one mark", group.within_one, "");
    }
  }

  void range(const cohort::RangePart& range, std::string_view group, const std::string& name) {
    figure("marker", group, name + ": mean mark", range.mean, range.marks, std::nullopt);
    if (range.inside.of == 0) return;
    share("marker", group, name + ": inside the indicated range", range.inside, "");
    share("marker", group, name + ": below the indicated range", range.below, "");
    share("marker", group, name + ": above the indicated range", range.above, "");
    figure("marker", group, name + ": mean distance from the range", range.off, range.inside.of, std::nullopt);
  }

  void marker(const cohort::MarkerPart& marker, const std::string& name) {
    if (marker.all.marks == 0) return;
    range(marker.all, "", name);
    for (const cohort::RangePart& group : marker.groups) range(group, group_name(group.group), name);
    if (marker.drift) figure("drift", "", name + ": change along the pile", marker.drift->change, marker.drift->answers, marker.drift->interval);
  }

  // Value: the first mark; low and high: the indicated range.
  void script(std::string_view part, const cohort::Script& script, const std::string& note) {
    begin(part, script.group, script.id);
    mark(script.mark);
    csv_.empty().empty();
    mark(script.low);
    mark(script.high);
    std::string second = script.mark2 < 0 ? "" : "second mark " + std::to_string(script.mark2);
    csv_.text(second.empty() || note.empty() ? second + note : second + "; " + note).end_row();
  }
  void mark(int value) {
    if (value < 0)
      csv_.empty();
    else
      csv_.number(value);
  }

  CsvWriter csv_;
  std::string rubric_;
};

}  // namespace

std::string moderation_csv(const cohort::Moderation& moderation) {
  std::string out;
  Csv csv(out);
  for (const cohort::RubricPart& part : moderation.rubrics) csv.rubric(part);
  return out;
}

}  // namespace retort

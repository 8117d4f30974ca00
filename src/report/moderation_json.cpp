#include "report/moderation_json.h"

#include <cmath>

#include "report/json_writer.h"

namespace retort {
namespace {

using cohort::Count;

// Figures for people and spreadsheets, not for going on with: nine decimals, the same on every machine.
double rounded(double value) {
  return std::isfinite(value) ? std::round(value * 1e9) / 1e9 : value;
}

class Json {
 public:
  explicit Json(std::string& out) : json_(out) {}

  void moderation(const cohort::Moderation& moderation) {
    json_.begin_object().key("format").number(kModerationFormat).key("seed").text(std::to_string(moderation.seed)).key("rubrics").begin_array();
    for (const cohort::RubricPart& part : moderation.rubrics) rubric(part);
    json_.end_array().end_object();
  }

 private:
  void count(std::string_view key, Count value) { json_.key(key).number(static_cast<std::int64_t>(value)); }
  void real(std::string_view key, double value) { json_.key(key).real(rounded(value)); }

  void interval(const cohort::Interval& interval) {
    real("low", interval.low);
    real("high", interval.high);
  }

  void share(std::string_view key, const cohort::Share& share) {
    json_.key(key).begin_object();
    count("count", share.count);
    count("of", share.of);
    real("share", share.value);
    interval(share.interval);
    json_.end_object();
  }

  void counts(const cohort::StepCounts& counts) {
    count("present", counts.present);
    count("vague", counts.vague);
    count("missing", counts.missing);
  }

  void rubric(const cohort::RubricPart& part) {
    json_.begin_object().key("id").text(part.id).key("title").text(part.names.title);
    count("answers", part.answers);
    json_.key("groups").begin_array();
    for (const auto& [group, answers] : part.groups) {
      json_.begin_object().key("group").text(group);
      count("answers", answers);
      json_.end_object();
    }
    json_.end_array();
    if (part.other_groups > 0) count("other_groups", part.other_groups);
    json_.key("steps").begin_array();
    for (const cohort::StepPart& each : part.steps) step(each);
    json_.end_array();
    count("comparisons", part.comparisons);
    calculations(part.calculations);
    json_.key("markers").begin_array();
    for (const cohort::MarkerPart& each : part.markers) marker(each);
    json_.end_array();
    if (part.agreement.answers > 0) agreement(part);
    again(part);
    json_.key("sample").begin_array();
    for (const cohort::Script& each : part.sample) {
      json_.begin_object();
      script(each);
      json_.end_object();
    }
    json_.end_array().end_object();
  }

  void step(const cohort::StepPart& step) {
    json_.begin_object().key("id").text(step.id).key("title").text(step.title).key("core").boolean(step.core);
    counts(step.counts);
    share("missing_share", step.missing);
    share("vague_share", step.vague);
    json_.key("groups").begin_array();
    for (const cohort::StepGroup& group : step.groups) {
      json_.begin_object().key("group").text(group.group);
      counts(group.counts);
      share("missing_share", group.missing);
      share("elsewhere", group.elsewhere);
      real("p", group.chance);
      real("p_holm", group.raised);
      json_.key("differs").text(group.differs == cohort::Differs::no ? "no" : group.differs == cohort::Differs::more ? "more" : "less").end_object();
    }
    json_.end_array().end_object();
  }

  void calculations(const cohort::CalculationCounts& counts) {
    json_.key("calculations").begin_object();
    count("answers", counts.answers);
    count("right", counts.right);
    count("wrong", counts.wrong);
    count("unclear", counts.unclear);
    json_.key("slips").begin_object();
    for (const auto& [slip, times] : counts.slips) count(slip, times);
    json_.end_object().end_object();
  }

  void range(const cohort::RangePart& range) {
    count("marks", range.marks);
    real("mean", range.mean);
    share("inside", range.inside);
    share("below", range.below);
    share("above", range.above);
    real("distance", range.off);
  }

  void marker(const cohort::MarkerPart& marker) {
    json_.begin_object();
    range(marker.all);
    json_.key("groups").begin_array();
    for (const cohort::RangePart& group : marker.groups) {
      json_.begin_object().key("group").text(group.group);
      range(group);
      json_.end_object();
    }
    json_.end_array();
    if (marker.drift) {
      json_.key("drift").begin_object();
      count("answers", marker.drift->answers);
      real("change", marker.drift->change);
      interval(marker.drift->interval);
      json_.key("beyond_chance").boolean(marker.drift->beyond_chance()).end_object();
    }
    json_.end_object();
  }

  void estimate(std::string_view key, const std::optional<cohort::Estimate>& estimate) {
    if (!estimate) return;
    json_.key(key).begin_object();
    real("value", estimate->value);
    if (estimate->interval) interval(*estimate->interval);
    json_.end_object();
  }

  void agreement(const cohort::RubricPart& part) {
    const cohort::MarkerAgreement& agreement = part.agreement;
    json_.key("agreement").begin_object();
    count("answers", agreement.answers);
    share("exact", agreement.exact);
    share("within_one", agreement.within_one);
    real("first_mean", agreement.first_mean);
    real("second_mean", agreement.second_mean);
    estimate("kappa", agreement.kappa);
    estimate("quadratic_weighted_kappa", agreement.weighted);
    json_.key("crosstab").begin_array();
    for (const auto& [marks, times] : part.crosstab) {
      json_.begin_array().number(marks.first).number(marks.second).number(static_cast<std::int64_t>(times)).end_array();
    }
    json_.end_array().key("groups").begin_array();
    for (const cohort::GroupAgreement& group : part.group_agreement) {
      json_.begin_object().key("group").text(group.group);
      count("answers", group.answers);
      share("exact", group.exact);
      share("within_one", group.within_one);
      json_.end_object();
    }
    json_.end_array().end_object();
  }

  void script(const cohort::Script& script) {
    json_.key("id").text(script.id);
    if (!script.group.empty()) json_.key("group").text(script.group);
    if (script.mark >= 0) json_.key("mark").number(script.mark);
    if (script.mark2 >= 0) json_.key("mark2").number(script.mark2);
    if (script.high >= 0) json_.key("low").number(script.low).key("high").number(script.high);
  }

  void again(const cohort::RubricPart& part) {
    json_.key("reasons").begin_object();
    for (std::size_t i = 0; i < cohort::kReasons.size(); ++i) count(name(cohort::kReasons[i]), part.reasons[i]);
    json_.end_object().key("again").begin_array();
    for (const cohort::Again& each : part.again) {
      json_.begin_object();
      script(each.script);
      json_.key("reasons").begin_array();
      for (cohort::Reason reason : cohort::kReasons) {
        if ((each.reasons >> static_cast<unsigned>(reason) & 1U) != 0) json_.text(name(reason));
      }
      json_.end_array().end_object();
    }
    json_.end_array();
  }

  JsonWriter json_;
};

}  // namespace

std::string moderation_json(const cohort::Moderation& moderation) {
  std::string out;
  Json(out).moderation(moderation);
  out += '\n';
  return out;
}

}  // namespace retort

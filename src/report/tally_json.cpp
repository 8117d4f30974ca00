#include "report/tally_json.h"

#include "cohort/tally_read.h"
#include "report/json_writer.h"

namespace retort {
namespace {

using cohort::Count;

void number(JsonWriter& json, Count count) {
  json.number(static_cast<std::int64_t>(count));
}

std::string decimal(cohort::DriftSums::Wide value, bool is_signed) {
  std::string out;
  bool below_zero = is_signed && (value >> 127U) != 0;
  if (below_zero) value = 0 - value;
  do {
    out.insert(out.begin(), static_cast<char>('0' + static_cast<int>(value % 10)));
    value /= 10;
  } while (value != 0);
  return below_zero ? "-" + out : out;
}

// Pairs [key, count], in the order of the keys.
void write_counts(const std::map<int, Count>& counts, JsonWriter& json) {
  json.begin_array();
  for (const auto& [key, count] : counts) {
    json.begin_array().number(key);
    number(json, count);
    json.end_array();
  }
  json.end_array();
}

void write_drift(const cohort::DriftSums& sums, JsonWriter& json) {
  json.key("drift").begin_object().key("n");
  number(json, sums.n);
  json.key("first").number(sums.first).key("last").number(sums.last).key("y").number(sums.y).key("yy");
  number(json, sums.yy);
  json.key("x").text(decimal(sums.x, false)).key("xx").text(decimal(sums.xx, false)).key("xy").text(decimal(sums.xy, true));
  json.end_object();
}

void write_markers(const cohort::Cell& cell, JsonWriter& json) {
  json.key("markers").begin_array();
  for (const cohort::MarkerCounts& marker : cell.markers) {
    json.begin_object().key("marks");
    write_counts(marker.marks, json);
    json.key("outside");
    write_counts(marker.outside, json);
    if (marker.drift.n > 0) write_drift(marker.drift, json);
    json.end_object();
  }
  json.end_array();
  json.key("crosstab").begin_array();
  for (const auto& [marks, count] : cell.crosstab) {
    json.begin_array().number(marks.first).number(marks.second);
    number(json, count);
    json.end_array();
  }
  json.end_array();
}

void write_calculations(const cohort::CalculationCounts& counts, JsonWriter& json) {
  json.key("calculations").begin_object().key("answers");
  number(json, counts.answers);
  json.key("right");
  number(json, counts.right);
  json.key("wrong");
  number(json, counts.wrong);
  json.key("unclear");
  number(json, counts.unclear);
  json.key("slips").begin_object();
  for (const auto& [slip, count] : counts.slips) {
    json.key(slip);
    number(json, count);
  }
  json.end_object().end_object();
}

void write_cell(const cohort::Cell& cell, JsonWriter& json) {
  json.key("answers");
  number(json, cell.answers);
  json.key("steps").begin_object();
  for (const auto& [id, counts] : cell.steps) {
    json.key(id).begin_array();
    for (Count count : {counts.present, counts.vague, counts.missing}) number(json, count);
    json.end_array();
  }
  json.end_object();
  write_markers(cell, json);
  write_calculations(cell.calculations, json);
  if (cell.steps_cut) json.key("steps_cut").boolean(true);
}

void write_script(const cohort::Script& script, JsonWriter& json) {
  json.key("key").text(script.key).key("id").text(script.id).key("group").text(script.group);
  if (script.mark >= 0) json.key("mark").number(script.mark);
  if (script.mark2 >= 0) json.key("mark2").number(script.mark2);
  if (script.high >= 0) json.key("low").number(script.low).key("high").number(script.high);
}

void write_rubric(const cohort::RubricTally& tally, JsonWriter& json) {
  json.key("of").number(tally.of).key("core").begin_array();
  for (const std::string& id : tally.core) json.text(id);
  json.end_array().key("reasons").begin_object();
  for (std::size_t i = 0; i < cohort::kReasons.size(); ++i) {
    json.key(name(cohort::kReasons[i]));
    number(json, tally.reasons[i]);
  }
  json.end_object().key("again").begin_array();
  for (const cohort::Again& again : tally.again) {
    json.begin_object().key("weight").number(-again.weight).key("reasons").number(again.reasons);
    write_script(again.script, json);
    json.end_object();
  }
  json.end_array().key("sample").begin_array();
  for (const auto& [mark, scripts] : tally.sample) {
    for (const cohort::Script& script : scripts) {
      json.begin_object().key("of_mark").number(mark);
      write_script(script, json);
      json.end_object();
    }
  }
  json.end_array();
}

class Lines {
 public:
  Lines(const cohort::Tally& tally, std::string& out) : tally_(tally), out_(out) {}

  template <typename Write>
  void line(const Write& write) {
    JsonWriter json(out_);
    json.begin_object().key("tally").number(cohort::kTallyFormat).key("seed").text(std::to_string(tally_.seed()));
    write(json);
    json.end_object();
    out_ += '\n';
  }

 private:
  const cohort::Tally& tally_;
  std::string& out_;
};

}  // namespace

std::string tally_json(const cohort::Tally& tally) {
  std::string out;
  Lines lines(tally, out);
  if (tally.rubrics_cut()) lines.line([](JsonWriter& json) { json.key("rubrics_cut").boolean(true); });
  // Names of their own, since clang 14 lets no lambda take a structured binding.
  for (const auto& entry : tally.rubrics()) {
    const auto& rubric = entry.first;
    const auto& part = entry.second;
    lines.line([&](JsonWriter& json) {
      json.key("rubric").text(rubric);
      write_rubric(part, json);
    });
    for (const auto& of_group : part.groups) {
      const auto& group = of_group.first;
      const auto& cell = of_group.second;
      lines.line([&](JsonWriter& json) {
        json.key("rubric").text(rubric).key("group").text(group);
        write_cell(cell, json);
      });
    }
    if (part.other_groups.answers > 0) {
      lines.line([&](JsonWriter& json) {
        json.key("rubric").text(rubric).key("other_groups").boolean(true);
        write_cell(part.other_groups, json);
      });
    }
  }
  return out;
}

}  // namespace retort

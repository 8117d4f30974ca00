#include "report/class_json.h"

#include "base/messages.h"
#include "report/class_words.h"
#include "report/json_writer.h"

namespace retort {
namespace {

class ClassJson {
 public:
  explicit ClassJson(const ClassReport& report) : r_(report), p_(report.picture), json_(out_) {}

  std::string run() {
    json_.begin_object().key("format").number(kClassFormat).key("rubric").text(r_.rubric.id).key("title").text(r_.rubric.title);
    json_.key("drafts").number(count(r_.drafts.size())).key("counted").number(count(p_.drafts.size()));
    steps();
    pupils();
    json_.key("omissions");
    step_ids(p_.omissions);
    reteach();
    groups();
    sums();
    concerns();
    if (r_.change != nullptr) change();
    json_.key("cautions");
    texts(r_.rubric.cautions);
    json_.end_object();
    return std::move(out_) + "\n";
  }

 private:
  static std::int64_t count(std::size_t value) { return static_cast<std::int64_t>(value); }
  [[nodiscard]] const std::string& id(std::size_t step) const { return r_.rubric.steps[step].id; }

  void texts(const std::vector<std::string>& values) {
    json_.begin_array();
    for (const std::string& value : values) json_.text(value);
    json_.end_array();
  }
  void step_ids(const std::vector<std::size_t>& steps) {
    json_.begin_array();
    for (std::size_t step : steps) json_.text(id(step));
    json_.end_array();
  }
  void labels(const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who) {
    json_.begin_array();
    for (std::size_t i : who) json_.text(drafts[i].label);
    json_.end_array();
  }

  void steps() {
    json_.key("steps").begin_array();
    for (std::size_t i : p_.steps) {
      const classroom::Tally& t = p_.tallies[i];
      json_.begin_object().key("id").text(id(i)).key("number").number(count(i + 1)).key("title").text(r_.rubric.steps[i].title);
      json_.key("core").boolean(r_.rubric.steps[i].core);
      json_.key("present").number(count(t.present)).key("vague").number(count(t.vague)).key("missing").number(count(t.missing)).end_object();
    }
    json_.end_array();
  }

  void pupils() {
    json_.key("pupils").begin_array();
    for (std::size_t i : p_.drafts) {
      const classroom::Draft& draft = r_.drafts[i];
      json_.begin_object().key("id").text(draft.label).key("words").number(count(classroom::count_words(draft.text))).key("status").begin_array();
      for (std::size_t step : p_.steps) json_.text(status_word(draft.review.steps[step].status));
      json_.end_array();
      if (r_.with_range) {
        const Level& level = draft.review.level;
        json_.key("level").begin_object().key("low").number(level.low).key("high").number(level.high).key("of").number(level.of).end_object();
      }
      json_.end_object();
    }
    json_.end_array();
  }

  void reteach() {
    json_.key("reteach").begin_array();
    for (const classroom::Reteach& r : p_.reteach) {
      json_.begin_object().key("step").text(id(r.step)).key("hint").text(r_.rubric.steps[r.step].hint).key("vague");
      texts(r.vague);
      json_.key("better");
      texts(r.better);
      json_.key("models");
      texts(r.models);
      json_.end_object();
    }
    json_.end_array();
  }

  void groups() {
    json_.key("groups").begin_array();
    for (const classroom::Group& group : p_.grouping.groups) {
      json_.begin_object().key("step").text(id(group.step)).key("pupils");
      labels(r_.drafts, group.drafts);
      json_.key("also");
      step_ids(group.also);
      json_.end_object();
    }
    json_.end_array();
    json_.key("alone");
    labels(r_.drafts, p_.grouping.alone);
    json_.key("complete");
    labels(r_.drafts, p_.grouping.complete);
  }

  void sums() {
    const classroom::Sums& s = p_.sums;
    json_.key("calculations").begin_object().key("right").number(count(s.right)).key("wrong").number(count(s.wrong));
    json_.key("unclear").number(count(s.unclear)).key("pupils").number(count(s.pupils)).key("pupils_wrong").number(count(s.pupils_wrong));
    json_.key("slips").begin_array();
    for (const classroom::SlipTally& slip : s.slips) {
      json_.begin_object().key("slip").text(calc::name(slip.slip)).key("count").number(count(slip.count)).key("pupils").number(count(slip.pupils));
      if (!slip.example.empty()) json_.key("example").text(slip.example);
      if (!slip.correct.empty()) json_.key("correct").text(slip.correct);
      json_.end_object();
    }
    json_.end_array().end_object();
  }

  void concerns() {
    json_.key("concerns").begin_array();
    for (const classroom::Concern& c : p_.concerns) {
      json_.begin_object().key("reason").text(message(c.code).name).key("pupils");
      labels(r_.drafts, c.drafts);
      json_.key("text").text(concern_sentence(c)).end_object();
    }
    json_.end_array();
  }

  void change() {
    const classroom::Change& c = *r_.change;
    json_.key("change").begin_object().key("steps").begin_array();
    for (std::size_t i : p_.steps) {
      const classroom::StepChange& step = c.steps[i];
      json_.begin_object().key("id").text(id(i)).key("before").number(count(step.before)).key("after").number(count(step.after));
      json_.key("gained").number(count(step.gained)).key("lost").number(count(step.lost)).end_object();
    }
    json_.end_array().key("pupils").begin_array();
    for (const classroom::PupilChange& pupil : c.pupils) {
      json_.begin_object().key("id").text(r_.drafts[pupil.after].label).key("gained");
      step_ids(pupil.gained);
      json_.key("nearer");
      step_ids(pupil.nearer);
      json_.key("lost");
      step_ids(pupil.lost);
      json_.end_object();
    }
    json_.end_array().key("only_before");
    labels(*r_.before, c.only_before);
    json_.key("only_after");
    labels(r_.drafts, c.only_after);
    json_.key("unsure");
    texts(c.unsure);
    json_.end_object();
  }

  const ClassReport& r_;
  const classroom::Picture& p_;
  std::string out_;
  JsonWriter json_;
};

}  // namespace

std::string class_json(const ClassReport& report) {
  return ClassJson(report).run();
}

}  // namespace retort

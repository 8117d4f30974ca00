#include "proof/labelled.h"

#include "rubric/json.h"

namespace retort {

using json::Type;

namespace {

void read_labels(const json::Value& labels, const Rubric& rubric, const std::string& file, std::size_t line, LabelledAnswer& out,
                 Findings& findings) {
  for (const json::Member& member : labels.members) {
    std::size_t step = rubric.step_index(member.key);
    if (step == rubric.steps.size()) {
      findings.push_back(make_finding(Code::label_unknown_step, file, {std::to_string(line), member.key}));
      continue;
    }
    StepStatus status{};
    if (!member.value.is(Type::string) || !read_status(member.value.text, status)) {
      findings.push_back(make_finding(Code::label_bad_status, file, {std::to_string(line), member.value.text, member.key}));
      continue;
    }
    out.labels[step] = status;
    out.labelled[step] = true;
  }
  for (std::size_t i = 0; i < rubric.steps.size(); ++i) {
    if (!out.labelled[i]) findings.push_back(make_finding(Code::label_missing_step, file, {std::to_string(line), rubric.steps[i].id}));
  }
}

}  // namespace

std::vector<LabelledAnswer> read_labelled(std::string_view content, const std::string& file, const Rubric& rubric, Findings& findings) {
  std::vector<LabelledAnswer> out;
  std::size_t number = 0;
  while (!content.empty()) {
    std::size_t end = content.find('\n');
    std::string_view line = content.substr(0, end);
    content = end == std::string_view::npos ? std::string_view{} : content.substr(end + 1);
    ++number;
    if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
    Result<json::Value> value = json::parse(line, file, findings);
    if (!value || !value->is(Type::object)) {
      findings.push_back(value ? make_finding(Code::json_not_object, file + " line " + std::to_string(number))
                               : make_finding(value.finding().code, file + " line " + std::to_string(number), value.finding().notes));
      continue;
    }
    LabelledAnswer answer;
    auto text = [&](std::string_view key) {
      const json::Value* found = value->find(key);
      return found != nullptr && found->is(Type::string) ? found->text : std::string();
    };
    answer.id = text("id");
    answer.text = text("text");
    answer.investigation = text("investigation");
    if (!answer.investigation.empty() && answer.investigation != rubric.id) continue;
    answer.labels.assign(rubric.steps.size(), StepStatus::missing);
    answer.labelled.assign(rubric.steps.size(), false);
    const json::Value* labels = value->find("labels");
    if (labels == nullptr || !labels->is(Type::object)) {
      findings.push_back(make_finding(Code::key_missing, file, {"line " + std::to_string(number), "labels", "{\"step-id\": \"present\"}"}));
      continue;
    }
    read_labels(*labels, rubric, file, number, answer, findings);
    const json::Value* mark = value->find("mark");
    if (mark != nullptr && mark->is(Type::integer)) answer.mark = static_cast<int>(mark->integer);
    out.push_back(std::move(answer));
  }
  return out;
}

void Confusion::add(const Confusion& other) {
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) counts[i][j] += other.counts[i][j];
  }
}

std::uint32_t Confusion::total() const {
  std::uint32_t sum = 0;
  for (const auto& row : counts) {
    for (std::uint32_t n : row) sum += n;
  }
  return sum;
}

double Confusion::agreement() const {
  std::uint32_t n = total();
  return n == 0 ? 1.0 : static_cast<double>(counts[0][0] + counts[1][1] + counts[2][2]) / n;
}

double Confusion::kappa() const {
  double n = total();
  if (n == 0) return 1.0;
  double chance = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    double row = counts[i][0] + counts[i][1] + counts[i][2];
    double column = counts[0][i] + counts[1][i] + counts[2][i];
    chance += (row / n) * (column / n);
  }
  return chance >= 1.0 ? 1.0 : (agreement() - chance) / (1.0 - chance);
}

double Confusion::f1(StepStatus status) const {
  auto s = static_cast<std::size_t>(status);
  double hit = counts[s][s];
  double labelled = counts[s][0] + counts[s][1] + counts[s][2];
  double given = counts[0][s] + counts[1][s] + counts[2][s];
  return labelled + given == 0 ? 1.0 : 2 * hit / (labelled + given);
}

Agreement compare(const Checker& checker, const std::vector<LabelledAnswer>& answers) {
  Agreement out;
  out.steps.resize(checker.rubric().steps.size());
  Reviewer reviewer(checker);
  for (std::size_t a = 0; a < answers.size(); ++a) {
    const LabelledAnswer& answer = answers[a];
    Review review = reviewer.review(answer.text);
    for (std::size_t s = 0; s < out.steps.size(); ++s) {
      if (!answer.labelled[s]) continue;
      StepStatus verdict = review.steps[s].status;
      out.steps[s].add(answer.labels[s], verdict);
      if (verdict != answer.labels[s]) out.differences.push_back({a, s, answer.labels[s], verdict, review.steps[s].evidence});
    }
    if (answer.mark >= 0) {
      ++out.marks;
      if (answer.mark >= review.level.low - 1 && answer.mark <= review.level.high + 1) ++out.marks_within;
    }
  }
  for (const Confusion& step : out.steps) out.all.add(step);
  return out;
}

}  // namespace retort

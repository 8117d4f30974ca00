// retort rubric test: the rubric's own examples, or its agreement with somebody's labels.
#include <algorithm>
#include <cstdio>
#include <numeric>

#include "base/messages.h"
#include "cli/support.h"
#include "intake/files.h"
#include "proof/labelled.h"
#include "proof/lint.h"

namespace retort::cli {
namespace {

constexpr std::size_t kLargestLabelled = 256U << 20;

std::string line(const char* format, auto... values) {
  char buffer[512];
  std::snprintf(buffer, sizeof buffer, format, values...);  // NOLINT
  return buffer;
}

std::string table(const Rubric& rubric, const Agreement& agreement, std::size_t answers) {
  auto n = [](const Confusion& c, StepStatus label, StepStatus verdict) {
    return c.counts[static_cast<std::size_t>(label)][static_cast<std::size_t>(verdict)];
  };
  using enum StepStatus;
  std::string out = line("%s: %zu labelled answers\n\n", rubric.id.c_str(), answers);
  out += "                           labelled present   labelled vague     labelled missing\n";
  out += "step                       pres vague miss    pres vague miss    pres vague miss   agree  kappa  F1\n";
  auto row = [&](const std::string& name, const Confusion& c) {
    out += line("%-26.26s %4u %5u %4u    %4u %5u %4u    %4u %5u %4u   %5.2f  %5.2f  %4.2f\n", name.c_str(), n(c, present, present),
                n(c, present, vague), n(c, present, missing), n(c, vague, present), n(c, vague, vague), n(c, vague, missing),
                n(c, missing, present), n(c, missing, vague), n(c, missing, missing), c.agreement(), c.kappa(), c.f1(present));
  };
  for (std::size_t i = 0; i < agreement.steps.size(); ++i) row(rubric.steps[i].id, agreement.steps[i]);
  row("all steps", agreement.all);
  out += line("\nCohen's kappa over all steps %.3f, F1 of present %.3f", agreement.all.kappa(), agreement.all.f1(present));
  if (agreement.marks > 0) {
    out += line("; the indicative range holds the mark within 1 for %u of %u", agreement.marks_within, agreement.marks);
  }
  return out + "\n";
}

std::string worst(const Rubric& rubric, const Agreement& agreement) {
  std::vector<std::size_t> order(agreement.steps.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return agreement.steps[a].agreement() < agreement.steps[b].agreement(); });
  std::string out = "Worst steps:";
  for (std::size_t i = 0; i < order.size() && i < 3; ++i) {
    out += line("%s %s (%.2f)", i == 0 ? "" : ",", rubric.steps[order[i]].id.c_str(), agreement.steps[order[i]].agreement());
  }
  return out + "\n";
}

std::string differences(const Rubric& rubric, const Agreement& agreement, const std::vector<LabelledAnswer>& answers) {
  std::string out;
  for (std::size_t s = 0; s < rubric.steps.size(); ++s) {
    bool headed = false;
    for (const Difference& d : agreement.differences) {
      if (d.step != s) continue;
      if (!headed) out += "\n== " + rubric.steps[s].id + "\n";
      headed = true;
      const LabelledAnswer& answer = answers[d.answer];
      out += answer.id + ": labelled " + std::string(status_word(d.label)) + ", found " + std::string(status_word(d.verdict));
      for (Span span : d.evidence) out += " «" + printable(span.of(answer.text), 200) + "»";
      out += "\n    " + printable(answer.text, 2000) + "\n";
    }
  }
  return out;
}

int run_labelled(const Options& options, const Ready& ready) {
  Result<std::string> content = read_file(options.labelled, kLargestLabelled);
  if (!content) {
    print(content.finding());
    return kWrong;
  }
  Findings findings;
  std::vector<LabelledAnswer> answers = read_labelled(*content, options.labelled, ready.checker->rubric(), findings);
  print(findings, {}, "");
  if (answers.empty()) {
    print(make_finding(Code::folder_empty, options.labelled));
    return kWrong;
  }
  const Rubric& rubric = ready.checker->rubric();
  Agreement agreement = compare(*ready.checker, answers);
  std::string text = table(rubric, agreement, answers.size()) + worst(rubric, agreement);
  text += differences(rubric, agreement, answers);
  int status = write_out(options, text);
  return status == kDone && has_error(findings) ? kSomeInputFailed : status;
}

}  // namespace

int run_rubric_test(const Options& options) {
  if (!options.labelled.empty()) {
    std::unique_ptr<Ready> ready = make_ready(options.rubric);
    return ready == nullptr ? kWrong : run_labelled(options, *ready);
  }
  Result<RubricChoice> choice = choose_rubric(options.rubric);
  if (!choice) {
    print(choice.finding());
    return kWrong;
  }
  const RubricFolder& folder = choice->folder;
  LintResult result = lint(choice->name, folder.files, folder.real_words);
  Findings failed;
  std::copy_if(result.findings.begin(), result.findings.end(), std::back_inserter(failed),
               [](const Finding& f) { return f.code == Code::example_fails || message(f.code).severity == Severity::error; });
  print(failed, folder.files, folder.path);
  write_out(options, line("%zu examples run, %zu problems\n", result.examples, failed.size()));
  return failed.empty() ? kDone : kWrong;
}

int run_rubric_lint(const Options& options) {
  std::vector<std::string> named = options.inputs;
  if (named.empty()) named.push_back(options.rubric);
  bool errors = false;
  for (const std::string& rubric : named) {
    Result<RubricChoice> choice = choose_rubric(rubric);
    if (!choice) {
      print(choice.finding());
      errors = true;
      continue;
    }
    LintResult result = lint(choice->name, choice->folder.files, choice->folder.real_words);
    print(result.findings, choice->folder.files, choice->folder.path);
    errors = errors || has_error(result.findings);
    write_out(options, line("%s: %zu findings, %zu examples run\n", rubric.c_str(), result.findings.size(), result.examples));
  }
  return errors ? kWrong : kDone;
}

int run_rubric_hear(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  std::string text;
  if (options.inputs.size() == 1 && options.inputs[0] != "-") {
    text = options.inputs[0];
  } else {
    Result<std::string> content = read_file("/dev/stdin", kLargestLabelled);
    if (!content) return kWrong;
    text = std::move(*content);
  }
  Reader reader;
  Document document = reader.read(text);
  Matcher matcher(ready->checker->program());
  std::string out;
  for (const Matcher::Heard& heard : matcher.hear(document)) {
    if (heard.list[0] == '"' || heard.list[0] == '=' || heard.list[0] == '(') continue;
    out += "{" + heard.list + "}  " + printable(heard.span.of(text)) + "\n";
  }
  out += "\n";
  Review review = Reviewer(*ready->checker).review(text);
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    out += line("%-8s %s", std::string(status_word(review.steps[i].status)).c_str(), ready->checker->rubric().steps[i].id.c_str());
    for (Span span : review.steps[i].evidence) out += " «" + printable(span.of(text)) + "»";
    out += "\n";
  }
  return write_out(options, out);
}

}  // namespace retort::cli

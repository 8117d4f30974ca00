#include "proof/lint.h"

#include <algorithm>
#include <array>
#include <set>

#include "review/review.h"
#include "text/reader.h"

namespace retort {
namespace {

// Words in nearly every English sentence: a pattern of these alone would match anything.
constexpr std::array<std::string_view, 44> kEverywhere = {
    "and",  "are", "as",   "at",  "be",   "but", "by",   "can",  "do",   "for",  "from", "go",   "have", "i",    "if",
    "in",   "is",  "it",   "of",  "on",   "or",  "so",   "that", "then", "they", "this", "to",   "was",  "we",   "what",
    "when", "which", "will", "with", "would", "you", "your", "my", "its", "there", "them", "not", "each", "the"};

bool everywhere(std::string_view word) { return std::find(kEverywhere.begin(), kEverywhere.end(), word) != kEverywhere.end(); }

class Linter {
 public:
  Linter(const Rubric& rubric, Findings& findings) : rubric_(rubric), findings_(findings) {
    for (const std::string& word : rubric.skipped) skipped_.insert(normal_form(word));
    for (const WordList& list : rubric.words) lists_[list.name] = &list;
  }

  void run() {
    for (const WordList& list : rubric_.words) {
      for (const Pattern& pattern : list.patterns) phrases(pattern, list.file);
      for (const std::string& phrase : list.phrases) {
        if (says_nothing(phrase)) findings_.push_back(make_finding(Code::pattern_never, list.file, list.span, {"'" + phrase + "' has only words that are passed over", "add a word that counts"}));
      }
    }
    for (const Step& step : rubric_.steps) check(step);
  }

 private:
  std::vector<std::string> words(const std::string& phrase) {
    std::vector<std::string> out = phrase_forms(phrase, reader_);
    std::erase_if(out, [&](const std::string& form) { return skipped_.contains(form); });
    return out;
  }

  bool says_nothing(const std::string& phrase) { return words(phrase).empty(); }

  void phrases(const Pattern& pattern, std::string_view file) {
    for (const Sequence& part : pattern.parts) {
      for (const Item& item : part.items) {
        if (item.kind == Item::Kind::group) {
          for (const Pattern& choice : item.any) phrases(choice, file);
        } else if (item.kind == Item::Kind::phrase && says_nothing(item.text)) {
          findings_.push_back(make_finding(Code::pattern_never, file, item.span,
                                           {"'" + item.text + "' has only words that are passed over", "leave it out, or write a word that counts"}));
        }
      }
    }
  }

  bool wide(const Item& item) {
    if (item.kind == Item::Kind::phrase) {
      std::vector<std::string> found = words(item.text);
      return !found.empty() && std::all_of(found.begin(), found.end(), [](const std::string& w) { return everywhere(w); });
    }
    if (item.kind == Item::Kind::group) return std::any_of(item.any.begin(), item.any.end(), [&](const Pattern& p) { return wide(p); });
    auto list = lists_.find(item.text);
    if (list == lists_.end()) return false;
    const auto& all = list->second->phrases;
    return std::any_of(all.begin(), all.end(), [&](const std::string& phrase) {
      std::vector<std::string> found = words(phrase);
      return found.size() == 1 && everywhere(found[0]);
    });
  }

  bool wide(const Pattern& pattern) {
    bool any = false;
    for (const Sequence& part : pattern.parts) {
      for (const Item& item : part.items) {
        any = true;
        if (!wide(item)) return false;
      }
    }
    return any;
  }

  void check_ways(const std::vector<Way>& ways) {
    std::set<std::string> seen;
    for (const Way& way : ways) {
      std::string text;
      bool all_wide = !way.all.empty();
      for (const Need& need : way.all) {
        if (need.step.empty()) phrases(need.pattern, way.file);
        all_wide = all_wide && need.step.empty() && wide(need.pattern);
        text += need.step + "|" + need.pattern.text + "|";
      }
      for (const Need& need : way.all) {
        for (const Pattern& p : need.unless) text += "-" + p.text;
      }
      for (const Pattern& p : way.unless_anywhere) text += "--" + p.text;
      if (!seen.insert(text).second) findings_.push_back(make_finding(Code::pattern_repeated, way.file, way.span));
      if (all_wide) findings_.push_back(make_finding(Code::pattern_too_wide, way.file, way.span, {"words that stand in nearly every sentence"}));
      for (const Need& need : way.all) {
        for (const Pattern& p : need.unless) {
          if (!need.pattern.text.empty() && p.text == need.pattern.text) {
            findings_.push_back(make_finding(Code::pattern_never, way.file, p.span, {"'unless' takes away just what it looks for", "write other words under 'unless'"}));
          }
        }
      }
    }
  }

  void check(const Step& step) {
    if (step.present.empty() && !step.checks_values) findings_.push_back(make_finding(Code::step_no_pattern, step.file, step.span, {step.id}));
    if (step.vague.empty() && !step.checks_values) findings_.push_back(make_finding(Code::step_no_vague, step.file, step.span, {step.id}));
    if (step.hint.empty()) findings_.push_back(make_finding(Code::step_no_hint, step.file, step.span, {step.id}));
    if (step.checks_values && rubric_.given.values.empty()) findings_.push_back(make_finding(Code::values_missing, step.file, step.span, {step.id}));
    for (StepStatus status : {StepStatus::present, StepStatus::missing}) {
      bool has = std::any_of(step.examples.begin(), step.examples.end(), [&](const Example& e) { return e.status == status; });
      if (!has) findings_.push_back(make_finding(Code::step_no_example, step.file, step.span, {step.id, std::string(status_word(status))}));
    }
    check_ways(step.present);
    check_ways(step.vague);
  }

  const Rubric& rubric_;
  Findings& findings_;
  Reader reader_;
  std::set<std::string> skipped_;
  std::map<std::string, const WordList*> lists_;
};

std::size_t run_examples(const Checker& checker, Findings& findings) {
  const Rubric& rubric = checker.rubric();
  Reviewer reviewer(checker);
  std::size_t count = 0;
  for (std::size_t s = 0; s < rubric.steps.size(); ++s) {
    const Step& step = rubric.steps[s];
    for (const Example& example : step.examples) {
      ++count;
      StepReview got = reviewer.review(example.text).steps[s];
      if (got.status == example.status) continue;
      std::string words;
      for (Span span : got.evidence) words += (words.empty() ? ", by the words '" : "' and '") + std::string(span.of(example.text));
      if (!words.empty()) words += "'";
      findings.push_back(make_finding(Code::example_fails, example.file, example.span,
                                      {step.id, std::string(status_word(example.status)), std::string(status_word(got.status)), words}));
    }
    if (!step.hint.empty() && reviewer.review(step.hint).steps[s].status == StepStatus::present) {
      findings.push_back(make_finding(Code::hint_gives_answer, step.file, step.span, {step.id}));
    }
  }
  return count;
}

// The same fault in an included file is found again by each rubric's steps that use it.
void drop_repeats(Findings& findings) {
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return a.file != b.file ? a.file < b.file : a.span.begin < b.span.begin;
  });
  auto same = [](const Finding& a, const Finding& b) {
    return a.code == b.code && a.file == b.file && a.span == b.span && a.notes == b.notes;
  };
  findings.erase(std::unique(findings.begin(), findings.end(), same), findings.end());
}

}  // namespace

LintResult lint(const std::string& name, const SourceFiles& files, std::string_view real_words) {
  LintResult out;
  Checker::Made made = Checker::make(name, files, real_words);
  out.findings = std::move(made.findings);
  if (made.checker) {
    Linter(made.checker->rubric(), out.findings).run();
    out.examples = run_examples(*made.checker, out.findings);
  } else if (made.rubric) {
    Linter(*made.rubric, out.findings).run();
  }
  drop_repeats(out.findings);
  return out;
}

}  // namespace retort

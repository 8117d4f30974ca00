#include "author/suggest.h"

#include <algorithm>
#include <map>
#include <set>

#include "match/matcher.h"

namespace retort::author {
namespace {

constexpr std::size_t kMostWords = 20'000;  // different words of steps, kept at once
constexpr std::size_t kMostEvidence = 3;

void lists_in(const Pattern& pattern, std::set<std::string>& out) {
  for (const Sequence& part : pattern.parts) {
    for (const retort::Item& item : part.items) {
      if (item.kind == retort::Item::Kind::list) out.insert(item.text);
      for (const Pattern& inner : item.any) lists_in(inner, out);
    }
  }
}

std::set<std::string> lists_of(const Step& step) {
  std::set<std::string> out;
  for (const Way& way : step.present) {
    for (const Need& need : way.all) lists_in(need.pattern, out);
  }
  return out;
}

// The lists of each step that not half of the steps have as well.
std::vector<std::set<std::string>> own_lists(const Rubric& rubric, const PointKinds& kinds) {
  std::vector<std::set<std::string>> out;
  std::map<std::string, std::size_t> often;
  for (const Step& step : rubric.steps) {
    out.push_back(lists_of(step));
    for (const std::string& list : out.back()) ++often[list];
  }
  for (std::set<std::string>& lists : out)
    std::erase_if(lists, [&](const std::string& list) { return kinds.actions.contains(list) || often[list] * 2 > rubric.steps.size() + 1; });
  return out;
}

struct Met {
  std::set<std::string> beside;
  std::size_t drafts = 0;
  std::size_t last = SIZE_MAX;  // the draft that was counted last
  std::vector<SeenIn> evidence;
};

// A stretch of tokens without the end of a sentence in it.
struct Clause {
  std::size_t first = 0;
  std::size_t end = 0;
};

std::vector<Clause> clauses(const Document& document) {
  std::vector<Clause> out;
  for (std::size_t i = 0; i < document.tokens.size(); ++i) {
    if (i == 0 || document.tokens[i].before >= Break::sentence) out.push_back({i, i});
    out.back().end = i + 1;
  }
  return out;
}

}  // namespace

struct Suggestions::Impl {
  Impl(const Checker& c, const PointKinds& k)
      : checker(c), kinds(k), reviewer(c), matcher(c.program()), own(own_lists(c.rubric(), k)), met(c.rubric().steps.size()) {}

  void clause(const Clause& at, const std::vector<bool>& open, const std::string& label, const std::string& text);

  const Checker& checker;
  const PointKinds& kinds;
  Reviewer reviewer;
  Matcher matcher;
  Reader reader;
  std::vector<std::set<std::string>> own;
  std::vector<std::map<std::string, Met>> met;  // by step, by word
  std::size_t words = 0;
  std::size_t drafts = 0;
  Document document;
  std::vector<Matcher::Heard> heard;
};

void Suggestions::Impl::clause(const Clause& at, const std::vector<bool>& open, const std::string& label, const std::string& text) {
  Span span{document.tokens[at.first].source.begin, document.tokens[at.end - 1].source.end};
  std::set<std::string> lists;
  for (const Matcher::Heard& h : heard) {
    if (h.span.begin >= span.begin && h.span.end <= span.end) lists.insert(h.list);
  }
  std::set<std::string> unknown;
  for (std::size_t i = at.first; i < at.end; ++i) {
    const Token& token = document.tokens[i];
    std::string word(document.form(i));
    if (token.kind != TokenKind::word || word.size() < 3 || checker.program().vocabulary.skips(word) || kinds.nothing.contains(word)) continue;
    bool known = std::any_of(heard.begin(), heard.end(),
                             [&](const Matcher::Heard& h) { return h.span.begin <= token.source.begin && token.source.end <= h.span.end; });
    if (!known) unknown.insert(word);
  }
  for (std::size_t step = 0; step < own.size(); ++step) {
    if (!open[step]) continue;
    std::vector<std::string> beside;
    std::set_intersection(own[step].begin(), own[step].end(), lists.begin(), lists.end(), std::back_inserter(beside));
    if (beside.empty()) continue;
    for (const std::string& word : unknown) {
      if (words >= kMostWords && !met[step].contains(word)) continue;
      auto [entry, fresh] = met[step].try_emplace(word);
      words += fresh ? 1U : 0U;
      Met& found = entry->second;
      found.beside.insert(beside.begin(), beside.end());
      if (found.last == drafts) continue;
      found.last = drafts;
      ++found.drafts;
      if (found.evidence.size() < kMostEvidence) found.evidence.push_back({label, std::string(span.of(text))});
    }
  }
}

Suggestions::Suggestions(const Checker& checker, const PointKinds& kinds) : impl_(std::make_unique<Impl>(checker, kinds)) {}
Suggestions::~Suggestions() = default;

void Suggestions::add(const std::string& label, const std::string& text) {
  Impl& impl = *impl_;
  Review review = impl.reviewer.review(text);
  impl.document = impl.reader.read(text);
  impl.heard = impl.matcher.hear(impl.document);
  std::vector<bool> open;
  for (const StepReview& step : review.steps) open.push_back(step.status != StepStatus::present);
  for (const Clause& at : clauses(impl.document)) impl.clause(at, open, label, text);
  ++impl.drafts;
}

std::size_t Suggestions::drafts() const {
  return impl_->drafts;
}

std::vector<Suggestion> Suggestions::best(std::size_t most, std::size_t drafts) const {
  std::vector<Suggestion> out;
  for (std::size_t step = 0; step < impl_->met.size(); ++step) {
    std::vector<Suggestion> here;
    for (const auto& [word, found] : impl_->met[step]) {
      if (found.drafts >= drafts) here.push_back({step, word, {found.beside.begin(), found.beside.end()}, found.drafts, found.evidence});
    }
    std::stable_sort(here.begin(), here.end(), [](const Suggestion& a, const Suggestion& b) {
      return a.drafts != b.drafts ? a.drafts > b.drafts : a.beside.size() > b.beside.size();
    });
    if (here.size() > most) here.resize(most);
    out.insert(out.end(), std::make_move_iterator(here.begin()), std::make_move_iterator(here.end()));
  }
  return out;
}

}  // namespace retort::author

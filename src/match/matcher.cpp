#include "match/matcher.h"

#include <algorithm>

#include "match/occurrences.h"
#include "match/pronouns.h"
#include "match/scopes.h"
#include "match/values.h"

namespace retort {
namespace {

constexpr std::uint32_t kUnlessReach = 6;  // words around a match in which "unless" words stand

// The first and the last slot of some places.
struct Extent {
  std::uint32_t earliest = UINT32_MAX;
  std::uint32_t latest = 0;
  void take(const Occurrence& at) {
    earliest = std::min(earliest, at.first);
    latest = std::max(latest, at.last);
  }
};

}  // namespace

struct Matcher::Impl {
  const Program& program;
  Vocabulary::Memo memo;
  Occurrences occurrences;
  std::vector<Slot> slots;
  std::vector<Sighting> sightings;
  std::vector<Quantity> quantities;
  std::vector<std::uint8_t> flags;
  ValuesVerdict values;
  const Document* document = nullptr;
  AnswerMatch out;
  std::vector<std::vector<Occurrence>> evidence;  // by step

  explicit Impl(const Program& p) : program(p), occurrences(p) {}

  void read(const Document& doc);
  View view_for(ConceptId id, View view) const;
  const std::vector<Occurrence>& find(ConceptId id, View view) { return occurrences.find(id, view_for(id, view)); }
  bool near_any(const Occurrence& at, const std::vector<ConceptId>& unless);
  const Occurrence* first_good(const NeedCode& need, View view);
  bool earned(const WayCode& way, View view, std::vector<Occurrence>& found);
  bool earned_any(const std::vector<WayCode>& ways, View view, std::vector<Occurrence>& found);
  void step(std::size_t index);
  void find_status(std::size_t index);
  void find_reason(std::size_t index);
  void find_contradiction(std::size_t index);
  void step_values(StepMatch& match, std::vector<Occurrence>& found);
  std::vector<Span> spans_of(const std::vector<Occurrence>& places) const;
  Extent extent(std::size_t index, bool everywhere);
  void order();
  Span bytes(const Occurrence& at) const;
};

View Matcher::Impl::view_for(ConceptId id, View view) const {
  return view == View::said && program.concepts[id].listens_to_not ? View::as_is : view;
}

void Matcher::Impl::read(const Document& doc) {
  document = &doc;
  program.vocabulary.find(doc, memo, slots, sightings);
  find_scopes(program, doc, slots, sightings, flags);
  quantities.clear();
  find_quantities(doc, quantities);
  values = find_values(program, doc, slots, quantities, flags, sightings);  // wants the vocabulary's sightings alone
  find_pronouns(program, slots, sightings);
  occurrences.reset(slots, sightings, flags);
}

bool Matcher::Impl::near_any(const Occurrence& at, const std::vector<ConceptId>& unless) {
  for (ConceptId id : unless) {
    for (const Occurrence& other : occurrences.find(id, View::as_is)) {
      bool before = other.last < at.first && occurrences.position(at.first) - occurrences.position(other.last) > kUnlessReach;
      bool after = other.first > at.last && occurrences.position(other.first) - occurrences.position(at.last) > kUnlessReach;
      if (!before && !after) return true;
    }
  }
  return false;
}

const Occurrence* Matcher::Impl::first_good(const NeedCode& need, View view) {
  const std::vector<Occurrence>& list = find(need.concept_id, view);
  if (need.unless.empty()) return list.empty() ? nullptr : &list.front();
  constexpr std::size_t kTries = 32;
  for (std::size_t i = 0; i < list.size() && i < kTries; ++i) {
    if (!near_any(list[i], need.unless)) return &list[i];
  }
  return nullptr;
}

bool Matcher::Impl::earned(const WayCode& way, View view, std::vector<Occurrence>& found) {
  std::size_t before = found.size();
  for (const NeedCode& need : way.all) {
    if (need.step != SIZE_MAX) {
      if (need.step >= out.steps.size() || out.steps[need.step].status < need.at_least) {
        found.resize(before);
        return false;
      }
      const auto& theirs = evidence[need.step];
      found.insert(found.end(), theirs.begin(), theirs.end());
      continue;
    }
    const Occurrence* occurrence = first_good(need, view);
    if (occurrence == nullptr) {
      found.resize(before);
      return false;
    }
    found.push_back(*occurrence);
  }
  for (ConceptId id : way.unless_anywhere) {
    if (find(id, View::said).empty()) continue;
    found.resize(before);
    return false;
  }
  return !way.all.empty();
}

bool Matcher::Impl::earned_any(const std::vector<WayCode>& ways, View view, std::vector<Occurrence>& found) {
  return std::any_of(ways.begin(), ways.end(), [&](const WayCode& way) { return earned(way, view, found); });
}

void Matcher::Impl::step_values(StepMatch& match, std::vector<Occurrence>& found) {
  match.status = values.status;
  match.note = values.note;
  for (const Sighting& s : values.evidence) found.push_back({s.first, s.last});
}

void Matcher::Impl::step(std::size_t index) {
  find_status(index);
  find_reason(index);
  find_contradiction(index);
}

// A step that needs its reason is present only with it.
void Matcher::Impl::find_reason(std::size_t index) {
  const StepCode& code = program.steps[index];
  StepMatch& match = out.steps[index];
  if (code.reason.empty() || match.status != StepStatus::present) return;
  if (earned_any(code.reason, View::said, evidence[index])) return;
  match.status = StepStatus::vague;
  match.without_reason = true;
}

void Matcher::Impl::find_contradiction(std::size_t index) {
  const StepCode& code = program.steps[index];
  StepMatch& match = out.steps[index];
  std::vector<Occurrence> against;
  if (match.status == StepStatus::missing || !earned_any(code.contradicts, View::said, against)) return;
  match.status = StepStatus::missing;
  match.without_reason = false;
  match.against = spans_of(against);
  evidence[index].clear();
}

void Matcher::Impl::find_status(std::size_t index) {
  const StepCode& code = program.steps[index];
  StepMatch& match = out.steps[index];
  std::vector<Occurrence>& found = evidence[index];
  if (code.checks_values) step_values(match, found);
  if (match.status == StepStatus::present) return;
  std::vector<Occurrence> more;
  if (earned_any(code.present, View::said, more)) {
    match.status = StepStatus::present;
    match.note.clear();
    found = std::move(more);
    return;
  }
  if (match.status == StepStatus::vague) return;
  if (earned_any(code.vague, View::said, more) || earned_any(code.present, View::or_listed, more) || earned_any(code.vague, View::or_listed, more)) {
    match.status = StepStatus::vague;
    found = std::move(more);
  }
}

Span Matcher::Impl::bytes(const Occurrence& at) const {
  return {document->tokens[slots[at.first].token].source.begin, document->tokens[slots[at.last].token].source.end};
}

std::vector<Span> Matcher::Impl::spans_of(const std::vector<Occurrence>& places) const {
  std::vector<Span> spans;
  for (const Occurrence& at : places) spans.push_back(bytes(at));
  std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.begin < b.begin; });
  std::vector<Span> merged;
  for (Span span : spans) {
    if (!merged.empty() && span.begin <= merged.back().end) {
      merged.back().end = std::max(merged.back().end, span.end);
    } else {
      merged.push_back(span);
    }
  }
  return merged;
}

// Where a step is met: its evidence, or all places that would have earned it.
Extent Matcher::Impl::extent(std::size_t index, bool everywhere) {
  Extent places;
  for (const Occurrence& at : evidence[index]) places.take(at);
  if (!everywhere) return places;
  const StepCode& code = program.steps[index];
  const auto& ways = out.steps[index].status == StepStatus::present ? code.present : code.vague;
  for (const WayCode& way : ways) {
    if (way.all.size() != 1 || way.all[0].step != SIZE_MAX || !way.all[0].unless.empty()) continue;
    const auto& list = find(way.all[0].concept_id, View::said);
    if (list.empty()) continue;
    places.take(list.front());
    places.take(list.back());
  }
  return places;
}

// The order is kept if the later step is met anywhere after the first place that meets the earlier one.
void Matcher::Impl::order() {
  for (const auto& [first, then] : program.rubric->order) {
    OrderMatch match;
    match.both = out.steps[first].status != StepStatus::missing && out.steps[then].status != StepStatus::missing;
    for (bool everywhere : {false, true}) {
      if (match.both && !match.kept) match.kept = extent(first, everywhere).earliest <= extent(then, everywhere).latest;
    }
    out.order.push_back(match);
  }
}

Matcher::Matcher(const Program& program) : impl_(std::make_unique<Impl>(program)) {}
Matcher::~Matcher() = default;
Matcher::Matcher(Matcher&&) noexcept = default;

AnswerMatch Matcher::match(const Document& document) {
  Impl& impl = *impl_;
  impl.read(document);
  impl.out = {};
  impl.out.steps.resize(impl.program.steps.size());
  impl.evidence.assign(impl.program.steps.size(), {});
  for (std::size_t index : impl.program.turn) impl.step(index);
  for (std::size_t i = 0; i < impl.out.steps.size(); ++i) impl.out.steps[i].evidence = impl.spans_of(impl.evidence[i]);
  impl.order();
  impl.out.words = impl.slots.size();
  impl.out.copied_words = static_cast<std::size_t>(
      std::count_if(impl.flags.begin(), impl.flags.end(), [](std::uint8_t f) { return (f & kCopied) != 0; }));
  return std::move(impl.out);
}

std::vector<Matcher::Heard> Matcher::hear(const Document& document) {
  Impl& impl = *impl_;
  impl.read(document);
  std::vector<Heard> heard;
  for (const Sighting& s : impl.sightings) {
    heard.push_back({impl.program.names[s.concept_id], impl.bytes({s.first, s.last})});
  }
  return heard;
}

}  // namespace retort

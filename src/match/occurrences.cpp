#include "match/occurrences.h"

#include <algorithm>

#include "match/scopes.h"

namespace retort {
namespace {

bool by_first(const Occurrence& a, const Occurrence& b) { return a.first != b.first ? a.first < b.first : a.last < b.last; }

constexpr std::size_t kLookBack = 8;  // earlier candidates tried for each item: keeps the work linear

}  // namespace

Occurrences::Occurrences(const Program& program) : program_(program) {
  std::size_t count = program.concepts.size();
  seen_in_.resize(count);
  last_.resize(count);
  for (const ConceptCode& code : program.concepts) made_of_patterns_.push_back(code.patterns.begin != code.patterns.end ? 1 : 0);
  for (auto& made : made_in_) made.resize(count);
  for (auto& lists : lists_) lists.resize(count);
}

void Occurrences::reset(std::span<const Slot> slots, std::span<const Sighting> sightings, std::span<const std::uint8_t> flags) {
  slots_ = slots;
  flags_ = flags;
  sightings_ = sightings;
  if (++answer_ == 0) {  // after 2^32 answers the numbers begin again
    std::fill(seen_in_.begin(), seen_in_.end(), 0U);
    for (auto& made : made_in_) std::fill(made.begin(), made.end(), 0U);
    answer_ = 1;
  }
  std::uint8_t all = 0;
  for (std::uint8_t f : flags) all = static_cast<std::uint8_t>(all | f);
  denied_ = (all & kDenied) != 0;
  listed_ = (all & kListed) != 0;
  before_.resize(sightings.size());
  for (std::uint32_t i = 0; i < sightings.size(); ++i) {
    ConceptId id = sightings[i].concept_id;
    before_[i] = sighted(id) ? last_[id] : kNone;
    seen_in_[id] = answer_;
    last_[id] = i;
  }
}

bool Occurrences::counts(const Occurrence& occurrence, View view) const {
  std::uint8_t first = flags_[occurrence.first];
  if ((first & kMarker) != 0) return false;  // the number of a list item is no word of the answer
  if (view != View::as_is && (first & kDenied) != 0) return false;
  if (view != View::or_listed && (first & kListed) != 0) return false;
  if ((first & kCopied) == 0) return true;
  for (std::uint32_t i = occurrence.first; i <= occurrence.last; ++i) {
    if ((flags_[i] & kCopied) == 0) return true;
  }
  return false;
}

void Occurrences::bare(ConceptId id, View view, std::vector<Occurrence>& out) const {
  if (!sighted(id)) return;
  for (std::uint32_t i = last_[id]; i != kNone; i = before_[i]) {
    Occurrence occurrence{sightings_[i].first, sightings_[i].last};
    if (counts(occurrence, view)) out.push_back(occurrence);
  }
  std::reverse(out.begin(), out.end());
}

bool Occurrences::any_absent(Range pattern) const {
  // The parts of a pattern lie one after the other, and so do their items.
  std::uint32_t end = program_.parts[pattern.end - 1].end;
  for (std::uint32_t i = program_.parts[pattern.begin].begin; i < end; ++i) {
    if (absent(program_.items[i].concept_id)) return true;
  }
  return false;
}

// Where nothing is denied (or listed), the views that differ in it are the same.
View Occurrences::plain(View view) const {
  if (view == View::as_is && !denied_) return View::said;
  if (view == View::or_listed && !listed_) return View::said;
  return view;
}

const std::vector<Occurrence>& Occurrences::find(ConceptId id, View view) {
  if (absent(id)) return none_;
  view = plain(view);
  auto v = static_cast<std::size_t>(view);
  std::vector<Occurrence>& list = lists_[v][id];
  if (made_in_[v][id] == answer_) return list;
  made_in_[v][id] = answer_;
  list.clear();
  bare(id, view, list);
  const ConceptCode& code = program_.concepts[id];
  View inner = view == View::said && code.listens_to_not ? plain(View::as_is) : view;
  for (std::uint32_t i = code.patterns.begin; i < code.patterns.end; ++i) run(program_.patterns[i], inner, list);
  if (list.size() > 1 && !std::is_sorted(list.begin(), list.end(), by_first)) {
    std::sort(list.begin(), list.end(), by_first);
    list.erase(std::unique(list.begin(), list.end()), list.end());
  }
  return list;
}

// Whether `items` follow `before` within `gap` words; the found stretches go to `out`.
bool Occurrences::follow(const std::vector<Occurrence>& before, const std::vector<Occurrence>& items, std::uint32_t gap,
                         std::vector<Occurrence>& out) const {
  std::size_t next = 0;
  for (const Occurrence& item : items) {
    while (next < before.size() && before[next].first < item.first) ++next;
    const Occurrence* best = nullptr;
    for (std::size_t back = 0; back < kLookBack && back < next; ++back) {
      const Occurrence& candidate = before[next - 1 - back];
      if (candidate.last >= item.first || between(candidate.last, item.first) > gap) continue;
      if (gap == 0 && short_answer() && slots_[item.first].comma) continue;
      if (best == nullptr || candidate.last > best->last) best = &candidate;
    }
    if (best != nullptr) out.push_back({best->first, item.last});
  }
  return !out.empty();
}

// Pairs of `a` and `b` near each other, in either order, not overlapping.
void Occurrences::beside(const std::vector<Occurrence>& a, const std::vector<Occurrence>& b, std::vector<Occurrence>& out) const {
  std::size_t next = 0;
  for (const Occurrence& one : a) {
    while (next < b.size() && b[next].first <= one.first) ++next;
    const Occurrence* best = nullptr;
    std::uint32_t least = kFar + 1;
    auto consider = [&](const Occurrence& other) {
      std::uint32_t distance = kFar + 1;
      if (other.first > one.last) distance = between(one.last, other.first);
      if (one.first > other.last) distance = between(other.last, one.first);
      if (distance < least) {
        least = distance;
        best = &other;
      }
    };
    for (std::size_t i = next; i < b.size() && i < next + kLookBack; ++i) consider(b[i]);
    for (std::size_t back = 0; back < kLookBack && back < next; ++back) consider(b[next - 1 - back]);
    if (best != nullptr) out.push_back({std::min(one.first, best->first), std::max(one.last, best->last)});
  }
}

bool Occurrences::run_part(Range part, View view, std::vector<Occurrence>& out) {
  const ItemCode* items = &program_.items[part.begin];
  std::size_t count = part.end - part.begin;
  for (std::size_t i = 0; i < count; ++i) {
    if (find(items[i].concept_id, view).empty()) return false;
  }
  if (count == 1) {
    out = find(items[0].concept_id, view);
    return true;
  }
  out.clear();
  if (!follow(find(items[0].concept_id, view), find(items[1].concept_id, view), items[1].gap, out)) return false;
  if (count == 2) return true;
  Buffer before(*this);
  for (std::size_t i = 2; i < count; ++i) {
    before.list.swap(out);
    if (!std::is_sorted(before.list.begin(), before.list.end(), by_first)) std::sort(before.list.begin(), before.list.end(), by_first);
    out.clear();
    if (!follow(before.list, find(items[i].concept_id, view), items[i].gap, out)) return false;
  }
  return true;
}

void Occurrences::run(Range pattern, View view, std::vector<Occurrence>& out) {
  if (any_absent(pattern)) return;
  Buffer whole(*this);
  if (!run_part(program_.parts[pattern.begin], view, whole.list)) return;
  for (std::uint32_t i = pattern.begin + 1; i < pattern.end; ++i) {
    Buffer part(*this);
    if (!run_part(program_.parts[i], view, part.list)) return;
    std::sort(whole.list.begin(), whole.list.end(), by_first);
    std::sort(part.list.begin(), part.list.end(), by_first);
    Buffer both(*this);
    beside(whole.list, part.list, both.list);
    if (both.list.empty()) return;
    whole.list.swap(both.list);
  }
  out.insert(out.end(), whole.list.begin(), whole.list.end());
}

}  // namespace retort

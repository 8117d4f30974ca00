#include "match/occurrences.h"

#include <algorithm>

#include "match/scopes.h"

namespace retort {
namespace {

bool by_first(const Occurrence& a, const Occurrence& b) { return a.first != b.first ? a.first < b.first : a.last < b.last; }

constexpr std::size_t kLookBack = 8;  // earlier candidates tried for each item: keeps the work linear

}  // namespace

Occurrences::Occurrences(const Program& program) : program_(program) {
  starts_.resize(program.concepts.size() + 1);
  for (auto& entries : entries_) entries.resize(program.concepts.size());
}

void Occurrences::reset(std::span<const Slot> slots, std::span<const Sighting> sightings, std::span<const std::uint8_t> flags) {
  slots_ = slots;
  flags_ = flags;
  ++answer_;
  // A counting sort by concept keeps each concept's sightings in the order given.
  std::fill(starts_.begin(), starts_.end(), 0U);
  for (const Sighting& s : sightings) ++starts_[s.concept_id + 1];
  for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
  sorted_.resize(sightings.size());
  for (const Sighting& s : sightings) sorted_[starts_[s.concept_id]++] = {s.first, s.last};
  for (std::size_t i = starts_.size() - 1; i > 0; --i) starts_[i] = starts_[i - 1];
  starts_[0] = 0;
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
  for (std::uint32_t i = starts_[id]; i < starts_[id + 1]; ++i) {
    if (counts(sorted_[i], view)) out.push_back(sorted_[i]);
  }
}

const std::vector<Occurrence>& Occurrences::find(ConceptId id, View view) {
  Entry& entry = entries_[static_cast<std::size_t>(view)][id];
  if (entry.made == answer_) return entry.list;
  entry.made = answer_;
  entry.list.clear();
  bare(id, view, entry.list);
  const ConceptCode& code = program_.concepts[id];
  bool sorted = std::is_sorted(entry.list.begin(), entry.list.end(), by_first);
  if (!code.patterns.empty()) {
    View inner = view == View::said && code.listens_to_not ? View::as_is : view;
    std::size_t before = entry.list.size();
    for (const PatternCode& pattern : code.patterns) run(pattern, inner, entry.list);
    sorted = sorted && (before == entry.list.size() || (before == 0 && code.patterns.size() == 1 && std::is_sorted(entry.list.begin(), entry.list.end(), by_first)));
  }
  if (!sorted) {
    std::sort(entry.list.begin(), entry.list.end(), by_first);
    entry.list.erase(std::unique(entry.list.begin(), entry.list.end()), entry.list.end());
  }
  return entry.list;
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

bool Occurrences::run_part(const PatternCode::Part& part, View view, std::vector<Occurrence>& out) {
  for (ConceptId item : part.items) {
    if (find(item, view).empty()) return false;
  }
  if (part.items.size() == 1) {
    out = find(part.items[0], view);
    return true;
  }
  std::vector<Occurrence> before = find(part.items[0], view);
  for (std::size_t i = 1; i < part.items.size(); ++i) {
    out.clear();
    if (!follow(before, find(part.items[i], view), part.gaps[i], out)) return false;
    if (i + 1 < part.items.size()) {
      before.swap(out);
      if (!std::is_sorted(before.begin(), before.end(), by_first)) std::sort(before.begin(), before.end(), by_first);
    }
  }
  return true;
}

void Occurrences::run(const PatternCode& pattern, View view, std::vector<Occurrence>& out) {
  std::vector<Occurrence> whole;
  if (!run_part(pattern.parts[0], view, whole)) return;
  for (std::size_t i = 1; i < pattern.parts.size(); ++i) {
    std::vector<Occurrence> part;
    if (!run_part(pattern.parts[i], view, part)) return;
    std::sort(whole.begin(), whole.end(), by_first);
    std::sort(part.begin(), part.end(), by_first);
    std::vector<Occurrence> both;
    beside(whole, part, both);
    if (both.empty()) return;
    whole.swap(both);
  }
  out.insert(out.end(), whole.begin(), whole.end());
}

}  // namespace retort

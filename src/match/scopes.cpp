#include "match/scopes.h"

#include <algorithm>

#include "match/copied.h"
#include "match/markers.h"

namespace retort {
namespace {

constexpr std::uint32_t kForward = 10;    // words that a "not" reaches
constexpr std::uint32_t kBackward = 14;   // words that "but there isn't time" reaches back
constexpr std::uint32_t kTakenBack = 4;   // words that "no, sorry" takes back
constexpr std::uint32_t kShortLine = 5;   // a line of an apparatus list

class Scopes {
 public:
  Scopes(const Program& program, const Document& document, const std::vector<Slot>& slots, const std::vector<Sighting>& sightings,
         std::vector<std::uint8_t>& flags)
      : program_(program), document_(document), slots_(slots), sightings_(sightings), flags_(flags) {}

  void run() {
    flags_.assign(slots_.size(), 0);
    cover_.assign(slots_.size(), 0);
    ends_.assign(slots_.size(), 0);
    for (const Sighting& s : sightings_) {
      if (s.concept_id == kScopeEnd) ends_[s.first] = 1;
      bool signal = s.concept_id <= kScopeEnd;
      std::uint32_t length = s.last - s.first + 1;
      if (signal || length < 2) continue;
      for (std::uint32_t i = s.first; i <= s.last; ++i) cover_[i] = std::max(cover_[i], static_cast<std::uint8_t>(std::min(length, 255U)));
    }
    for (const Sighting& s : sightings_) {
      if (s.concept_id == kNot) deny(s);
      if (s.concept_id == kDismissed) dismiss(s);
      if (s.concept_id == kCorrection) take_back(s);
      if (s.concept_id == kListHeading) list(s);
    }
    copied();
    markers();
  }

 private:
  Break before(std::uint32_t slot) const {
    // Skipped words stand between: the strongest break since the slot before counts.
    std::uint32_t token = slots_[slot].token;
    std::uint32_t first = slot == 0 ? 0 : slots_[slot - 1].token + 1;
    Break strongest = Break::none;
    for (std::uint32_t i = first; i <= token; ++i) strongest = std::max(strongest, document_.tokens[i].before);
    return strongest;
  }

  // "don't forget" is a phrase of its own: what it holds is no denial.
  bool covered(const Sighting& cue) const { return cover_[cue.first] > cue.last - cue.first + 1; }

  void deny(const Sighting& cue) {
    if (covered(cue)) return;
    auto size = static_cast<std::uint32_t>(slots_.size());
    for (std::uint32_t i = cue.last + 1; i < size && i <= cue.last + kForward; ++i) {
      if (before(i) >= Break::comma || ends_[i] != 0) break;
      flags_[i] |= kDenied;
    }
  }

  void dismiss(const Sighting& cue) {
    if (covered(cue)) return;
    for (std::uint32_t i = cue.first, n = 0; i > 0 && n < kBackward; ++n) {
      if (before(i) >= Break::clause) break;
      --i;
      // "... so there is no need": the reason before it stands; "... but there isn't time": it does not
      if (ends_[i] != 0 && document_.form(slots_[i].token) != "but") break;
      flags_[i] |= kDenied;
    }
  }

  void take_back(const Sighting& cue) {
    for (std::uint32_t i = cue.first, n = 0; i > 0 && n < kTakenBack; ++n) {
      if (n > 0 && before(i) >= Break::comma) break;
      --i;
      flags_[i] |= kDenied;
    }
  }

  bool starts_line(std::uint32_t slot) const { return slot == 0 || before(slot) >= Break::sentence; }

  std::uint32_t line_length(std::uint32_t slot) const {
    std::uint32_t n = 1;
    while (slot + n < slots_.size() && n <= kShortLine && before(slot + n) < Break::line) ++n;
    return n;
  }

  void list(const Sighting& heading) {
    if (!starts_line(heading.first)) return;
    // "you need to clamp it" and "you need hot water in both" begin no list: a colon or a new line must follow
    if (heading.last + 1 < slots_.size() && before(heading.last + 1) < Break::clause) return;
    auto size = static_cast<std::uint32_t>(slots_.size());
    bool own_lines = heading.last + 1 < size && before(heading.last + 1) >= Break::line;
    for (std::uint32_t i = heading.last + 1; i < size; ++i) {
      Break gap = before(i);
      if (!own_lines && gap >= Break::sentence) break;
      if (own_lines && gap >= Break::paragraph && i > heading.last + 1) break;
      if (own_lines && gap >= Break::line && line_length(i) > kShortLine) break;
      if (is_heading(i)) break;
      flags_[i] |= kListed;
    }
  }

  bool is_heading(std::uint32_t slot) const {
    for (const Sighting& s : from_slot(sightings_, slot)) {
      if (s.first != slot) break;
      if (s.concept_id == kMethodHeading) return true;
    }
    return false;
  }

  void copied() {
    if (program_.question_runs.empty()) return;
    bool going = false;  // a list of things counts as copied only behind a copied sentence
    for_each_run(document_, slots_, [&](std::uint64_t hash, std::size_t first, std::size_t last) {
      auto known = program_.question_runs.find(hash);
      going = known != program_.question_runs.end() && (known->second || going);
      if (!going) return;
      for (std::size_t i = first; i <= last; ++i) flags_[i] |= kCopied;
    });
  }

  void markers() {
    std::vector<std::uint32_t> offsets;
    find_markers(document_.source, offsets);
    std::size_t at = 0;
    for (std::size_t i = 0; i < slots_.size() && at < offsets.size(); ++i) {
      const Token& token = document_.tokens[slots_[i].token];
      while (at < offsets.size() && offsets[at] < token.source.begin) ++at;
      if (at < offsets.size() && offsets[at] == token.source.begin) flags_[i] |= kMarker;
    }
  }

  const Program& program_;
  const Document& document_;
  const std::vector<Slot>& slots_;
  const std::vector<Sighting>& sightings_;
  std::vector<std::uint8_t>& flags_;
  std::vector<std::uint8_t> cover_;
  std::vector<std::uint8_t> ends_;
};

}  // namespace

void find_scopes(const Program& program, const Document& document, const std::vector<Slot>& slots, const std::vector<Sighting>& sightings,
                 std::vector<std::uint8_t>& flags) {
  Scopes(program, document, slots, sightings, flags).run();
}

}  // namespace retort

#include "match/values.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "match/scopes.h"

namespace retort {
namespace {

using dimension::kForce;
using dimension::kMass;

// 100 g weigh about 1 N: the field strength near the ground is 9.8 N/kg, and 10 N/kg is used at school
// (common practice, no source).
constexpr double kFieldLow = 9.78;
constexpr double kFieldHigh = 10.02;

bool close(double a, double b) { return std::abs(a - b) <= 1e-6 * std::max(std::abs(a), std::abs(b)) + 1e-12; }

struct ValueList {
  Dimension dimension;
  ConceptId list;
};

constexpr std::array kValueLists = {
    ValueList{dimension::kLength, kLengthValue},           ValueList{dimension::kMass, kMassValue},
    ValueList{dimension::kTime, kTimeValue},               ValueList{dimension::kForce, kForceValue},
    ValueList{dimension::kTemperature, kTemperatureValue}, ValueList{dimension::kAngle, kAngleValue},
    ValueList{dimension::kVolume, kVolumeValue},           ValueList{dimension::kFrequency, kFrequencyValue},
};

// The list that the program fills with quantities of this dimension, if there is one.
std::optional<ConceptId> value_list(const Dimension& dimension) {
  for (const ValueList& entry : kValueLists) {
    if (entry.dimension == dimension) return entry.list;
  }
  return std::nullopt;
}

// A quantity of the answer, seen against the table.
struct Seen {
  std::uint32_t first = 0;  // slots
  std::uint32_t last = 0;
  Quantity quantity;
  std::size_t row = SIZE_MAX;  // which table value it is
  bool off_table = false;      // of the table's kind, but not in it
  bool step = false;           // the table's equal step, said as a step
};

class Values {
 public:
  Values(const Program& program, const Document& document, const std::vector<Slot>& slots, const std::vector<Quantity>& quantities,
         const std::vector<std::uint8_t>& flags, std::vector<Sighting>& sightings)
      : given_(program.rubric->given), document_(document), slots_(slots), flags_(flags), sightings_(sightings), said_(sightings.size()) {
    place(quantities);
  }

  ValuesVerdict run() {
    find_step();
    for (Seen& seen : seen_) compare(seen);
    sight_numbers();
    if (given_.values.empty()) return {};
    sight_runs();
    return judge();
  }

 private:
  void place(const std::vector<Quantity>& quantities) {
    std::size_t slot = 0;
    for (const Quantity& quantity : quantities) {
      while (slot < slots_.size() && slots_[slot].token < quantity.first) ++slot;
      if (slot == slots_.size()) return;
      if (slots_[slot].token > quantity.last) continue;
      std::uint32_t last = static_cast<std::uint32_t>(slot);
      while (last + 1 < slots_.size() && slots_[last + 1].token <= quantity.last) ++last;
      if ((flags_[slot] & kMarker) != 0 && quantity.unit == nullptr) continue;
      seen_.push_back({static_cast<std::uint32_t>(slot), last, quantity});
      carry_unit();
    }
  }

  // "20 cm away, then 30, 40": the unit goes on for bare numbers of the same list.
  void carry_unit() {
    constexpr std::uint32_t kSameList = 3;
    if (seen_.size() < 2) return;
    Seen& now = seen_.back();
    Seen& past = seen_[seen_.size() - 2];
    if (given_.values.empty() || slots_[now.first].position - slots_[past.last].position > kSameList || now.quantity.in_words || past.quantity.in_words) return;
    const Unit* left = past.quantity.unit;
    const Unit* right = now.quantity.unit;
    // "from 100 to 500 Hz" too
    if (left != nullptr && right == nullptr && !table_kind(past.quantity)) now.quantity.unit = left;
    if (left == nullptr && right != nullptr && !table_kind(now.quantity)) past.quantity.unit = right;
  }

  void find_step() {
    if (given_.values.size() < 3) return;
    double step = given_.values[1].si() - given_.values[0].si();
    for (std::size_t i = 2; i < given_.values.size(); ++i) {
      if (!close(given_.values[i].si() - given_.values[i - 1].si(), step)) return;
    }
    step_ = step;
  }

  // Whether `quantity`, read as one of the table's kind, is `target` (in SI units, offsets left out).
  bool means(const Quantity& quantity, double target) const {
    const Unit* table_unit = given_.values[0].unit;
    double factor = table_unit != nullptr ? table_unit->factor : 1.0;
    if (quantity.unit == nullptr) {
      if (close(quantity.value * factor, target)) return true;
      return grams_used_ && table_force() && close(quantity.value / 100.0, target);
    }
    if (quantity.dimension() == table_dimension()) return close(quantity.value * quantity.unit->factor, target);
    if (table_force() && quantity.dimension() == kMass) return weighs(quantity.value * quantity.unit->factor, target);
    if (table_mass() && quantity.dimension() == kForce) return weighs(target, quantity.value * quantity.unit->factor);
    return false;
  }

  static bool weighs(double mass, double force) { return force >= mass * kFieldLow - 1e-9 && force <= mass * kFieldHigh + 1e-9; }
  Dimension table_dimension() const { return given_.values[0].dimension(); }
  bool table_force() const { return table_dimension() == kForce; }
  bool table_mass() const { return table_dimension() == kMass; }
  bool table_kind(const Quantity& quantity) const {
    Dimension d = quantity.dimension();
    return d == table_dimension() || (table_force() && d == kMass) || (table_mass() && d == kForce);
  }

  double plain_si(const Quantity& value) const { return value.unit != nullptr ? value.value * value.unit->factor : value.value; }

  void compare(Seen& seen) {
    if (given_.values.empty()) return;
    const Quantity& quantity = seen.quantity;
    bool small_word = quantity.unit == nullptr && quantity.in_words && quantity.value < 10 && std::floor(quantity.value) == quantity.value;
    if (small_word) return;  // "one", "two more": counts, not values
    if (quantity.unit == nullptr && counts_things(seen)) return;
    if (!grams_used_ && quantity.unit != nullptr && quantity.dimension() == kMass && table_force()) {
      for (const Quantity& value : given_.values) grams_used_ = grams_used_ || means(quantity, plain_si(value));
    }
    for (std::size_t row = 0; row < given_.values.size(); ++row) {
      if (means(quantity, plain_si(given_.values[row]))) {
        seen.row = row;
        break;
      }
    }
    if (step_ && (near_each_time(seen) || increment(seen)) && means(quantity, *step_)) seen.step = true;
    seen.off_table = seen.row == SIZE_MAX && quantity.unit != nullptr && table_kind(quantity);
  }

  // "3 times", "x3"
  bool counts_things(const Seen& seen) const {
    if (seen.first > 0 && document_.form(slots_[seen.first - 1].token) == "x") return true;
    for (const Sighting& s : from_slot(said(), seen.last + 1)) {
      if (s.first != seen.last + 1) break;
      if (s.concept_id == kCounted && slots_[s.first].joined) return true;
    }
    return false;
  }

  bool near_each_time(const Seen& seen) const { return near(kEachTime, seen, 5); }

  // "+100 g"
  bool increment(const Seen& seen) const {
    return seen.first > 0 && document_.form(slots_[seen.first - 1].token) == "+";
  }

  // Whether the list is heard within `reach` words of the quantity.
  bool near(ConceptId id, const Seen& seen, std::uint32_t reach) const {
    constexpr std::uint32_t kLongestPhrase = 8;
    std::uint32_t from = seen.first > reach + kLongestPhrase ? seen.first - reach - kLongestPhrase : 0;
    for (const Sighting& s : from_slot(said(), from)) {
      if (s.first > seen.last + reach) break;
      if (s.concept_id == id && s.last + reach >= seen.first) return true;
    }
    return false;
  }

  std::span<const Sighting> said() const { return std::span<const Sighting>(sightings_).first(said_); }
  bool meant(const Sighting& s) const { return (flags_[s.first] & (kDenied | kCopied)) == 0; }

  const Sighting* said_after(ConceptId id, std::uint32_t slot) const {
    for (const Sighting& s : from_slot(said(), slot)) {
      if (s.concept_id == id && meant(s)) return &s;
    }
    return nullptr;
  }

  // The values of the table, not the table that results are written in.
  const Sighting* table_named() const {
    constexpr std::uint32_t kReach = 4;
    for (std::size_t i = 0; i < said_; ++i) {
      const Sighting& s = sightings_[i];
      if (s.concept_id != kTableWords || !meant(s)) continue;
      bool written = false;
      for (std::size_t j = i; j-- > 0 && sightings_[j].first + kReach >= s.first;) written = written || sightings_[j].concept_id == kWriteDown;
      if (!written) return &s;
    }
    return nullptr;
  }

  void add(ConceptId id, std::uint32_t first, std::uint32_t last) { sightings_.push_back({id, first, last}); }

  void sight_numbers() {
    for (const Seen& seen : seen_) {
      const Quantity& quantity = seen.quantity;
      if (quantity.in_words && quantity.unit == nullptr && quantity.value == 1.0) continue;  // "one" is a pronoun
      add(kNumber, seen.first, seen.last);
      if (quantity.unit == nullptr) {
        add(kBareNumber, seen.first, seen.last);
      } else {
        if (std::optional<ConceptId> list = value_list(quantity.dimension())) add(*list, seen.first, seen.last);
        // "20 degrees" may be an angle or a temperature: the rubric knows which it listens for.
        if (quantity.unit->symbol == "°") add(kTemperatureValue, seen.first, seen.last);
      }
      if (seen.row != SIZE_MAX) {
        add(kTableValue, seen.first, seen.last);
        if (seen.row > 0) add(kLaterTableValue, seen.first, seen.last);
      }
      if (seen.step) add(kTableStep, seen.first, seen.last);
      if (seen.off_table) add(kOffTable, seen.first, seen.last);
    }
  }

  // Two or more different table values close together.
  void sight_runs() {
    constexpr std::uint32_t kApart = 6;
    for (std::size_t i = 0; i < seen_.size();) {
      if (seen_[i].row == SIZE_MAX) {
        ++i;
        continue;
      }
      std::size_t end = i;
      bool several = false;
      for (std::size_t j = i + 1; j < seen_.size(); ++j) {
        if (seen_[j].row == SIZE_MAX || seen_[j].first - seen_[end].last > kApart) break;
        several = several || seen_[j].row != seen_[i].row;
        end = j;
      }
      if (several) add(kTableValues, seen_[i].first, seen_[end].last);
      i = end + 1;
    }
  }

  bool counts(const Seen& seen) const { return (flags_[seen.first] & (kDenied | kListed | kCopied)) == 0; }

  ValuesVerdict judge() {
    ValuesVerdict out;
    std::vector<bool> found(given_.values.size(), false);
    bool step = false;
    bool off_table = false;
    std::optional<std::uint32_t> first_slot;
    for (const Seen& seen : seen_) {
      if (!counts(seen)) continue;
      if (seen.row != SIZE_MAX) {
        found[seen.row] = true;
        if (!first_slot) first_slot = seen.first;
      }
      step = step || seen.step;
      off_table = off_table || seen.off_table;
      if (seen.row != SIZE_MAX || seen.step) out.evidence.push_back({0, seen.first, seen.last});
    }
    // "200 g, 400 g and 600 g" of a table that begins with 0 g: nothing added need not be said
    bool some = std::count(found.begin(), found.end(), true) > 2;
    if (some && found[1] && plain_si(given_.values.front()) == 0) found[0] = true;
    std::size_t count = static_cast<std::size_t>(std::count(found.begin(), found.end(), true));
    bool consecutive = false;
    for (std::size_t i = 1; i < found.size(); ++i) consecutive = consecutive || (found[i] && found[i - 1]);
    const Sighting* table = table_named();
    const Sighting* on = said_after(kAndSoOn, first_slot.value_or(0));
    const Sighting* others = said_after(kOthers, first_slot.value_or(0));
    bool all = count == found.size();
    bool by_table = table != nullptr;
    bool to_the_end = found.size() > 1 && found.front() && found.back() && (count > 2 || step || on != nullptr || others != nullptr);
    bool goes_on = found.size() > 1 && found.front() && on != nullptr && (consecutive || step);
    bool steps_on = found.size() > 1 && step && (found.back() || others != nullptr);
    if (all || by_table || to_the_end || goes_on || steps_on) {
      out.status = StepStatus::present;
      if (by_table) out.evidence.push_back(*table);
      if (!all && goes_on) out.evidence.push_back(*on);
      return out;
    }
    if (count == 0 && !step) {
      for (const Seen& seen : seen_) {
        if (seen.off_table && counts(seen)) out.evidence.push_back({0, seen.first, seen.last});
      }
    }
    if (count > 0 || step || off_table) out.status = StepStatus::vague;
    out.note = note(found, count, off_table);
    return out;
  }

  std::string range() const {
    return given_.wordings.size() == 1 ? given_.wordings[0] : given_.wordings.front() + " to " + given_.wordings.back();
  }

  std::string note(const std::vector<bool>& found, std::size_t count, bool off_table) const {
    if (count == 0 && off_table) return "these values are not in the table; it has " + range();
    if (count == 0) return "no values; the " + std::string(given_.values.size() == 1 ? "question" : "table") + " has " + range();
    std::string named;
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (found[i]) named += (named.empty() ? "" : ", ") + given_.wordings[i];
    }
    return "only " + named + "; the table has " + range();
  }

  const Given& given_;
  const Document& document_;
  const std::vector<Slot>& slots_;
  const std::vector<std::uint8_t>& flags_;
  std::vector<Sighting>& sightings_;
  std::size_t said_;  // sightings that the vocabulary made
  std::vector<Seen> seen_;
  std::optional<double> step_;
  bool grams_used_ = false;
};

}  // namespace

ValuesVerdict find_values(const Program& program, const Document& document, const std::vector<Slot>& slots,
                          const std::vector<Quantity>& quantities, const std::vector<std::uint8_t>& flags,
                          std::vector<Sighting>& sightings) {
  return Values(program, document, slots, quantities, flags, sightings).run();
}

}  // namespace retort

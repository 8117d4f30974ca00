// A Program is a rubric made ready for matching: its word lists and patterns numbered, its phrases in
// one Vocabulary. Build once for each rubric; immutable after that; may be shared by threads.
#pragma once
#include <cstdint>
#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "rubric/rubric.h"
#include "vocabulary/vocabulary.h"

namespace retort {

// Word lists that the program itself listens for (their words stand in vocabulary.json), and lists that it
// fills itself from numbers and the question's table.
enum Reserved : ConceptId {
  // heard: how things are said
  kNot, kDismissed, kCorrection, kScopeEnd, kListHeading, kMethodHeading, kPronoun, kAndSoOn, kOthers, kEachTime, kTableWords, kMeasure, kCounted, kWriteDown,
  // filled
  kNumber, kBareNumber, kTableValue, kTableValues, kLaterTableValue, kTableStep, kOffTable,
  kLengthValue, kMassValue, kTimeValue, kForceValue, kTemperatureValue, kAngleValue, kVolumeValue, kFrequencyValue,
  kReservedEnd
};

// Patterns lie in flat tables, since matching walks through thousands of them for each answer.
struct ItemCode {
  ConceptId concept_id = 0;
  std::uint32_t gap = 0;  // words allowed between the item before and this one
};

struct Range {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

enum class Kind : std::uint8_t { none, quantity, instrument, thing };

struct ConceptCode {
  Range patterns;                      // in Program::patterns; besides the phrases in the vocabulary
  Kind kind = Kind::none;              // what "it" may stand for
  bool listens_to_not = false;         // says itself what is not to be
};

struct NeedCode {
  ConceptId concept_id = 0;
  std::size_t step = SIZE_MAX;         // SIZE_MAX: the concept counts
  StepStatus at_least = StepStatus::present;
  std::vector<ConceptId> unless;       // not near the concept
};

struct WayCode {
  std::vector<NeedCode> all;
  std::vector<ConceptId> unless_anywhere;
};

struct StepCode {
  std::vector<WayCode> present;
  std::vector<WayCode> vague;
  std::vector<WayCode> reason;
  std::vector<WayCode> contradicts;
  bool checks_values = false;
};

struct Program {
  explicit Program(WordForms& forms) : vocabulary(forms) {}

  Vocabulary vocabulary;
  std::vector<ConceptCode> concepts;   // by ConceptId
  std::vector<std::string> names;      // of the concepts
  std::vector<Range> patterns;         // each a range of parts, which stand near each other
  std::vector<Range> parts;            // each a range of items, which follow each other
  std::vector<ItemCode> items;
  std::vector<StepCode> steps;         // as in the rubric
  std::vector<std::size_t> turn;       // steps in an order in which each comes after those it depends on
  // Hashes of runs of words of the question; true for those that only a sentence has, not a list of things.
  std::unordered_map<std::uint64_t, bool> question_runs;
  const Rubric* rubric = nullptr;      // outlives the program
};

// Compiles `rubric`, which must outlive the Program. Unknown lists, cycles and the like go to `findings`.
std::unique_ptr<Program> compile(const Rubric& rubric, RealWords real_words, WordForms& forms, Findings& findings);

}  // namespace retort

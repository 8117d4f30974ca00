// A rubric: what one investigation asks and which steps a good answer has, as data.
//
// Immutable once loaded; may be shared by threads. Strings are UTF-8. Spans are places in the file named
// beside them, for findings.
#pragma once
#include <array>
#include <cstdint>
#include <list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/quantity.h"
#include "results/guide.h"
#include "rubric/pattern.h"

namespace retort {

enum class StepStatus : std::uint8_t { missing, vague, present };
std::string_view status_word(StepStatus status);
// "present", "vague" or "missing"; false for any other word.
bool read_status(std::string_view word, StepStatus& out);

// The kinds of steps that questions on practicals ask for.
inline constexpr std::array<std::string_view, 12> kFacets = {
    "set-up", "independent", "dependent", "control", "instrument", "values",
    "processing", "repeats", "accuracy", "hypothesis", "conclusion", "safety"};

// One thing that must be found: a pattern, or another step's status.
struct Need {
  Pattern pattern;
  std::string step;                            // set: this step...
  StepStatus at_least = StepStatus::present;   // ...must be this or better
  std::vector<Pattern> unless;                 // not near the words that match
};

// One way to earn a status: all of `all`, and none of the others.
struct Way {
  std::vector<Need> all;
  std::vector<Pattern> unless_anywhere;  // not in the answer at all
  std::string_view file;                 // in Rubric::file_names, as are the others
  Span span;
};

struct Example {
  std::string text;
  StepStatus status{};
  std::string_view file;
  Span span;
};

struct Step {
  std::string id;
  std::string title;          // short, in a pupil's words
  std::string facet;
  bool core = false;
  std::string present_means;  // for the teacher
  std::string vague_means;
  std::vector<Way> present;
  std::vector<Way> vague;
  bool checks_values = false; // the table's values are looked for
  std::vector<Way> reason;    // if there are any, one must be found as well, or a present step is vague...
  std::string lacks_reason;   // ...and this is said
  std::vector<Way> contradicts;  // with one of these in the answer the step is missing, and that is said
  std::string once;           // of present steps with the same name here only the first counts; the others are vague
  std::string lacks;          // said when it is vague
  std::string hint;           // a question that nudges
  std::vector<Example> examples;
  std::string_view file;
  Span span;
};

struct Given {
  std::string quantity;             // "force"; empty if there is no table
  std::vector<Quantity> values;
  std::vector<std::string> wordings;  // the values as the question has them
  std::vector<std::string> apparatus;
  std::string hypothesis;
  // For calculations: other columns of the question's table, and final results with how far a pupil's may be off.
  struct Column {
    std::string quantity;             // of formulas.json
    std::vector<std::string> values;  // "3.8 cm"
    std::string_view file;
    Span span;
  };
  struct Expected {
    std::string quantity;
    std::string value;   // "40 N/m"
    std::string within;  // "10 %"
    std::string_view file;
    Span span;
  };
  struct OwnFormula {
    std::string text;    // "spring constant = force / extension"
    std::string source;
    std::string_view file;
    Span span;
  };
  std::vector<Column> data;
  std::vector<Expected> expected;
  std::vector<OwnFormula> formulas;
};

// A word list of the vocabulary.
struct WordList {
  std::string name;
  std::string kind;                  // "", "quantity", "instrument" or "thing": what "it" may stand for
  std::vector<std::string> phrases;  // plain wordings
  std::vector<Pattern> patterns;     // wordings made of other lists
  std::string_view file;
  Span span;
};

// A method is described step by step; a short answer makes points, of which at most so many count as there are marks.
enum class RubricKind : std::uint8_t { method, points };

struct Rubric {
  RubricKind kind = RubricKind::method;
  int marks = 6;
  std::string id;
  std::string title;
  std::string question;
  Given given;
  std::vector<std::string> cautions; // usual cautions of the practical, for people
  std::vector<WordList> words;       // the shared vocabulary and the rubric's own
  std::vector<std::string> skipped;  // small words that do not count
  std::vector<Step> steps;
  std::vector<std::array<std::size_t, 2>> order;  // indices into steps: first, then
  std::optional<results::Guide> results;  // how its results table is plotted, and what the gradient stands for
  std::string file;
  std::list<std::string> file_names;  // a list: the views stay good when the rubric is moved

  // The index of the step with this id, or steps.size().
  [[nodiscard]] std::size_t step_index(std::string_view step) const;
  // The ids of all steps, for messages.
  [[nodiscard]] std::vector<std::string> step_ids() const;
};

}  // namespace retort

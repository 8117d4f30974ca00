// A rubric ready to check answers with.
#pragma once
#include <memory>
#include <optional>
#include <string>

#include "calc/calculations.h"
#include "match/matcher.h"
#include "rubric/load.h"

namespace retort {

// What rubrics of one folder share while they are made ready.
struct Workshop {
  explicit Workshop(std::string_view real_words) : forms(RealWords(real_words)) {}
  WordForms forms;
  ParsedFiles parsed;
  std::shared_ptr<const calc::FormulaBook> formulas;  // of formulas.json, once it has been read
};

// Owns a rubric and its Program. Immutable; may be shared by threads.
class Checker {
 public:
  // Loads and compiles. With an error among `findings` there is no checker.
  struct Made {
    std::unique_ptr<Checker> checker;  // null if the rubric cannot be used
    std::optional<Rubric> rubric;      // what could be read, if there is no checker
    Findings findings;
  };
  // `real_words` must outlive the Checker; `workshop` is used during the call, and best shared by all rubrics
  // of the same `files`.
  static Made make(const std::string& name, const SourceFiles& files, std::string_view real_words, Workshop& workshop);
  static Made make(const std::string& name, const SourceFiles& files, std::string_view real_words);

  [[nodiscard]] const Rubric& rubric() const { return *rubric_; }
  [[nodiscard]] const Program& program() const { return *program_; }
  [[nodiscard]] const calc::FormulaBook& formulas() const { return *formulas_; }
  [[nodiscard]] const calc::Given& given() const { return given_; }

 private:
  Checker() = default;
  std::unique_ptr<Rubric> rubric_;
  std::unique_ptr<Program> program_;
  std::shared_ptr<const calc::FormulaBook> formulas_;
  calc::Given given_;
};

// The book of formulas of a folder; an empty one, with a finding, if it has none.
std::shared_ptr<const calc::FormulaBook> open_formulas(const SourceFiles& files, Findings& findings);

}  // namespace retort

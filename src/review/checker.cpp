#include "review/checker.h"

#include "review/given.h"
#include "rubric/formulas.h"

namespace retort {

Checker::Made Checker::make(const std::string& name, const SourceFiles& files, std::string_view real_words) {
  Workshop workshop(real_words);
  return make(name, files, real_words, workshop);
}

Checker::Made Checker::make(const std::string& name, const SourceFiles& files, std::string_view real_words, Workshop& workshop) {
  Loaded loaded = load_rubric(name, files, workshop.parsed);
  Made made;
  made.findings = std::move(loaded.findings);
  if (!loaded.rubric) return made;
  if (workshop.formulas == nullptr) workshop.formulas = open_formulas(files, made.findings);
  std::unique_ptr<Checker> checker(new Checker);
  checker->formulas_ = workshop.formulas;
  checker->rubric_ = std::make_unique<Rubric>(std::move(*loaded.rubric));
  if (std::shared_ptr<const calc::FormulaBook> own = with_own_formulas(*checker->formulas_, *checker->rubric_, made.findings)) checker->formulas_ = own;
  checker->given_ = given_for_calculations(*checker->rubric_, *checker->formulas_, made.findings);
  checker->program_ = compile(*checker->rubric_, RealWords(real_words), workshop.forms, made.findings);
  if (has_error(made.findings)) {
    made.rubric = std::move(*checker->rubric_);
    return made;
  }
  made.checker = std::move(checker);
  return made;
}

std::shared_ptr<const calc::FormulaBook> open_formulas(const SourceFiles& files, Findings& findings) {
  auto book = std::make_shared<calc::FormulaBook>();
  auto source = files.find(std::string(kFormulasFile));
  if (source != files.end()) load_formulas(source->second, source->first, *book, findings);
  return book;
}

}  // namespace retort

#include "review/checker.h"

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
  std::unique_ptr<Checker> checker(new Checker);
  checker->rubric_ = std::make_unique<Rubric>(std::move(*loaded.rubric));
  checker->program_ = compile(*checker->rubric_, RealWords(real_words), workshop.forms, made.findings);
  if (has_error(made.findings)) {
    made.rubric = std::move(*checker->rubric_);
    return made;
  }
  made.checker = std::move(checker);
  return made;
}

}  // namespace retort

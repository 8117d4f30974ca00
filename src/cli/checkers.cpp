#include "cli/checkers.h"

#include "cli/support.h"
#include "rubric/load.h"

namespace retort::cli {
namespace {

cohort::RubricNames names_of(const Rubric& rubric) {
  cohort::RubricNames out;
  out.title = rubric.title;
  for (const Step& step : rubric.steps) out.steps[step.id] = step.title;
  return out;
}

}  // namespace

bool Checkers::open(const std::string& named) {
  Result<RubricFolder> folder = open_rubrics();
  if (folder) folder_ = std::move(*folder);
  if (named.empty()) return true;
  std::unique_ptr<Ready> ready = make_ready(named);
  if (ready == nullptr) return false;
  choice_ = std::move(ready->choice);
  named_ = std::move(ready->checker);
  return true;
}

const Checker* Checkers::get(const std::string& id) {
  if (named_ != nullptr && (id.empty() || id == named_->rubric().id)) return named_.get();
  std::lock_guard lock(mutex_);
  std::string file = id + ".json";
  if (id.empty() || !folder_.files.contains(file)) return nullptr;
  auto [at, fresh] = made_.try_emplace(id);
  if (fresh) {
    Checker::Made made = Checker::make(file, folder_.files, folder_.real_words);
    if (!made.checker) print(made.findings, folder_.files, folder_.path);
    at->second = std::move(made.checker);
  }
  return at->second.get();
}

cohort::RubricNames Checkers::names(const std::string& id) {
  if (named_ != nullptr && id == named_->rubric().id) return names_of(named_->rubric());
  std::string file = id + ".json";
  if (!folder_.files.contains(file)) return {};
  Loaded loaded = load_rubric(file, folder_.files);
  return loaded.rubric && loaded.rubric->id == id ? names_of(*loaded.rubric) : cohort::RubricNames{};
}

}  // namespace retort::cli

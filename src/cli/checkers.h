// Checkers of the rubrics that inputs name, made when they are first wanted.
#pragma once
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "cohort/moderation.h"
#include "intake/rubric_folder.h"
#include "review/checker.h"

namespace retort::cli {

// Threads: any.
class Checkers {
 public:
  // `named`: the rubric of answers that name none, as given on the command line; "" for none. Prints why it cannot be used,
  // and is false then.
  [[nodiscard]] bool open(const std::string& named);

  // The checker for rubric `id`, or for "" the one named; null if there is none. Only the program's own rubrics can be had by
  // an id: it comes from untrusted input.
  const Checker* get(const std::string& id);

  // What people call the rubric `id`; empty names if it is not known.
  cohort::RubricNames names(const std::string& id);

 private:
  std::mutex mutex_;
  RubricChoice choice_;  // what `named_` stands on
  RubricFolder folder_;  // the program's own; no files if it cannot be found
  std::unique_ptr<Checker> named_;
  std::map<std::string, std::unique_ptr<Checker>> made_;  // null: cannot be made
};

}  // namespace retort::cli

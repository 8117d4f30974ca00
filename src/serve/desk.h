// Rubrics ready to check with, lent to requests.
#pragma once
#include <cstdint>
#include <list>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "intake/rubric_folder.h"
#include "review/review.h"

namespace retort::serve {

// One rubric and the Reviewers that are idle. Threads: any number.
class Desk {
 public:
  explicit Desk(std::unique_ptr<Checker> checker) : checker_(std::move(checker)) {}

  [[nodiscard]] const Checker& checker() const { return *checker_; }
  [[nodiscard]] const Rubric& rubric() const { return checker_->rubric(); }
  Review review(std::string_view text);

 private:
  std::unique_ptr<Checker> checker_;
  std::mutex mutex_;
  std::vector<std::unique_ptr<Reviewer>> idle_;  // at most as many as requests were answered at once
};

// All rubrics of a folder; each is made ready when first wanted. Rubrics that a teacher has edited are made besides, and
// the last few kept in memory. Threads: any number.
class Desks {
 public:
  explicit Desks(RubricFolder folder);

  struct Listed {
    std::string id;
    std::string title;
    bool points = false;  // short questions
  };
  // Those that can be used, by id.
  [[nodiscard]] const std::vector<Listed>& listed() const { return listed_; }
  // The rubric's file; null if there is none of this id.
  [[nodiscard]] const std::string* source(std::string_view id) const;
  [[nodiscard]] const RubricFolder& folder() const { return folder_; }

  // The desk of a rubric of the folder; null if there is none that can be used.
  std::shared_ptr<Desk> open(std::string_view id);
  // The desk of the rubric `id` with `source` as its file. `findings` are those of its loading; null if it cannot be used.
  std::shared_ptr<Desk> open_edited(std::string_view id, const std::string& source, Findings& findings);

 private:
  struct Slot {
    std::once_flag made;
    std::shared_ptr<Desk> desk;
  };
  struct Edited {
    std::string id;
    std::string source;
    std::shared_ptr<Desk> desk;
    Findings findings;
  };
  std::shared_ptr<Desk> make(const std::string& name, const SourceFiles& files, Findings& findings);

  RubricFolder folder_;
  std::vector<Listed> listed_;
  std::map<std::string, Slot, std::less<>> slots_;  // by id; not changed once made
  std::mutex edited_mutex_;
  std::list<Edited> edited_;                        // last used first
};

}  // namespace retort::serve

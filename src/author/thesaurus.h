// Word lists of the rubrics there are, to be taken over by a new one.
#pragma once
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "rubric/load.h"

namespace retort::author {

struct KnownList {
  std::string name;
  std::string json;  // as it stands in its rubric
};

// For a word (folded), the list that is about it: whose name is the word, or begins with it as its first wording. Lists made of
// other lists are left out, since those may not be at hand, and so are those that hold a word that says nothing: they were made for
// one place in one rubric.
class Thesaurus {
 public:
  Thesaurus(const SourceFiles& files, const std::set<std::string, std::less<>>& nothing);
  // Null if no list is about this word.
  [[nodiscard]] const KnownList* find(std::string_view word) const;

 private:
  std::map<std::string, KnownList, std::less<>> lists_;
};

}  // namespace retort::author

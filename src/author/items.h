// The content of a marking point: the word lists and words in it that a pupil's answer is looked through for.
#pragma once
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "author/kinds.h"
#include "author/thesaurus.h"
#include "base/result.h"
#include "intake/rubric_folder.h"
#include "match/matcher.h"
#include "review/checker.h"
#include "text/reader.h"

namespace retort::author {

struct Item {
  std::string pattern;  // "{ruler}" or a word
  std::string name;     // "ruler"
  bool action = false;
  bool instrument = false;
  bool quantity = false;
  bool qualifier = false;
  friend bool operator==(const Item& a, const Item& b) { return a.pattern == b.pattern; }
};

class ItemReader {
 public:
  // `folder` and `kinds` must outlive the reader. Fails if the shared vocabulary cannot be used.
  static Result<std::unique_ptr<ItemReader>> make(const RubricFolder& folder, const PointKinds& kinds);

  struct Read {
    std::vector<Item> items;                   // in the order of the text, each once
    std::set<std::string, std::less<>> words;  // all words of the text, folded
    std::size_t numbers = 0;                   // quantities with a unit
    std::vector<std::string> fresh;            // words that got a list of their own
  };
  Read read(const std::string& text);
  // The word lists that the items need besides the vocabulary: name → JSON.
  [[nodiscard]] const std::map<std::string, std::string>& lists() const { return lists_; }

 private:
  ItemReader(const RubricFolder& folder, const PointKinds& kinds) : kinds_(kinds), thesaurus_(folder.files, kinds.nothing) {}
  Item item_of_list(const std::string& list) const;
  Item item_of_word(const std::string& word, Read& out);
  std::vector<Matcher::Heard> heard(const Document& document);
  // How little a list is about the words it was heard in: 0 if it is called so.
  [[nodiscard]] std::size_t distance(const Matcher::Heard& h, const Document& document) const;

  const PointKinds& kinds_;
  Thesaurus thesaurus_;
  SourceFiles files_;
  std::unique_ptr<Checker> checker_;
  std::unique_ptr<Matcher> matcher_;
  Reader reader_;
  std::map<std::string, std::string> lists_;
};

}  // namespace retort::author

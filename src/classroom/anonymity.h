// Quotes that name nobody: none with a word in it that stands in a pupil's label.
//
// What is looked at are the words of all labels of the class, in normal form, of two letters or more (also the parts of
// "AmiraKhan" and "amira_khan", and the word with an s behind it), and numbers of three digits or more. A word of more than
// half of the labels, where there are three or more, is not a name ("draft" in draft-01, draft-02, ...). A name that is in no
// label cannot be known. Threads: one for each thread.
#pragma once
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "text/reader.h"

namespace retort::classroom {

class Anonymity {
 public:
  explicit Anonymity(const std::vector<std::string_view>& labels);
  bool names_nobody(std::string_view quote);

 private:
  std::set<std::string> words_of_label(std::string_view label);
  Reader reader_;
  Document document_;
  std::set<std::string, std::less<>> names_;
};

}  // namespace retort::classroom

// The words that one rubric listens for: phrases, each standing for one or more concepts, found in a
// Document in spite of inflection and bad spelling.
//
// Build once (add, then freeze); after that it is read-only and may be shared by threads. Each thread
// keeps a Memo of the words it has met, bounded, so that memory does not grow with the answers.
#pragma once
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "text/document.h"
#include "text/reader.h"
#include "vocabulary/real_words.h"
#include "vocabulary/spelling.h"
#include "vocabulary/stemmer.h"

namespace retort {

using ConceptId = std::uint32_t;
using WordId = std::uint32_t;
inline constexpr WordId kNoWord = 0xFFFFFFFF;

// A place in the text that counts for matching: every token but the skipped small words ("the", "a").
struct Slot {
  std::uint32_t token = 0;
  WordId word = kNoWord;   // by its stem or a near spelling
  WordId exact = kNoWord;  // as it stands, if the vocabulary has it in 'quotes'
  WordId also = kNoWord;   // the right spelling of a misspelt wording, if one list has both
  // Where it stands, for distances: one for each word, more over the end of a sentence or a line.
  std::uint32_t position = 0;
  bool joined = false;  // only a comma or nothing stands before it
  bool comma = false;   // a comma does
};

// A phrase of the vocabulary found in the text: slots [first, last].
struct Sighting {
  ConceptId concept_id = 0;
  std::uint32_t first = 0;
  std::uint32_t last = 0;
};

// The sightings from `slot` on; `sightings` must come in the order of their first slots.
std::span<const Sighting> from_slot(std::span<const Sighting> sightings, std::uint32_t slot);

struct StringHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
};

// What is worked out about a word once, for all rubrics that have it. Threads: one at a time.
class WordForms {
 public:
  struct Form {
    std::string stem;
    std::uint32_t index = 0;       // of the word, from 0
    std::uint32_t stem_index = 0;  // of its stem, from 0
    bool real = false;  // an English word, not a misspelling that a list names
  };
  // `real_words` must outlive the forms.
  explicit WordForms(RealWords real_words = {});
  // `word`: folded, a..z only.
  const Form& of(std::string_view word);

 private:
  friend class Vocabulary;
  RealWords real_words_;
  Stemmer stemmer_;
  Reader reader_;
  std::unordered_map<std::string, std::uint32_t, StringHash, std::equal_to<>> stems_;
  std::unordered_map<std::string, Form, StringHash, std::equal_to<>> known_;
};

// The words of a phrase in normal form, 'quoted' ones still quoted; dashes read as "-".
std::vector<std::string> phrase_forms(std::string_view phrase, Reader& reader);

class Vocabulary {
 public:
  struct Memo {
    static constexpr std::size_t kMost = 1 << 16;
    struct Known {
      WordId word = kNoWord;
      WordId exact = kNoWord;
      WordId also = kNoWord;
    };
    std::unordered_map<std::string, Known, StringHash, std::equal_to<>> words;
    Stemmer stemmer;
    Speller::Sounds sounds;
  };

  // `forms` is used while words are added, and must outlive freeze().
  explicit Vocabulary(WordForms& forms);

  // Words that are passed over in the text and in phrases.
  void add_skipped(std::string_view word);
  // A phrase of one or more words. Words count by their stem; in 'quotes' only as they stand.
  void add(ConceptId concept_id, std::string_view phrase);
  // Ends the adding. Gives the sorted list of real words, which spelling tolerance leaves alone.
  void freeze(RealWords real_words);

  // Finds all phrases of `document`: `slots` and `sightings` are replaced. Sightings come in the order of
  // their first slot. Linear in the document for a given vocabulary.
  void find(const Document& document, Memo& memo, std::vector<Slot>& slots, std::vector<Sighting>& sightings) const;

  [[nodiscard]] bool skips(std::string_view folded) const { return skipped_.contains(folded); }
  // What a folded word is taken for; kNoWord if nothing.
  [[nodiscard]] Memo::Known resolve(std::string_view folded, Memo& memo) const;
  // A wording of `word`, for tests and messages.
  [[nodiscard]] std::string_view wording(WordId word) const { return wordings_[word]; }
  [[nodiscard]] std::size_t word_count() const { return wordings_.size(); }
  // Concepts that have `word` as a phrase of its own.
  [[nodiscard]] std::vector<ConceptId> concepts_of(WordId word) const;
  [[nodiscard]] const Speller& speller() const { return speller_; }

 private:
  struct Phrase {
    ConceptId concept_id = 0;
    std::uint32_t rest = 0;   // words after the first: rest_[rest, rest + count)
    std::uint32_t count = 0;
  };

  WordId intern(std::string_view word, bool spelled = true);
  void add_words(ConceptId concept_id, const WordId* words, std::size_t count);
  [[nodiscard]] WordId right_spelling(std::string_view folded, WordId word, Memo& memo) const;
  [[nodiscard]] WordId look_up(std::string_view folded, Memo& memo) const;
  void sight(const std::vector<Slot>& slots, std::uint32_t at, WordId word, std::vector<Sighting>& out) const;

  // Until freeze():
  WordForms* forms_;
  std::vector<bool> spelled_;          // by WordForms::Form::index: words the speller has
  std::vector<WordId> by_stem_index_;  // by WordForms::Form::stem_index

  std::unordered_map<std::string, WordId, StringHash, std::equal_to<>> by_form_;   // short words, numbers, marks
  std::unordered_map<std::string, WordId, StringHash, std::equal_to<>> by_quote_;  // letters, in 'quotes'
  std::unordered_map<std::string, WordId, StringHash, std::equal_to<>> by_stem_;
  std::unordered_map<std::string, bool, StringHash, std::equal_to<>> skipped_;
  std::vector<std::string> wordings_;
  // Phrases by their first word; `seconds` has a bit for each second word, so that most are passed over.
  struct Starting {
    std::vector<ConceptId> alone;
    std::vector<Phrase> longer;
    std::uint64_t seconds = 0;
  };
  static std::uint64_t bit(WordId word) { return word == kNoWord ? 0 : 1ULL << (word & 63U); }
  std::vector<Starting> phrases_;
  std::vector<WordId> rest_;
  Speller speller_;
  RealWords real_words_;
};

}  // namespace retort

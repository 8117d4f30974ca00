#include "vocabulary/vocabulary.h"

#include <algorithm>

namespace retort {
namespace {

constexpr WordId kSkip = 0xFFFFFFFE;

// How much farther than the next word something is when a break lies between. A sentence end is a hint,
// not a wall: pupils put full stops anywhere.
std::uint32_t extra_distance(Break strength) {
  switch (strength) {
    case Break::none:
    case Break::comma: return 0;
    case Break::clause: return 0;
    case Break::sentence:
    case Break::line: return 3;
    case Break::paragraph: return 6;
  }
  return 0;
}

bool is_letter_word(std::string_view word) {
  return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

}  // namespace

std::span<const Sighting> from_slot(std::span<const Sighting> sightings, std::uint32_t slot) {
  auto at = std::lower_bound(sightings.begin(), sightings.end(), slot, [](const Sighting& s, std::uint32_t i) { return s.first < i; });
  return sightings.subspan(static_cast<std::size_t>(at - sightings.begin()));
}

// Room for what a rubric brings, so that the tables need not grow in steps.
constexpr std::size_t kWordsOfARubric = 4096;

WordForms::WordForms(RealWords real_words) : real_words_(real_words) {
  known_.reserve(4 * kWordsOfARubric);
  stems_.reserve(4 * kWordsOfARubric);
}

Vocabulary::Vocabulary(WordForms& forms) : forms_(&forms) {
  by_stem_.reserve(kWordsOfARubric);
  wordings_.reserve(kWordsOfARubric);
  phrases_.reserve(kWordsOfARubric);
  rest_.reserve(2 * kWordsOfARubric);
}

const WordForms::Form& WordForms::of(std::string_view word) {
  auto known = known_.find(word);
  if (known != known_.end()) return known->second;
  Form form;
  form.stem = stemmer_.stem(word);
  form.index = static_cast<std::uint32_t>(known_.size());
  form.stem_index = stems_.emplace(form.stem, static_cast<std::uint32_t>(stems_.size())).first->second;
  form.real = real_words_.contains(word);
  return known_.emplace(word, std::move(form)).first->second;
}

void Vocabulary::add_skipped(std::string_view word) { skipped_.emplace(normal_form(word), true); }

// `spelled`: misspellings of the word are to be known too.
WordId Vocabulary::intern(std::string_view word, bool spelled) {
  bool exact = word.size() > 2 && word.front() == '\'' && word.back() == '\'';
  if (exact) word = word.substr(1, word.size() - 2);
  auto new_word = [&] {
    wordings_.emplace_back(word);
    phrases_.emplace_back();
    return static_cast<WordId>(wordings_.size() - 1);
  };
  bool letters = is_letter_word(word) && word.size() >= 3;
  if (exact || !letters) {
    auto& known = letters ? by_quote_ : by_form_;
    if (auto found = known.find(word); found != known.end()) return found->second;
    WordId id = new_word();
    known.emplace(word, id);
    return id;
  }
  const WordForms::Form& form = forms_->of(word);
  if (by_stem_index_.size() <= form.stem_index) by_stem_index_.resize(form.stem_index + 1, kNoWord);
  WordId& id = by_stem_index_[form.stem_index];
  if (id == kNoWord) {
    id = new_word();
    by_stem_.emplace(form.stem, id);
  }
  if (spelled_.size() <= form.index) spelled_.resize(form.index + 1, false);
  if (spelled && !spelled_[form.index]) {
    spelled_[form.index] = true;
    speller_.add({std::string(word), form.stem, 0, id, form.real});
  }
  return id;
}

void Vocabulary::add_words(ConceptId concept_id, const WordId* words, std::size_t count) {
  Starting& starting = phrases_[words[0]];
  if (count == 1) {
    starting.alone.push_back(concept_id);
    return;
  }
  starting.longer.push_back({concept_id, static_cast<std::uint32_t>(rest_.size()), static_cast<std::uint32_t>(count - 1)});
  starting.seconds |= bit(words[1]);
  rest_.insert(rest_.end(), words + 1, words + count);
}

std::vector<std::string> phrase_forms(std::string_view phrase, Reader& reader) {
  std::vector<std::string> forms;
  for (std::size_t at = 0; at < phrase.size();) {
    std::size_t end = std::min(phrase.find(' ', at), phrase.size());
    std::string_view raw = phrase.substr(at, end - at);
    at = end + 1;
    if (is_letter_word(raw)) {
      forms.emplace_back(raw);
    } else if (raw == "-" || raw == "\xE2\x88\x92" || raw == "\xE2\x80\x93") {
      forms.emplace_back("-");
    } else if (raw.size() > 2 && raw.front() == '\'' && raw.back() == '\'') {
      forms.push_back("'" + normal_form(raw.substr(1, raw.size() - 2)) + "'");
    } else if (!raw.empty()) {
      Document document = reader.read(raw);
      for (std::size_t i = 0; i < document.tokens.size(); ++i) forms.emplace_back(document.form(i));
    }
  }
  return forms;
}

void Vocabulary::add(ConceptId concept_id, std::string_view phrase) {
  if (is_letter_word(phrase)) {  // one plain word, the commonest kind
    if (skipped_.contains(phrase)) return;
    WordId word = intern(phrase);
    add_words(concept_id, &word, 1);
    return;
  }
  std::vector<std::string> forms = phrase_forms(phrase, forms_->reader_);
  std::erase_if(forms, [&](const std::string& form) { return skipped_.contains(form); });
  if (forms.empty()) return;
  std::vector<WordId> words;
  for (const std::string& form : forms) words.push_back(intern(form));
  add_words(concept_id, words.data(), words.size());
  // "stop watch" is also written "stopwatch"
  bool joins = forms.size() == 2 && is_letter_word(forms[0]) && is_letter_word(forms[1]) && forms[0].size() >= 3 && forms[1].size() >= 3;
  if (!joins) return;
  std::string joined = forms[0] + forms[1];
  WordId word = intern(joined, forms_->of(joined).real);
  add_words(concept_id, &word, 1);
}

void Vocabulary::freeze(RealWords real_words) {
  real_words_ = real_words;
  forms_ = nullptr;
  spelled_ = {};
  by_stem_index_ = {};
}

WordId Vocabulary::look_up(std::string_view folded, Memo& memo) const {
  if (auto known = by_form_.find(folded); known != by_form_.end()) return known->second;
  if (skipped_.contains(folded)) return kSkip;
  if (!is_letter_word(folded) || folded.size() < 3) return kNoWord;
  std::string stem(memo.stemmer.stem(folded));
  if (auto known = by_stem_.find(stem); known != by_stem_.end()) return known->second;
  if (folded.size() < 4 || real_words_.contains(folded)) return kNoWord;
  std::uint32_t id = speller_.best(folded, stem, memo.sounds);
  return id == Speller::kNone ? kNoWord : id;
}

// Lists name misspellings that the rules cannot guess ("ruller"). Other lists that have only the right word
// should hear them too.
WordId Vocabulary::right_spelling(std::string_view folded, WordId word, Memo& memo) const {
  if (word >= wordings_.size() || folded.size() < 4 || !is_letter_word(folded) || real_words_.contains(folded)) return kNoWord;
  std::uint32_t other = speller_.best(folded, memo.stemmer.stem(folded), memo.sounds, [&](const Speller::Candidate& candidate) {
    return candidate.id != word && candidate.real;
  });
  if (other == Speller::kNone) return kNoWord;
  for (ConceptId one : concepts_of(word)) {
    for (ConceptId two : concepts_of(other)) {
      if (one == two) return other;
    }
  }
  return kNoWord;
}

Vocabulary::Memo::Known Vocabulary::resolve(std::string_view folded, Memo& memo) const {
  if (auto known = memo.words.find(folded); known != memo.words.end()) return known->second;
  auto quoted = by_quote_.find(folded);
  Memo::Known word{look_up(folded, memo), quoted == by_quote_.end() ? kNoWord : quoted->second, kNoWord};
  word.also = right_spelling(folded, word.word, memo);
  constexpr std::size_t kLongestKept = 40;
  if (folded.size() <= kLongestKept) {
    if (memo.words.size() >= Memo::kMost) memo.words.clear();
    memo.words.emplace(folded, word);
  }
  return word;
}

void Vocabulary::sight(const std::vector<Slot>& slots, std::uint32_t at, WordId word, std::vector<Sighting>& out) const {
  const Starting& starting = phrases_[word];
  for (ConceptId id : starting.alone) out.push_back({id, at, at});
  if (at + 1 >= slots.size() || !slots[at + 1].joined) return;
  const Slot& next = slots[at + 1];
  if ((starting.seconds & (bit(next.word) | bit(next.exact) | bit(next.also))) == 0) return;
  for (const Phrase& phrase : starting.longer) {
    if (at + phrase.count >= slots.size()) continue;
    bool all = true;
    for (std::uint32_t i = 0; i < phrase.count && all; ++i) {
      const Slot& slot = slots[at + 1 + i];
      WordId wanted = rest_[phrase.rest + i];
      all = (slot.word == wanted || slot.exact == wanted || slot.also == wanted) && slot.joined;
    }
    if (all) out.push_back({phrase.concept_id, at, at + phrase.count});
  }
}

void Vocabulary::find(const Document& document, Memo& memo, std::vector<Slot>& slots, std::vector<Sighting>& sightings) const {
  slots.clear();
  sightings.clear();
  std::uint32_t position = 0;
  Break strongest = Break::none;
  for (std::uint32_t i = 0; i < document.tokens.size(); ++i) {
    const Token& token = document.tokens[i];
    strongest = std::max(strongest, token.before);
    Memo::Known word = resolve(document.form(token), memo);
    if (word.word == kSkip) {
      // "a = ..." is a symbol, not the article
      bool symbol = i + 1 < document.tokens.size() && document.form(i + 1) == "=";
      if (!symbol) continue;
      word.word = kNoWord;
    }
    position += 1 + extra_distance(strongest);
    slots.push_back({i, word.word, word.exact, word.also, position, strongest <= Break::comma, strongest == Break::comma});
    strongest = Break::none;
  }
  for (std::uint32_t at = 0; at < slots.size(); ++at) {
    if (slots[at].word != kNoWord) sight(slots, at, slots[at].word, sightings);
    if (slots[at].exact != kNoWord) sight(slots, at, slots[at].exact, sightings);
    if (slots[at].also != kNoWord) sight(slots, at, slots[at].also, sightings);
  }
}

std::vector<ConceptId> Vocabulary::concepts_of(WordId word) const { return phrases_[word].alone; }

}  // namespace retort

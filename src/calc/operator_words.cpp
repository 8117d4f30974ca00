#include "calc/operator_words.h"

#include <algorithm>
#include <array>

#include "quantity/number_words.h"

namespace retort::calc {
namespace {

struct Phrase {
  std::array<std::string_view, 4> words;
  TokenKind kind;
  bool anywhere;  // an operator even with no number in front ("divided by 10 so one is ...")
};

// As pupils write them, common misspellings included; longest first where one begins another.
constexpr Phrase kPhrases[] = {
    {{"divided", "by"}, TokenKind::divide, true},
    {{"devided", "by"}, TokenKind::divide, true},
    {{"dividied", "by"}, TokenKind::divide, true},
    {{"dived", "by"}, TokenKind::divide, true},
    {{"divide", "by"}, TokenKind::divide, true},
    {{"dividing", "by"}, TokenKind::divide, true},
    {{"dividing", "it", "by"}, TokenKind::divide, true},
    {{"multiplying", "by"}, TokenKind::times, true},
    {{"timesing", "by"}, TokenKind::times, true},
    {{"timesing", "it", "by"}, TokenKind::times, true},
    {{"divided", "it", "by"}, TokenKind::divide, true},
    {{"divided", "that", "by"}, TokenKind::divide, true},
    {{"divided", "this", "by"}, TokenKind::divide, true},
    {{"divide", "it", "by"}, TokenKind::divide, true},
    {{"divide", "that", "by"}, TokenKind::divide, true},
    {{"shared", "by"}, TokenKind::divide, true},
    {{"shared", "between"}, TokenKind::divide, true},
    {{"split", "by"}, TokenKind::divide, true},
    {{"over"}, TokenKind::divide, false},
    {{"div", "by"}, TokenKind::divide, true},
    {{"multiplied", "by"}, TokenKind::times, true},
    {{"multiply", "by"}, TokenKind::times, true},
    {{"multiplyed", "by"}, TokenKind::times, true},
    {{"multiplied", "it", "by"}, TokenKind::times, true},
    {{"multiplied", "that", "by"}, TokenKind::times, true},
    {{"multiplied", "with"}, TokenKind::times, true},
    {{"timesed", "by"}, TokenKind::times, true},
    {{"timesd", "by"}, TokenKind::times, true},
    {{"times", "by"}, TokenKind::times, true},
    {{"timesed", "it", "by"}, TokenKind::times, true},
    {{"times", "it", "by"}, TokenKind::times, true},
    {{"times", "that", "by"}, TokenKind::times, true},
    {{"timesed", "that", "by"}, TokenKind::times, true},
    {{"timesed"}, TokenKind::times, false},
    {{"timed", "by"}, TokenKind::times, false},
    {{"times"}, TokenKind::times, false},
    {{"and", "times"}, TokenKind::times, true},
    {{"then", "times"}, TokenKind::times, true},
    {{"and", "timesed"}, TokenKind::times, true},
    {{"then", "timesed"}, TokenKind::times, true},
    {{"lots", "of"}, TokenKind::times, false},
    {{"multiplied"}, TokenKind::times, false},
    {{"take", "away"}, TokenKind::minus, false},
    {{"takeaway"}, TokenKind::minus, false},
    {{"taken", "away"}, TokenKind::minus, false},
    {{"minus"}, TokenKind::minus, false},
    {{"subtract"}, TokenKind::minus, false},
    {{"less"}, TokenKind::minus, false},
    {{"take"}, TokenKind::minus, false},
    {{"plus"}, TokenKind::plus, false},
    {{"add"}, TokenKind::plus, false},
    {{"added", "to"}, TokenKind::plus, false},
    {{"added", "on", "to"}, TokenKind::plus, false},
    {{"by"}, TokenKind::times, false},
    {{"squared"}, TokenKind::squared, false},
    {{"sqaured"}, TokenKind::squared, false},
    {{"cubed"}, TokenKind::cubed, false},
    {{"equals"}, TokenKind::equals, true},
    {{"equal", "to"}, TokenKind::equals, true},
    {{"equals", "to"}, TokenKind::equals, true},
    {{"is", "equal", "to"}, TokenKind::equals, true},
    {{"root"}, TokenKind::root, false},
    {{"square", "root", "of"}, TokenKind::root, true},
    {{"square", "root"}, TokenKind::root, true},
    {{"pi"}, TokenKind::pi, true},
};

bool operand_end(TokenKind kind) {
  return kind == TokenKind::number || kind == TokenKind::close || kind == TokenKind::pi || kind == TokenKind::squared || kind == TokenKind::cubed;
}
bool operand_start(TokenKind kind) {
  return kind == TokenKind::number || kind == TokenKind::open || kind == TokenKind::pi || (kind >= TokenKind::root && kind <= TokenKind::arctangent);
}
bool is_operator(TokenKind kind) {
  return kind >= TokenKind::plus && kind <= TokenKind::power;
}

std::size_t length_of(const Phrase& phrase) {
  std::size_t n = 0;
  while (n < phrase.words.size() && !phrase.words[n].empty()) ++n;
  return n;
}

// Whether any phrase begins with these letters; most words are told apart by it.
constexpr std::uint8_t kOperator = 1;
constexpr std::uint8_t kNumber = 2;

constexpr std::size_t pair_of(std::string_view word) {
  return static_cast<std::size_t>(word[0] - 'a') * 26 + static_cast<std::size_t>(word[1] - 'a');
}

// The phrases in the order of their first two letters, so that only those are compared which may fit.
struct ByStart {
  std::array<std::uint8_t, std::size(kPhrases)> order{};
  std::array<std::uint8_t, 26 * 26 + 1> begin{};
  constexpr ByStart() {
    for (const Phrase& phrase : kPhrases) ++begin[pair_of(phrase.words[0]) + 1];
    for (std::size_t pair = 1; pair < begin.size(); ++pair) begin[pair] = static_cast<std::uint8_t>(begin[pair] + begin[pair - 1]);
    std::array<std::uint8_t, 26 * 26> filled{};
    for (std::size_t i = 0; i < std::size(kPhrases); ++i) {
      std::size_t pair = pair_of(kPhrases[i].words[0]);
      order[static_cast<std::size_t>(begin[pair]) + filled[pair]++] = static_cast<std::uint8_t>(i);
    }
  }
};
constexpr ByStart kByStart;

struct Starts {
  std::array<std::array<std::uint8_t, 26>, 26> of{};
  constexpr Starts() {
    for (const Phrase& phrase : kPhrases)
      of[static_cast<std::size_t>(phrase.words[0][0] - 'a')][static_cast<std::size_t>(phrase.words[0][1] - 'a')] |= kOperator;
    for (std::string_view pair : {"ei", "el", "fi", "fo", "ha", "hu", "ni", "no", "on", "po", "se", "si", "te", "th", "tw", "ze"}) {
      of[static_cast<std::size_t>(pair[0] - 'a')][static_cast<std::size_t>(pair[1] - 'a')] |= kNumber;
    }
  }
};
constexpr Starts kStarts;

class Words {
 public:
  explicit Words(Tokens& tokens) : tokens_(tokens) {}

  void run() {
    if (std::any_of(tokens_.all.begin(), tokens_.all.end(), [](const Token& token) { return (token.hint & kNumber) != 0; })) read_numbers();
    if (tokens_.numbers.empty()) return;
    auto first = std::find_if(tokens_.all.begin(), tokens_.all.end(), [](const Token& token) { return (token.hint & kOperator) != 0; });
    auto to = static_cast<std::size_t>(first - tokens_.all.begin());
    for (std::size_t from = to; from < tokens_.size();) {
      std::size_t n = phrase_at(from, to);
      Token token = tokens_.all[from];
      if (n > 0) {
        token.kind = kind_;
        token.in_words = true;
        token.source.end = tokens_.all[from + n - 1].source.end;
      }
      tokens_.all[to++] = token;
      from += n > 0 ? n : 1;
    }
    tokens_.all.resize(to);
  }

 private:
  // How many words from `from` on make an operator (`kind_`); `to` is where the finished tokens end.
  std::size_t phrase_at(std::size_t from, std::size_t to) {
    if ((tokens_.all[from].hint & kOperator) == 0) return 0;
    std::string_view first = tokens_.word(from);
    if (first.size() < 2) return 0;  // it went into the unit before it
    std::size_t best = 0;
    std::size_t pair = pair_of(first);  // a word with a hint has two letters
    for (std::size_t k = kByStart.begin[pair]; k < kByStart.begin[pair + 1]; ++k) {
      const Phrase& phrase = kPhrases[kByStart.order[k]];
      std::size_t n = length_of(phrase);
      if (phrase.words[0] != first || n <= best) continue;
      bool same = true;
      for (std::size_t i = 1; i < n && same; ++i) same = tokens_.word(from + i) == phrase.words[i];
      if (!same) continue;
      if (!phrase.anywhere && !fits(phrase.kind, from + n, to)) continue;
      if (phrase.anywhere && phrase.kind != TokenKind::equals && phrase.kind != TokenKind::pi && !operand_start(tokens_.kind(from + n)) &&
          tokens_.word(from + n) != "square" && tokens_.word(from + n) != "root")
        continue;
      best = n;
      kind_ = first == "by" ? verb_before(to) : phrase.kind;
    }
    return best;
  }
  // "shared 0.12 by 10", "divided 6 by 3"
  TokenKind verb_before(std::size_t to) const {
    std::string_view verb = to >= 2 ? tokens_.word(to - 2) : std::string_view{};
    return verb.starts_with("divid") || verb.starts_with("devid") || verb.starts_with("shar") || verb.starts_with("split") ? TokenKind::divide
                                                                                                                           : TokenKind::times;
  }
  bool fits(TokenKind kind, std::size_t next, std::size_t to) const {
    TokenKind before = to > 0 ? tokens_.all[to - 1].kind : TokenKind::stop;
    if (kind == TokenKind::root) return operand_start(tokens_.kind(next));
    if (!operand_end(before)) return false;
    if (kind == TokenKind::squared || kind == TokenKind::cubed) return true;
    bool root_in_words = tokens_.word(next) == "square" || tokens_.word(next) == "root";
    if (!operand_start(tokens_.kind(next)) && !root_in_words) return false;
    // "3 times 20 g" of a list of apparatus is told apart later, by the missing result
    return true;
  }

  // Numbers in words, beside an operator, a sign of equality or a unit.
  void read_numbers() {
    std::size_t to = 0;
    bool changed = false;
    Exact value;
    for (std::size_t from = 0; from < tokens_.size();) {
      std::size_t n = (tokens_.all[from].hint & kNumber) == 0 ? 0 : words_of_number(from, value);
      if (n == 0 || !place_number(from, n, to, value)) {
        if (changed) tokens_.all[to] = tokens_.all[from];
        ++to;
        ++from;
        continue;
      }
      changed = true;
      ++to;
      from += n;
    }
    tokens_.all.resize(to);
  }

  bool place_number(std::size_t from, std::size_t n, std::size_t to, const Exact& value) {
    std::size_t end = tokens_.all[from + n - 1].source.end;
    std::size_t at = end;
    while (at < tokens_.source.size() && tokens_.source[at] == ' ') ++at;
    auto unit = at < tokens_.source.size() ? read_unit_prefix(tokens_.source.substr(at, 64)) : std::nullopt;
    bool spoken = spoken_until_ > 0 && to < spoken_until_ && to > 0 && value != 1 && is_result_verb(tokens_.word(to - 1));
    bool operators = spoken || (to > 0 && is_operator(tokens_.all[to - 1].kind)) || beside_operator(from + n) || after_operator_word(to);
    if (!unit && !operators) return false;
    Number number;
    number.decimal.value = value;
    number.decimal.figures = value.get_den() == 1 ? 6 : 2;  // a whole number is as exact as a count
    while (!ends_by(value, number.decimal.last_place) && number.decimal.last_place > -6) --number.decimal.last_place;
    spoken_until_ = to + 16;
    number.digits = {tokens_.all[from].source.begin, static_cast<std::uint32_t>(end)};
    Token token = tokens_.all[from];
    token.kind = TokenKind::number;
    token.in_words = true;
    token.source.end = static_cast<std::uint32_t>(end);
    if (unit) {
      number.unit = unit->unit;
      token.source.end = static_cast<std::uint32_t>(at + unit->length);
    }
    tokens_.numbers.push_back(number);
    token.number = static_cast<std::uint32_t>(tokens_.numbers.size() - 1);
    std::size_t last = from + n - 1;
    while (last + 1 < tokens_.size() && tokens_.all[last + 1].source.begin < token.source.end) tokens_.all[++last].kind = TokenKind::word;
    tokens_.all[to] = token;
    skip_unit_words(from + n, token.source.end);
    return true;
  }
  // Words that went into the unit become empty.
  void skip_unit_words(std::size_t from, std::uint32_t end) {
    while (from < tokens_.size() && tokens_.all[from].source.begin < end) {
      tokens_.all[from].kind = TokenKind::word;
      tokens_.all[from].length = 0;
      ++from;
    }
  }
  bool beside_operator(std::size_t next) const {
    if (is_operator(tokens_.kind(next)) && tokens_.kind(next) != TokenKind::minus) return true;
    std::string_view word = tokens_.word(next);
    return word == "times" || word == "timesed" || word == "multiplied" || word == "divided" || word == "devided" || word == "plus" ||
           word == "minus" || word == "take" || word == "add";
  }
  bool after_operator_word(std::size_t to) const {
    std::string_view word = to > 0 ? tokens_.word(to - 1) : std::string_view{};
    std::string_view before = to > 1 ? tokens_.word(to - 2) : std::string_view{};
    if (word == "by")
      return before.starts_with("divid") || before.starts_with("devid") || before.starts_with("multipl") || before.starts_with("times") ||
             before.starts_with("shar");
    return word == "plus" || word == "minus" || word == "times" || word == "timesed";
  }

  // How many words from `i` on make a number: "one hundred and fifty", "two point five".
  std::size_t words_of_number(std::size_t i, Exact& value) const {
    WordValue first = word_value(i);
    if (first.kind == NumberWord::half && (tokens_.word(i + 1) == "a" || tokens_.word(i + 1) == "an")) {  // "half a second"
      value = Exact(1, 2);
      return 2;
    }
    if (first.kind == NumberWord::half && tokens_.is(i + 1, TokenKind::times)) {  // "half × 1.2 × 16"
      value = Exact(1, 2);
      return 1;
    }
    if (first.kind == NumberWord::none || first.kind == NumberWord::point || first.kind == NumberWord::half || first.kind == NumberWord::quarter)
      return 0;
    value = exact(first.value);
    std::size_t n = 1;
    if (first.kind == NumberWord::ten && word_value(i + n).kind == NumberWord::unit)
      value += exact(word_value(i + n++).value);
    else if (first.kind == NumberWord::ten && tokens_.is(i + n, TokenKind::minus) && tokens_.all[i + n].glued &&
             word_value(i + n + 1).kind == NumberWord::unit) {  // "fifty-four"
      value += exact(word_value(i + n + 1).value);
      n += 2;
    }
    if (word_value(i + n).kind == NumberWord::hundred) {
      value *= 100;
      ++n;
      std::size_t tail = tokens_.word(i + n) == "and" ? n + 1 : n;
      WordValue rest = word_value(i + tail);
      if (rest.kind == NumberWord::ten || rest.kind == NumberWord::teen || rest.kind == NumberWord::unit) {
        value += exact(rest.value);
        n = tail + 1;
        if (rest.kind == NumberWord::ten && word_value(i + n).kind == NumberWord::unit) value += exact(word_value(i + n++).value);
      }
    }
    if (word_value(i + n).kind == NumberWord::point) {
      Exact place(1, 10);
      std::size_t digits = n + 1;
      for (; digits < n + 6 && word_value(i + digits).kind == NumberWord::unit; ++digits, place /= 10)
        value += exact(word_value(i + digits).value) * place;
      if (digits > n + 1) n = digits;
    }
    if (tokens_.word(i + n) == "and" && tokens_.word(i + n + 1) == "a" && tokens_.word(i + n + 2) == "half") {
      value += Exact(1, 2);
      n += 3;
    }
    return n;
  }
  WordValue word_value(std::size_t i) const { return tokens_.is(i, TokenKind::word) ? number_word(tokens_.word(i)) : WordValue{}; }

  static bool is_result_verb(std::string_view word) {
    return word == "is" || word == "to" || word == "gives" || word == "makes" || word == "get" || word == "got" || word == "was" || word == "equals";
  }

  Tokens& tokens_;
  TokenKind kind_ = TokenKind::word;
  std::size_t spoken_until_ = 0;  // after a number in words, its result may be one too
};

bool equal_folded(std::string_view letters, std::string_view word) {
  if (letters.size() != word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    char c = letters[i] >= 'A' && letters[i] <= 'Z' ? static_cast<char>(letters[i] + 32) : letters[i];
    if (c != word[i]) return false;
  }
  return true;
}

}  // namespace

std::uint8_t hint_of(std::string_view word) {
  if (word.size() < 2 || word[0] < 'a' || word[0] > 'z' || word[1] < 'a' || word[1] > 'z') return 0;
  return kStarts.of[static_cast<std::size_t>(word[0] - 'a')][static_cast<std::size_t>(word[1] - 'a')];
}

TokenKind function_word(std::string_view letters) {
  struct Entry {
    std::string_view word;
    TokenKind kind;
  };
  static constexpr Entry kEntries[] = {{"sin", TokenKind::sine},          {"sine", TokenKind::sine},        {"cos", TokenKind::cosine},
                                       {"cosine", TokenKind::cosine},     {"tan", TokenKind::tangent},      {"arcsin", TokenKind::arcsine},
                                       {"asin", TokenKind::arcsine},      {"arccos", TokenKind::arccosine}, {"acos", TokenKind::arccosine},
                                       {"arctan", TokenKind::arctangent}, {"atan", TokenKind::arctangent},  {"sqrt", TokenKind::root}};
  if (letters.size() < 3 || letters.size() > 6) return TokenKind::word;
  char first = static_cast<char>(letters[0] | 0x20);
  char second = static_cast<char>(letters[1] | 0x20);
  bool may = (first == 's' && (second == 'i' || second == 'q')) || (first == 'c' && second == 'o') || (first == 't' && second == 'a') ||
             (first == 'a' && (second == 'r' || second == 's' || second == 'c' || second == 't'));
  if (!may) return TokenKind::word;
  for (const Entry& entry : kEntries) {
    if (equal_folded(letters, entry.word)) return entry.kind;
  }
  return TokenKind::word;
}

TokenKind inverse_of(TokenKind function) {
  if (function == TokenKind::sine) return TokenKind::arcsine;
  if (function == TokenKind::cosine) return TokenKind::arccosine;
  if (function == TokenKind::tangent) return TokenKind::arctangent;
  return function;
}

void read_operator_words(Tokens& tokens) {
  Words(tokens).run();
}

}  // namespace retort::calc

#include "author/items.h"

#include <algorithm>

#include "quantity/quantity.h"

namespace retort::author {
namespace {

constexpr std::string_view kScaffold = "new-rubric-scaffold.json";
// A rubric that only brings the shared vocabulary in.
constexpr std::string_view kScaffoldContent =
    R"({"format":1,"id":"scaffold","title":"t","question":"q","steps":[{"id":"s","title":"t","facet":"set-up","hint":"?","present":["word"]}]})";

}  // namespace

Result<std::unique_ptr<ItemReader>> ItemReader::make(const RubricFolder& folder, const PointKinds& kinds) {
  std::unique_ptr<ItemReader> out(new ItemReader(folder, kinds));  // NOLINT: the constructor is private
  out->files_ = folder.files;
  out->files_[std::string(kScaffold)] = kScaffoldContent;
  Checker::Made made = Checker::make(std::string(kScaffold), out->files_, folder.real_words);
  if (!made.checker) return made.findings.empty() ? make_finding(Code::rubrics_folder_missing, folder.path) : made.findings.front();
  out->checker_ = std::move(made.checker);
  out->matcher_ = std::make_unique<Matcher>(out->checker_->program());
  return out;
}

// The lists heard that are content, longest first.
std::vector<Matcher::Heard> ItemReader::heard(const Document& document) {
  std::vector<Matcher::Heard> out = matcher_->hear(document);
  const std::vector<WordList>& known = checker_->rubric().words;
  std::erase_if(out, [&](const Matcher::Heard& h) {
    bool a_scale = h.list == "balance" && h.span.of(document.source) == "scale";  // of a ruler or a tube
    return a_scale || kinds_.ignored_lists.contains(h.list) ||
           std::none_of(known.begin(), known.end(), [&](const WordList& list) { return list.name == h.list; });
  });
  std::stable_sort(out.begin(), out.end(), [&](const Matcher::Heard& a, const Matcher::Heard& b) {
    if (a.span.size() != b.span.size()) return a.span.size() > b.span.size();
    return distance(a, document) < distance(b, document);
  });
  return out;
}

std::size_t ItemReader::distance(const Matcher::Heard& h, const Document& document) const {
  if (h.list == h.span.of(document.source)) return 0;
  const std::vector<WordList>& known = checker_->rubric().words;
  auto at = std::find_if(known.begin(), known.end(), [&](const WordList& list) { return list.name == h.list; });
  return at == known.end() ? SIZE_MAX : 1 + at->phrases.size() + at->patterns.size();
}

namespace {

// Whether a token tells something: a word that is none of those that say nothing.
bool telling(const Document& document, std::size_t token, const PointKinds& kinds) {
  std::string_view word = document.form(token);
  return document.tokens[token].kind == TokenKind::word && word.size() > 1 && !kinds.nothing.contains(word);
}

}  // namespace

Item ItemReader::item_of_list(const std::string& list) const {
  const std::vector<WordList>& known = checker_->rubric().words;
  auto at = std::find_if(known.begin(), known.end(), [&](const WordList& one) { return one.name == list; });
  std::string kind = at == known.end() ? "" : at->kind;
  return {"{" + list + "}",
          list,
          kinds_.actions.contains(list),
          kind == "instrument" || list == "balance",
          kind == "quantity",
          kinds_.qualifiers.contains(list)};
}

Item ItemReader::item_of_word(const std::string& word, Read& out) {
  if (kinds_.actions.contains(word)) return {word, word, true, false, false, false};
  if (const KnownList* known = thesaurus_.find(word)) {
    lists_.try_emplace(known->name, known->json);
    bool instrument = known->json.find("\"instrument\"") != std::string::npos;
    return {"{" + known->name + "}",
            known->name,
            false,
            instrument,
            known->json.find("\"quantity\"") != std::string::npos,
            kinds_.qualifiers.contains(known->name)};
  }
  const std::vector<WordList>& vocabulary = checker_->rubric().words;
  if (std::any_of(vocabulary.begin(), vocabulary.end(), [&](const WordList& list) { return list.name == word; }))
    return {word, word, false, false, false, kinds_.qualifiers.contains(word)};
  if (lists_.try_emplace(word, "[\"" + word + "\"]").second) out.fresh.push_back(word);
  return {"{" + word + "}", word, false, false, false, kinds_.qualifiers.contains(word)};
}

ItemReader::Read ItemReader::read(const std::string& text) {
  Document document = reader_.read(text);
  Read out;
  std::vector<Quantity> quantities;
  find_quantities(document, quantities);
  std::vector<const std::string*> list_of(document.tokens.size(), nullptr);
  std::vector<bool> taken(document.tokens.size(), false);
  for (const Quantity& quantity : quantities) {
    if (quantity.unit != nullptr) ++out.numbers;
    for (std::uint32_t i = quantity.first; i <= quantity.last; ++i) taken[i] = true;
  }
  std::vector<Matcher::Heard> all = heard(document);
  for (const Matcher::Heard& h : all) {
    std::size_t first = SIZE_MAX;
    bool free = true;
    bool tells = false;
    for (std::size_t i = 0; i < document.tokens.size(); ++i) {
      if (document.tokens[i].source.begin < h.span.begin || document.tokens[i].source.end > h.span.end) continue;
      first = std::min(first, i);
      free = free && !taken[i];
      tells = tells || telling(document, i, kinds_);
    }
    if (!tells || !free || first == SIZE_MAX) continue;
    list_of[first] = &h.list;
    for (std::size_t i = first; i < document.tokens.size() && document.tokens[i].source.end <= h.span.end; ++i) taken[i] = true;
  }
  auto take = [&](Item item) {
    if (std::find(out.items.begin(), out.items.end(), item) == out.items.end()) out.items.push_back(std::move(item));
  };
  for (std::size_t i = 0; i < document.tokens.size(); ++i) {
    std::string word(document.form(i));
    if (document.tokens[i].kind == TokenKind::word) out.words.insert(word);
    bool each_time = word == "time" && i > 0 && (document.form(i - 1) == "each" || document.form(i - 1) == "every");
    if (each_time) continue;
    if (list_of[i] != nullptr)
      take(item_of_list(*list_of[i]));
    else if (!taken[i] && telling(document, i, kinds_))
      take(item_of_word(word, out));
  }
  bool plotted = out.words.contains("plot") || out.words.contains("plotted") || out.words.contains("graph");
  if (plotted) take(item_of_list("graph"));
  return out;
}

}  // namespace retort::author

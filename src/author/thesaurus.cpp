#include "author/thesaurus.h"

#include <algorithm>

#include "rubric/json.h"
#include "rubric/pattern.h"

namespace retort::author {
namespace {

const json::Value* wordings(const json::Value& list) {
  const json::Value* out = list.is(json::Type::object) ? list.find("words") : &list;
  return out != nullptr && out->is(json::Type::array) && !out->items.empty() ? out : nullptr;
}

bool plain(const json::Value& list) {
  return std::all_of(list.items.begin(), list.items.end(),
                     [](const json::Value& item) { return item.is(json::Type::string) && !is_pattern(item.text); });
}

// A list that does not hold its own name was named for its place in one rubric ("slow" for slower swings), not for what it says.
bool says_its_name(const std::string& name, const json::Value& list) {
  return std::any_of(list.items.begin(), list.items.end(), [&](const json::Value& item) { return item.text == name; });
}

}  // namespace

Thesaurus::Thesaurus(const SourceFiles& files, const std::set<std::string, std::less<>>& nothing) {
  auto too_wide = [&](const json::Value& item) { return nothing.contains(item.text); };
  for (const auto& [name, content] : files) {
    if (name == kVocabularyFile || !name.ends_with(".json")) continue;
    Findings ignored;  // 'rubric lint' shows them
    Result<json::Value> root = json::parse(content, name, ignored);
    const json::Value* words = root && root->is(json::Type::object) ? root->find("words") : nullptr;
    if (words == nullptr || !words->is(json::Type::object)) continue;
    for (const json::Member& member : words->members) {
      const json::Value* list = wordings(member.value);
      if (list == nullptr || !plain(*list) || std::any_of(list->items.begin(), list->items.end(), too_wide)) continue;
      KnownList known{member.key, std::string(member.value.span.of(content))};
      std::string first = list->items.front().text;
      if (first != member.key) lists_.try_emplace(first, known);
      if (!says_its_name(member.key, *list)) continue;
      // The longest list of one name knows most.
      auto [at, fresh] = lists_.try_emplace(member.key, known);
      if (!fresh && at->second.json.size() < known.json.size()) at->second = known;
    }
  }
}

const KnownList* Thesaurus::find(std::string_view word) const {
  auto at = lists_.find(word);
  if (at == lists_.end() && word.ends_with('s')) at = lists_.find(word.substr(0, word.size() - 1));
  return at == lists_.end() ? nullptr : &at->second;
}

}  // namespace retort::author

// Includes, word lists and pattern sets.
#include <algorithm>

#include "rubric/loader.h"

namespace retort {

using json::Type;
using json::Value;

void Loader::read_format(const Fields& fields, const std::string& file) {
  const Value* format = fields.need("format", Type::integer, "the file", std::to_string(kRubricFormat));
  if (format == nullptr || format->integer == kRubricFormat) return;
  findings.push_back(make_finding(Code::format_unsupported, file, format->span, {std::to_string(format->integer), std::to_string(kRubricFormat)}));
}

void Loader::include(const std::string& name, const std::string& from, Span where) {
  if (name.find('/') != std::string::npos || name.find('\\') != std::string::npos || name.starts_with('.')) {
    findings.push_back(make_finding(Code::include_outside, from, where, {name}));
    return;
  }
  if (std::find(open.begin(), open.end(), name) != open.end()) {
    std::vector<std::string> way = open;
    way.push_back(name);
    std::string path;
    for (const std::string& file : way) path += (path.empty() ? "" : " > ") + file;
    findings.push_back(make_finding(Code::include_cycle, from, where, {name, path}));
    return;
  }
  if (std::find(done.begin(), done.end(), name) != done.end()) return;
  auto found = files.find(name);
  if (found == files.end()) {
    findings.push_back(make_finding(Code::include_missing, from, where, {name}));
    return;
  }
  open.push_back(name);
  const ParsedFiles::Parsed& file = parsed.parse(name, found->second);
  findings.insert(findings.end(), file.findings.begin(), file.findings.end());
  if (file.root && !file.root->is(Type::object)) {
    findings.push_back(make_finding(Code::json_not_object, name, file.root->span));
  } else if (file.root) {
    Fields fields(*file.root, name, findings, {"format", "about", "include", "skip", "words", "sets"});
    read_format(fields, name);
    read_includes(*file.root, name);
    fields.texts("skip", [&](const std::string& word, Span) { rubric.skipped.push_back(word); });
    read_words(*file.root, name);
    read_sets(*file.root, name);
  }
  open.pop_back();
  done.push_back(name);
}

void Loader::read_includes(const Value& object, const std::string& file) {
  const Value* list = object.find("include");
  if (list == nullptr || !list->is(Type::array)) return;
  for (const Value& item : list->items) {
    if (item.is(Type::string)) include(item.text, file, item.span);
  }
}

namespace {

void add_wording(WordList& list, const Value& item, const std::string& file, Findings& findings) {
  if (is_pattern(item.text)) {
    list.patterns.push_back(parse_pattern(item.text, item.span, file, findings));
    return;
  }
  if (item.text.find_first_not_of(' ') == std::string::npos) {
    findings.push_back(make_finding(Code::pattern_empty, file, item.span));
  } else if (std::find(list.phrases.begin(), list.phrases.end(), item.text) != list.phrases.end()) {
    findings.push_back(make_finding(Code::concept_repeated_word, file, item.span, {item.text, list.name}));
  } else {
    list.phrases.push_back(item.text);
  }
}

const std::vector<std::string> kKinds = {"quantity", "instrument", "thing"};

}  // namespace

void Loader::read_words(const Value& object, const std::string& file) {
  const Value* words = object.find("words");
  if (words == nullptr || !words->is(Type::object)) return;
  for (const json::Member& member : words->members) {
    // A later file adds to a list of the same name.
    auto [slot, fresh] = word_index.emplace(member.key, rubric.words.size());
    if (fresh) {
      rubric.words.emplace_back();
      rubric.words.back().name = member.key;
      rubric.words.back().file = keep(file);
      rubric.words.back().span = member.key_span;
    }
    WordList& list = rubric.words[slot->second];
    const Value* wordings = &member.value;
    if (member.value.is(Type::object)) {
      Fields fields(member.value, file, findings, {"about", "kind", "words"});
      if (const Value* kind = fields.get("kind", Type::string)) {
        list.kind = kind->text;
        if (std::find(kKinds.begin(), kKinds.end(), kind->text) == kKinds.end()) {
          findings.push_back(make_finding(Code::value_not_allowed, file, kind->span, {kind->text, "kind", joined(kKinds)}));
        }
      }
      wordings = fields.need("words", Type::array, "the word list", "[\"...\"]");
      if (wordings == nullptr) continue;
    }
    if (!wordings->is(Type::array)) {
      findings.push_back(make_finding(Code::wrong_type, file, wordings->span, {member.key, "a list of words", "[\"...\", \"...\"]"}));
      continue;
    }
    for (const Value& item : wordings->items) {
      if (item.is(Type::string)) {
        add_wording(list, item, file, findings);
      } else {
        findings.push_back(make_finding(Code::wrong_type, file, item.span, {member.key, "a list of words", "[\"...\", \"...\"]"}));
      }
    }
    if (list.phrases.empty() && list.patterns.empty()) findings.push_back(make_finding(Code::concept_empty, file, member.key_span, {member.key}));
  }
}

void Loader::read_sets(const Value& object, const std::string& file) {
  const Value* all = object.find("sets");
  if (all == nullptr || !all->is(Type::object)) return;
  for (const json::Member& member : all->members) {
    if (!member.value.is(Type::object)) {
      findings.push_back(make_finding(Code::wrong_type, file, member.value.span, {member.key, "an object { ... }", "{\"present\": [...], \"vague\": [...]}"}));
      continue;
    }
    Fields fields(member.value, file, findings, {"about", "present", "vague"});
    PatternSet& set = sets[member.key];
    auto append = [&](std::string_view key, std::vector<Way>& ways) {
      if (const Value* list = fields.get(key, Type::array)) {
        for (Way& way : read_ways(*list, file)) ways.push_back(std::move(way));
      }
    };
    append("present", set.present);
    append("vague", set.vague);
  }
}

}  // namespace retort

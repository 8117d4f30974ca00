#include "match/program.h"

#include <algorithm>
#include <array>

#include "match/copied.h"
#include "rubric/fields.h"
#include "text/reader.h"

namespace retort {
namespace {

constexpr std::array<std::string_view, kReservedEnd> kReservedNames = {
    "not", "dismissed", "correction", "scope end", "list heading", "method heading", "pronoun", "and so on", "others", "each time",
    "table words", "measure", "counted", "write down", "number", "bare number", "table value", "table values", "later table value", "table step",
    "off table", "length value", "mass value", "time value", "force value", "temperature value", "angle value", "volume value",
    "frequency value"};

// A pattern while it is being built.
struct Draft {
  std::vector<std::vector<ItemCode>> parts;
};

Kind read_kind(std::string_view word) {
  if (word == "quantity") return Kind::quantity;
  if (word == "instrument") return Kind::instrument;
  if (word == "thing") return Kind::thing;
  return Kind::none;
}

class Compiler {
 public:
  Compiler(const Rubric& rubric, WordForms& forms, Findings& findings)
      : rubric_(rubric), findings_(findings), program_(std::make_unique<Program>(forms)) {}

  std::unique_ptr<Program> run(RealWords real_words) {
    program_->rubric = &rubric_;
    constexpr std::size_t kUsual = 4096;
    by_name_.reserve(kUsual);
    drafts_.reserve(kUsual);
    program_->concepts.reserve(kUsual);
    program_->names.reserve(kUsual);
    for (std::string_view name : kReservedNames) new_concept(std::string(name));
    for (const std::string& word : rubric_.skipped) program_->vocabulary.add_skipped(word);
    for (const WordList& list : rubric_.words) declare(list);
    for (const WordList& list : rubric_.words) define(list);
    for (const Step& step : rubric_.steps) program_->steps.push_back(step_code(step));
    find_cycles();
    mark_not();
    lay_out();
    order_steps();
    note_question();
    program_->vocabulary.freeze(real_words);
    return std::move(program_);
  }

 private:
  ConceptId new_concept(std::string name) {
    auto id = static_cast<ConceptId>(program_->concepts.size());
    by_name_.emplace(name, id);
    program_->names.push_back(std::move(name));
    program_->concepts.emplace_back();
    drafts_.emplace_back();
    return id;
  }

  void declare(const WordList& list) {
    auto known = by_name_.find(list.name);
    ConceptId id = known == by_name_.end() ? new_concept(list.name) : known->second;
    program_->concepts[id].kind = read_kind(list.kind);
    list_of_[id] = &list;
    for (const std::string& phrase : list.phrases) program_->vocabulary.add(id, phrase);
  }

  void define(const WordList& list) {
    ConceptId id = by_name_.at(list.name);
    for (const Pattern& pattern : list.patterns) {
      Draft code = pattern_code(pattern, list.file);
      if (!code.parts.empty()) drafts_[id].push_back(std::move(code));
    }
  }

  ConceptId phrase(const std::string& text) {
    std::string name = "\"" + text;
    if (auto known = by_name_.find(name); known != by_name_.end()) return known->second;
    ConceptId id = new_concept(name);
    program_->vocabulary.add(id, text);
    return id;
  }

  ConceptId group(const Item& item, std::string_view file) {
    if (auto known = by_name_.find(item.text); known != by_name_.end()) return known->second;
    ConceptId id = new_concept(item.text);
    for (const Pattern& choice : item.any) {
      Draft code = pattern_code(choice, file);
      if (!code.parts.empty()) drafts_[id].push_back(std::move(code));
    }
    return id;
  }

  ConceptId item_concept(const Item& item, std::string_view file) {
    if (item.kind == Item::Kind::phrase) return phrase(item.text);
    if (item.kind == Item::Kind::group) return group(item, file);
    auto known = by_name_.find(item.text);
    bool a_list = known != by_name_.end() && (list_of_.contains(known->second) || known->second < kReservedEnd);
    if (a_list) return known->second;
    std::vector<std::string> names;
    for (const WordList& list : rubric_.words) names.push_back(list.name);
    findings_.push_back(make_finding(Code::concept_unknown, file, item.span, {item.text, did_you_mean(item.text, names)}));
    return phrase(item.text);
  }

  Draft pattern_code(const Pattern& pattern, std::string_view file) {
    Draft code;
    for (const Sequence& sequence : pattern.parts) {
      std::vector<ItemCode> part;
      for (const Item& item : sequence.items) part.push_back({item_concept(item, file), item.gap});
      if (!part.empty()) code.parts.push_back(std::move(part));
    }
    return code;
  }

  // A whole pattern as a concept; the same text gives the same concept, a lone item its own.
  ConceptId pattern_concept(const Pattern& pattern, std::string_view file) {
    if (pattern.parts.size() == 1 && pattern.parts[0].items.size() == 1) return item_concept(pattern.parts[0].items[0], file);
    std::string name = "= " + pattern.text;
    if (auto known = by_name_.find(name); known != by_name_.end()) return known->second;
    Draft code = pattern_code(pattern, file);
    ConceptId id = new_concept(name);
    if (!code.parts.empty()) drafts_[id].push_back(std::move(code));
    return id;
  }

  WayCode way_code(const Way& way) {
    WayCode code;
    for (const Need& need : way.all) {
      NeedCode out;
      out.at_least = need.at_least;
      if (need.step.empty()) {
        out.concept_id = pattern_concept(need.pattern, way.file);
      } else {
        out.step = rubric_.step_index(need.step);
        if (out.step == rubric_.steps.size()) {
          std::vector<std::string> ids = rubric_.step_ids();
          findings_.push_back(make_finding(Code::step_unknown, way.file, need.pattern.span, {need.step, did_you_mean(need.step, ids), joined(ids)}));
          out.step = SIZE_MAX;
        }
      }
      for (const Pattern& pattern : need.unless) out.unless.push_back(pattern_concept(pattern, way.file));
      code.all.push_back(std::move(out));
    }
    for (const Pattern& pattern : way.unless_anywhere) code.unless_anywhere.push_back(pattern_concept(pattern, way.file));
    return code;
  }

  StepCode step_code(const Step& step) {
    StepCode code;
    for (const Way& way : step.present) code.present.push_back(way_code(way));
    for (const Way& way : step.vague) code.vague.push_back(way_code(way));
    for (const Way& way : step.reason) code.reason.push_back(way_code(way));
    for (const Way& way : step.contradicts) code.contradicts.push_back(way_code(way));
    code.checks_values = step.checks_values;
    return code;
  }

  // Lists made of themselves are cut open (and reported), so that matching always ends.
  void find_cycles() {
    enum class State { fresh, open, done };
    std::vector<State> states(program_->concepts.size(), State::fresh);
    auto visit = [&](auto&& self, ConceptId id) -> bool {  // true: on a cycle
      if (states[id] == State::open) return true;
      if (states[id] == State::done) return false;
      states[id] = State::open;
      bool cycle = false;
      for (const Draft& pattern : drafts_[id]) {
        for (const auto& part : pattern.parts) {
          for (const ItemCode& item : part) cycle = self(self, item.concept_id) || cycle;
        }
      }
      states[id] = State::done;
      if (cycle) {
        if (auto list = list_of_.find(id); list != list_of_.end()) {
          findings_.push_back(make_finding(Code::concept_cycle, list->second->file, list->second->span, {list->second->name}));
        }
        drafts_[id].clear();
      }
      return false;
    };
    for (ConceptId id = 0; id < program_->concepts.size(); ++id) visit(visit, id);
  }

  void mark_not() {
    std::vector<bool> seen(program_->concepts.size(), false);
    auto visit = [&](auto&& self, ConceptId id) -> bool {
      ConceptCode& code = program_->concepts[id];
      if (seen[id]) return code.listens_to_not;
      seen[id] = true;
      bool listens = id == kNot;
      for (const Draft& pattern : drafts_[id]) {
        for (const auto& part : pattern.parts) {
          for (const ItemCode& item : part) listens = self(self, item.concept_id) || listens;
        }
      }
      code.listens_to_not = listens;
      return listens;
    };
    for (ConceptId id = 0; id < program_->concepts.size(); ++id) visit(visit, id);
  }

  // The drafts into the program's flat tables.
  void lay_out() {
    auto size = [](const auto& table) { return static_cast<std::uint32_t>(table.size()); };
    for (ConceptId id = 0; id < program_->concepts.size(); ++id) {
      Range& patterns = program_->concepts[id].patterns;
      patterns.begin = size(program_->patterns);
      for (const Draft& draft : drafts_[id]) {
        Range pattern{size(program_->parts), 0};
        for (const auto& items : draft.parts) {
          Range part{size(program_->items), 0};
          program_->items.insert(program_->items.end(), items.begin(), items.end());
          part.end = size(program_->items);
          program_->parts.push_back(part);
        }
        pattern.end = size(program_->parts);
        program_->patterns.push_back(pattern);
      }
      patterns.end = size(program_->patterns);
    }
  }

  void order_steps() {
    std::size_t count = program_->steps.size();
    std::vector<int> states(count, 0);
    auto visit = [&](auto&& self, std::size_t index) -> void {
      if (states[index] == 2) return;
      if (states[index] == 1) {
        const Step& step = rubric_.steps[index];
        findings_.push_back(make_finding(Code::step_cycle, step.file, step.span, {step.id}));
        return;
      }
      states[index] = 1;
      const StepCode& code = program_->steps[index];
      for (const auto* ways : {&code.present, &code.vague, &code.reason, &code.contradicts}) {
        for (const WayCode& way : *ways) {
          for (const NeedCode& need : way.all) {
            if (need.step < count) self(self, need.step);
          }
        }
      }
      states[index] = 2;
      program_->turn.push_back(index);
    };
    for (std::size_t i = 0; i < count; ++i) visit(visit, i);
  }

  void note_question() {
    Reader reader;
    Document document = reader.read(rubric_.question);
    std::vector<Slot> slots;
    for (std::uint32_t i = 0; i < document.tokens.size(); ++i) {
      if (!program_->vocabulary.skips(document.form(i))) slots.push_back({i, kNoWord, kNoWord, kNoWord, i, true});
    }
    for_each_run(document, slots, [&](std::uint64_t hash, std::size_t first, std::size_t last) {
      bool sentence = false;
      for (std::size_t i = first; i <= last; ++i) sentence = sentence || binds_a_sentence(document.form(slots[i].token));
      bool& known = program_->question_runs[hash];
      known = known || sentence;
    });
  }

  const Rubric& rubric_;
  Findings& findings_;
  std::unique_ptr<Program> program_;
  std::vector<std::vector<Draft>> drafts_;  // by concept
  std::unordered_map<std::string, ConceptId> by_name_;
  std::unordered_map<ConceptId, const WordList*> list_of_;
};

}  // namespace

std::unique_ptr<Program> compile(const Rubric& rubric, RealWords real_words, WordForms& forms, Findings& findings) {
  return Compiler(rubric, forms, findings).run(real_words);
}

}  // namespace retort

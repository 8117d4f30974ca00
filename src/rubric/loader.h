// The inside of load_rubric, shared by its parts.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "rubric/fields.h"
#include "rubric/load.h"

namespace retort {

// Ways kept under a name, for steps that say "use".
struct PatternSet {
  std::vector<Way> present;
  std::vector<Way> vague;
};

struct Loader {
  const SourceFiles& files;
  ParsedFiles& parsed;
  Rubric rubric;
  Findings findings;
  std::map<std::string, PatternSet> sets;
  std::map<std::string, std::size_t> word_index;  // name → rubric.words
  std::vector<std::string> open;                  // files being read, outermost first
  std::vector<std::string> done;

  // The name, kept by the rubric.
  std::string_view keep(const std::string& name) {
    for (const std::string& known : rubric.file_names) {
      if (known == name) return known;
    }
    return rubric.file_names.emplace_back(name);
  }

  // load_words.cpp: what any file may bring
  void include(const std::string& name, const std::string& from, Span where);
  void read_includes(const json::Value& object, const std::string& file);
  void read_words(const json::Value& object, const std::string& file);
  void read_sets(const json::Value& object, const std::string& file);
  void read_format(const Fields& fields, const std::string& file);

  // load_ways.cpp
  std::vector<Way> read_ways(const json::Value& list, const std::string& file);
  Way read_way(const json::Value& value, const std::string& file);
  void read_patterns(const Fields& fields, std::string_view key, const std::string& file, std::vector<Pattern>& out);
  void read_need(const json::Value& value, const std::string& file, Way& way);
  void read_instrument(const json::Value& object, const std::string& file, Step& step);

  // load_results.cpp
  void read_results(const json::Value& object, const std::string& file);
  void read_gradient(const json::Value& object, const std::string& file, results::Guide& guide);

  // load.cpp: what only a rubric has
  void read_rubric(const json::Value& object, const std::string& file);
  void read_given(const json::Value& object, const std::string& file);
  void read_given_calculations(const json::Value& object, const std::string& file);
  void read_kind(const Fields& fields, const std::string& file);
  void read_step(const json::Value& object, const std::string& file);
  void read_examples(const json::Value& object, const std::string& file, Step& step);
  void read_order(const json::Value& list, const std::string& file);
};

}  // namespace retort

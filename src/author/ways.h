// From the items of a point to patterns: what counts as there, what is a weak mention.
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "author/items.h"

namespace retort::author {

struct Ways {
  std::vector<std::string> use;  // sets of common.json
  std::vector<std::string> present;
  std::vector<std::string> vague;
};

// Values are counted by the engine; said without figures they are a weak mention.
Ways values_ways(const std::vector<Item>& items);

struct Known {
  std::function<bool(const Item&)> common;     // in so many points of the rubric that it shows none of them
  std::function<bool(const Item&)> elsewhere;  // in another point too
  std::function<bool(const Item&)> subject;    // what the practical is about: pupils say "it"
};
Ways ways_of(std::string_view facet, const std::vector<Item>& items, const Known& known);

}  // namespace retort::author

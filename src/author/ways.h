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

// `common` tells items that stand in so many points of the rubric that they show none of them.
Ways ways_of(std::string_view facet, const std::vector<Item>& items, const std::function<bool(const Item&)>& common);

}  // namespace retort::author

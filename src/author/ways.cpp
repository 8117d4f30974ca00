#include "author/ways.h"

#include <algorithm>
#include <bit>

namespace retort::author {
namespace {

constexpr std::size_t kMostItems = 6;  // further ones of a long point are passed over

// All ways to take `size` of `items`, each near each other in any order.
std::vector<std::string> together(const std::vector<Item>& items, std::size_t size, const std::function<bool(const Item&)>& tells) {
  std::vector<std::string> out;
  for (unsigned set = 1; set < (1U << items.size()); ++set) {
    if (static_cast<std::size_t>(std::popcount(set)) != size) continue;
    std::string pattern;
    bool good = false;
    for (std::size_t i = 0; i < items.size(); ++i) {
      if ((set >> i & 1U) == 0) continue;
      pattern += (pattern.empty() ? "" : " & ") + items[i].pattern;
      good = good || tells(items[i]);
    }
    if (good) out.push_back(pattern);
  }
  return out;
}

std::string any_of(const std::vector<Item>& items) {
  if (items.size() == 1) return items[0].pattern;
  std::string out = "(";
  for (const Item& item : items) out += (out.size() > 1 ? "|" : "") + item.pattern;
  return out + ")";
}

// A named instrument with what it is for; without the instrument it is vague.
Ways instrument_ways(const std::vector<Item>& items) {
  Ways out;
  std::vector<Item> tools;
  std::vector<Item> rest;
  for (const Item& item : items) (item.instrument ? tools : rest).push_back(item);
  out.present.push_back(any_of(tools));
  std::vector<Item> things;
  std::copy_if(rest.begin(), rest.end(), std::back_inserter(things), [](const Item& item) { return !item.action; });
  if (!things.empty()) out.vague.push_back("{measure} & " + any_of(things));
  return out;
}

Ways control_ways(const std::vector<Item>& items) {
  Ways out;
  std::vector<Item> things;
  for (const Item& item : items) {
    if (!item.action && item.name != "same" && item.name != "keep same" && item.name != "fair test" && item.name != "constant")
      things.push_back(item);
  }
  out.use = {"fair test"};
  std::erase_if(things, [](const Item& item) { return item.qualifier; });
  if (things.empty()) return out;
  out.present.push_back("({same}|{keep same}|constant|equal) & " + any_of(things));
  return out;
}

}  // namespace

// One thing that can hurt, or that is done about it, is enough.
Ways safety_ways(const std::vector<Item>& items, const Known& known) {
  Ways out;
  out.use = {"careful"};
  std::vector<Item> things;
  for (const Item& item : items) {
    if (!item.action && !item.qualifier && !item.quantity && item.name != "careful" && !known.elsewhere(item) && !known.subject(item))
      things.push_back(item);
  }
  if (things.size() > kMostItems) things.resize(kMostItems);
  if (!things.empty()) out.present.push_back(any_of(things));
  return out;
}

// What is reckoned from what: the operation has to be said, or the sum is only named.
Ways processing_ways(const std::vector<Item>& items) {
  std::vector<Item> operations;
  std::vector<Item> things;
  for (const Item& item : items) {
    if (item.name == "divide" || item.name == "multiply" || item.name == "subtract")
      operations.push_back(item);
    else if (!item.action && !item.qualifier)
      things.push_back(item);
  }
  if (operations.empty() || things.empty()) return {};
  return {{}, {any_of(operations) + " & " + any_of(things)}, {"{calculate} & " + any_of(things)}};
}

// How the results bear on the hypothesis: it is said to be right or wrong by something that is found.
Ways hypothesis_ways(const std::vector<Item>& items) {
  static const std::string kSaid = "(hypothesis|prediction|predicted|theory)";
  static const std::string kVerdict = "(right|correct|true|supported|accepted|wrong|false|proved|disproved|rejected)";
  std::vector<Item> things;
  for (const Item& item : items) {
    bool verdict = item.name == "right" || item.name == "correct" || item.name == "theory" || item.name == "hyp" || item.name == "hypothesis";
    if (!item.action && !item.qualifier && !verdict) things.push_back(item);
  }
  Ways out{{}, {}, {kSaid, "(he|she|they) ... " + kVerdict}};
  if (things.empty())
    out.present.push_back(kSaid + " ... " + kVerdict);
  else
    out.present = {kSaid + " ... " + kVerdict + " & " + any_of(things), any_of(things) + " & " + kVerdict + " ... " + kSaid};
  return out;
}

Ways values_ways(const std::vector<Item>& items) {
  std::vector<Item> things;
  std::copy_if(items.begin(), items.end(), std::back_inserter(things), [](const Item& item) { return !item.action && !item.qualifier; });
  if (things.empty()) return {};
  return {{}, {}, {"({change}|{different}|{others}|more) & " + any_of(things)}};
}

Ways graph_ways(const std::vector<Item>& items) {
  std::vector<Item> axes;
  std::copy_if(items.begin(), items.end(), std::back_inserter(axes), [](const Item& item) { return !item.action && item.name != "graph"; });
  if (axes.empty()) return {{}, {"{graph}"}, {}};
  return {{}, {"{graph} & " + any_of(axes)}, {"{graph}"}};
}

Ways ways_of(std::string_view facet, const std::vector<Item>& items, const Known& known) {
  if (facet == "repeats") return {{"repeats"}, {}, {}};
  bool tool = std::any_of(items.begin(), items.end(), [](const Item& item) { return item.instrument; });
  if (facet == "instrument" && tool) return instrument_ways(items);
  if (facet == "control") return control_ways(items);
  if (std::any_of(items.begin(), items.end(), [](const Item& item) { return item.name == "graph"; })) return graph_ways(items);
  if (facet == "safety") {
    Ways out = safety_ways(items, known);
    if (!out.present.empty()) return out;
  }
  if (facet == "hypothesis") return hypothesis_ways(items);
  if (facet == "processing") {
    if (Ways out = processing_ways(items); !out.present.empty()) return out;
  }
  // What is done counts only where there is little else: pupils have many words for it.
  std::vector<Item> used = items;
  auto actions = std::stable_partition(used.begin(), used.end(), [](const Item& item) { return !item.action; });
  if (actions - used.begin() >= 2) used.erase(actions, used.end());
  auto telling = [&](const Item& item) { return !item.action && !item.qualifier && !item.instrument && !known.common(item) && !known.subject(item); };
  auto is_thing = [](const Item& item) { return !item.action && !item.qualifier; };
  if (std::count_if(used.begin(), used.end(), is_thing) >= 2) std::erase_if(used, [](const Item& item) { return item.qualifier; });
  if (std::any_of(used.begin(), used.end(), telling)) std::erase_if(used, [&](const Item& item) { return known.subject(item) && !item.quantity; });
  if (used.size() > kMostItems) used.resize(kMostItems);
  Ways out;
  if (facet == "safety") out.use = {"careful"};
  bool reading = std::any_of(items.begin(), items.end(), [](const Item& item) { return item.quantity; });
  if (facet == "dependent" && reading) out.vague.emplace_back("{write down} & (result|results)");
  if (used.empty()) return out;
  std::size_t n = used.size();
  // Of two things both, of three two, of more than that half of them; one less is a weak mention.
  std::size_t most = n < 3 ? n : (n + 1) / 2;
  std::size_t least = std::max<std::size_t>(1, most - 1);
  auto thing = [&](const Item& item) { return !item.action; };
  out.present = together(used, most, telling);
  if (out.present.empty()) out.present = together(used, most, thing);
  if (out.present.empty()) out.present = together(used, most, [](const Item&) { return true; });
  if (least < most) {
    for (std::string& pattern : together(used, least, telling)) out.vague.push_back(std::move(pattern));
  }
  // What stands in many points shows this one weakly, and only where it is measured.
  if (least == 1 && most > 1) {
    for (const Item& item : used) {
      if (item.quantity && known.common(item)) out.vague.push_back("({measure}|{write down}) & " + item.pattern);
    }
  }
  return out;
}

}  // namespace retort::author

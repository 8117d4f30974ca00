#include "classroom/likeness.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <unordered_map>

#include "text/reader.h"

namespace retort::classroom {
namespace {

using Runs = std::vector<std::uint64_t>;  // hashes, sorted, each once

std::uint64_t add(std::uint64_t hash, std::string_view form) {
  for (char c : form) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;  // FNV-1a
  return (hash ^ 0xFFU) * 1099511628211ULL;                                              // no UTF-8 has this byte: words do not run together
}

Runs runs_of(Reader& reader, std::string_view text) {
  Document document = reader.read(text);
  std::vector<std::string_view> words;
  for (const Token& token : document.tokens) {
    if (token.kind != TokenKind::symbol) words.push_back(document.form(token));
  }
  Runs out;
  for (std::size_t i = 0; i + kRunOfWords <= words.size(); ++i) {
    std::uint64_t hash = 1469598103934665603ULL;
    for (std::size_t k = 0; k < kRunOfWords; ++k) hash = add(hash, words[i + k]);
    out.push_back(hash);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

// Sets that grow together (union by the smaller index, so that the result does not depend on the order of pairs).
class Links {
 public:
  explicit Links(std::size_t count) : parent_(count), least_(count, 1.0) { std::iota(parent_.begin(), parent_.end(), 0U); }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b, double resemblance) {
    a = root(a);
    b = root(b);
    double least = std::min({least_[a], least_[b], resemblance});
    parent_[std::max(a, b)] = std::min(a, b);
    least_[std::min(a, b)] = least;
  }
  double least(std::size_t i) { return least_[root(i)]; }

 private:
  std::vector<std::size_t> parent_;
  std::vector<double> least_;
};

}  // namespace

std::vector<Alike> near_copies(const std::vector<std::string_view>& texts, std::string_view question) {
  Reader reader;
  Runs given = runs_of(reader, question);
  std::vector<Runs> runs;
  std::map<Runs, std::size_t> first_with;  // drafts with the very same runs are compared once
  Links links(texts.size());
  std::unordered_map<std::uint64_t, std::vector<std::size_t>> index;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    Runs mine = runs_of(reader, texts[i]);
    std::erase_if(mine, [&](std::uint64_t run) { return std::binary_search(given.begin(), given.end(), run); });
    runs.push_back(mine);
    if (mine.size() < kFewestRuns) continue;
    auto [same, is_new] = first_with.emplace(std::move(mine), i);
    if (!is_new) {
      links.join(same->second, i, 1.0);
      continue;
    }
    std::map<std::size_t, std::size_t> shared;
    for (std::uint64_t run : runs[i]) {
      std::vector<std::size_t>& holders = index[run];
      for (std::size_t other : holders) ++shared[other];
      holders.push_back(i);
    }
    for (const auto& [other, count] : shared) {
      double resemblance = static_cast<double>(count) / static_cast<double>(runs[i].size() + runs[other].size() - count);
      if (resemblance >= kNearCopy) links.join(i, other, resemblance);
    }
  }
  std::map<std::size_t, Alike> sets;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    Alike& set = sets[links.root(i)];
    set.drafts.push_back(i);
    set.least = links.least(i);
  }
  std::vector<Alike> out;
  for (auto& [root, set] : sets) {
    if (set.drafts.size() > 1) out.push_back(std::move(set));
  }
  return out;
}

}  // namespace retort::classroom

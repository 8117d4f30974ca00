#include "review/shelf.h"

#include <algorithm>
#include <thread>

namespace retort {

bool looks_like_rubric(const std::string& name, std::string_view content) {
  return name != kVocabularyFile && !name.ends_with(".schema.json") && content.find("\"steps\"") != std::string_view::npos;
}

std::vector<Shelved> shelve(const SourceFiles& files, std::string_view real_words, unsigned threads) {
  std::vector<Shelved> shelf;
  for (const auto& [name, content] : files) {
    if (looks_like_rubric(name, content)) shelf.push_back({name, {}});
  }
  // Each thread takes every so-manieth rubric, with a workshop of its own.
  std::size_t count = std::clamp<std::size_t>(threads, 1, std::max<std::size_t>(shelf.size(), 1));
  auto work = [&](std::size_t first) {
    Workshop workshop(real_words);
    for (std::size_t i = first; i < shelf.size(); i += count) shelf[i].made = Checker::make(shelf[i].name, files, real_words, workshop);
  };
  std::vector<std::thread> pool;
  for (std::size_t i = 1; i < count; ++i) pool.emplace_back(work, i);
  work(0);
  for (std::thread& thread : pool) thread.join();
  return shelf;
}

}  // namespace retort

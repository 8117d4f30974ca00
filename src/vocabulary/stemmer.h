// The stem of an English word, by Snowball's English (Porter2) stemmer.
#pragma once
#include <memory>
#include <string>
#include <string_view>

namespace retort {

// Threads: one Stemmer for each thread.
class Stemmer {
 public:
  Stemmer();
  ~Stemmer();
  Stemmer(Stemmer&&) noexcept;
  Stemmer& operator=(Stemmer&&) noexcept;

  // `folded` is a word in normal form. The view is good until the next call.
  std::string_view stem(std::string_view folded) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace retort

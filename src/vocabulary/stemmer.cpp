#include "vocabulary/stemmer.h"

#include <libstemmer.h>

#include <cstdlib>

namespace retort {

struct Stemmer::Impl {
  sb_stemmer* stemmer = sb_stemmer_new("english", "UTF_8");
  Impl() {
    if (stemmer == nullptr) std::abort();  // libstemmer without English: a broken install
  }
  Impl(const Impl&) = delete;
  Impl& operator=(const Impl&) = delete;
  ~Impl() { sb_stemmer_delete(stemmer); }
};

Stemmer::Stemmer() : impl_(std::make_unique<Impl>()) {}
Stemmer::~Stemmer() = default;
Stemmer::Stemmer(Stemmer&&) noexcept = default;
Stemmer& Stemmer::operator=(Stemmer&&) noexcept = default;

std::string_view Stemmer::stem(std::string_view folded) const {
  constexpr std::size_t kLongest = 64;  // longer "words" are not English; leave them as they are
  if (folded.size() > kLongest) return folded;
  const sb_symbol* out =
      sb_stemmer_stem(impl_->stemmer, reinterpret_cast<const sb_symbol*>(folded.data()), static_cast<int>(folded.size()));
  if (out == nullptr) return folded;
  return {reinterpret_cast<const char*>(out), static_cast<std::size_t>(sb_stemmer_length(impl_->stemmer))};
}

}  // namespace retort

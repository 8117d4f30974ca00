// Reads bytes into a Document: invalid UTF-8 passed over, words found with ICU's word break
// (Unicode UAX #29), sentence ends with ICU's sentence break and the marks pupils use.
//
// A Reader keeps ICU iterators and buffers so that reading many answers costs no new ones.
// Threads: one Reader for each thread. Errors: none; doubtful bytes are counted in the Document.
#pragma once
#include <memory>
#include <string_view>

#include "text/document.h"

namespace retort {

class Reader {
 public:
  Reader();
  ~Reader();
  Reader(Reader&&) noexcept;
  Reader& operator=(Reader&&) noexcept;

  // Reads `bytes` into `out`, whose memory is used again. Requires fewer than 2^30 bytes.
  void read(std::string_view bytes, Document& out);
  Document read(std::string_view bytes);

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

// The normal form of one word, as the tokens of a Document have it.
std::string normal_form(std::string_view word);

// Byte offsets of the word (or sentence) boundaries that ICU finds in `text`, first and last included.
// For the checks against Unicode's own test files.
std::vector<std::uint32_t> word_boundaries(std::string_view text);
std::vector<std::uint32_t> sentence_boundaries(std::string_view text);

}  // namespace retort

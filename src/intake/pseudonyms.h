// Codes that stand for pupils' labels, kept in a key file, so that nothing which comes out holds a name.
//
// The key file is CSV with the headings label,code; a teacher can read and change it. A label that is in it keeps its
// code in every later run; a new one gets a code drawn at random (P01 to P99, then P100 to P999 and so on), so that
// codes do not follow the alphabet. For one thread.
#pragma once
#include <cstdint>
#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "base/result.h"

namespace retort {

class Pseudonyms {
 public:
  // Reads the key file at `path`; where there is none yet, save() makes it. Fails if it cannot be read whole.
  static Result<Pseudonyms> open(const std::string& path);

  // The code of `label`, which is remembered.
  const std::string& code(const std::string& label);
  // All labels that have a code, so that no text need name them.
  [[nodiscard]] std::vector<std::string> labels() const;
  // Writes the key file, whole or not at all, readable by its owner alone. Does nothing if no label is new.
  Status save();

 private:
  std::string draw();

  std::string path_;
  std::map<std::string, std::string> codes_;
  std::set<std::string> taken_;
  std::vector<std::uint32_t> numbers_;  // still to be drawn, in the order drawn from the end
  std::uint32_t next_block_ = 1;        // the first number of the block drawn from next
  std::mt19937_64 random_{std::random_device{}()};
  bool changed_ = false;
};

}  // namespace retort

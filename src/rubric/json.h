// JSON as a tree of values that know where they stand in their file, so that every fault can be
// reported with its line. Keys that stand twice, too deep nesting and bad syntax become findings.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"
#include "base/result.h"

namespace retort::json {

enum class Type : std::uint8_t { null, boolean, integer, real, string, array, object };

struct Value;
struct Member;

struct Value {
  Type type = Type::null;
  Span span;  // from the first to the last byte of the value in its file
  bool boolean = false;
  std::int64_t integer = 0;
  double real = 0.0;
  std::string text;            // of a string
  std::vector<Value> items;    // of an array
  std::vector<Member> members; // of an object, in the order of the file

  [[nodiscard]] bool is(Type wanted) const { return type == wanted; }
  // The member's value; null if there is none. With repeated keys the first.
  [[nodiscard]] const Value* find(std::string_view key) const;
};

struct Member {
  std::string key;
  Span key_span;
  Value value;
};

inline constexpr std::size_t kDeepest = 64;

// "text", "a number" ...: what a value is, in words.
std::string_view type_words(Type type);

// Reads one JSON text. A fault of syntax or depth is the Result's finding; repeated keys are added to
// `findings`. `file` names the source in findings.
Result<Value> parse(std::string_view source, const std::string& file, Findings& findings);

// `text` as a JSON string, with its quotes; bytes that are not UTF-8 become U+FFFD.
std::string quoted(std::string_view text);
// JSON laid out over lines for people to read and change, members in their order. Fails if `source` is no JSON.
Result<std::string> laid_out(std::string_view source);

}  // namespace retort::json

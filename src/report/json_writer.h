// Writes JSON into a string, piece by piece, always valid: text that is not UTF-8 is written with U+FFFD.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

class JsonWriter {
 public:
  explicit JsonWriter(std::string& out) : out_(out) {}

  JsonWriter& begin_object() { return open('{'); }
  JsonWriter& end_object() { return close('}'); }
  JsonWriter& begin_array() { return open('['); }
  JsonWriter& end_array() { return close(']'); }
  JsonWriter& key(std::string_view name);
  JsonWriter& text(std::string_view value);
  JsonWriter& number(std::int64_t value);
  // The shortest form that reads back as the same double; null if it is not finite.
  JsonWriter& real(double value);
  JsonWriter& boolean(bool value);
  // A value that is JSON already.
  JsonWriter& raw(std::string_view json);

 private:
  JsonWriter& open(char bracket);
  JsonWriter& close(char bracket);
  void comma();
  void quoted(std::string_view value);

  std::string& out_;
  bool first_ = true;   // nothing yet in the innermost container
  bool after_key_ = false;
};

}  // namespace retort

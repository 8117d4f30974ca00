#include "report/json_writer.h"

#include <charconv>
#include <cmath>

#include "report/utf8.h"

namespace retort {

void JsonWriter::comma() {
  if (!first_ && !after_key_) out_ += ',';
  first_ = false;
  after_key_ = false;
}

JsonWriter& JsonWriter::open(char bracket) {
  comma();
  out_ += bracket;
  first_ = true;
  return *this;
}

JsonWriter& JsonWriter::close(char bracket) {
  out_ += bracket;
  first_ = false;
  return *this;
}

void JsonWriter::quoted(std::string_view value) {
  out_ += '"';
  std::size_t plain = 0;  // start of the stretch not yet copied
  auto flush = [&](std::size_t end) { out_.append(value.substr(plain, end - plain)); };
  for (std::size_t i = 0; i < value.size();) {
    auto c = static_cast<unsigned char>(value[i]);
    if (c >= 0x20 && c < 0x7F && c != '"' && c != '\\') {
      ++i;
      continue;
    }
    std::size_t length = utf8_sequence(value, i);
    if (length > 1) {
      i += length;
      continue;
    }
    flush(i);
    if (length == 0) {
      out_ += "\xEF\xBF\xBD";
    } else if (c == '"' || c == '\\') {
      out_ += '\\';
      out_ += static_cast<char>(c);
    } else if (c == '\n') {
      out_ += "\\n";
    } else if (c == '\t') {
      out_ += "\\t";
    } else if (c == '\r') {
      out_ += "\\r";
    } else {
      constexpr char kHex[] = "0123456789abcdef";
      out_ += "\\u00";
      out_ += kHex[c >> 4U];
      out_ += kHex[c & 15U];
    }
    plain = ++i;
  }
  flush(value.size());
  out_ += '"';
}

JsonWriter& JsonWriter::key(std::string_view name) {
  comma();
  quoted(name);
  out_ += ':';
  after_key_ = true;
  return *this;
}

JsonWriter& JsonWriter::text(std::string_view value) {
  comma();
  quoted(value);
  return *this;
}

JsonWriter& JsonWriter::number(std::int64_t value) {
  comma();
  char buffer[24];
  auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  (void)error;  // 24 characters hold any 64-bit number
  out_.append(buffer, end);
  return *this;
}

JsonWriter& JsonWriter::real(double value) {
  if (!std::isfinite(value)) return raw("null");
  comma();
  char buffer[32];
  auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  (void)error;  // 32 characters hold the shortest form of any double
  out_.append(buffer, end);
  return *this;
}

JsonWriter& JsonWriter::boolean(bool value) {
  comma();
  out_ += value ? "true" : "false";
  return *this;
}

JsonWriter& JsonWriter::raw(std::string_view json) {
  comma();
  out_ += json;
  return *this;
}

}  // namespace retort

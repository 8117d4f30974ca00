#include "serve/http.h"

#include <algorithm>

namespace retort::serve {
namespace {

char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; }

bool same_name(std::string_view a, std::string_view b) {
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return small(x) == small(y); });
}

}  // namespace

std::string_view Request::header(std::string_view name) const {
  for (const auto& [key, value] : headers) {
    if (same_name(key, name)) return value;
  }
  return {};
}

std::size_t Request::count(std::string_view name) const {
  return static_cast<std::size_t>(std::count_if(headers.begin(), headers.end(), [&](const auto& field) { return same_name(field.first, name); }));
}

std::string_view Request::argument(std::string_view name) const {
  for (const auto& [key, value] : query) {
    if (key == name) return value;
  }
  return {};
}

Response refusal(int status, std::string_view sentence) {
  Response out;
  out.status = status;
  out.body = std::string(sentence) + "\n";
  return out;
}

Response json_response(std::string body, int status) {
  Response out;
  out.status = status;
  out.type = "application/json; charset=utf-8";
  out.body = std::move(body);
  return out;
}

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), small);
  return out;
}

}  // namespace retort::serve

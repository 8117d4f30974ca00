#include "rubric/json.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

namespace retort::json {
namespace {

// An input iterator that tells how far the parser has read: nlohmann's SAX events carry no places.
struct Cursor {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* at = nullptr;
  std::size_t* read = nullptr;

  reference operator*() const { return *at; }
  Cursor& operator++() {
    ++at;
    ++*read;
    return *this;
  }
  Cursor operator++(int) {
    Cursor old = *this;
    ++*this;
    return old;
  }
  bool operator==(const Cursor& other) const { return at == other.at; }
};

class Builder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Builder(std::string_view source, const std::string& file, Findings& findings) : source_(source), file_(file), findings_(findings) {}

  std::size_t read = 0;  // bytes the parser has taken so far
  Value root;
  bool failed = false;
  Finding fault;

  bool null() override { return put(word_value(Type::null)); }
  bool boolean(bool value) override {
    Value v = word_value(Type::boolean);
    v.boolean = value;
    return put(std::move(v));
  }
  bool number_integer(number_integer_t value) override { return integer(value, static_cast<double>(value)); }
  bool number_unsigned(number_unsigned_t value) override {
    if (value > static_cast<number_unsigned_t>(INT64_MAX)) return number_float(static_cast<double>(value), {});
    return integer(static_cast<std::int64_t>(value), static_cast<double>(value));
  }
  bool number_float(number_float_t value, const string_t& /*text*/) override {
    Value v = word_value(Type::real);
    v.real = value;
    return put(std::move(v));
  }
  bool string(string_t& value) override {
    Value v;
    v.type = Type::string;
    v.span = string_span();
    v.text = std::move(value);
    return put(std::move(v));
  }
  bool binary(binary_t& /*value*/) override { return false; }
  bool start_object(std::size_t /*size*/) override { return open(Type::object); }
  bool start_array(std::size_t /*size*/) override { return open(Type::array); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    Value& object = *stack_.back();
    Span span = string_span();
    if (object.find(name) != nullptr) findings_.push_back(make_finding(Code::json_duplicate_key, file_, span, {name}));
    object.members.push_back({std::move(name), span, {}});
    return true;
  }
  bool parse_error(std::size_t position, const std::string& /*token*/, const nlohmann::detail::exception& error) override {
    std::string what = error.what();
    std::size_t colon = what.rfind(": ");
    std::uint32_t at = static_cast<std::uint32_t>(std::min(position == 0 ? 0 : position - 1, source_.size()));
    return fail(make_finding(Code::json_syntax, file_, Span{at, at}, {colon == std::string::npos ? what : what.substr(colon + 2)}));
  }

 private:
  bool fail(Finding finding) {
    if (!failed) fault = std::move(finding);
    failed = true;
    return false;
  }

  // The parser has just taken the closing quote: go back to the opening one.
  Span string_span() const {
    std::size_t end = read;
    std::size_t begin = end >= 2 ? end - 2 : 0;
    while (begin > 0) {
      if (source_[begin] == '"') {
        std::size_t slashes = 0;
        while (slashes < begin && source_[begin - 1 - slashes] == '\\') ++slashes;
        if (slashes % 2 == 0) break;
      }
      --begin;
    }
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  }

  // A number, true, false or null ends where the parser looked one byte ahead (numbers) or just now.
  Value word_value(Type type) const {
    auto part = [](char c) { return c != ',' && c != ']' && c != '}' && c != ':' && c != ' ' && c != '\n' && c != '\t' && c != '\r'; };
    std::size_t end = std::min(read, source_.size());
    while (end > 0 && !part(source_[end - 1])) --end;
    std::size_t begin = end;
    while (begin > 0 && part(source_[begin - 1]) && source_[begin - 1] != '[' && source_[begin - 1] != '{') --begin;
    Value v;
    v.type = type;
    v.span = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    return v;
  }

  bool integer(std::int64_t value, double real) {
    Value v = word_value(Type::integer);
    v.integer = value;
    v.real = real;
    return put(std::move(v));
  }

  Value* place(Value value) {
    if (stack_.empty()) {
      root = std::move(value);
      return &root;
    }
    Value& parent = *stack_.back();
    if (parent.type == Type::array) {
      parent.items.push_back(std::move(value));
      return &parent.items.back();
    }
    parent.members.back().value = std::move(value);
    return &parent.members.back().value;
  }

  bool put(Value value) {
    place(std::move(value));
    return true;
  }

  bool open(Type type) {
    std::uint32_t at = static_cast<std::uint32_t>(read == 0 ? 0 : read - 1);
    if (stack_.size() >= kDeepest) return fail(make_finding(Code::json_too_deep, file_, Span{at, at}, {std::to_string(kDeepest)}));
    Value v;
    v.type = type;
    v.span = {at, at};
    stack_.push_back(place(std::move(v)));
    return true;
  }

  bool close() {
    stack_.back()->span.end = static_cast<std::uint32_t>(read);
    stack_.pop_back();
    return true;
  }

  std::string_view source_;
  const std::string& file_;
  Findings& findings_;
  std::vector<Value*> stack_;  // open containers; a child is only added to the innermost, so they stay put
};

}  // namespace

const Value* Value::find(std::string_view key) const {
  for (const Member& member : members) {
    if (member.key == key) return &member.value;
  }
  return nullptr;
}

std::string_view type_words(Type type) {
  switch (type) {
    case Type::null: return "null";
    case Type::boolean: return "true or false";
    case Type::integer: return "a whole number";
    case Type::real: return "a number";
    case Type::string: return "text in quotes";
    case Type::array: return "a list [ ... ]";
    case Type::object: return "an object { ... }";
  }
  return "";
}

Result<Value> parse(std::string_view source, const std::string& file, Findings& findings) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  std::size_t skipped = source.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
  Builder builder(source, file, findings);
  builder.read = skipped;
  Cursor begin{source.data() + skipped, &builder.read};
  Cursor end{source.data() + source.size(), &builder.read};
  bool done = nlohmann::json::sax_parse(begin, end, &builder);
  if (builder.failed) return builder.fault;
  if (!done) return make_finding(Code::json_syntax, file, Span{}, {"it ends too soon"});
  return std::move(builder.root);
}

std::string quoted(std::string_view text) { return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace); }

Result<std::string> laid_out(std::string_view source) {
  nlohmann::ordered_json value = nlohmann::ordered_json::parse(source, nullptr, false);
  if (value.is_discarded()) return make_finding(Code::json_syntax, "", {"this is no JSON"});
  return value.dump(1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

}  // namespace retort::json

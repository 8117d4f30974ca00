// Writes SVG into a string, element by element, always well-formed: text is escaped, what XML does not allow is left out.
#pragma once
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace retort {

// `text` (UTF-8) for use between tags or in an attribute.
std::string xml_escaped(std::string_view text);
// A length in the drawing, with at most two decimals: "12.5".
std::string svg_number(double value);

class SvgWriter {
 public:
  using Attributes = std::initializer_list<std::pair<std::string_view, std::string>>;

  explicit SvgWriter(std::string& out) : out_(out) {}

  void open(std::string_view name, Attributes attributes);
  void close(std::string_view name);
  // An element with nothing in it, or with text.
  void element(std::string_view name, Attributes attributes);
  void element(std::string_view name, Attributes attributes, std::string_view text);
  void line(double x1, double y1, double x2, double y2, std::string_view style);

 private:
  void start(std::string_view name, Attributes attributes);
  std::string& out_;
};

}  // namespace retort

// Writes HTML into a string, element by element: balanced, escaped, and inert whatever the text holds.
//
// There is no way to write raw text but foreign(), which is for markup that this program made itself (SVG). Inline styles and
// scripts are not meant to be written: html_page()'s policy would stop them.
#pragma once
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace retort {

// `text` (any bytes) for use between tags or in a quoted attribute: the five marks that mean something in HTML as references,
// bytes that are not UTF-8 as U+FFFD. Left out are control characters other than line feed and tab (HTML Living Standard,
// 13.2.3.5 and 13.5) and the controls that reorder text (Unicode UAX #9, bidirectional formatting), so that no text can make
// its surroundings read differently. A carriage return before a line feed goes; alone it becomes a line feed.
std::string html_escaped(std::string_view text);

class HtmlWriter {
 public:
  using Attribute = std::pair<std::string_view, std::string>;
  using Attributes = std::initializer_list<Attribute>;

  explicit HtmlWriter(std::string& out) : out_(out) {}

  // Opens an element; close() ends the innermost one. Names must be literals: they are kept as views.
  HtmlWriter& open(std::string_view name, Attributes attributes = {});
  HtmlWriter& close();
  // A whole element with text in it.
  HtmlWriter& element(std::string_view name, std::string_view text) { return element(name, {}, text); }
  HtmlWriter& element(std::string_view name, Attributes attributes, std::string_view text);
  // An element that has no content and no end tag (br, hr, img, col).
  HtmlWriter& empty(std::string_view name, Attributes attributes = {});
  HtmlWriter& text(std::string_view text);
  // Markup made by this program, as it is.
  HtmlWriter& foreign(std::string_view markup);
  // A line break in the source, for readers of the source; only where white space does not matter.
  HtmlWriter& line();

  // How many elements are open.
  [[nodiscard]] std::size_t depth() const { return open_.size(); }

 private:
  void start(std::string_view name, Attributes attributes);
  std::string& out_;
  std::vector<std::string_view> open_;
};

}  // namespace retort

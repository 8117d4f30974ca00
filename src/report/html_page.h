// A whole HTML page in one file: no script, no request to anywhere, readable on a phone, in the dark, large and on paper.
#pragma once
#include <string>
#include <string_view>

namespace retort {

struct HtmlPage {
  std::string title;   // plain text
  std::string body;    // markup made with HtmlWriter, the content of <main>; begins with an <h1>
  std::string styles;  // CSS besides that of page_styles(); of this program only, never from input
};

// The page, from <!doctype html> to the last line end. Its policy (W3C Content Security Policy Level 3, by <meta>) allows the
// page's own style sheet by its SHA-256 digest, images as data: addresses, and nothing else.
std::string html_page(const HtmlPage& page);

// The content of the page's style element, and its source expression for a policy ('sha256-...').
std::string style_sheet(const HtmlPage& page);
std::string style_source(std::string_view sheet);

// What all pages share. Classes for use in bodies:
//   scroll           a wide thing that scrolls by itself; give it role="region", tabindex="0" and aria-label
//   aside            a boxed remark
//   quote            somebody's own words
//   num              a cell with a number
//   there unclear missing wrong   a mark in a cell or before a line; the words or signs in it say the same
//   hidden           read aloud, not shown
//   plain            a list without dots
//   cards            children side by side where there is room
//   sheet            a piece that begins a new sheet of paper
//   screen           not printed
std::string_view page_styles();

}  // namespace retort

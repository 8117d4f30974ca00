#include "report/html_page.h"

#include "base/digest.h"
#include "report/html_writer.h"

namespace retort {

std::string style_sheet(const HtmlPage& page) { return "\n" + std::string(page_styles()) + page.styles; }

std::string style_source(std::string_view sheet) { return "'sha256-" + base64(sha256(sheet)) + "'"; }

std::string html_page(const HtmlPage& page) {
  std::string styles = style_sheet(page);
  std::string policy = "default-src 'none'; style-src " + style_source(styles) + "; img-src data:; base-uri 'none'; form-action 'none'";
  std::string out = "<!doctype html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n";
  HtmlWriter html(out);
  html.empty("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", policy}}).line();
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}}).line();
  html.empty("meta", {{"name", "color-scheme"}, {"content", "light dark"}}).line();
  html.empty("meta", {{"name", "referrer"}, {"content", "no-referrer"}}).line();
  html.element("title", page.title).line();
  html.open("style").foreign(styles).close().line();
  out += "</head>\n<body>\n";
  html.element("a", {{"class", "skip"}, {"href", "#content"}}, "Skip to the content").line();
  html.open("main", {{"id", "content"}, {"tabindex", "-1"}}).line();
  html.foreign(page.body).close().line();
  out += "</body>\n</html>\n";
  return out;
}

}  // namespace retort

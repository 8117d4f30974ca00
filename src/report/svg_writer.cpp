#include "report/svg_writer.h"

#include <charconv>
#include <cmath>

namespace retort {

std::string xml_escaped(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    auto c = static_cast<unsigned char>(text[i]);
    bool never = text.substr(i).starts_with("\xEF\xBF\xBE") || text.substr(i).starts_with("\xEF\xBF\xBF");  // no characters at all
    if (never) {
      i += 2;
    } else if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"') {
      out += "&quot;";
    } else if (c == '\'') {
      out += "&#39;";
    } else if (c >= 0x20 && c != 0x7F) {
      out += text[i];
    }
  }
  return out;
}

std::string svg_number(double value) {
  if (!std::isfinite(value)) return "0";
  char buffer[64];
  double cut = std::fmin(std::fmax(value, -1e6), 1e6);
  auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, cut, std::chars_format::fixed, 2);
  (void)error;  // a million with two decimals fits
  std::string out(buffer, end);
  out.erase(out.find_last_not_of('0') + 1);
  if (out.ends_with('.')) out.pop_back();
  return out == "-0" ? "0" : out;
}

void SvgWriter::start(std::string_view name, Attributes attributes) {
  out_ += '<';
  out_ += name;
  for (const auto& [key, value] : attributes) {
    out_ += ' ';
    out_ += key;
    out_ += "=\"" + xml_escaped(value) + "\"";
  }
}

void SvgWriter::open(std::string_view name, Attributes attributes) {
  start(name, attributes);
  out_ += ">\n";
}

void SvgWriter::close(std::string_view name) { out_ += "</" + std::string(name) + ">\n"; }

void SvgWriter::element(std::string_view name, Attributes attributes) {
  start(name, attributes);
  out_ += "/>\n";
}

void SvgWriter::element(std::string_view name, Attributes attributes, std::string_view text) {
  start(name, attributes);
  out_ += ">" + xml_escaped(text) + "</" + std::string(name) + ">\n";
}

void SvgWriter::line(double x1, double y1, double x2, double y2, std::string_view style) {
  element("line", {{"class", std::string(style)}, {"x1", svg_number(x1)}, {"y1", svg_number(y1)}, {"x2", svg_number(x2)}, {"y2", svg_number(y2)}});
}

}  // namespace retort

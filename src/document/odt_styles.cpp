#include "document/odt_styles.h"

#include <array>
#include <cstdlib>

namespace retort {
namespace {

constexpr int kLongestChain = 20;  // of styles that stand on each other

std::string key(std::string_view family, std::string_view name) {
  return std::string(family) + "/" + std::string(name);
}

// style:text-position: "super 58%", "sub 58%", "33% 58%", "-33%" (ISO/IEC 26300-1, 20.384).
Script position(std::string_view value) {
  if (value.starts_with("super")) return Script::super;
  if (value.starts_with("sub")) return Script::sub;
  int percent = std::atoi(std::string(value).c_str());  // NOLINT: 0 for what is no number
  return percent > 0 ? Script::super : percent < 0 ? Script::sub : Script::none;
}

}  // namespace

std::span<const XmlNamespace> odt_namespaces() {
  static constexpr std::array<XmlNamespace, 11> kAll = {{
      {"urn:oasis:names:tc:opendocument:xmlns:office:1.0", "office"},
      {"urn:oasis:names:tc:opendocument:xmlns:text:1.0", "text"},
      {"urn:oasis:names:tc:opendocument:xmlns:table:1.0", "table"},
      {"urn:oasis:names:tc:opendocument:xmlns:drawing:1.0", "draw"},
      {"urn:oasis:names:tc:opendocument:xmlns:style:1.0", "style"},
      {"urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0", "svg"},
      {"urn:oasis:names:tc:opendocument:xmlns:manifest:1.0", "manifest"},
      {"urn:oasis:names:tc:opendocument:xmlns:form:1.0", "form"},
      {"http://www.w3.org/1999/xlink", "xlink"},
      {"http://www.w3.org/1998/Math/MathML", "math"},
      {"http://purl.org/dc/elements/1.1/", "dc"},
  }};
  return kAll;
}

void OdtStyles::start(std::string_view name, const XmlAttributes& attributes) {
  if (name == "style:style" || name == "style:default-style") {
    at_ = &styles_[key(attributes.get("style:family"), attributes.get("style:name"))];
    at_->parent = attributes.get("style:parent-style-name");
  } else if (at_ != nullptr && name == "style:text-properties") {
    if (attributes.has("style:text-position")) at_->format.script = position(attributes.get("style:text-position"));
    if (attributes.has("text:display")) at_->format.hidden = attributes.get("text:display") == "none";
  } else if (at_ != nullptr && name == "style:section-properties" && attributes.has("text:display")) {
    at_->format.hidden = attributes.get("text:display") == "none";
  }
}

void OdtStyles::end(std::string_view name) {
  if (name == "style:style" || name == "style:default-style") at_ = nullptr;
}

RunFormat OdtStyles::of(std::string_view family, std::string_view name) const {
  RunFormat out;
  auto style = styles_.find(key(family, name));
  for (int i = 0; i < kLongestChain && style != styles_.end(); ++i) {
    out.inherit(style->second.format);
    style = style->second.parent.empty() ? styles_.end() : styles_.find(key(family, style->second.parent));
  }
  return out;
}

}  // namespace retort

// What the styles of an OpenDocument text say about a stretch of it: raised, lowered, hidden.
#pragma once
#include <map>
#include <string>
#include <string_view>

#include "document/docx_styles.h"
#include "document/xml.h"

namespace retort {

// Takes the styles out of styles.xml, or of the head of content.xml.
class OdtStyles : public XmlHandler {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override;
  void end(std::string_view name) override;
  void text(std::string_view) override {}

  // What the style of this family ("text", "paragraph", "section") and those it stands on say.
  [[nodiscard]] RunFormat of(std::string_view family, std::string_view name) const;

 private:
  struct Style {
    RunFormat format;
    std::string parent;
  };
  std::map<std::string, Style, std::less<>> styles_;  // by family and name
  Style* at_ = nullptr;
};

// The namespaces that its names use.
std::span<const XmlNamespace> odt_namespaces();

}  // namespace retort

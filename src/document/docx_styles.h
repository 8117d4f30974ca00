// What the styles of a .docx file say about a run of text: raised, lowered, hidden.
#pragma once
#include <map>
#include <optional>
#include <string>

#include "document/scripts.h"
#include "document/xml.h"

namespace retort {

struct RunFormat {
  std::optional<bool> hidden;
  std::optional<Script> script;
  // Takes what `other` says where this says nothing.
  void inherit(const RunFormat& other);
};

// Reads word/styles.xml.
class DocxStyles : public XmlHandler {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override;
  void end(std::string_view name) override;
  void text(std::string_view) override {}

  // What the style `id` and those it is based on say.
  [[nodiscard]] RunFormat of(const std::string& id) const;

 private:
  struct Style {
    RunFormat format;
    std::string based_on;
  };
  std::map<std::string, Style> styles_;
  Style* at_ = nullptr;
  int run_properties_ = 0;
};

// If `name` is a property of a run that matters here, puts it into `format`.
void read_run_property(std::string_view name, const XmlAttributes& attributes, RunFormat& format);

}  // namespace retort

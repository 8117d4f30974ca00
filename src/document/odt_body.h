// The text of content.xml of an OpenDocument text (ISO/IEC 26300-1, chapters 4 to 10).
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "document/equation.h"
#include "document/odt_styles.h"
#include "document/prose.h"

namespace retort {

class OdtBody : public XmlHandler {
 public:
  // Gives the formula that an object inside the file holds, in a line; "" if it is none.
  using Formula = std::function<std::string(const std::string& object)>;

  // `styles` holds those of styles.xml; those of content.xml are added.
  OdtBody(OdtStyles& styles, std::size_t text_bytes, Formula formula) : styles_(styles), prose_(text_bytes), formula_(std::move(formula)) {}

  void start(std::string_view name, const XmlAttributes& attributes) override;
  void end(std::string_view name) override;
  void text(std::string_view piece) override;

  // The text, its notes at the end.
  std::string finish();
  [[nodiscard]] bool overflowed() const { return prose_.overflowed(); }
  [[nodiscard]] std::size_t pictures() const { return pictures_; }

 private:
  struct Paragraph {
    RunFormat style;
    std::vector<RunFormat> spans;
    bool after_space = true;  // white space runs together, and falls away at the beginning
  };

  bool passed_over(std::string_view name, const XmlAttributes& attributes) const;
  void open(std::string_view name, const XmlAttributes& attributes);
  void open_inline(std::string_view name, const XmlAttributes& attributes);
  void put(std::string_view text);
  [[nodiscard]] RunFormat format() const;

  OdtStyles& styles_;
  Prose prose_;
  Formula formula_;
  std::size_t skipped_ = 0;  // depth inside an element that is passed over
  std::vector<Paragraph> paragraphs_;
  std::optional<Equation> equation_;
  std::size_t equation_depth_ = 0;
  std::string notes_;
  std::size_t pictures_ = 0;
};

// A formula's own part: MathML alone.
class MathBody : public XmlHandler {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override { equation_.start(name, attributes); }
  void end(std::string_view) override { equation_.end(); }
  void text(std::string_view piece) override { equation_.text(piece); }
  [[nodiscard]] std::string in_line() const { return equation_.in_line(); }

 private:
  Equation equation_;
};

}  // namespace retort

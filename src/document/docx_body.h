// The text of one story of a .docx file (the body, or its notes), as WordprocessingML has it (ECMA-376 part 1, 17).
#pragma once
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "document/docx_styles.h"
#include "document/equation.h"
#include "document/prose.h"
#include "document/xml.h"

namespace retort {

class DocxBody : public XmlHandler {
 public:
  DocxBody(const DocxStyles& styles, std::size_t text_bytes) : styles_(styles), prose_(text_bytes) {}

  void start(std::string_view name, const XmlAttributes& attributes) override;
  void end(std::string_view name) override;
  void text(std::string_view piece) override;

  // The text of the body.
  std::string finish() { return prose_.finish(); }
  [[nodiscard]] bool overflowed() const { return prose_.overflowed(); }
  [[nodiscard]] std::size_t pictures() const { return pictures_; }
  // The notes that the body speaks of, in order: "f2" for a footnote, "e1" for an endnote.
  [[nodiscard]] const std::vector<std::string>& notes_spoken_of() const { return spoken_of_; }
  // The notes themselves, if this story is one of notes.
  [[nodiscard]] const std::map<std::string, std::string>& notes() const { return notes_; }

 private:
  struct Paragraph {
    RunFormat style;
    bool joined = false;  // its mark is deleted
  };
  struct Run {
    RunFormat own;
    RunFormat style;
    bool symbols = true;  // signs of the private use area are those of the font "Symbol"
  };

  void property(std::string_view name, const XmlAttributes& attributes);
  void run_property(std::string_view name, const XmlAttributes& attributes, Run& run);
  void open_run(std::string_view name, const XmlAttributes& attributes);
  void open_block(std::string_view name, const XmlAttributes& attributes);
  void open_note(std::string_view name, const XmlAttributes& attributes);
  void choose();
  void close(std::string_view name);
  void end_equation();
  void field(std::string_view type);
  void symbol(const XmlAttributes& attributes);
  void add(std::string_view text);
  [[nodiscard]] bool silent() const;
  [[nodiscard]] RunFormat format() const;
  void skip() { skipped_ = 1; }
  [[nodiscard]] bool within(std::string_view name) const { return !open_.empty() && open_.back() == name; }

  const DocxStyles& styles_;
  Prose prose_;
  std::vector<std::string_view> open_;  // elements, the innermost last
  std::size_t skipped_ = 0;             // depth inside an element that is passed over
  std::size_t properties_ = 0;          // depth inside the properties of a paragraph, run, row, cell or content control
  std::vector<Paragraph> paragraphs_;
  std::vector<Run> runs_;
  std::vector<bool> rows_;  // whether each row around is deleted
  std::vector<bool> cells_;
  std::vector<bool> prompts_;  // whether each content control around shows its prompt
  std::vector<bool> chosen_;   // of the alternatives around, whether one is taken
  std::vector<bool> fields_;   // whether each field around has come to its result
  std::optional<Equation> equation_;
  std::size_t equation_depth_ = 0;
  std::string note_;  // the note at hand
  std::map<std::string, std::string> notes_;
  std::vector<std::string> spoken_of_;
  std::size_t pictures_ = 0;
};

// The namespaces that its names use, of both the transitional and the strict kind.
std::span<const XmlNamespace> docx_namespaces();

}  // namespace retort

#include "document/docx_body.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "document/utf8.h"

namespace retort {
namespace {

// What is deleted, moved away, a field's instruction, how it looked before, or no text at all.
constexpr std::array<std::string_view, 16> kPassedOver = {
    "w:del",         "w:moveFrom",   "w:instrText",  "w:delText", "w:delInstrText", "w:rPrChange", "w:pPrChange", "w:sectPrChange",
    "w:tblPrChange", "w:trPrChange", "w:tcPrChange", "w:sectPr",  "w:tblPr",        "w:tblGrid",   "w:rt",        "w:tblPrEx"};
constexpr std::array<std::string_view, 5> kProperties = {"w:pPr", "w:rPr", "w:trPr", "w:tcPr", "w:sdtPr"};

template <std::size_t n>
bool one_of(const std::array<std::string_view, n>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

std::span<const XmlNamespace> docx_namespaces() {
  static constexpr std::array<XmlNamespace, 11> kAll = {{
      {"http://schemas.openxmlformats.org/wordprocessingml/2006/main", "w"},
      {"http://purl.oclc.org/ooxml/wordprocessingml/main", "w"},
      {"http://schemas.openxmlformats.org/officeDocument/2006/math", "m"},
      {"http://purl.oclc.org/ooxml/officeDocument/math", "m"},
      {"http://schemas.openxmlformats.org/markup-compatibility/2006", "mc"},
      {"http://schemas.openxmlformats.org/officeDocument/2006/relationships", "r"},
      {"http://purl.oclc.org/ooxml/officeDocument/relationships", "r"},
      {"http://schemas.openxmlformats.org/package/2006/relationships", "rel"},
      {"http://schemas.openxmlformats.org/drawingml/2006/main", "a"},
      {"http://purl.oclc.org/ooxml/drawingml/main", "a"},
      {"urn:schemas-microsoft-com:vml", "v"},
  }};
  return kAll;
}

void DocxBody::start(std::string_view name, const XmlAttributes& attributes) {
  if (skipped_ > 0) {
    ++skipped_;
    return;
  }
  if (properties_ > 0) {
    if (name.ends_with("Change")) return skip();
    if (!equation_) property(name, attributes);
    ++properties_;
  } else if (one_of(kProperties, name)) {
    properties_ = 1;
  } else if (one_of(kPassedOver, name)) {
    return skip();
  } else if (equation_) {
    equation_->start(name, attributes);
  } else {
    open_run(name, attributes);
    open_block(name, attributes);
    if (skipped_ > 0) return;
  }
  open_.push_back(name);
}

void DocxBody::end(std::string_view name) {
  if (skipped_ > 0) {
    --skipped_;
    return;
  }
  open_.pop_back();
  if (properties_ > 0) {
    --properties_;
  } else if (equation_) {
    end_equation();
  } else {
    close(name);
  }
}

void DocxBody::text(std::string_view piece) {
  if (skipped_ > 0 || properties_ > 0) return;
  if (equation_)
    equation_->text(piece);
  else if (within("w:t"))
    add(piece);
}

// What the properties of a paragraph, run, row, cell or content control say. The last of open_ holds `name`.
void DocxBody::property(std::string_view name, const XmlAttributes& attributes) {
  bool deleted = name == "w:del" || name == "w:moveFrom";
  if (within("w:pPr")) {
    if (name == "w:pStyle" && !paragraphs_.empty()) paragraphs_.back().style = styles_.of(std::string(attributes.get("w:val")));
  } else if (within("w:trPr")) {
    if (deleted && !rows_.empty()) rows_.back() = true;
  } else if (within("w:tcPr")) {
    if (name == "w:cellDel" && !cells_.empty()) cells_.back() = true;
  } else if (within("w:sdtPr")) {
    if (name == "w:showingPlcHdr" && !prompts_.empty()) prompts_.back() = attributes.get("w:val") != "0" && attributes.get("w:val") != "false";
  } else if (within("w:rPr") && open_.size() > 1 && open_[open_.size() - 2] == "w:pPr") {
    if (deleted && !paragraphs_.empty()) paragraphs_.back().joined = true;
  } else if (within("w:rPr") && !runs_.empty()) {
    run_property(name, attributes, runs_.back());
  }
}

void DocxBody::run_property(std::string_view name, const XmlAttributes& attributes, Run& run) {
  read_run_property(name, attributes, run.own);
  if (name == "w:rStyle") run.style = styles_.of(std::string(attributes.get("w:val")));
  // "Wingdings" and the like: their signs of the private use area are other ones
  if (name == "w:rFonts") run.symbols = attributes.get("w:ascii").find("dings") == std::string_view::npos;
}

RunFormat DocxBody::format() const {
  RunFormat out;
  if (!runs_.empty()) {
    out = runs_.back().own;
    out.inherit(runs_.back().style);
  }
  if (!paragraphs_.empty()) out.inherit(paragraphs_.back().style);
  return out;
}

// Hidden, or within the instruction of a field: whatever a field inside an instruction shows.
bool DocxBody::silent() const {
  bool instruction = !fields_.empty() && std::find(fields_.begin(), fields_.end() - 1, false) != fields_.end() - 1;
  return instruction || format().hidden.value_or(false);
}

void DocxBody::add(std::string_view text) {
  if (silent()) return;
  bool other_signs = !runs_.empty() && !runs_.back().symbols;
  bool one_sign = text.size() == 3 && static_cast<unsigned char>(text[0]) == 0xEF && static_cast<unsigned char>(text[1]) <= 0x83;  // U+F000 to U+F0FF
  if (other_signs && one_sign) return;
  prose_.add(text, format().script.value_or(Script::none));
}

void DocxBody::field(std::string_view type) {
  if (type == "begin")
    fields_.push_back(false);
  else if (fields_.empty())
    return;
  else if (type == "separate")
    fields_.back() = true;
  else if (type == "end")
    fields_.pop_back();
}

// A sign named by font and number.
void DocxBody::symbol(const XmlAttributes& attributes) {
  std::string_view font = attributes.get("w:font");
  auto code = static_cast<std::uint32_t>(std::strtoul(std::string(attributes.get("w:char")).c_str(), nullptr, 16));
  bool named = font.find("Symbol") != std::string_view::npos;
  bool pictures = font.find("dings") != std::string_view::npos;
  std::uint32_t byte = code >= 0xF000 && code <= 0xF0FF ? code - 0xF000 : code;
  constexpr std::uint32_t kArrow = 0xE0;  // what Word makes of "-->"
  std::uint32_t sign = named ? symbol_font(byte) : pictures ? (byte == kArrow ? 0x2192 : 0) : code;
  std::string text;
  if (sign != 0) append_utf8(sign, text);
  add(text);
}

void DocxBody::open_run(std::string_view name, const XmlAttributes& attributes) {
  auto put = [&](std::string_view text) {
    if (!silent()) prose_.add_exact(text);
  };
  if (name == "w:r")
    runs_.emplace_back();
  else if (name == "w:tab" || name == "w:ptab")
    put("\t");
  else if (name == "w:br" || name == "w:cr")
    put("\n");
  else if (name == "w:noBreakHyphen")
    add("-");
  else if (name == "w:sym")
    symbol(attributes);
  else if (name == "w:fldChar")
    field(attributes.get("w:fldCharType"));
  else if (name == "w:footnoteReference" && !silent())
    spoken_of_.push_back("f" + std::string(attributes.get("w:id")));
  else if (name == "w:endnoteReference" && !silent())
    spoken_of_.push_back("e" + std::string(attributes.get("w:id")));
  else if (name == "a:blip" || name == "v:imagedata")
    ++pictures_;
}

void DocxBody::open_block(std::string_view name, const XmlAttributes& attributes) {
  if (name == "w:p") {
    paragraphs_.emplace_back();
  } else if (name == "w:tr") {
    rows_.push_back(false);
    prose_.begin_row();
  } else if (name == "w:tc") {
    cells_.push_back(false);
    prose_.begin_cell();
  } else if (name == "w:sdt") {
    prompts_.push_back(false);
  } else if (name == "w:sdtContent") {
    if (!prompts_.empty() && prompts_.back()) skip();
  } else if (name == "w:txbxContent") {
    prose_.begin_aside();
  } else if (name == "m:oMath") {
    equation_.emplace();
    equation_depth_ = open_.size();
  } else if (name == "mc:AlternateContent") {
    chosen_.push_back(false);
  } else if (name == "mc:Choice" || name == "mc:Fallback") {
    choose();
  } else if (name == "w:footnote" || name == "w:endnote") {
    open_note(name, attributes);
  }
}

// The first of the alternatives is read: they say the same.
void DocxBody::choose() {
  if (chosen_.empty()) return;
  if (chosen_.back()) skip();
  chosen_.back() = true;
}

void DocxBody::open_note(std::string_view name, const XmlAttributes& attributes) {
  std::string_view type = attributes.get("w:type");
  if (!type.empty() && type != "normal") return skip();  // the line between text and notes
  note_ = (name == "w:footnote" ? "f" : "e") + std::string(attributes.get("w:id"));
  prose_.begin_aside();
}

void DocxBody::end_equation() {
  if (open_.size() > equation_depth_) return equation_->end();
  if (!silent()) prose_.add_exact(equation_->in_line());
  equation_.reset();
  bool alone = within("m:oMathPara");
  if (alone && !silent()) prose_.add_exact("\n");
}

void DocxBody::close(std::string_view name) {
  if (name == "w:p") {
    prose_.end_paragraph(paragraphs_.back().joined);
    paragraphs_.pop_back();
  } else if (name == "w:r") {
    runs_.pop_back();
  } else if (name == "w:tr") {
    prose_.end_row(rows_.back());
    rows_.pop_back();
  } else if (name == "w:tc") {
    prose_.end_cell(cells_.back());
    cells_.pop_back();
  } else if (name == "w:sdt") {
    prompts_.pop_back();
  } else if (name == "w:txbxContent") {
    prose_.put_behind(prose_.end_aside());
  } else if (name == "mc:AlternateContent") {
    chosen_.pop_back();
  } else if (name == "w:footnote" || name == "w:endnote") {
    notes_[note_] = prose_.end_aside();
  }
}

}  // namespace retort

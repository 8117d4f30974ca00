#include "document/odt_body.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace retort {
namespace {

// What is deleted, said beside the text, generated, or no text at all.
constexpr std::array<std::string_view, 18> kPassedOver = {"text:tracked-changes",
                                                          "office:annotation",
                                                          "office:annotation-end",
                                                          "office:forms",
                                                          "office:scripts",
                                                          "text:note-citation",
                                                          "text:ruby-text",
                                                          "text:placeholder",
                                                          "text:number",
                                                          "svg:title",
                                                          "svg:desc",
                                                          "text:script",
                                                          "text:table-of-content",
                                                          "table:covered-table-cell",
                                                          "text:user-field-decls",
                                                          "text:variable-decls",
                                                          "text:sequence-decls",
                                                          "dc:creator"};
// Shapes with text of their own.
constexpr std::array<std::string_view, 7> kShapes = {"draw:text-box", "draw:custom-shape", "draw:rect", "draw:ellipse",
                                                     "draw:caption",  "draw:polygon",      "draw:path"};

template <std::size_t n>
bool one_of(const std::array<std::string_view, n>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool white(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

bool OdtBody::passed_over(std::string_view name, const XmlAttributes& attributes) const {
  if (one_of(kPassedOver, name)) return true;
  if (name == "text:hidden-text") return attributes.get("text:is-hidden") != "false";
  if (name != "text:section") return false;
  return attributes.get("text:display") == "none" || styles_.of("section", attributes.get("text:style-name")).hidden.value_or(false);
}

void OdtBody::start(std::string_view name, const XmlAttributes& attributes) {
  if (skipped_ > 0 || (!equation_ && passed_over(name, attributes))) {
    ++skipped_;
    return;
  }
  if (equation_) {
    ++equation_depth_;
    equation_->start(name, attributes);
    return;
  }
  styles_.start(name, attributes);
  open(name, attributes);
  if (!paragraphs_.empty()) open_inline(name, attributes);
}

void OdtBody::open(std::string_view name, const XmlAttributes& attributes) {
  if (name == "text:p" || name == "text:h") {
    paragraphs_.push_back({styles_.of("paragraph", attributes.get("text:style-name")), {}, true});
  } else if (name == "table:table-row") {
    prose_.begin_row();
  } else if (name == "table:table-cell") {
    prose_.begin_cell();
  } else if (name == "text:note-body" || one_of(kShapes, name)) {
    prose_.begin_aside();
  } else if (name == "math:math") {
    equation_.emplace();
    equation_depth_ = 0;
  } else if (name == "draw:image") {
    ++pictures_;
  }
}

void OdtBody::open_inline(std::string_view name, const XmlAttributes& attributes) {
  Paragraph& at = paragraphs_.back();
  if (name == "text:span") {
    at.spans.push_back(styles_.of("text", attributes.get("text:style-name")));
  } else if (name == "text:s") {
    constexpr int kMostSpaces = 1000;
    int count = std::atoi(std::string(attributes.get("text:c")).c_str());  // NOLINT: 0 for what is no number
    put(std::string(static_cast<std::size_t>(std::clamp(count, 1, kMostSpaces)), ' '));
  } else if (name == "text:tab") {
    if (!format().hidden.value_or(false)) prose_.add_exact("\t");
    at.after_space = true;
  } else if (name == "text:line-break") {
    if (!format().hidden.value_or(false)) prose_.add_exact("\n");
    at.after_space = true;
  } else if (name == "draw:object" && formula_) {
    put(formula_(std::string(attributes.get("xlink:href"))));
  }
}

void OdtBody::end(std::string_view name) {
  if (skipped_ > 0) {
    --skipped_;
    return;
  }
  if (equation_ && equation_depth_ > 0) {
    --equation_depth_;
    equation_->end();
    return;
  }
  styles_.end(name);
  if (equation_) {
    std::string line = equation_->in_line();
    equation_.reset();
    put(line);
  } else if (name == "text:p" || name == "text:h") {
    bool hidden = paragraphs_.back().style.hidden.value_or(false);
    prose_.end_paragraph(hidden);
    paragraphs_.pop_back();
  } else if (name == "text:span") {
    if (!paragraphs_.empty() && !paragraphs_.back().spans.empty()) paragraphs_.back().spans.pop_back();
  } else if (name == "table:table-row") {
    prose_.end_row();
  } else if (name == "table:table-cell") {
    prose_.end_cell();
  } else if (name == "text:note-body") {
    notes_ += prose_.end_aside();
  } else if (one_of(kShapes, name)) {
    prose_.put_behind(prose_.end_aside());
  }
}

RunFormat OdtBody::format() const {
  RunFormat out;
  if (paragraphs_.empty()) return out;
  const Paragraph& at = paragraphs_.back();
  for (auto span = at.spans.rbegin(); span != at.spans.rend(); ++span) out.inherit(*span);
  out.inherit(at.style);
  return out;
}

void OdtBody::put(std::string_view text) {
  RunFormat now = format();
  if (text.empty() || now.hidden.value_or(false)) return;
  prose_.add(text, now.script.value_or(Script::none));
  if (!paragraphs_.empty()) paragraphs_.back().after_space = false;
}

void OdtBody::text(std::string_view piece) {
  if (skipped_ > 0) return;
  if (equation_) return equation_->text(piece);
  if (paragraphs_.empty()) return;
  bool space = paragraphs_.back().after_space;
  std::string out;
  for (char c : piece) {
    if (!white(c))
      out += c;
    else if (!space)
      out += ' ';
    space = white(c);
  }
  put(out);
  paragraphs_.back().after_space = space;
}

std::string OdtBody::finish() {
  std::string out = prose_.finish();
  while (notes_.ends_with('\n')) notes_.pop_back();
  if (!notes_.empty()) out += "\n" + notes_;
  return out;
}

}  // namespace retort

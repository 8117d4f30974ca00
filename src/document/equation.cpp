#include "document/equation.h"

#include <cctype>
#include <map>
#include <utility>

#include "document/scripts.h"
#include "document/utf8.h"

namespace retort {
namespace {

using Node = Equation::Node;

std::string inside(const Node& node);

const Node* child(const Node& node, std::string_view name) {
  for (const auto& each : node.children) {
    if (each->name == name) return each.get();
  }
  return nullptr;
}

std::string of_child(const Node& node, std::string_view name) {
  const Node* found = child(node, name);
  return found == nullptr ? "" : inside(*found);
}

std::string nth(const Node& node, std::size_t index) {
  return index < node.children.size() ? inside(*node.children[index]) : "";
}

// The value of a property: <m:dPr><m:begChr m:val="["/></m:dPr>.
std::string property(const Node& node, std::string_view group, std::string_view name, const std::string& otherwise) {
  const Node* properties = child(node, group);
  const Node* found = properties == nullptr ? nullptr : child(*properties, name);
  return found == nullptr ? otherwise : found->value;
}

// One number, symbol or bracketed whole, which needs no brackets of its own.
bool single(std::string_view text) {
  if (text.starts_with('(') && text.find(')') == text.size() - 1) return true;
  for (std::size_t at = 0; at < text.size();) {
    std::uint32_t c = next_code_point(text, at);
    bool sign = c < 0x80 && std::string_view("+-*/= ()<>,^\n\t").find(static_cast<char>(c)) != std::string_view::npos;
    if (sign || c == 0x2212 || c == 0xD7 || c == 0xF7 || c == 0x22C5 || c == 0xB1) return false;
  }
  return true;
}

std::string grouped(const std::string& text) {
  return single(text) ? text : "(" + text + ")";
}

std::string power(const std::string& base, const std::string& exponent) {
  if (exponent.empty()) return base;
  std::string up = in_line(Script::super, exponent, base);
  bool bracketed = base.ends_with(')');
  return (bracketed ? base : grouped(base)) + up;
}

std::string root(const std::string& degree, const std::string& of) {
  std::string sign = degree == "3" ? "\u221B" : degree.empty() || degree == "2" ? "\u221A" : degree + "\u221A";
  return sign + grouped(of);
}

std::string function(const std::string& name, const std::string& of) {
  return name + (of.starts_with('(') ? "" : " ") + of;
}

std::string fenced(const std::string& open, const std::string& between, const std::string& close, const Node& node, std::string_view each) {
  std::string out = open;
  bool first = true;
  for (const auto& part : node.children) {
    if (!each.empty() && part->name != each) continue;
    if (!first) out += between;
    out += inside(*part);
    first = false;
  }
  return out + close;
}

std::string rows(const Node& node, std::string_view row, std::string_view cell) {
  std::string out;
  for (const auto& each : node.children) {
    if (each->name != row) continue;
    if (!out.empty()) out += "\n";
    out += cell.empty() ? inside(*each) : fenced("", "\t", "", *each, cell);
  }
  return out;
}

using Write = std::string (*)(const Node&);

std::string omml_fraction(const Node& n) {
  return grouped(of_child(n, "m:num")) + "/" + grouped(of_child(n, "m:den"));
}
std::string omml_nary(const Node& n) {
  std::string out = property(n, "m:naryPr", "m:chr", "\u222B");
  std::string low = of_child(n, "m:sub");
  if (!low.empty()) out += "_" + grouped(low);
  return power(out, of_child(n, "m:sup")) + grouped(of_child(n, "m:e"));
}
std::string omml_delimiters(const Node& n) {
  return fenced(property(n, "m:dPr", "m:begChr", "("), property(n, "m:dPr", "m:sepChr", "|"), property(n, "m:dPr", "m:endChr", ")"), n, "m:e");
}
std::string hidden(const Node&) {
  return "";
}

const std::map<std::string_view, Write>& writers() {
  static const std::map<std::string_view, Write> table = {
      {"m:f", omml_fraction},
      {"m:sSup", [](const Node& n) { return power(of_child(n, "m:e"), of_child(n, "m:sup")); }},
      {"m:sSub", [](const Node& n) { return of_child(n, "m:e") + of_child(n, "m:sub"); }},
      {"m:sSubSup", [](const Node& n) { return power(of_child(n, "m:e") + of_child(n, "m:sub"), of_child(n, "m:sup")); }},
      {"m:rad", [](const Node& n) { return root(of_child(n, "m:deg"), of_child(n, "m:e")); }},
      {"m:d", omml_delimiters},
      {"m:nary", omml_nary},
      {"m:func", [](const Node& n) { return function(of_child(n, "m:fName"), of_child(n, "m:e")); }},
      {"m:acc", [](const Node& n) { return of_child(n, "m:e") + property(n, "m:accPr", "m:chr", "\u0302"); }},
      {"m:bar", [](const Node& n) { return of_child(n, "m:e") + "\u0305"; }},
      {"m:m", [](const Node& n) { return rows(n, "m:mr", "m:e"); }},
      {"m:eqArr", [](const Node& n) { return rows(n, "m:e", ""); }},
      {"m:phant", hidden},
      {"w:br", [](const Node&) { return std::string("\n"); }},
      {"math:mfrac", [](const Node& n) { return grouped(nth(n, 0)) + "/" + grouped(nth(n, 1)); }},
      {"math:msup", [](const Node& n) { return power(nth(n, 0), nth(n, 1)); }},
      {"math:msub", [](const Node& n) { return nth(n, 0) + nth(n, 1); }},
      {"math:msubsup", [](const Node& n) { return power(nth(n, 0) + nth(n, 1), nth(n, 2)); }},
      {"math:msqrt", [](const Node& n) { return root("", fenced("", "", "", n, "")); }},
      {"math:mroot", [](const Node& n) { return root(nth(n, 1), nth(n, 0)); }},
      {"math:mfenced", [](const Node& n) { return fenced("(", ", ", ")", n, ""); }},
      {"math:mtable", [](const Node& n) { return rows(n, "math:mtr", "math:mtd"); }},
      {"math:semantics", [](const Node& n) { return nth(n, 0); }},
      {"math:mspace", [](const Node&) { return std::string(" "); }},
      {"math:mphantom", hidden},
      {"math:annotation", hidden},
      {"math:annotation-xml", hidden},
  };
  return table;
}

bool is_property(std::string_view name) {
  return name.ends_with("Pr");
}

bool holds_text(std::string_view name) {
  return name == "m:t" || name == "math:mi" || name == "math:mn" || name == "math:mo" || name == "math:mtext" || name == "math:ms";
}

bool ends_in_factor(std::string_view text) {
  return !text.empty() &&
         (std::isalnum(static_cast<unsigned char>(text.back())) != 0 || text.back() == ')' || static_cast<unsigned char>(text.back()) >= 0x80);
}

bool begins_with_factor(std::string_view text) {
  std::size_t at = 0;
  std::uint32_t c = text.empty() ? ' ' : next_code_point(text, at);
  bool greek = c >= 0x370 && c <= 0x3FF;
  return c == '(' || greek || c == 0x221A || (c < 0x80 && std::isalnum(static_cast<int>(c)) != 0);
}

// The children one after the other; a fraction gets brackets where its neighbour would run into it: "(1/2)mv".
std::string in_a_row(const Node& node) {
  std::vector<std::pair<std::string, bool>> pieces;  // with whether it is a fraction
  for (const auto& each : node.children) {
    if (is_property(each->name)) continue;
    std::string piece = inside(*each);
    if (!piece.empty()) pieces.emplace_back(std::move(piece), each->name == "m:f" || each->name == "math:mfrac");
  }
  std::string out;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    auto& [piece, fraction] = pieces[i];
    bool operator_before = out.ends_with("\u2212") || out.ends_with("\u00D7") || out.ends_with("\u00F7") || out.ends_with("\u22C5");
    bool before = ends_in_factor(out) && !operator_before;
    bool behind = i + 1 < pieces.size() && begins_with_factor(pieces[i + 1].first);
    out += fraction && (before || behind) ? "(" + piece + ")" : piece;
  }
  return out;
}

std::string inside(const Node& node) {
  auto special = writers().find(node.name);
  if (special != writers().end()) return special->second(node);
  if (!node.children.empty()) return in_a_row(node);
  std::string out;
  if (holds_text(node.name)) append_plain(node.text, out);
  if (!node.name.starts_with("math:")) return out;
  std::size_t begin = out.find_first_not_of(' ');
  return begin == std::string::npos ? "" : out.substr(begin, out.find_last_not_of(' ') + 1 - begin);
}

}  // namespace

void Equation::start(std::string_view name, const XmlAttributes& attributes) {
  if (++nodes_ > kMostEquationNodes) {
    open_.push_back(&over_);
    return;
  }
  auto node = std::make_unique<Node>();
  node->name = name;
  node->value = attributes.get("m:val");
  Node* at = node.get();
  open_.back()->children.push_back(std::move(node));
  open_.push_back(at);
}

void Equation::end() {
  if (open_.size() > 1) open_.pop_back();
}

void Equation::text(std::string_view piece) {
  if (holds_text(open_.back()->name)) open_.back()->text += piece;
}

std::string Equation::in_line() const {
  return inside(root_);
}

}  // namespace retort

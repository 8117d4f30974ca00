// Equations as trees, written in a line: "v = (12.5 - 4.2)/0.5", "½mv²", "√(2/k)".
//
// Reads OMML (ECMA-376 part 1, 22.1) and Presentation MathML (MathML 3, chapter 3), which name the same things differently.
#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "document/xml.h"

namespace retort {

inline constexpr std::size_t kMostEquationNodes = 50'000;  // of one equation; what is over is left out

// Builds one equation from the XML events inside it.
class Equation {
 public:
  // For every element inside the equation, and its text.
  void start(std::string_view name, const XmlAttributes& attributes);
  void end();
  void text(std::string_view piece);
  // The equation in a line.
  [[nodiscard]] std::string in_line() const;

  struct Node {
    std::string name;   // "m:f", "math:mfrac"
    std::string value;  // its m:val, or for mfenced the signs around it
    std::string text;
    std::vector<std::unique_ptr<Node>> children;
  };

 private:
  Node root_{"root", {}, {}, {}};
  std::vector<Node*> open_{&root_};
  Node over_;  // takes what is over the limit
  std::size_t nodes_ = 0;
};

}  // namespace retort

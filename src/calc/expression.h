// An arithmetic expression: read from tokens, or made from a formula, and its exact value.
#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "calc/token.h"

namespace retort::calc {

enum class Op : std::uint8_t { leaf, add, subtract, multiply, divide, power, negate, root, sine, cosine, tangent, arcsine, arccosine, arctangent };

struct Node {
  Op op = Op::leaf;
  std::int16_t left = -1;   // index into Expression::nodes
  std::int16_t right = -1;  // -1 for one operand
  std::int16_t index = 0;   // leaf: into Expression::leaves; power: the exponent
};

struct Leaf {
  Exact value;
  int figures = 0;  // significant figures; 0 for an exact number such as π or ½
  int last_place = 0;
  std::optional<CompoundUnit> unit;
  bool bound = false;  // the unit stands elsewhere in the text
  Span source;         // empty for a constant of a formula
  bool too_large = false;
};

struct Expression {
  std::vector<Node> nodes;
  std::vector<Leaf> leaves;
  std::int16_t root = -1;
  bool range_like = false;  // "10-50", "14/03": whole numbers written together
  bool in_words = false;    // an operator stands in words

  [[nodiscard]] bool single() const { return root >= 0 && nodes[static_cast<std::size_t>(root)].op == Op::leaf; }
  [[nodiscard]] const Node& node(int i) const { return nodes[static_cast<std::size_t>(i)]; }
  [[nodiscard]] Node& node(int i) { return nodes[static_cast<std::size_t>(i)]; }
  [[nodiscard]] Leaf& leaf_of(const Node& n) { return leaves[static_cast<std::size_t>(n.index)]; }
  [[nodiscard]] const Leaf& leaf_of(const Node& n) const { return leaves[static_cast<std::size_t>(n.index)]; }
  std::int16_t add_leaf(Leaf leaf);
  std::int16_t add_node(Op op, std::int16_t left, std::int16_t right = -1, std::int16_t index = 0);
};

// What a name at token `at` stands for: how many tokens it takes (0 for none) and its leaves, more than one for
// symbols written together ("mgh").
using Names = std::function<std::size_t(std::size_t at, std::vector<Leaf>& leaves)>;

struct Parsed {
  Expression expression;
  std::size_t end = 0;  // the token behind it
};

// Reads the longest expression that begins at token `begin`; nothing if none does. Reads at most a few
// hundred tokens, nested at most kDeepest brackets.
std::optional<Parsed> parse(const Tokens& tokens, std::size_t begin, const Names& names = {});

// Goes on from an operand that stands elsewhere ("... 25.2 s. I divided by 10"): `at` is the operator.
std::optional<Parsed> parse_rest(const Tokens& tokens, Leaf first, std::size_t at, const Names& names = {});

enum class Scaling : std::uint8_t { as_written, si };
enum class Angles : std::uint8_t { degrees, radians };

enum class State : std::uint8_t { ok, divides_by_zero, no_value, too_large };  // no_value: root of less than nothing, arcsine of more than one

struct Value {
  State state = State::ok;
  Exact number;
  bool rough = false;   // a root or a sine is in it: right to fifteen figures
  Dimension dimension;  // of the operands with units
  int unknown = 0;      // operands without a unit (constants of formulas not counted)
  bool clash = false;   // quantities of different kinds added
};

Value evaluate(const Expression& expression, Scaling scaling, Angles angles = Angles::degrees);

// Gives operands without a unit the unit of what they are added to.
void spread_units(Expression& expression);

}  // namespace retort::calc

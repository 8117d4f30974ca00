// Exact values of expressions.
#include <cmath>
#include <numbers>

#include "calc/expression.h"

namespace retort::calc {
namespace {

class Evaluator {
 public:
  Evaluator(const Expression& expression, Scaling scaling, Angles angles) : e_(expression), scaling_(scaling), angles_(angles) {}

  Value at(int i) const {
    const Node& n = e_.node(i);
    if (n.op == Op::leaf) return leaf(e_.leaf_of(n));
    Value a = at(n.left);
    if (a.state != State::ok) return a;
    switch (n.op) {
      case Op::negate:
        a.number = -a.number;
        return a;
      case Op::power:
        return power(a, n.index);
      case Op::root:
        return root(a);
      case Op::sine:
      case Op::cosine:
      case Op::tangent:
      case Op::arcsine:
      case Op::arccosine:
      case Op::arctangent:
        return angle_function(n.op, a);
      default:
        break;
    }
    Value b = at(n.right);
    if (b.state != State::ok) return b;
    return binary(n.op, a, b);
  }

 private:
  Value leaf(const Leaf& leaf) const {
    Value out;
    if (leaf.too_large) out.state = State::too_large;
    out.number = leaf.value;
    if (leaf.unit) {
      out.dimension = leaf.unit->dimension;
      if (scaling_ == Scaling::si || leaf.unit->symbol == "%") out.number *= exact(leaf.unit->scale);
    } else if (!leaf.source.empty()) {
      out.unknown = 1;
    }
    return out;
  }

  static Value binary(Op op, Value& a, const Value& b) {
    Value out;
    out.rough = a.rough || b.rough;
    out.unknown = a.unknown + b.unknown;
    out.clash = a.clash || b.clash;
    switch (op) {
      case Op::add:
      case Op::subtract:
        out.number = op == Op::add ? Exact(a.number + b.number) : Exact(a.number - b.number);
        out.dimension = a.unknown > 0 && a.dimension.none() ? b.dimension : a.dimension;
        out.clash = out.clash || (a.dimension != b.dimension && a.unknown == 0 && b.unknown == 0);
        // what is added has one unit: it is unknown only if both are
        if ((a.unknown == 0) != (b.unknown == 0)) out.unknown = 0;
        return out;
      case Op::multiply:
        out.number = a.number * b.number;
        out.dimension = a.dimension * b.dimension;
        return out;
      default:
        if (b.number == 0) {
          out.state = State::divides_by_zero;
          return out;
        }
        out.number = a.number / b.number;
        out.dimension = a.dimension / b.dimension;
        return out;
    }
  }

  static Value power(Value a, int exponent) {
    Exact base = a.number;
    Exact out = 1;
    for (int i = 0; i < exponent; ++i) out *= base;
    a.number = out;
    a.dimension = a.dimension.power(exponent);
    return a;
  }

  static Value root(Value a) {
    if (a.number < 0) {
      a.state = State::no_value;
      return a;
    }
    mpz_class top;
    mpz_class bottom;
    mpz_sqrt(top.get_mpz_t(), a.number.get_num_mpz_t());
    mpz_sqrt(bottom.get_mpz_t(), a.number.get_den_mpz_t());
    if (top * top == a.number.get_num() && bottom * bottom == a.number.get_den()) {
      a.number = Exact(top, bottom);
    } else {
      // enough places behind the point before the root is taken
      mpz_class shifted = Exact(a.number * power_of_ten(80)).get_num() / Exact(a.number * power_of_ten(80)).get_den();
      mpz_sqrt(top.get_mpz_t(), shifted.get_mpz_t());
      a.number = Exact(top) * power_of_ten(-40);
      a.rough = true;
    }
    auto half = [](std::int8_t n) { return static_cast<std::int8_t>(n / 2); };
    Dimension d = a.dimension;
    bool odd = d.length % 2 != 0 || d.mass % 2 != 0 || d.time % 2 != 0 || d.current % 2 != 0;
    if (odd) a.unknown += 1;
    a.dimension = {half(d.length), half(d.mass), half(d.time), half(d.current), half(d.temperature), half(d.amount), half(d.luminous), half(d.angle)};
    return a;
  }

  Value angle_function(Op op, Value a) const {
    double x = a.number.get_d();
    double turn = angles_ == Angles::degrees ? std::numbers::pi / 180.0 : 1.0;
    bool inverse = op >= Op::arcsine;
    if (!std::isfinite(x) || std::abs(x) > 1e9 || (inverse && op != Op::arctangent && std::abs(x) > 1.0)) {
      a.state = State::no_value;
      return a;
    }
    double y = 0.0;
    switch (op) {
      case Op::sine:
        y = std::sin(x * turn);
        break;
      case Op::cosine:
        y = std::cos(x * turn);
        break;
      case Op::tangent:
        y = std::tan(x * turn);
        break;
      case Op::arcsine:
        y = std::asin(x) / turn;
        break;
      case Op::arccosine:
        y = std::acos(x) / turn;
        break;
      default:
        y = std::atan(x) / turn;
        break;
    }
    if (!std::isfinite(y) || std::abs(y) > 1e12) {
      a.state = State::no_value;
      return a;
    }
    a.number = exact(std::abs(y) < 1e-15 ? 0.0 : y);
    a.rough = true;
    a.unknown = 0;
    a.dimension = inverse ? dimension::kAngle : dimension::kNumber;
    return a;
  }

  const Expression& e_;
  Scaling scaling_;
  Angles angles_;
};

}  // namespace

Value evaluate(const Expression& expression, Scaling scaling, Angles angles) {
  return Evaluator(expression, scaling, angles).at(expression.root);
}

}  // namespace retort::calc

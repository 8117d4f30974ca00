#include "calc/slips.h"

#include <algorithm>

namespace retort::calc {
namespace {

constexpr std::size_t kMostNodes = 40;  // of an expression that is searched

Leaf pure(long numerator, long denominator) {
  Leaf leaf;
  leaf.value = Exact(numerator, denominator);
  return leaf;
}

bool is_half(const Leaf& leaf) {
  return !leaf.unit && leaf.value == Exact(1, 2);
}

class Alterations {
 public:
  explicit Alterations(const Expression& e) : e_(e) {}

  std::vector<Altered> run() {
    if (e_.nodes.size() > kMostNodes) return {};
    upside_down();
    squares_left_out();
    operations();
    squares_put_in();
    return std::move(out_);
  }

 private:
  Expression& put(Slip slip) {
    out_.push_back({slip, e_, false});
    return out_.back().expression;
  }

  void upside_down() {
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) {
      if (e_.nodes[i].op != Op::divide) continue;
      Node& n = put(Slip::upside_down).nodes[i];
      std::swap(n.left, n.right);
    }
    Expression& whole = put(Slip::upside_down);
    std::int16_t one = whole.add_leaf(pure(1, 1));
    whole.root = whole.add_node(Op::divide, one, e_.root);
  }

  void operations() {
    static constexpr Op kBinary[] = {Op::multiply, Op::divide, Op::add, Op::subtract};
    std::size_t operators = 0;
    for (const Node& n : e_.nodes) operators += n.right >= 0 ? 1U : 0U;
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) {
      Op op = e_.nodes[i].op;
      if (std::find(std::begin(kBinary), std::end(kBinary), op) == std::end(kBinary) || operators > 2) continue;
      for (Op other : kBinary) {
        if (other == op || (by_one(i) && (other == Op::multiply || other == Op::divide))) continue;
        put(Slip::operation).nodes[i].op = other;
        if (other == Op::divide || other == Op::subtract) {
          Node& n = put(Slip::operation).nodes[i];
          n.op = other;
          std::swap(n.left, n.right);
        }
      }
    }
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) brackets_left_out(i);
    // sines left out, or a function taken of only one of the two
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) {
      if (e_.nodes[i].op >= Op::sine) trig_left_out(i);
    }
    if (operators > 1) everywhere();
    all_trig_left_out();
  }
  // "23 + 16 + 1": that 1 was taken as a factor proves nothing
  bool by_one(std::size_t i) const {
    auto one = [&](std::int16_t child) { return e_.node(child).op == Op::leaf && e_.leaf_of(e_.node(child)).value == 1; };
    return (e_.nodes[i].op == Op::add || e_.nodes[i].op == Op::subtract) && (one(e_.nodes[i].left) || one(e_.nodes[i].right));
  }
  // "(a + b) / c" put into the calculator as a + b / c
  void brackets_left_out(std::size_t i) {
    const Node division = e_.nodes[i];
    if (division.op != Op::divide || (e_.node(division.left).op != Op::add && e_.node(division.left).op != Op::subtract)) return;
    Node sum = e_.node(division.left);
    Expression& changed = put(Slip::operation);
    changed.node(division.left) = {Op::divide, sum.right, division.right, 0};
    changed.nodes[i] = {sum.op, sum.left, division.left, 0};
  }
  void everywhere() {
    for (Op op : {Op::multiply, Op::add}) {
      Expression& all = put(Slip::operation);
      for (Node& n : all.nodes) {
        if (n.op == Op::multiply || n.op == Op::divide || n.op == Op::add || n.op == Op::subtract) n.op = op;
      }
    }
  }
  void trig_left_out(std::size_t i) {
    Expression& changed = put(Slip::operation);
    for (Node& n : changed.nodes) {
      if (n.left == static_cast<std::int16_t>(i)) n.left = e_.nodes[i].left;
      if (n.right == static_cast<std::int16_t>(i)) n.right = e_.nodes[i].left;
    }
    if (changed.root == static_cast<std::int16_t>(i)) changed.root = e_.nodes[i].left;
    static constexpr std::pair<Op, Op> kSwaps[] = {{Op::sine, Op::cosine},  {Op::cosine, Op::sine},  {Op::sine, Op::arcsine},
                                                   {Op::arcsine, Op::sine}, {Op::sine, Op::tangent}, {Op::tangent, Op::sine}};
    for (auto [from, to] : kSwaps) {
      if (e_.nodes[i].op == from) put(Slip::operation).nodes[i].op = to;
    }
  }
  void all_trig_left_out() {
    std::size_t n = 0;
    for (const Node& node : e_.nodes) n += node.op >= Op::sine ? 1U : 0U;
    if (n < 2) return;
    Expression& changed = put(Slip::operation);
    for (Node& node : changed.nodes) {
      while (node.left >= 0 && e_.node(node.left).op >= Op::sine) node.left = e_.node(node.left).left;
      while (node.right >= 0 && e_.node(node.right).op >= Op::sine) node.right = e_.node(node.right).left;
    }
  }

  void squares_left_out() {
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) {
      const Node& n = e_.nodes[i];
      if (n.op == Op::power) {
        put(Slip::square).nodes[i].index = 1;
        Expression& doubled = put(Slip::square);
        std::int16_t factor = doubled.add_leaf(pure(n.index, 1));
        doubled.nodes[i] = {Op::multiply, n.left, factor, 0};
        if (n.index == 2) put(Slip::square).nodes[i].index = 3;
        if (n.index == 3) put(Slip::square).nodes[i].index = 2;
      }
      if (n.op == Op::root) {
        put(Slip::square).nodes[i] = {Op::power, n.left, -1, 1};
        Expression& halved = put(Slip::square);  // half of it taken for its root
        std::int16_t half = halved.add_leaf(pure(1, 2));
        halved.nodes[i] = {Op::multiply, n.left, half, 0};
      }
      if (n.op == Op::leaf && is_half(e_.leaf_of(n))) {
        Expression& without = put(Slip::square);
        without.leaf_of(without.nodes[i]).value = 1;
      }
    }
  }
  void squares_put_in() {
    bool sum = e_.node(e_.root).op == Op::add || e_.node(e_.root).op == Op::subtract;
    if (!sum) whole_squares();  // nobody takes the root of a sum by mistake
    for (std::size_t i = 0; i < e_.nodes.size(); ++i) leaf_squared(i);
    whole_halves();
  }
  void whole_squares() {
    Expression& root = put(Slip::square);
    root.root = root.add_node(Op::root, e_.root);
    out_.back().whole = true;
    Expression& squared = put(Slip::square);
    squared.root = squared.add_node(Op::power, e_.root, -1, 2);
    out_.back().whole = true;
  }
  void leaf_squared(std::size_t i) {
    if (e_.nodes[i].op != Op::leaf || e_.leaf_of(e_.nodes[i]).figures <= 0) return;
    Expression& squared = put(Slip::square);
    std::int16_t copy = squared.add_node(Op::leaf, -1, -1, e_.nodes[i].index);
    squared.nodes[i] = {Op::power, copy, -1, 2};
  }
  void whole_halves() {
    for (const auto& [n, d] : {std::pair{1L, 2L}, {2L, 1L}, {1L, 4L}, {4L, 1L}}) {  // a diameter for a radius is four times the area
      Expression& times = put(Slip::square);
      std::int16_t by = times.add_leaf(pure(n, d));
      times.root = times.add_node(Op::multiply, e_.root, by);
    }
  }

  const Expression& e_;
  std::vector<Altered> out_;
};

bool comes_out(const Expression& e, const Exact& scale, Scaling scaling, const Decimal& stated, Angles angles = Angles::degrees) {
  Value v = evaluate(e, scaling, angles);
  return v.state == State::ok && is_rounded(v.number / scale, v.rough, stated);
}

bool has_angles(const Expression& e) {
  return std::any_of(e.nodes.begin(), e.nodes.end(), [](const Node& n) { return n.op >= Op::sine; });
}

// On one figure nearly any value is near a power of ten of it: then it must be exact.
bool is_power_apart(const Exact& value, bool rough, const Decimal& stated) {
  int n = power_apart(value, rough, stated);
  if (n == 0) return false;
  return stated.figures > 1 || value == stated.value * power_of_ten(n) || value * power_of_ten(n) == stated.value;
}

// Some of the quantities taken in the unit they are written in, or minutes and hours as if they were seconds.
bool left_unconverted(const Expression& e, const Exact& scale, const Decimal& stated) {
  std::vector<std::size_t> turned;
  for (std::size_t i = 0; i < e.leaves.size(); ++i) {
    if (e.leaves[i].unit && !(e.leaves[i].unit->scale == Scale{})) turned.push_back(i);
  }
  if (turned.empty() || turned.size() > 6) return false;
  for (unsigned mask = 1; mask < (1U << turned.size()); ++mask) {
    Expression changed = e;
    for (std::size_t k = 0; k < turned.size(); ++k) {
      if ((mask >> k & 1U) != 0) changed.leaves[turned[k]].unit->scale = Scale{};
    }
    if (comes_out(changed, scale, Scaling::si, stated)) return true;
  }
  return false;
}

// A count that is one off, twice or half of what it should be.
bool miscounted(const Expression& e, const Exact& scale, Scaling scaling, const Decimal& stated) {
  for (std::size_t i = 0; i < e.nodes.size(); ++i) {
    if (e.nodes[i].op != Op::divide) continue;
    const Node& by = e.node(e.nodes[i].right);
    if (by.op != Op::leaf) continue;
    const Leaf& leaf = e.leaf_of(by);
    if (leaf.unit || leaf.last_place != 0 || leaf.value.get_den() != 1 || leaf.value < 2 || leaf.value > 60) continue;
    for (const Exact& other : {Exact(leaf.value - 1), Exact(leaf.value + 1)}) {
      if (other == 0) continue;
      Expression changed = e;
      changed.leaves[static_cast<std::size_t>(by.index)].value = other;
      if (comes_out(changed, scale, scaling, stated)) return true;
    }
  }
  return false;
}

}  // namespace

std::vector<Altered> altered(const Expression& expression) {
  return Alterations(expression).run();
}

std::size_t terms_of_mean(const Expression& e, long& divisor, int& sum) {
  const Node& root = e.node(e.root);
  if (root.op != Op::divide || e.node(root.right).op != Op::leaf) return 0;
  const Leaf& by = e.leaf_of(e.node(root.right));
  if (by.unit || by.value.get_den() != 1 || by.value < 2 || by.value > 50) return 0;
  divisor = by.value.get_num().get_si();
  sum = root.left;
  std::size_t terms = 1;
  int i = root.left;
  while (e.node(i).op == Op::add) {
    if (e.node(e.node(i).right).op != Op::leaf) return 0;
    ++terms;
    i = e.node(i).left;
  }
  return e.node(i).op == Op::leaf && terms > 1 ? terms : 0;
}

std::vector<Slip> find_slips(const Expression& e, const Exact& scale, Scaling scaling, const Decimal& stated, bool percent) {
  Value exact_value = evaluate(e, scaling);
  if (exact_value.state != State::ok) return {};
  Exact value = exact_value.number / scale;
  if (is_badly_rounded(value, exact_value.rough, stated)) return {Slip::rounding};
  if (has_angles(e) && comes_out(e, scale, scaling, stated, Angles::radians)) return {Slip::angle_mode};
  if (is_power_apart(value, exact_value.rough, stated)) return {Slip::power_of_ten};
  if (left_unconverted(e, scale, stated)) return {Slip::power_of_ten};
  for (const auto& [n, d] : {std::pair{60L, 1L}, {1L, 60L}, {3600L, 1L}, {1L, 3600L}}) {
    bool times = std::any_of(e.leaves.begin(), e.leaves.end(), [](const Leaf& leaf) { return leaf.unit && leaf.unit->dimension.time != 0; });
    if (times && is_rounded(value * Exact(n, d), exact_value.rough, stated)) return {Slip::power_of_ten};
  }
  std::vector<Altered> all = altered(e);
  for (const Altered& one : all) {
    if (comes_out(one.expression, scale, scaling, stated)) return {one.slip};
  }
  if (miscounted(e, scale, scaling, stated)) return {Slip::count};
  if (percent) {
    for (const Altered& one : all) {
      Value v = evaluate(one.expression, scaling);
      if (v.state == State::ok && is_rounded(v.number / scale, v.rough, stated)) return {one.slip};
    }
  }
  if (stated.figures < 2) return {};  // two slips at once prove little on one figure
  for (const Altered& one : all) {
    if (one.slip == Slip::operation) continue;
    Value v = evaluate(one.expression, scaling);
    bool turned = one.slip == Slip::upside_down && v.state == State::ok && power_apart(v.number / scale, v.rough, stated) != 0;
    if (turned) return {one.slip, Slip::power_of_ten};
    if (left_unconverted(one.expression, scale, stated)) return {one.slip, Slip::power_of_ten};
  }
  return {};
}

}  // namespace retort::calc

#include "calc/expression.h"

#include <numbers>

namespace retort::calc {
namespace {

constexpr int kDeepest = 24;
constexpr std::size_t kMostNodes = 200;

void give_unit(Expression& e, int i, const CompoundUnit& unit) {
  Node n = e.node(i);
  if (n.op == Op::leaf) {
    Leaf& leaf = e.leaf_of(n);
    if (!leaf.unit && leaf.figures > 0) {
      leaf.unit = unit;
      leaf.bound = true;
    }
  } else if (n.op == Op::add || n.op == Op::subtract || n.op == Op::negate) {
    give_unit(e, n.left, unit);
    if (n.right >= 0) give_unit(e, n.right, unit);
  }
}

class Parser {
 public:
  Parser(const Tokens& tokens, const Names& names) : tokens_(tokens), names_(names) {}

  std::optional<Parsed> whole(std::size_t begin) {
    at_ = begin;
    std::int16_t root = sum(0);
    return finish(root);
  }
  std::optional<Parsed> rest(Leaf first, std::size_t at) {
    at_ = at;
    std::int16_t left = out_.add_leaf(std::move(first));
    left = products(left, 0);
    return finish(sums(left, 0));
  }

 private:
  std::optional<Parsed> finish(std::int16_t root) {
    if (root < 0) return std::nullopt;
    out_.root = root;
    return Parsed{std::move(out_), at_};
  }

  // A line break before an operator or behind one belongs to the expression.
  std::size_t over_line(std::size_t i) const { return tokens_.is(i, TokenKind::line) ? i + 1 : i; }

  bool full() const { return out_.nodes.size() >= kMostNodes; }

  std::int16_t sum(int depth) {
    std::int16_t left = product(depth);
    return left < 0 ? left : sums(left, depth);
  }
  std::int16_t sums(std::int16_t left, int depth) {
    while (!full()) {
      std::size_t i = over_line(at_);
      TokenKind kind = tokens_.kind(i);
      if (kind != TokenKind::plus && kind != TokenKind::minus) break;
      if (i != at_ && kind == TokenKind::minus) break;  // a dash that begins a line
      std::size_t saved = at_;
      note_range(i);
      at_ = over_line(i + 1);
      std::int16_t right = product(depth);
      if (right < 0) {
        at_ = saved;
        break;
      }
      left = out_.add_node(kind == TokenKind::plus ? Op::add : Op::subtract, left, right);
    }
    return left;
  }

  std::int16_t product(int depth) {
    if (depth > kDeepest) return -1;
    std::int16_t left = factor(depth);
    return left < 0 ? left : products(left, depth);
  }
  std::int16_t products(std::int16_t left, int depth) {
    while (!full()) {
      std::size_t i = over_line(at_);
      TokenKind kind = tokens_.kind(i);
      bool marked = kind == TokenKind::times || kind == TokenKind::divide;
      if (!marked && !(i == at_ && implied(kind))) break;
      std::size_t saved = at_;
      if (marked) {
        note_range(i);
        at_ = over_line(i + 1);
      }
      // "a over b × c" means a / (b × c)
      bool over = kind == TokenKind::divide && tokens_.all[i].in_words && tokens_.all[i].source.size() == 4;
      std::int16_t right = over ? product(depth + 1) : factor(depth);
      if (right < 0) {
        at_ = saved;
        break;
      }
      left = out_.add_node(kind == TokenKind::divide ? Op::divide : Op::multiply, left, right);
    }
    return left;
  }
  // "20 cos 30", "2(3 + 4)", "4π"
  bool implied(TokenKind kind) const {
    if (at_ == 0) return false;
    TokenKind before = tokens_.kind(at_ - 1);
    if (names_ && kind == TokenKind::word) {
      std::vector<Leaf> leaves;
      return names_(at_, leaves) > 0;
    }
    bool behind_number = before == TokenKind::number || before == TokenKind::close || before == TokenKind::pi;
    if (!behind_number) return false;
    if (kind >= TokenKind::root && kind <= TokenKind::arctangent) return tokens_.all[at_].in_words ? false : true;
    if (kind == TokenKind::pi) return true;
    if (kind == TokenKind::open) return before == TokenKind::close ? tokens_.all[at_].glued : tokens_.all[at_].glued && !has_unit(at_ - 1);
    return false;
  }
  bool has_unit(std::size_t i) const { return tokens_.is(i, TokenKind::number) && tokens_.number(i).unit.has_value(); }

  // "10-50", "14/03": whole numbers with nothing between
  void note_range(std::size_t i) {
    out_.in_words = out_.in_words || tokens_.all[i].in_words;
    if (tokens_.all[i].kind != TokenKind::minus && tokens_.all[i].kind != TokenKind::divide) return;
    if (i + 1 >= tokens_.size() || i == 0 || !tokens_.all[i].glued || !tokens_.all[i + 1].glued) return;
    auto whole_number = [&](std::size_t at) { return tokens_.is(at, TokenKind::number) && tokens_.number(at).decimal.last_place == 0; };
    bool minus = tokens_.all[i].kind == TokenKind::minus;
    if (whole_number(i - 1) && whole_number(i + 1)) out_.range_like = true;
    if (minus && tokens_.is(i - 1, TokenKind::number) && tokens_.is(i + 1, TokenKind::number) &&
        tokens_.number(i + 1).decimal.value > tokens_.number(i - 1).decimal.value)
      out_.range_like = true;
  }

  std::int16_t factor(int depth) {
    if (depth > kDeepest || full()) return -1;
    std::int16_t base = operand(depth);
    while (base >= 0 && !full()) {
      TokenKind kind = tokens_.kind(at_);
      if (kind == TokenKind::squared || kind == TokenKind::cubed) {
        base = out_.add_node(Op::power, base, -1, kind == TokenKind::squared ? 2 : 3);
        ++at_;
      } else if (kind == TokenKind::power && tokens_.is(at_ + 1, TokenKind::number)) {
        const Number& exponent = tokens_.number(at_ + 1);
        if (exponent.unit || exponent.decimal.value.get_den() != 1 || exponent.decimal.value > 9) return -1;
        base = out_.add_node(Op::power, base, -1, static_cast<std::int16_t>(exponent.decimal.value.get_num().get_si()));
        at_ += 2;
      } else {
        break;
      }
    }
    return base;
  }

  std::int16_t operand(int depth) {
    TokenKind kind = tokens_.kind(at_);
    if (kind == TokenKind::number) return hours_and_minutes(number());
    if (kind == TokenKind::pi) return pi();
    if (kind == TokenKind::open) return bracket(depth);
    if (kind >= TokenKind::root && kind <= TokenKind::arctangent) return function(kind, depth);
    if (kind == TokenKind::minus && at_ + 1 < tokens_.size() && tokens_.all[at_ + 1].glued) {
      ++at_;
      bool raised = tokens_.is(at_ + 1, TokenKind::squared) || tokens_.is(at_ + 1, TokenKind::cubed) || tokens_.is(at_ + 1, TokenKind::power);
      if (tokens_.is(at_, TokenKind::number) && !raised) {
        std::int16_t node = number();
        out_.leaf_of(out_.node(node)).value *= -1;
        return node;
      }
      std::int16_t inside = factor(depth + 1);
      return inside < 0 ? inside : out_.add_node(Op::negate, inside);
    }
    if (kind == TokenKind::word && names_) return named();
    return -1;
  }

  // "1/2 x 0.6 x 2": the half of a formula
  bool is_half() const {
    auto value = [&](std::size_t i, long n) {
      return tokens_.is(i, TokenKind::number) && !tokens_.number(i).unit && tokens_.number(i).decimal.value == n && !tokens_.all[i].in_words;
    };
    return value(at_, 1) && tokens_.is(at_ + 1, TokenKind::divide) && tokens_.all[at_ + 1].glued && value(at_ + 2, 2) && tokens_.all[at_ + 2].glued &&
           tokens_.is(at_ + 3, TokenKind::times);
  }

  // A power behind symbols written together belongs to the last: "mv²".
  std::int16_t named() {
    std::vector<Leaf> leaves;
    std::size_t n = names_(at_, leaves);
    if (n == 0 || leaves.empty()) return -1;
    at_ += n;
    std::int16_t product = -1;
    for (std::size_t i = 0; i < leaves.size(); ++i) {
      std::int16_t leaf = out_.add_leaf(std::move(leaves[i]));
      if (i + 1 == leaves.size() && i > 0) {
        TokenKind kind = tokens_.kind(at_);
        if (kind == TokenKind::squared || kind == TokenKind::cubed) {
          leaf = out_.add_node(Op::power, leaf, -1, kind == TokenKind::squared ? 2 : 3);
          ++at_;
        }
      }
      product = product < 0 ? leaf : out_.add_node(Op::multiply, product, leaf);
    }
    return product;
  }

  // "2 min 15 s"
  std::int16_t hours_and_minutes(std::int16_t first) {
    while (tokens_.is(at_, TokenKind::number) && tokens_.is(at_ - 1, TokenKind::number)) {
      const auto& large = tokens_.number(at_ - 1).unit;
      const auto& small = tokens_.number(at_).unit;
      bool times = large && small && large->dimension == dimension::kTime && small->dimension == dimension::kTime;
      if (!times || large->scale.value() <= small->scale.value()) break;
      std::int16_t second = number();
      first = out_.add_node(Op::add, first, second);
    }
    return first;
  }

  std::int16_t number() {
    if (is_half()) {
      Leaf half;
      half.value = Exact(1, 2);
      half.source = {tokens_.all[at_].source.begin, tokens_.all[at_ + 2].source.end};
      at_ += 3;
      return out_.add_leaf(std::move(half));
    }
    const Token& token = tokens_.all[at_];
    const Number& number = tokens_.number(at_++);
    Leaf leaf{number.decimal.value,
              number.decimal.figures == kMostDigits ? 0 : number.decimal.figures,
              number.decimal.last_place,
              number.unit,
              false,
              token.source,
              number.too_large};
    return out_.add_leaf(std::move(leaf));
  }
  std::int16_t pi() {
    Leaf leaf;
    leaf.value = exact(std::numbers::pi);
    leaf.source = tokens_.all[at_++].source;
    return out_.add_leaf(std::move(leaf));
  }
  std::int16_t bracket(int depth) {
    ++at_;
    std::int16_t inside = sum(depth + 1);
    if (inside < 0) return -1;
    at_ = over_line(at_);
    if (!tokens_.is(at_, TokenKind::close)) return -1;
    ++at_;
    if (tokens_.is(at_, TokenKind::unit)) give_unit(out_, inside, tokens_.units[tokens_.all[at_++].number]);
    return inside;
  }

  std::int16_t function(TokenKind kind, int depth) {
    ++at_;
    while (tokens_.word(at_) == "of" || tokens_.word(at_) == "the") ++at_;  // "sin of 40"
    std::int16_t inside = factor(depth + 1);
    if (inside < 0) return -1;
    static constexpr Op kOps[] = {Op::root, Op::sine, Op::cosine, Op::tangent, Op::arcsine, Op::arccosine, Op::arctangent};
    return out_.add_node(kOps[static_cast<int>(kind) - static_cast<int>(TokenKind::root)], inside);
  }

  const Tokens& tokens_;
  const Names& names_;
  std::size_t at_ = 0;
  Expression out_;
};

// The one unit of the leaves that are added below `i`, if they have one between them.
const CompoundUnit* unit_of_sum(const Expression& e, int i) {
  const Node& n = e.node(i);
  if (n.op == Op::leaf) return e.leaf_of(n).unit ? &*e.leaf_of(n).unit : nullptr;
  if (n.op != Op::add && n.op != Op::subtract && n.op != Op::negate) return nullptr;
  const CompoundUnit* right = n.right >= 0 ? unit_of_sum(e, n.right) : nullptr;
  return right != nullptr ? right : unit_of_sum(e, n.left);
}

}  // namespace

std::int16_t Expression::add_leaf(Leaf leaf) {
  leaves.push_back(std::move(leaf));
  return add_node(Op::leaf, -1, -1, static_cast<std::int16_t>(leaves.size() - 1));
}

std::int16_t Expression::add_node(Op op, std::int16_t left, std::int16_t right, std::int16_t index) {
  nodes.push_back({op, left, right, index});
  return static_cast<std::int16_t>(nodes.size() - 1);
}

std::optional<Parsed> parse(const Tokens& tokens, std::size_t begin, const Names& names) {
  return Parser(tokens, names).whole(begin);
}

std::optional<Parsed> parse_rest(const Tokens& tokens, Leaf first, std::size_t at, const Names& names) {
  return Parser(tokens, names).rest(std::move(first), at);
}

void spread_units(Expression& expression) {
  for (std::size_t i = expression.nodes.size(); i-- > 0;) {
    const Node& n = expression.nodes[i];
    if (n.op != Op::add && n.op != Op::subtract) continue;
    if (const CompoundUnit* unit = unit_of_sum(expression, static_cast<int>(i))) {
      CompoundUnit copy = *unit;
      give_unit(expression, static_cast<int>(i), copy);
    }
  }
}

}  // namespace retort::calc

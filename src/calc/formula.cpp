#include "calc/formula.h"

#include <algorithm>

namespace retort::calc {
namespace {

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  while (!text.empty()) {
    std::size_t end = text.find(' ');
    if (end != 0) out.emplace_back(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
  }
  return out;
}

// The exponent of each leaf, if the tree is a product of powers.
bool exponents(const Expression& e, int i, int sign, std::vector<int>& out) {
  const Node& n = e.node(i);
  switch (n.op) {
    case Op::leaf:
      out[static_cast<std::size_t>(n.index)] += sign;
      return true;
    case Op::multiply:
      return exponents(e, n.left, sign, out) && exponents(e, n.right, sign, out);
    case Op::divide:
      return exponents(e, n.left, sign, out) && exponents(e, n.right, -sign, out);
    case Op::power:
      return e.node(n.left).op == Op::leaf && exponents(e, n.left, sign * n.index, out);
    default:
      return false;
  }
}

// The product of some powers of leaves; -1 for none.
std::int16_t product(Expression& out, std::vector<QuantityId>& variables, const std::vector<std::pair<Leaf, std::pair<QuantityId, int>>>& factors) {
  std::int16_t result = -1;
  for (const auto& [leaf, what] : factors) {
    std::int16_t node = out.add_leaf(leaf);
    variables.push_back(what.first);
    if (what.second > 1) node = out.add_node(Op::power, node, -1, static_cast<std::int16_t>(what.second));
    result = result < 0 ? node : out.add_node(Op::multiply, result, node);
  }
  return result;
}

}  // namespace

QuantityId FormulaBook::add_quantity(QuantityEntry entry) {
  if (QuantityId known = find(entry.name); known != kNoQuantity) return known;
  auto id = static_cast<QuantityId>(quantities_.size());
  if (std::find(entry.words.begin(), entry.words.end(), entry.name) == entry.words.end()) entry.words.push_back(entry.name);
  std::vector<std::string> all = entry.words;
  all.insert(all.end(), entry.verbs.begin(), entry.verbs.end());
  for (std::size_t k = 0; k < all.size(); ++k) {
    std::vector<std::string> words = words_of(all[k]);
    if (words.empty()) continue;
    for (const std::string& word : words) words_.add(word);
    by_first_word_.emplace(words[0], static_cast<std::uint32_t>(phrases_.size()));
    phrases_.push_back({std::move(words), id, k >= entry.words.size()});
  }
  for (const std::string& symbol : entry.symbols) by_symbol_.emplace(symbol, id);
  quantities_.push_back(std::move(entry));
  giving_.emplace_back();
  return id;
}

bool FormulaBook::add_formula(std::string_view text, std::string_view source, std::vector<std::string> when) {
  std::size_t sign = text.find('=');
  if (sign == std::string_view::npos) return false;
  Formula formula;
  formula.text = text;
  formula.source = source;
  formula.when = std::move(when);
  std::string left(text.substr(0, sign));
  while (!left.empty() && left.back() == ' ') left.pop_back();
  formula.result = find(left);
  if (formula.result == kNoQuantity) return false;

  Tokens tokens;
  read_tokens(text.substr(sign + 1), tokens);
  std::vector<QuantityId> found;
  auto names = [&](std::size_t at, std::vector<Leaf>& leaves) -> std::size_t {
    Leaf leaf;
    std::vector<QuantityId> ids;
    std::size_t n = phrase_at(tokens, at, ids);
    if (n == 0) return 0;
    for (QuantityId id : ids) {  // the quantity of that very name, before those that have it among their words
      std::string joined;
      for (std::size_t i = 0; i < n; ++i) joined += (i > 0 ? " " : "") + std::string(tokens.word(at + i));
      if (quantities_[id].name == joined) leaf.last_place = id;
    }
    leaf.figures = -1;
    leaves.push_back(leaf);
    return n;
  };
  std::optional<Parsed> parsed = parse(tokens, 0, names);
  if (!parsed || parsed->end != tokens.size()) return false;
  formula.tree = std::move(parsed->expression);
  for (Leaf& leaf : formula.tree.leaves) {
    bool variable = leaf.figures == -1;
    formula.variables.push_back(variable ? static_cast<QuantityId>(leaf.last_place) : kNoQuantity);
    leaf.figures = 0;
    leaf.last_place = 0;
    leaf.source = {};
  }
  formulas_.push_back(formula);
  giving_[formula.result].push_back(static_cast<std::uint16_t>(formulas_.size() - 1));
  turn_round(formula);
  return true;
}

void FormulaBook::turn_round(const Formula& formula) {
  std::vector<int> powers(formula.tree.leaves.size(), 0);
  if (!exponents(formula.tree, formula.tree.root, 1, powers)) return;
  for (std::size_t solve = 0; solve < powers.size(); ++solve) {
    QuantityId wanted = formula.variables[solve];
    int power = powers[solve];
    if (wanted == kNoQuantity || power > 2 || power < -2 || power == 0) continue;
    std::vector<std::pair<Leaf, std::pair<QuantityId, int>>> above;
    std::vector<std::pair<Leaf, std::pair<QuantityId, int>>> below;
    (power > 0 ? above : below).push_back({Leaf{}, {formula.result, 1}});
    for (std::size_t i = 0; i < powers.size(); ++i) {
      if (i == solve) continue;
      int p = power > 0 ? -powers[i] : powers[i];
      if (p > 0) above.push_back({formula.tree.leaves[i], {formula.variables[i], p}});
      if (p < 0) below.push_back({formula.tree.leaves[i], {formula.variables[i], -p}});
    }
    Formula turned;
    turned.text = formula.text;
    turned.source = formula.source;
    turned.turned = true;
    turned.when = formula.when;
    turned.result = wanted;
    std::int16_t top = product(turned.tree, turned.variables, above);
    std::int16_t bottom = product(turned.tree, turned.variables, below);
    if (top < 0) {
      Leaf one;
      one.value = 1;
      top = turned.tree.add_leaf(one);
      turned.variables.push_back(kNoQuantity);
    }
    std::int16_t root = bottom < 0 ? top : turned.tree.add_node(Op::divide, top, bottom);
    if (power == 2 || power == -2) root = turned.tree.add_node(Op::root, root);
    turned.tree.root = root;
    formulas_.push_back(std::move(turned));
    giving_[wanted].push_back(static_cast<std::uint16_t>(formulas_.size() - 1));
  }
}

const std::vector<std::uint16_t>& FormulaBook::giving(QuantityId result) const {
  return giving_[result];
}

std::vector<const Formula*> FormulaBook::for_text(QuantityId result, const Tokens& tokens) const {
  std::vector<const Formula*> usual;
  std::vector<const Formula*> special;
  for (std::uint16_t index : giving_[result]) {
    const Formula& formula = formulas_[index];
    bool said = false;
    constexpr std::size_t kReach = 2000;  // words that are looked through
    for (std::size_t i = 0; i < std::min(tokens.size(), kReach) && !formula.when.empty() && !said; ++i) {
      said = !tokens.word(i).empty() && std::find(formula.when.begin(), formula.when.end(), tokens.word(i)) != formula.when.end();
    }
    if (said) special.push_back(&formula);
    if (formula.when.empty()) usual.push_back(&formula);
  }
  return special.empty() ? usual : special;
}

QuantityId FormulaBook::find(std::string_view name) const {
  for (std::size_t i = 0; i < quantities_.size(); ++i) {
    if (quantities_[i].name == name) return static_cast<QuantityId>(i);
  }
  return kNoQuantity;
}

std::vector<QuantityId> FormulaBook::by_symbol(std::string_view raw) const {
  std::vector<QuantityId> out;
  auto take = [&](const std::string& symbol) {
    auto [begin, end] = by_symbol_.equal_range(symbol);
    for (auto at = begin; at != end; ++at) out.push_back(at->second);
  };
  take(std::string(raw));
  if (!out.empty() || raw.empty() || static_cast<unsigned char>(raw[0]) >= 0x80) return out;
  std::string turned(raw);
  char& c = turned[0];
  if (c >= 'a' && c <= 'z')
    c = static_cast<char>(c - 32);
  else if (c >= 'A' && c <= 'Z')
    c = static_cast<char>(c + 32);
  take(turned);
  if (!out.empty()) return out;
  for (char& letter : turned) letter = letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
  take(turned);
  return out;
}

std::size_t FormulaBook::phrase_at(const Tokens& tokens, std::size_t at, std::vector<QuantityId>& out, bool* verb) const {
  std::string_view first = tokens.word(at);
  if (first.size() < 2) return 0;
  std::size_t best = 0;
  auto [begin, end] = by_first_word_.equal_range(std::string(first));
  for (auto entry = begin; entry != end; ++entry) {
    const Phrase& phrase = phrases_[entry->second];
    std::size_t n = phrase.words.size();
    if (n < best) continue;
    bool same = true;
    for (std::size_t i = 1; i < n && same; ++i) same = tokens.word(at + i) == phrase.words[i];
    if (!same) continue;
    if (n > best) out.clear();
    if (verb != nullptr) *verb = phrase.verb;
    best = n;
    out.push_back(phrase.quantity);
  }
  return best;
}

const CompoundUnit* FormulaBook::constant_unit(const Exact& value, bool if_needed) const {
  for (const Constant& constant : constants_) {
    if (constant.value == value && constant.only_if_needed == if_needed) return &constant.unit;
  }
  return nullptr;
}

bool FormulaBook::usual_scale(const Dimension& dimension, const Scale& scale, bool& known) const {
  known = dimension.none();
  for (const QuantityEntry& entry : quantities_) {
    if (entry.unit.dimension != dimension || entry.count) continue;
    known = true;
    if (entry.unit.scale == scale) return true;
    for (const CompoundUnit& unit : entry.others) {
      if (unit.scale == scale) return true;
    }
  }
  return !known || (dimension.none() && scale == Scale{});
}

}  // namespace retort::calc

#include "calc/calculations.h"

#include <algorithm>

#include "calc/chains.h"
#include "calc/prose.h"
#include "calc/slips.h"

namespace retort::calc {
namespace {

Calculation make(const Chain& chain, const Judgement& judgement) {
  Calculation out;
  out.span = chain.span;
  out.result = chain.stated.back().digits;
  out.verdict = judgement.verdict;
  out.slips = judgement.slips;
  out.remarks = judgement.remarks;
  out.doubt = judgement.doubt;
  out.correct = judgement.correct;
  out.formula = judgement.formula;
  return out;
}

// How far apart two values may be when both are reckoned from rounded readings.
bool about_equal(const Expression& a, const Expression& b) {
  Value x = evaluate(a, Scaling::si);
  Value y = evaluate(b, Scaling::si);
  Value p = evaluate(a, Scaling::as_written);
  Value q = evaluate(b, Scaling::as_written);
  if (x.state != State::ok || y.state != State::ok) return false;
  Exact room(1, 1000000);
  for (const Leaf& leaf : b.leaves) {
    if (leaf.figures > 0 && leaf.value != 0) room += power_of_ten(leaf.last_place) / (2 * abs(leaf.value));
  }
  auto near = [&](const Exact& m, const Exact& n) { return abs(m - n) <= room * std::max(Exact(abs(m)), Exact(abs(n))); };
  return near(x.number, y.number) || near(p.number, q.number) || near(p.number * 100, q.number);
}

// "3 + 4 + 5 = 12 / 3 = 4": the next part goes on from the value of the one before.
bool runs_on(const Expression& part, const Expression& next) {
  if (next.single() || next.leaves.empty()) return false;
  Value v = evaluate(part, Scaling::as_written);
  if (v.state != State::ok) return false;
  const Leaf& first = next.leaves[0];
  Decimal said;
  said.value = first.value;
  said.figures = first.figures;
  said.last_place = first.last_place;
  if (is_rounded(v.number, v.rough, said)) return true;
  // the first part itself may be reckoned wrongly; it still runs on if its place is taken by a number
  return false;
}

// A result that is right as a sum, held against what the question's table gives.
void hold_against(const Chain& chain, const std::vector<Expected>& expected, Judgement& judgement) {
  const Stated& stated = chain.stated.back();
  for (const Expected& e : expected) {
    bool named =
        chain.named.tight && std::find(chain.named.quantities.begin(), chain.named.quantities.end(), e.quantity) != chain.named.quantities.end();
    bool other_kind = stated.unit && stated.unit->dimension != e.unit.dimension;
    if (!named || other_kind || stated.decimal.value == 0 || e.value == 0) continue;
    auto near = [&](const Exact& value) { return abs(value - e.value) <= e.within * e.value; };
    Exact value = abs(stated.decimal.value) * exact(stated.unit ? stated.unit->scale : e.unit.scale);
    if (near(value)) return;
    std::optional<Slip> slip;
    for (int n = -6; n <= 6 && !slip; ++n) {
      if (n != 0 && near(value * power_of_ten(n))) slip = Slip::power_of_ten;
    }
    if (!slip && near(1 / value)) slip = Slip::upside_down;
    if (!slip) continue;
    judgement.verdict = Verdict::wrong;
    judgement.slips = {*slip};
    judgement.remarks.clear();
    judgement.correct = e.written;
  }
}

class ChainJudge {
 public:
  ChainJudge(const Judge& judge, const Chain& chain) : judge_(judge), chain_(chain) {}

  Judgement run() {
    if (Judgement running; runs(running)) return running;
    const Stated& last = chain_.stated.back();
    std::size_t first = first_expression();
    Judgement whole = judge_.judge(chain_.parts[first], last, chain_.named, chain_.span);
    if (whole.verdict == Verdict::right || whole.doubt != Doubt::none) return whole;
    return weakest_link(first, whole);
  }

 private:
  std::size_t first_expression() const {
    for (std::size_t i = 0; i + 1 < chain_.parts.size(); ++i) {
      if (!chain_.parts[i].single()) return i;
    }
    return 0;
  }

  bool runs(Judgement& out) const {
    for (std::size_t i = 0; i + 1 < chain_.parts.size(); ++i) {
      const Expression& part = chain_.parts[i];
      const Expression& next = chain_.parts[i + 1];
      if (part.single() || about_equal(part, next) || !runs_on(part, next)) continue;
      out.verdict = Verdict::wrong;
      out.slips = {Slip::chain};
      const Stated& last = chain_.stated.back();
      std::size_t from = last_expression();
      Judgement end = judge_.judge(chain_.parts[from], last, {}, chain_.span);
      Value v = evaluate(chain_.parts[from], Scaling::as_written);
      if (v.state == State::ok)
        out.correct = end.verdict == Verdict::wrong
                          ? end.correct
                          : sensible(last.decimal.value, chain_.parts[from], &last.decimal, last.unit ? last.unit->symbol : "");
      if (end.verdict == Verdict::wrong) out.slips.insert(out.slips.end(), end.slips.begin(), end.slips.end());
      return true;
    }
    return false;
  }
  std::size_t last_expression() const {
    for (std::size_t i = chain_.parts.size() - 1; i-- > 0;) {
      if (!chain_.parts[i].single()) return i;
    }
    return 0;
  }

  // Each link by itself: the first that does not hold tells what went wrong; if all hold, rounding on the way
  // explains the difference.
  Judgement weakest_link(std::size_t first, const Judgement& whole) const {
    std::size_t from = first;
    bool all_hold = true;
    Judgement found = whole;
    for (std::size_t i = first + 1; i < chain_.parts.size(); ++i) {
      const Stated& stated = chain_.stated[i];
      if (stated.decimal.figures == 0) {
        if (!about_equal(chain_.parts[from], chain_.parts[i])) {
          all_hold = false;
          found = against(chain_.parts[from], chain_.parts[i], whole);
          break;
        }
        from = i;
        continue;
      }
      bool last = i + 1 == chain_.parts.size();
      Judgement link = judge_.judge(chain_.parts[from], stated, last ? chain_.named : Named{}, chain_.span);
      if (link.verdict != Verdict::right) {
        all_hold = false;
        found = link;
        if (!last && whole.verdict == Verdict::wrong && !whole.correct.empty()) found.correct = whole.correct;
        break;
      }
      from = i;
    }
    if (!all_hold) return found;
    if (!only_link_wrong(whole)) {
      Judgement right;
      right.verdict = Verdict::right;
      return right;
    }
    return before_conversion(first, whole);
  }
  // "8 × 2.5 = 20 cm/s = 0.2 m/s": what was worked out is the number before it is converted.
  Judgement before_conversion(std::size_t first, const Judgement& whole) const {
    const Stated& stated = chain_.stated[first + 1];
    bool converted = chain_.parts.size() > first + 2 && stated.decimal.figures > 0 && stated.unit && chain_.stated.back().unit &&
                     !(stated.unit->scale == chain_.stated.back().unit->scale);
    return converted ? judge_.judge(chain_.parts[first], stated, chain_.named, chain_.span) : whole;
  }
  // A wrong formula or unit shows only over the whole chain.
  bool only_link_wrong(const Judgement& whole) const {
    if (chain_.parts.size() == 2) return true;
    if (whole.slips.empty()) return false;
    Slip slip = whole.slips[0];
    return slip != Slip::arithmetic && slip != Slip::rounding;
  }
  // Two expressions that should be equal: the second one's value as the result of the first.
  Judgement against(const Expression& part, const Expression& next, const Judgement& whole) const {
    Value v = evaluate(next, Scaling::as_written);
    if (v.state != State::ok || v.number == 0) return whole;
    Stated as_result;
    as_result.decimal.value = rounded(v.number, first_place(abs(v.number)) - 2);
    as_result.decimal.figures = 3;
    as_result.decimal.last_place = first_place(abs(v.number)) - 2;
    Judgement link = judge_.judge(part, as_result, {}, chain_.span);
    if (!whole.slips.empty() && whole.slips[0] != Slip::arithmetic) return whole;
    if (link.verdict == Verdict::wrong) {
      link.correct = whole.correct;
      return link;
    }
    return whole;
  }

  const Judge& judge_;
  const Chain& chain_;
};

}  // namespace

std::vector<Calculation> Calculator::check(std::string_view text, const Given& given) {
  std::vector<Calculation> out;
  read_tokens(text, tokens_);
  if (tokens_.numbers.empty()) return out;
  speller_.run(tokens_);
  find_facts(tokens_, book_, facts_);
  std::size_t own = facts_.size();
  std::vector<Chain> chains = find_chains(tokens_, book_, facts_);
  if (chains.empty() && !may_hold_results(tokens_, facts_)) return out;
  name_facts(tokens_, book_, facts_);
  facts_.insert(facts_.end(), given.facts.begin(), given.facts.end());
  Judge judge(tokens_, book_, facts_, own);
  std::vector<Span> taken;
  for (const Chain& chain : chains) {
    Judgement judgement = ChainJudge(judge, chain).run();
    if (judgement.verdict == Verdict::right) hold_against(chain, given.expected, judgement);
    if (chain.loose && !judgement.explained() && judgement.doubt == Doubt::none) continue;
    out.push_back(make(chain, judgement));
    taken.push_back(chain.span);
    auto result = std::partition_point(facts_.begin(), facts_.begin() + static_cast<std::ptrdiff_t>(own),
                                       [&](const Fact& fact) { return fact.token < chain.stated.back().token; });
    bool named = result != facts_.end() && result->token == chain.stated.back().token && !chain.named.quantities.empty();
    if (named) result->names = chain.named.quantities;  // what follows may use the result by its name
  }
  find_in_prose(tokens_, book_, facts_, judge, taken, out);
  std::stable_sort(out.begin(), out.end(), [](const Calculation& a, const Calculation& b) { return a.result.begin < b.result.begin; });
  return out;
}

}  // namespace retort::calc

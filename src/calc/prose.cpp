#include "calc/prose.h"
namespace retort::calc {
void find_in_prose(const Tokens&, const FormulaBook&, const std::vector<Fact>&, const Judge&, const std::vector<Span>&, std::vector<Calculation>&) {}
}

#include "report/draft_pieces.h"

#include <algorithm>
#include <map>
#include <set>

namespace retort {
namespace {

struct Mark {
  Span span;
  PieceKind kind;
  std::size_t step;  // of a calculation: none
};

constexpr std::size_t kNoStep = static_cast<std::size_t>(-1);

std::vector<Mark> marks_of(std::string_view text, const Review& review) {
  std::vector<Mark> out;
  auto add = [&](Span span, PieceKind kind, std::size_t step) {
    if (span.begin < span.end && span.end <= text.size()) out.push_back({span, kind, step});
  };
  for (const calc::Calculation& c : review.calculations) {
    if (c.verdict == calc::Verdict::wrong) add(c.span, PieceKind::sum, kNoStep);
  }
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    PieceKind kind = review.steps[i].status == StepStatus::present ? PieceKind::there : PieceKind::near;
    if (review.steps[i].status == StepStatus::missing) continue;
    for (Span span : review.steps[i].evidence) add(span, kind, i);
  }
  return out;
}

}  // namespace

std::vector<DraftPiece> draft_pieces(std::string_view text, const Review& review) {
  std::vector<Mark> marks = marks_of(text, review);
  std::set<std::uint32_t> borders = {0, static_cast<std::uint32_t>(text.size())};
  std::map<std::uint32_t, std::vector<std::size_t>> begins;
  for (const Mark& mark : marks) {
    borders.insert({static_cast<std::uint32_t>(mark.span.begin), static_cast<std::uint32_t>(mark.span.end)});
    if (mark.step != kNoStep) begins[static_cast<std::uint32_t>(mark.span.begin)].push_back(mark.step);
  }
  std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.span.begin < b.span.begin; });
  std::vector<DraftPiece> out;
  std::vector<const Mark*> over;  // the marks that lie over the piece
  std::size_t next = 0;
  for (auto from = borders.begin(); std::next(from) != borders.end(); ++from) {
    DraftPiece piece{{*from, *std::next(from)}, PieceKind::plain, {}};
    std::erase_if(over, [&](const Mark* mark) { return mark->span.end <= piece.span.begin; });
    for (; next < marks.size() && marks[next].span.begin <= piece.span.begin; ++next) over.push_back(&marks[next]);
    auto rank = [](PieceKind kind) { return kind == PieceKind::sum ? 0 : kind == PieceKind::there ? 1 : kind == PieceKind::near ? 2 : 3; };
    for (const Mark* mark : over) {
      if (rank(mark->kind) < rank(piece.kind)) piece.kind = mark->kind;
    }
    if (auto at = begins.find(*from); at != begins.end()) piece.steps = at->second;
    std::sort(piece.steps.begin(), piece.steps.end());
    out.push_back(std::move(piece));
  }
  return out;
}

}  // namespace retort

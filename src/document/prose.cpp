#include "document/prose.h"

namespace retort {

void Prose::settle() {
  Frame& frame = frames_.back();
  if (frame.scripted.empty()) return;
  constexpr std::size_t kLookedAt = 16;  // whether a number stands before needs no more
  std::string_view before = frame.text;
  if (before.size() > kLookedAt) before.remove_prefix(before.size() - kLookedAt);
  frame.text += in_line(frame.script, frame.scripted, before);
  frame.scripted.clear();
}

void Prose::add(std::string_view text, Script script) {
  if (added_ > limit_) return;
  added_ += text.size();
  Frame& frame = frames_.back();
  if (script == Script::none) {
    settle();
    append_plain(text, frame.text);
    return;
  }
  if (script != frame.script) settle();
  frame.script = script;
  append_plain(text, frame.scripted);
}

void Prose::add_exact(std::string_view text) {
  if (added_ > limit_) return;
  added_ += text.size();
  settle();
  this->text() += text;
}

void Prose::end_paragraph(bool joined) {
  settle();
  if (joined || added_ > limit_) return;
  Frame& frame = frames_.back();
  ++added_;
  frame.text += "\n";
  frame.text += frame.behind;
  frame.behind.clear();
}

void Prose::begin_row() {
  frames_.back().rows.push_back(text().size());
}

void Prose::end_row(bool dropped) {
  Frame& frame = frames_.back();
  if (frame.rows.empty()) return;
  settle();
  std::size_t begin = frame.rows.back();
  frame.rows.pop_back();
  if (dropped) {
    if (begin < frame.text.size()) frame.text.resize(begin);
    return;
  }
  if (frame.text.size() > begin && frame.text.back() == '\t') frame.text.pop_back();
  frame.text += '\n';
}

void Prose::begin_cell() {
  frames_.back().cells.push_back(text().size());
}

void Prose::end_cell(bool dropped) {
  Frame& frame = frames_.back();
  if (frame.cells.empty()) return;
  settle();
  std::size_t begin = frame.cells.back();
  frame.cells.pop_back();
  if (dropped) {
    if (begin < frame.text.size()) frame.text.resize(begin);
    return;
  }
  while (frame.text.size() > begin && frame.text.back() == '\n') frame.text.pop_back();
  frame.text += '\t';
  ++added_;
}

void Prose::begin_aside() {
  settle();
  frames_.emplace_back();
}

std::string Prose::end_aside() {
  if (frames_.size() < 2) return "";
  settle();
  std::string out = std::move(frames_.back().text) + frames_.back().behind;
  frames_.pop_back();
  return out;
}

void Prose::put_behind(std::string_view text) {
  Frame& frame = frames_.back();
  frame.behind += text;
  if (!frame.behind.empty() && frame.behind.back() != '\n') frame.behind += '\n';
}

std::string Prose::finish() {
  while (frames_.size() > 1) put_behind(end_aside());
  settle();
  std::string out = std::move(frames_.back().text);
  if (!frames_.back().behind.empty()) {
    if (!out.empty() && out.back() != '\n') out += '\n';
    out += frames_.back().behind;
  }
  std::size_t begin = out.find_first_not_of("\n");
  if (begin == std::string::npos) return "";
  std::size_t end = out.find_last_not_of(" \t\n");
  return end == std::string::npos || end < begin ? "" : out.substr(begin, end + 1 - begin);
}

}  // namespace retort

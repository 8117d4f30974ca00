// The text of a document as it is put together: paragraphs, cells, raised and lowered signs, boxes beside the text.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "document/scripts.h"

namespace retort {

class Prose {
 public:
  // At most `limit` bytes and a few are kept.
  explicit Prose(std::size_t limit) : limit_(limit) { frames_.emplace_back(); }

  void add(std::string_view text, Script script = Script::none);  // as append_plain() has it
  void add_exact(std::string_view text);                          // as it stands
  // Ends a paragraph. Boxes met in it come behind it. `joined`: the next goes on in the same line.
  void end_paragraph(bool joined = false);

  // A table's cells are parted by tabs, its rows by line ends. A row or cell may be taken back at its end.
  void begin_row();
  void end_row(bool dropped = false);
  void begin_cell();
  void end_cell(bool dropped = false);

  // What comes between these two stands apart: end_aside() gives it back.
  void begin_aside();
  std::string end_aside();
  // A text that comes behind the paragraph at hand.
  void put_behind(std::string_view text);

  // The last bytes of the line at hand.
  [[nodiscard]] std::string_view before() const { return frames_.back().text; }
  // Whether more came than is kept.
  [[nodiscard]] bool overflowed() const { return added_ > limit_; }
  // All of it, without line ends around.
  std::string finish();

 private:
  struct Frame {
    std::string text;
    std::string scripted;  // raised or lowered, not yet in `text`
    Script script = Script::none;
    std::string behind;
    std::vector<std::size_t> rows;
    std::vector<std::size_t> cells;
  };

  void settle();
  std::string& text() { return frames_.back().text; }

  std::size_t limit_;
  std::size_t added_ = 0;
  std::vector<Frame> frames_;
};

}  // namespace retort

#include "report/csv_writer.h"

#include <cmath>

#include "../support.h"

namespace retort {
namespace {

struct CellRow {
  const char* name;
  std::string in, out;
};

class CsvCell : public ::testing::TestWithParam<CellRow> {};

TEST_P(CsvCell, IsInertAndQuoted) {
  std::string out;
  CsvWriter(out).text(GetParam().in);
  EXPECT_EQ(out, "\uFEFF" + GetParam().out);
}

// Formula starts: the list of "CSV Injection" of the Open Worldwide Application Security Project, from memory.
INSTANTIATE_TEST_SUITE_P(Rows, CsvCell,
                         ::testing::Values(CellRow{"plain", "9B", "9B"}, CellRow{"comma", "a,b", "\"a,b\""}, CellRow{"quote", "a\"b", "\"a\"\"b\""},
                                           CellRow{"line", "a\nb", "\"a\nb\""}, CellRow{"equals", "=1+1", "'=1+1"}, CellRow{"plus", "+1", "'+1"},
                                           CellRow{"minus", "-1", "'-1"}, CellRow{"at", "@SUM(A1)", "'@SUM(A1)"}, CellRow{"tab", "\t=1", "'=1"},
                                           CellRow{"carriage return", "\r=1", "'=1"}, CellRow{"line feed", "\n=1", "\"'\n=1\""},
                                           CellRow{"after a space", " =1", "\"' =1\""}, CellRow{"full width", "\uFF1D1", "'\uFF1D1"},
                                           CellRow{"after a control character", "\x01=1", "'=1"},
                                           CellRow{"after a byte order mark", "\uFEFF=1", "'\uFEFF=1"}, CellRow{"inside", "a=1", "a=1"},
                                           CellRow{"formula in quotes", "=\"x\"", "\"'=\"\"x\"\"\""}, CellRow{"not UTF-8", "a\xFF", "a\uFFFD"},
                                           CellRow{"semicolon", "a;b", "\"a;b\""}, CellRow{"nothing", "", ""}),
                         test::row_name<CellRow>);

TEST(CsvWriter, PutsCommasAndLineEndsWhereTheyBelong) {
  std::string out;
  CsvWriter csv(out);
  csv.text("a").number(-3).empty().real(0.125, 2).real(std::nan(""), 2).end_row().text("b").end_row();
  EXPECT_EQ(out,
            "\uFEFF"
            "a,-3,,0.12,\r\nb\r\n");
}

}  // namespace
}  // namespace retort

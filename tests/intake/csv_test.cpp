#include "intake/csv.h"

#include "../support.h"
#include "base/messages.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  std::string csv;
  const char* expected;  // cells as "text@line:begin-end", "|" between rows; then the codes
};

std::string shown(const std::string& csv) {
  Findings findings;
  Result<Table> table = read_csv(csv, "t.csv", findings);
  if (!table) return "! " + std::string(message(table.finding().code).name);
  std::string out;
  for (std::size_t r = 0; r < table->rows.size(); ++r) {
    if (r > 0) out += " |";
    for (const Cell& cell : table->rows[r]) {
      out += (out.empty() ? "" : " ") + cell.text + "@" + std::to_string(cell.line) + ":" + std::to_string(cell.span.begin) + "-" + std::to_string(cell.span.end);
    }
  }
  for (const Finding& f : findings) out += " ! " + std::string(message(f.code).name);
  return out;
}

class Csv : public ::testing::TestWithParam<Row> {};
TEST_P(Csv, HasItsCellsAndTheirPlaces) { EXPECT_EQ(shown(GetParam().csv), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Intake, Csv,
    ::testing::Values(Row{"commas", "a,b\n1,2\n", "a@1:0-1 b@1:2-3 | 1@2:4-5 2@2:6-7"}, Row{"semicolons", "a;b\n1,5;2\n", "a@1:0-1 b@1:2-3 | 1,5@2:4-7 2@2:8-9"},
                      Row{"tabs", "a\tb\n1\t2", "a@1:0-1 b@1:2-3 | 1@2:4-5 2@2:6-7"}, Row{"bars", "a|b\n1|2", "a@1:0-1 b@1:2-3 | 1@2:4-5 2@2:6-7"},
                      Row{"spaces around", " a , b \n", "a@1:1-2 b@1:5-6"}, Row{"carriage returns", "a,b\r\n1,2\r\n", "a@1:0-1 b@1:2-3 | 1@2:5-6 2@2:7-8"},
                      Row{"old line ends", "a,b\r1,2\r", "a@1:0-1 b@1:2-3 | 1@2:4-5 2@2:6-7"}, Row{"byte order mark", "\xEF\xBB\xBF" "a,b\n", "a@1:3-4 b@1:5-6"},
                      Row{"named delimiter", "sep=;\na,1;b\n", "a,1@2:6-9 b@2:10-11"}, Row{"quotes", "\"a,b\",\"c\"\"d\"\n", "a,b@1:0-5 c\"d@1:6-12"},
                      Row{"line end in quotes", "\"a\nb\",c\nd,e\n", "a\nb@1:0-5 c@2:6-7 | d@3:8-9 e@3:10-11"}, Row{"blank lines", "a,b\n\n , \n1,2\n", "a@1:0-1 b@1:2-3 | 1@4:9-10 2@4:11-12"},
                      Row{"empty cells", ",a,\n", "@1:0-0 a@1:1-2 @1:3-3"}, Row{"nothing", "", ""}, Row{"one cell", "a", "a@1:0-1"},
                      Row{"open quote", "a,b\n\"1,2\n3,4\n", "a@1:0-1 b@1:2-3 | 1,2\n3,4\n@2:4-12 ! csv-quote-open"}, Row{"quote in a cell", "5\",b\n", "5\"@1:0-2 b@1:3-4"},
                      Row{"Windows-1252", "T\xB2 / s\xB2,\x96\n", "T\u00B2 / s\u00B2@1:0-7 \u2013@1:8-9 ! csv-not-utf8"}, Row{"UTF-16", std::string("\xFF\xFE" "a\0,\0", 6), "! csv-not-text"},
                      Row{"NUL", std::string("a\0b", 3), "! csv-not-text"}),
    test::row_name<Row>);

struct DelimiterRow {
  const char* name;
  const char* csv;
  char expected;
};
class Delimiters : public ::testing::TestWithParam<DelimiterRow> {};
TEST_P(Delimiters, AreFound) { EXPECT_EQ(find_delimiter(GetParam().csv), GetParam().expected); }
INSTANTIATE_TEST_SUITE_P(Intake, Delimiters,
                         ::testing::Values(DelimiterRow{"comma", "a,b\n1,2\n", ','}, DelimiterRow{"decimal commas in each cell", "a;b\n1,5;2,5\n3,5;4,5\n", ';'},
                                           DelimiterRow{"decimal commas in one column", "a;b\n1;2,5\n3;4,5\n", ';'}, DelimiterRow{"comma in a heading", "length, cm;time, s\n1;2\n", ';'},
                                           DelimiterRow{"semicolon in a heading", "a; or b,c\n1,2\n3,4\n", ','}, DelimiterRow{"in quotes", "\"a;b;c\",d\n1,2\n", ','},
                                           DelimiterRow{"none", "a\nb\n", ','}, DelimiterRow{"tab before comma", "a, b\tc\n1,5\t2\n", '\t'}),
                         test::row_name<DelimiterRow>);

TEST(CsvLimits, Hold) {
  Findings findings;
  EXPECT_EQ(read_csv(std::string(100, 'x'), "t", findings, {10, 10}).finding().code, Code::file_too_large);
  EXPECT_EQ(read_csv(std::string(100, ','), "t", findings, {1000, 10}).finding().code, Code::csv_too_many_cells);
}

}  // namespace
}  // namespace retort

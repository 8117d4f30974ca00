// Files really saved by a word processor (data/README.md), whole and damaged.
#include <random>

#include "folder.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;

std::string saved(const std::string& ending) {
  return test::source_path("tests/intake/data/draft" + ending);
}

const std::string kText =
    "Spring practical\n"
    "First hang the spring from a clamp and use a metre rule.\n"
    "add 1.5 N each time\n"
    "read at eye level\n"
    "The area is 2.0 x 10\u207B\u00B3 m\u00B2, CO2 at 20 \u00B0C.\n"
    "Force / N\tLength 1 / cm\tLength 2 / cm\n"
    "1.5\t6.2\t6.4\n"
    "one\ttab\nnext line\n"
    "With a box: done.\n"
    "Repeat three times.\n"
    "k = 6.0/0.15=40 N/m\n"
    "A long last paragraph that goes on and on so that it must be wrapped by the word processor when it sets the page, since it is about three lines "
    "long "
    "in all, and I would repeat each reading three times and find the mean of them, leaving out anomalies.\n"
    "The clamp must not move.";

TEST_F(Folder, SavedDocumentsReadTheSameInBothFormats) {
  EXPECT_EQ(all({saved(".odt")}), Strings{"draft=" + kText});
  EXPECT_EQ(all({saved(".docx")}), Strings{"draft=" + kText});
}

TEST_F(Folder, SavedPdf) {
  Strings got = all({saved(".pdf")});
  ASSERT_EQ(got.size(), 1U);
  for (const char* words : {"First hang the spring from a clamp", "2.0 x 10^-3 m2", "\n1.5\n6.2\n6.4\n", "read at eye level\n"}) {
    EXPECT_NE(got[0].find(words), std::string::npos) << words << " in " << got[0];
  }
}

struct Damage {
  std::size_t tried = 0;
  std::size_t read = 0;
  std::size_t whole = 0;
};

// Each damaged file is one answer or one fault, whatever was done to it.
class SavedAndDamaged : public Folder {
 protected:
  void attempt(const std::string& ending, const std::string& bytes, Damage& count) {
    Strings got = all({put("d" + ending, bytes)});
    std::size_t answers = got.size() - findings.size();
    ASSERT_EQ(answers + failed, 1U);
    ++count.tried;
    count.read += answers;
    count.whole += answers == 1 && got[0] == "d=" + kText ? 1 : 0;
  }
};

TEST_F(SavedAndDamaged, CutAnywhere) {
  for (const char* ending : {".docx", ".odt"}) {
    std::string whole = test::read_all(saved(ending));
    Damage count;
    for (std::size_t size = 0; size < whole.size(); size += 7) attempt(ending, whole.substr(0, size), count);
    std::cout << ending << ": cut in " << count.tried << " places, " << count.read << " still read\n";
    EXPECT_GT(count.tried, 1000U);
    EXPECT_EQ(count.read, 0U);  // the directory of an archive is at its end
  }
}

TEST_F(SavedAndDamaged, BitsTurned) {
  std::mt19937 random(1);  // the same ones each time
  for (const char* ending : {".docx", ".odt"}) {
    std::string whole = test::read_all(saved(ending));
    Damage count;
    for (int i = 0; i < 3000; ++i) {
      std::string turned = whole;
      for (int bits = 1 + i % 3; bits > 0; --bits) {
        std::size_t bit = random() % (turned.size() * 8);
        turned[bit / 8] = static_cast<char>(turned[bit / 8] ^ (1 << (bit % 8)));
      }
      attempt(ending, turned, count);
    }
    std::cout << ending << ": bits turned in " << count.tried << " files, " << count.read << " still read, " << count.whole
              << " of them with the whole text\n";
    EXPECT_EQ(count.tried, 3000U);
    // Checksums guard what the parts hold. A bit of a part's name in the directory hides that part: styles, notes or formulas are gone then.
    EXPECT_GE(count.whole * 100, count.read * 95);
  }
}

}  // namespace
}  // namespace retort

// Least squares, means and standard deviations against the certified values of NIST's Statistical Reference Datasets
// (NIST/ITL, https://www.itl.nist.gov/div898/strd/; files in data/nist-strd as published). Certified values have 15 digits.
#include <cmath>
#include <sstream>

#include "../support.h"
#include "results/least_squares.h"
#include "results/number.h"
#include "results/statistics.h"

namespace retort::results {
namespace {

Twofold number(const std::string& text) {
  std::string plain = text;
  for (char& c : plain) c = c == 'E' ? 'e' : c;
  auto reading = read_number(plain, Comma::thousands);
  EXPECT_TRUE(reading && reading->rest.empty()) << text;
  return reading ? to_twofold(reading->number.value) : Twofold();
}

std::vector<std::string> lines_of(const std::string& file) {
  std::istringstream in(test::read_all(test::source_path("tests/outside/data/nist-strd/" + file)));
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

std::vector<std::string> words(const std::string& line) {
  std::istringstream in(line);
  return {std::istream_iterator<std::string>(in), {}};
}

// Digits that agree with a certified value, 15 at most; of a certified 0 the digits behind the point that are 0.
double digits(Twofold got, Twofold certified) {
  double error = std::fabs((got - certified).value());
  if (error == 0) return 15;
  double size = std::fabs(certified.value());
  return std::min(15.0, -std::log10(size == 0 ? error : error / size));
}

struct Certified {
  std::vector<Twofold> parameters, errors;
  Twofold residual_sd, r_squared;
  std::vector<Column> table;  // y, x1, x2 …
};

Certified read(const std::string& file) {
  Certified out;
  std::vector<std::string> lines = lines_of(file);
  for (std::size_t i = 30; i < 60 && i < lines.size(); ++i) {
    auto w = words(lines[i]);
    if (w.size() == 3 && w[0].size() <= 3 && w[0][0] == 'B') {
      out.parameters.push_back(number(w[1]));
      out.errors.push_back(number(w[2]));
    }
    if (w.size() == 3 && w[0] == "Standard" && w[1] == "Deviation") out.residual_sd = number(w[2]);
    if (w.size() == 2 && w[0] == "R-Squared") out.r_squared = number(w[1]);
  }
  for (std::size_t i = 60; i < lines.size(); ++i) {
    auto w = words(lines[i]);
    out.table.resize(std::max(out.table.size(), w.size()));
    for (std::size_t k = 0; k < w.size(); ++k) out.table[k].push_back(number(w[k]));
  }
  return out;
}

enum class Model { polynomial, through_origin, columns };

struct Row {
  const char* name;
  Model model;
  std::size_t parameters;
  double least;  // digits
};

class Nist : public ::testing::TestWithParam<Row> {};

TEST_P(Nist, FitHasTheCertifiedDigits) {
  const Row& row = GetParam();
  Certified nist = read("lls/" + std::string(row.name) + ".dat");
  ASSERT_EQ(nist.parameters.size(), row.parameters);
  std::vector<Column> columns(nist.table.begin() + 1, nist.table.end());
  if (row.model == Model::columns) columns.insert(columns.begin(), Column(nist.table[0].size(), Twofold(1.0)));
  std::optional<Fit> fit = row.model == Model::polynomial ? fit_polynomial(nist.table[1], nist.table[0], row.parameters - 1)
                                                          : least_squares(columns, nist.table[0], row.model == Model::columns);
  ASSERT_TRUE(fit.has_value());
  double estimate = 15, error = 15;
  for (std::size_t i = 0; i < row.parameters; ++i) {
    estimate = std::min(estimate, digits(fit->parameters[i], nist.parameters[i]));
    error = std::min(error, digits(fit->standard_errors[i], nist.errors[i]));
  }
  double sd = digits(fit->residual_sd, nist.residual_sd);
  double r = digits(*fit->r_squared, nist.r_squared);
  std::printf("%s: parameters %.1f, standard errors %.1f, residual sd %.1f, R2 %.1f digits\n", row.name, estimate, error, sd, r);
  EXPECT_GE(estimate, row.least);
  EXPECT_GE(error, row.least);
  EXPECT_GE(sd, row.least);
  EXPECT_GE(r, row.least);
}

INSTANTIATE_TEST_SUITE_P(Outside, Nist,
                         ::testing::Values(Row{"Norris", Model::polynomial, 2, 13}, Row{"Pontius", Model::polynomial, 3, 13},
                                           Row{"NoInt1", Model::through_origin, 1, 13}, Row{"NoInt2", Model::through_origin, 1, 13},
                                           Row{"Filip", Model::polynomial, 11, 13}, Row{"Longley", Model::columns, 7, 13},
                                           Row{"Wampler1", Model::polynomial, 6, 13}, Row{"Wampler2", Model::polynomial, 6, 13},
                                           Row{"Wampler3", Model::polynomial, 6, 13}, Row{"Wampler4", Model::polynomial, 6, 13},
                                           Row{"Wampler5", Model::polynomial, 6, 13}),
                         test::row_name<Row>);

class NistUnivariate : public ::testing::TestWithParam<const char*> {};

TEST_P(NistUnivariate, MeanAndStandardDeviationHaveTheCertifiedDigits) {
  std::vector<std::string> lines = lines_of("univ/" + std::string(GetParam()) + ".dat");
  Twofold certified_mean, certified_sd;
  std::size_t count = 0;
  Column values;
  bool data = false;  // below a line of hyphens
  for (const std::string& line : lines) {
    auto w = words(line);
    if (w.empty()) continue;
    auto value = [&] { return number(w.back() == "(exact)" ? w[w.size() - 2] : w.back()); };
    if (data) values.push_back(value());
    if (line.starts_with("Sample Mean")) certified_mean = value();
    if (line.starts_with("Sample Standard Deviation")) certified_sd = value();
    if (line.starts_with("Number of Observations")) count = static_cast<std::size_t>(value().value());
    data = data || line.starts_with("---");
  }
  ASSERT_EQ(values.size(), count);
  double mean_digits = digits(mean(values), certified_mean);
  double sd_digits = digits(standard_deviation(values), certified_sd);
  std::printf("%s: %zu values, mean %.1f, sd %.1f digits\n", GetParam(), values.size(), mean_digits, sd_digits);
  EXPECT_GE(mean_digits, 13);
  EXPECT_GE(sd_digits, 13);
}

INSTANTIATE_TEST_SUITE_P(Outside, NistUnivariate, ::testing::Values("Lew", "Lottery", "Mavro", "Michelso", "NumAcc1", "NumAcc2", "NumAcc3", "NumAcc4"),
                         [](const auto& row) { return std::string(row.param); });

}  // namespace
}  // namespace retort::results

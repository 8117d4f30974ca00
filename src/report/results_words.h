// What an analysis of results means, in plain sentences: for the terminal, for the description of the graph, for JSON.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "results/analysis.h"

namespace retort {

struct ResultsWords {
  std::vector<std::string> readings;      // anomalies, readings that disagree, zero uncertainty
  std::vector<std::string> means;         // the pupil's own means
  std::vector<std::string> line;          // gradient, intercept, two points
  std::vector<std::string> relation;      // directly proportional or not, and why
  std::vector<std::string> constant;      // what the gradient stands for; refractive index
};

ResultsWords results_words(const results::Analysis& analysis);

// "Extension against force".
std::string graph_title(const results::Analysis& analysis);

// "right", "anomaly-left-in" …: stable names for JSON.
std::string_view verdict_name(results::MeanVerdict verdict);
std::string_view shape_name(results::Shape shape);
std::string_view origin_name(results::Origin origin);
std::string_view plot_name(results::Plot plot);

// The mean of a group and its uncertainty, as they should be written.
std::string mean_text(const results::Summary& summary);
std::string uncertainty_text(const results::Summary& summary);
// A percentage to two significant figures; empty if there is none.
std::string percent_text(const results::Summary& summary);

}  // namespace retort

// How inputs are to be read: which columns of a CSV file hold what, and by which codes pupils are called.
#pragma once
#include <string>

namespace retort {

class Pseudonyms;

struct IntakeOptions {
  // Columns of CSV files, each by its heading or its number from the left (from 1); "" to find it by its heading.
  std::string answer_column;
  std::string label_column;
  std::string mark_column;
  std::string mark2_column;
  std::string group_column;
  // The program that reads PDF files: a name to look for in PATH, or a path.
  std::string pdf_reader = "pdftotext";
  // Replaces labels by codes; none: labels stay. Must outlive the stream.
  Pseudonyms* pseudonyms = nullptr;
};

}  // namespace retort

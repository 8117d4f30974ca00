// Another program, run without a shell, within limits of time, memory and output.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

namespace retort {

struct ChildLimits {
  int seconds = 30;                       // by the clock; of processor time as well
  std::size_t memory_bytes = 1ULL << 30;  // of address space
  std::size_t output_bytes = 4U << 20;
};

struct ChildResult {
  enum class End { exited, killed, timed_out, too_much, not_started };
  End end = End::not_started;
  int status = 0;   // if it exited
  std::string out;  // its standard output
  std::string err;  // the beginning of its standard error
};

// The file that `program` names: itself if it has a slash, else the first executable one in PATH; "" if there is none.
std::string find_program(const std::string& program);

// Runs the file `program` with `arguments`. It sees `input` as descriptor kChildInput and no other file of ours, an empty standard
// input, and of the environment PATH alone; it cannot write files. Waits until it ends. Any thread may call this.
inline constexpr int kChildInput = 3;
ChildResult run_child(const std::string& program, const std::vector<std::string>& arguments, int input, const ChildLimits& limits = {});

}  // namespace retort

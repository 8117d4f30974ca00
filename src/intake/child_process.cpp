#include "intake/child_process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <optional>

#include "intake/files.h"

namespace retort {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr int kAbove = 10;  // our descriptors stand above those that the child gets
constexpr std::size_t kMostErr = 4096;
constexpr int kCannotRun = 127;

struct Pipe {
  Descriptor read;
  Descriptor write;
};

std::optional<Pipe> open_pipe() {
  std::array<int, 2> ends{};
  if (::pipe2(ends.data(), O_CLOEXEC) != 0) return std::nullopt;
  Pipe out{Descriptor(ends[0]), Descriptor(ends[1])};
  out.write = Descriptor(::fcntl(ends[1], F_DUPFD_CLOEXEC, kAbove));
  if (out.write.get() < 0) return std::nullopt;
  return out;
}

void limit(__rlimit_resource resource, rlim_t value) {
  rlimit bound{value, value};
  ::setrlimit(resource, &bound);
}

struct Descriptors {
  int null;
  int input;
  int out;
  int err;
};

// In the child, between fork and exec: only calls that are safe there.
[[noreturn]] void become(const char* program, char* const* arguments, char* const* environment, const Descriptors& with, const ChildLimits& limits) {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  ::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0);
  ::signal(SIGPIPE, SIG_DFL);
  limit(RLIMIT_CPU, static_cast<rlim_t>(limits.seconds));
  limit(RLIMIT_AS, limits.memory_bytes);
  limit(RLIMIT_FSIZE, 0);
  limit(RLIMIT_CORE, 0);
  bool ready = ::dup2(with.null, 0) == 0 && ::dup2(with.out, 1) == 1 && ::dup2(with.err, 2) == 2 && ::dup2(with.input, kChildInput) == kChildInput;
  ::close_range(kChildInput + 1, ~0U, 0);
  if (ready) ::execve(program, arguments, environment);
  ::_exit(kCannotRun);
}

// Reads what is there; false at the end.
bool take(int fd, std::string& out, std::size_t most) {
  char buffer[1 << 14];
  ssize_t got = ::read(fd, buffer, sizeof buffer);
  if (got < 0) return errno == EINTR || errno == EAGAIN;
  if (out.size() < most) out.append(buffer, static_cast<std::size_t>(got));
  return got > 0;
}

// Reads both pipes to their ends, or until a limit.
ChildResult::End listen(Pipe& out, Pipe& err, const ChildLimits& limits, ChildResult& result) {
  auto end = Clock::now() + std::chrono::seconds(limits.seconds);
  std::array<pollfd, 2> pipes{pollfd{out.read.get(), POLLIN, 0}, pollfd{err.read.get(), POLLIN, 0}};
  while (pipes[0].fd >= 0 || pipes[1].fd >= 0) {
    auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
    if (left <= 0) return ChildResult::End::timed_out;
    if (::poll(pipes.data(), pipes.size(), static_cast<int>(left)) < 0 && errno != EINTR) return ChildResult::End::timed_out;
    if (pipes[0].fd >= 0 && pipes[0].revents != 0 && !take(pipes[0].fd, result.out, limits.output_bytes + 1)) pipes[0].fd = -1;
    if (pipes[1].fd >= 0 && pipes[1].revents != 0 && !take(pipes[1].fd, result.err, kMostErr)) pipes[1].fd = -1;
    if (result.out.size() > limits.output_bytes) return ChildResult::End::too_much;
  }
  return ChildResult::End::exited;
}

}  // namespace

std::string find_program(const std::string& program) {
  if (program.find('/') != std::string::npos) return ::access(program.c_str(), X_OK) == 0 ? program : "";
  const char* path = std::getenv("PATH");
  std::string rest = path == nullptr ? "/usr/bin:/bin" : path;
  while (!rest.empty()) {
    std::size_t colon = rest.find(':');
    std::string folder = rest.substr(0, colon);
    rest = colon == std::string::npos ? "" : rest.substr(colon + 1);
    if (folder.empty()) continue;  // the folder at hand, where untrusted files may lie
    std::string file = folder + "/" + program;
    std::error_code ignored;
    if (fs::is_regular_file(file, ignored) && ::access(file.c_str(), X_OK) == 0) return file;
  }
  return "";
}

ChildResult run_child(const std::string& program, const std::vector<std::string>& arguments, int input, const ChildLimits& limits) {
  ChildResult result;
  std::optional<Pipe> out = open_pipe();
  std::optional<Pipe> err = open_pipe();
  Descriptor null_opened(::open("/dev/null", O_RDWR | O_CLOEXEC));
  Descriptor null(::fcntl(null_opened.get(), F_DUPFD_CLOEXEC, kAbove));
  Descriptor copy(::fcntl(input, F_DUPFD_CLOEXEC, kAbove));
  if (!out || !err || null.get() < 0 || copy.get() < 0) return result;
  std::vector<std::string> words = {program};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  std::string locale = "LC_ALL=C.UTF-8";
  std::string path = "PATH=/usr/bin:/bin";
  std::array<char*, 3> environment{locale.data(), path.data(), nullptr};
  Descriptors with{null.get(), copy.get(), out->write.get(), err->write.get()};
  pid_t child = ::fork();
  if (child < 0) return result;
  if (child == 0) become(program.c_str(), pointers.data(), environment.data(), with, limits);
  out->write = Descriptor();
  err->write = Descriptor();
  result.end = listen(*out, *err, limits, result);
  if (result.end != ChildResult::End::exited) ::kill(child, SIGKILL);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  if (result.end != ChildResult::End::exited) return result;
  if (!WIFEXITED(status))
    result.end = ChildResult::End::killed;
  else
    result.status = WEXITSTATUS(status);
  if (result.status == kCannotRun) result.end = ChildResult::End::not_started;
  return result;
}

}  // namespace retort

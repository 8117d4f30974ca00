// retort serve: the local page, until it is told to stop.
#include <pthread.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <thread>

#include "base/messages.h"
#include "cli/support.h"
#include "serve/server.h"

namespace retort::cli {
namespace {

// The signals that end the program, kept for sigwait(); all threads inherit this.
sigset_t hold_back_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (int signal : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&set, signal);
  pthread_sigmask(SIG_BLOCK, &set, nullptr);
  return set;
}

}  // namespace

int run_serve(const Options& options) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  sigset_t ends = hold_back_signals();
  serve::Service service(std::move(*folder));
  serve::Listen listen;
  if (!options.address.empty()) listen.address = options.address;
  listen.port = options.port;
  listen.threads = options.threads != 0 ? options.threads : std::max(2U, std::thread::hardware_concurrency());
  auto server = serve::Server::start(service, listen);
  if (!server) {
    print(server.finding());
    return kWrong;
  }
  std::printf("Open this address in a browser on this machine:\n\n  %s\n\nNothing you write is stored. Press Ctrl+C here to stop.\n", (*server)->url().c_str());
  if (!serve::is_loopback(listen.address)) {
    std::printf("\nOther machines that can reach %s can open it with the whole address, and what is written then crosses the network\nunencrypted. Use this only on a network that you trust.\n", listen.address.c_str());
  }
  std::fflush(stdout);
  std::thread warm([&] { service.warm(); });
  int signal = 0;
  sigwait(&ends, &signal);
  warm.join();
  return kDone;
}

}  // namespace retort::cli

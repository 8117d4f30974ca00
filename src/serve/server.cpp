#include "serve/server.h"

#include <arpa/inet.h>
#include <microhttpd.h>
#include <sys/socket.h>

#include <cstring>
#include <new>

#include "serve/deadlines.h"

namespace retort::serve {
namespace {

constexpr std::size_t kConnectionMemory = 32U << 10;  // bytes of a request's line and headers, with the library's own

// An address to listen on, in the kernel's form.
struct Socket {
  sockaddr_storage storage{};
  bool six = false;
};

bool read_address(const std::string& text, std::uint16_t port, Socket& out) {
  auto* four = reinterpret_cast<sockaddr_in*>(&out.storage);
  if (::inet_pton(AF_INET, text.c_str(), &four->sin_addr) == 1) {
    four->sin_family = AF_INET;
    four->sin_port = htons(port);
    return true;
  }
  auto* six = reinterpret_cast<sockaddr_in6*>(&out.storage);
  if (::inet_pton(AF_INET6, text.c_str(), &six->sin6_addr) != 1) return false;
  six->sin6_family = AF_INET6;
  six->sin6_port = htons(port);
  out.six = true;
  return true;
}

// One request on its way in.
struct Incoming {
  Request request;
  bool too_large = false;
};

MHD_Result add_field(void* to, MHD_ValueKind, const char* key, const char* value) {
  static_cast<Fields*>(to)->emplace_back(key, value == nullptr ? "" : value);
  return MHD_YES;
}

// Undoes percent escapes in place. "%00" stays as it is: the library hands text on as C strings, which would end there.
std::size_t unescape(void*, MHD_Connection*, char* text) {
  auto digit = [](char c) { return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1; };
  char* out = text;
  for (const char* in = text; *in != '\0'; ++in) {
    int high = *in == '%' ? digit(in[1]) : -1;
    int low = high < 0 ? -1 : digit(in[2]);
    bool escape = low >= 0 && (high != 0 || low != 0);
    *out++ = escape ? static_cast<char>(high * 16 + low) : *in;
    if (escape) in += 2;
  }
  *out = '\0';
  return static_cast<std::size_t>(out - text);
}

MHD_Result send(MHD_Connection* connection, Response response) {
  MHD_Response* out = MHD_create_response_from_buffer(response.body.size(), response.body.data(), MHD_RESPMEM_MUST_COPY);
  if (out == nullptr) return MHD_NO;
  MHD_add_response_header(out, "Content-Type", response.type.c_str());
  for (const auto& [key, value] : response.headers) MHD_add_response_header(out, key.c_str(), value.c_str());
  MHD_Result queued = MHD_queue_response(connection, static_cast<unsigned>(response.status), out);
  MHD_destroy_response(out);
  return queued;
}

void no_log(void*, const char*, va_list) {}

}  // namespace

bool is_loopback(const std::string& address) {
  Socket at;
  if (!read_address(address, 0, at)) return false;
  if (at.six) return IN6_IS_ADDR_LOOPBACK(&reinterpret_cast<const sockaddr_in6*>(&at.storage)->sin6_addr) != 0;
  return (ntohl(reinterpret_cast<const sockaddr_in*>(&at.storage)->sin_addr.s_addr) >> 24U) == 127U;
}

struct Server::Impl {
  Impl(Service& with, const Listen& at) : service(with), listen(at), deadlines(at.whole_request) {}
  ~Impl() {
    if (daemon != nullptr) MHD_stop_daemon(daemon);
  }
  Impl(const Impl&) = delete;
  Impl& operator=(const Impl&) = delete;

  // The library's callbacks; `self` is the Impl.
  static MHD_Result on_request(void* self, MHD_Connection* connection, const char* target, const char* method, const char* version, const char* data,
                               std::size_t* size, void** state);
  static void on_completed(void* self, MHD_Connection* connection, void** state, MHD_RequestTerminationCode how);
  static void on_connection(void* self, MHD_Connection* connection, void** state, MHD_ConnectionNotificationCode what);

  MHD_Result take(MHD_Connection* connection, const char* target, const char* method, const char* data, std::size_t* size, void** state);
  Response answer(const Incoming& incoming) const;

  Service& service;
  Listen listen;
  Deadlines deadlines;
  Place place;
  MHD_Daemon* daemon = nullptr;
};

// Called by the library several times for each request: once with its headers, then with pieces of its body, then to answer.
MHD_Result Server::Impl::take(MHD_Connection* connection, const char* target, const char* method, const char* data, std::size_t* size, void** state) {
  if (*state == nullptr) {
    auto incoming = std::make_unique<Incoming>();
    incoming->request.method = method;
    incoming->request.path = target;
    MHD_get_connection_values(connection, MHD_HEADER_KIND, &add_field, &incoming->request.headers);
    MHD_get_connection_values(connection, MHD_GET_ARGUMENT_KIND, &add_field, &incoming->request.query);
    *state = incoming.release();
    auto* now = static_cast<Incoming*>(*state);
    // What may not be asked is refused before its body is read.
    if (auto refused = guard(now->request, place)) return send(connection, answer(*now));
    return MHD_YES;
  }
  auto* incoming = static_cast<Incoming*>(*state);
  if (*size > 0) {
    incoming->too_large = incoming->too_large || incoming->request.body.size() + *size > kLargestBody;
    if (incoming->too_large) incoming->request.body.clear();
    else incoming->request.body.append(data, *size);
    *size = 0;
    return MHD_YES;
  }
  return send(connection, answer(*incoming));
}

Response Server::Impl::answer(const Incoming& incoming) const {
  if (!incoming.too_large) return service.answer(incoming.request, place);
  Response out = refusal(413, "That is more than can be sent at once.");
  out.headers = safe_headers();
  return out;
}

MHD_Result Server::Impl::on_request(void* self, MHD_Connection* connection, const char* target, const char* method, const char*, const char* data,
                      std::size_t* size, void** state) {
  auto* impl = static_cast<Impl*>(self);
  try {
    return impl->take(connection, target, method, data, size, state);
  } catch (const std::bad_alloc&) {
    return MHD_NO;  // the connection is closed; the others go on
  }
}

void Server::Impl::on_completed(void* self, MHD_Connection* connection, void** state, MHD_RequestTerminationCode) {
  delete static_cast<Incoming*>(*state);  // NOLINT: the library hands it back
  *state = nullptr;
  static_cast<Impl*>(self)->deadlines.again(connection);
}

void Server::Impl::on_connection(void* self, MHD_Connection* connection, void**, MHD_ConnectionNotificationCode what) {
  auto* impl = static_cast<Impl*>(self);
  if (what == MHD_CONNECTION_NOTIFY_CLOSED) return impl->deadlines.end(connection);
  const MHD_ConnectionInfo* info = MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
  if (info != nullptr) impl->deadlines.begin(connection, info->connect_fd);
}

Server::Server(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Server::~Server() = default;

Result<std::unique_ptr<Server>> Server::start(Service& service, const Listen& listen) {
  Socket at;
  if (!read_address(listen.address, listen.port, at)) return make_finding(Code::serve_address_bad, "", {listen.address});
  auto impl = std::make_unique<Impl>(service, listen);
  impl->place.loopback = is_loopback(listen.address);
  if (!impl->place.loopback) impl->place.token = make_token();
  unsigned flags = MHD_USE_INTERNAL_POLLING_THREAD | MHD_USE_EPOLL | MHD_USE_ERROR_LOG | (at.six ? MHD_USE_IPv6 : MHD_NO_FLAG);
  impl->daemon = MHD_start_daemon(
      flags, listen.port, nullptr, nullptr, &Impl::on_request, impl.get(), MHD_OPTION_EXTERNAL_LOGGER, &no_log, nullptr, MHD_OPTION_SOCK_ADDR,
      reinterpret_cast<sockaddr*>(&at.storage), MHD_OPTION_THREAD_POOL_SIZE, listen.threads, MHD_OPTION_CONNECTION_LIMIT, listen.connections,
      MHD_OPTION_CONNECTION_TIMEOUT, static_cast<unsigned>(listen.idle.count()), MHD_OPTION_CONNECTION_MEMORY_LIMIT, kConnectionMemory,
      MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_UNESCAPE_CALLBACK, &unescape, nullptr, MHD_OPTION_NOTIFY_COMPLETED, &Impl::on_completed, impl.get(), MHD_OPTION_NOTIFY_CONNECTION, &Impl::on_connection,
      impl.get(), MHD_OPTION_END);
  if (impl->daemon == nullptr) {
    return make_finding(Code::serve_cannot_listen, "", {listen.address + (listen.port == 0 ? "" : ", port " + std::to_string(listen.port)), std::strerror(errno)});
  }
  const MHD_DaemonInfo* info = MHD_get_daemon_info(impl->daemon, MHD_DAEMON_INFO_BIND_PORT);
  impl->place.port = info == nullptr ? listen.port : info->port;
  return std::unique_ptr<Server>(new Server(std::move(impl)));  // NOLINT: the constructor is private
}

std::uint16_t Server::port() const { return impl_->place.port; }

std::string Server::url() const {
  bool six = impl_->listen.address.find(':') != std::string::npos;
  std::string out = "http://" + (six ? "[" + impl_->listen.address + "]" : impl_->listen.address) + ":" + std::to_string(impl_->place.port) + "/";
  return impl_->place.loopback ? out : out + "?token=" + impl_->place.token;
}

}  // namespace retort::serve

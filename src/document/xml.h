// XML as a stream of starts, texts and ends, with short names for the namespaces that matter.
//
// Declarations of entities are refused, so nothing can be expanded and nothing is fetched; depth is limited.
#pragma once
#include <cstddef>
#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "base/result.h"

namespace retort {

inline constexpr std::size_t kDeepestXml = 256;

struct XmlNamespace {
  std::string_view uri;
  std::string_view prefix;  // how names of it are given: "prefix:name"
};

class XmlNames;

// Good during the call that gives it.
class XmlAttributes {
 public:
  XmlAttributes(const char** raw, XmlNames& names) : raw_(raw), names_(names) {}
  // The value of "name" or "prefix:name"; "" if it is not there.
  [[nodiscard]] std::string_view get(std::string_view name) const;
  [[nodiscard]] bool has(std::string_view name) const { return find(name) != nullptr; }

 private:
  [[nodiscard]] const char* find(std::string_view name) const;
  const char** raw_;
  XmlNames& names_;
};

class XmlHandler {
 public:
  XmlHandler() = default;
  XmlHandler(const XmlHandler&) = delete;
  XmlHandler& operator=(const XmlHandler&) = delete;
  virtual ~XmlHandler() = default;
  // Names are "prefix:name"; of a namespace not listed "?:name"; without one "name". They live as long as the parser.
  virtual void start(std::string_view name, const XmlAttributes& attributes) = 0;
  virtual void end(std::string_view name) = 0;
  virtual void text(std::string_view piece) = 0;
};

class XmlParser {
 public:
  // `file` and `part` stand for the XML in findings. `handler` must outlive the parser.
  XmlParser(XmlHandler& handler, std::span<const XmlNamespace> namespaces, std::string file, std::string part);
  ~XmlParser();
  XmlParser(const XmlParser&) = delete;
  XmlParser& operator=(const XmlParser&) = delete;

  Status feed(std::string_view piece);
  Status finish();

 private:
  struct State;
  Status parse(std::string_view piece, bool last);
  std::unique_ptr<State> state_;
};

}  // namespace retort

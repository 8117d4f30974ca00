#include "document/xml.h"

#include <expat.h>

#include <functional>
#include <unordered_map>
#include <utility>
#include <vector>

namespace retort {
namespace {

constexpr char kSeparator = '|';
constexpr std::size_t kMostNames = 4096;  // different ones; a document has some hundred

struct Hash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>()(text); }
};

}  // namespace

// "uri|name" → "prefix:name", remembered.
class XmlNames {
 public:
  explicit XmlNames(std::span<const XmlNamespace> namespaces) : namespaces_(namespaces) {}

  std::string_view shorten(std::string_view full) {
    auto known = names_.find(full);
    if (known != names_.end()) return known->second;
    if (names_.size() >= kMostNames) return "?";
    return names_.emplace(std::string(full), make(full)).first->second;
  }

 private:
  [[nodiscard]] std::string make(std::string_view full) const {
    std::size_t at = full.rfind(kSeparator);
    if (at == std::string_view::npos) return std::string(full);
    for (const XmlNamespace& known : namespaces_) {
      if (known.uri == full.substr(0, at)) return std::string(known.prefix) + ":" + std::string(full.substr(at + 1));
    }
    return "?:" + std::string(full.substr(at + 1));
  }

  std::span<const XmlNamespace> namespaces_;
  std::unordered_map<std::string, std::string, Hash, std::equal_to<>> names_;
};

const char* XmlAttributes::find(std::string_view name) const {
  for (const char** at = raw_; *at != nullptr; at += 2) {
    if (names_.shorten(*at) == name) return at[1];
  }
  return nullptr;
}

std::string_view XmlAttributes::get(std::string_view name) const {
  const char* found = find(name);
  return found == nullptr ? std::string_view() : std::string_view(found);
}

struct XmlParser::State {
  State(XmlHandler& to, std::span<const XmlNamespace> namespaces, std::string in, std::string of)
      : handler(to), names(namespaces), file(std::move(in)), part(std::move(of)), parser(XML_ParserCreateNS(nullptr, kSeparator)) {}
  ~State() { XML_ParserFree(parser); }
  State(const State&) = delete;
  State& operator=(const State&) = delete;

  void stop(Code code) {
    if (!stopped) fault = code;
    stopped = true;
    XML_StopParser(parser, XML_FALSE);
  }

  static void XMLCALL on_start(void* self, const char* name, const char** attributes) {
    auto& state = *static_cast<State*>(self);
    if (state.stopped) return;
    if (++state.depth > kDeepestXml) return state.stop(Code::document_too_deep);
    state.handler.start(state.names.shorten(name), XmlAttributes(attributes, state.names));
  }
  static void XMLCALL on_end(void* self, const char* name) {
    auto& state = *static_cast<State*>(self);
    if (state.stopped) return;
    --state.depth;
    state.handler.end(state.names.shorten(name));
  }
  static void XMLCALL on_text(void* self, const char* text, int size) {
    auto& state = *static_cast<State*>(self);
    if (!state.stopped) state.handler.text({text, static_cast<std::size_t>(size)});
  }
  static void XMLCALL on_entity(void* self, const char*, int, const char*, int, const char*, const char*, const char*, const char*) {
    static_cast<State*>(self)->stop(Code::document_entities);
  }

  XmlHandler& handler;
  XmlNames names;
  std::string file;
  std::string part;
  XML_Parser parser;
  std::size_t depth = 0;
  bool stopped = false;
  Code fault = Code::document_damaged;
};

XmlParser::XmlParser(XmlHandler& handler, std::span<const XmlNamespace> namespaces, std::string file, std::string part)
    : state_(std::make_unique<State>(handler, namespaces, std::move(file), std::move(part))) {
  if (state_->parser == nullptr) return;
  XML_SetUserData(state_->parser, state_.get());
  XML_SetElementHandler(state_->parser, State::on_start, State::on_end);
  XML_SetCharacterDataHandler(state_->parser, State::on_text);
  XML_SetEntityDeclHandler(state_->parser, State::on_entity);
}

XmlParser::~XmlParser() = default;

Status XmlParser::parse(std::string_view piece, bool last) {
  State& state = *state_;
  if (state.parser == nullptr) return make_finding(Code::document_damaged, state.file, {"there is not enough memory"});
  if (XML_Parse(state.parser, piece.data(), static_cast<int>(piece.size()), last ? 1 : 0) == XML_STATUS_OK) return Done{};
  if (state.stopped && state.fault == Code::document_too_deep) return make_finding(state.fault, state.file, {std::to_string(kDeepestXml)});
  if (state.stopped) return make_finding(state.fault, state.file);
  std::string place = state.part + ", line " + std::to_string(XML_GetCurrentLineNumber(state.parser));
  return make_finding(Code::document_damaged, state.file, {place + ": " + XML_ErrorString(XML_GetErrorCode(state.parser))});
}

Status XmlParser::feed(std::string_view piece) {
  return parse(piece, false);
}
Status XmlParser::finish() {
  return parse({}, true);
}

}  // namespace retort

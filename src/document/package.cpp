#include "document/package.h"

namespace retort {

Status read_part(Archive& archive, const std::string& entry, bool needed, XmlHandler& handler, std::span<const XmlNamespace> namespaces,
                 const std::string& file) {
  std::optional<std::uint64_t> at = archive.find(entry);
  if (!at && !needed) return Done{};
  if (!at) return make_finding(Code::document_damaged, file, {"its part '" + entry + "' is missing"});
  XmlParser parser(handler, namespaces, file, entry);
  Status read = archive.read(*at, [&](std::string_view piece) { return parser.feed(piece); });
  return read ? parser.finish() : read;
}

}  // namespace retort

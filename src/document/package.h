// The parts of a word processor's file.
#pragma once
#include <span>
#include <string>

#include "document/archive.h"
#include "document/xml.h"

namespace retort {

struct DocumentLimits {
  ArchiveLimits archive{.file_bytes = 256ULL << 20, .entry_bytes = 64ULL << 20, .total_bytes = 192ULL << 20};
  std::size_t text_bytes = 1U << 20;  // of the text that comes out; what is over is cut off, one byte more stays to show it
};

// Reads the part `entry` of `archive` as XML into `handler`. A part that is not there fails if it is `needed`.
Status read_part(Archive& archive, const std::string& entry, bool needed, XmlHandler& handler, std::span<const XmlNamespace> namespaces,
                 const std::string& file);

}  // namespace retort

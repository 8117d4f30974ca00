// Files of word processors made on the spot.
#pragma once
#include <gtest/gtest.h>
#include <zip.h>

#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/document.h"
#include "intake/files.h"

namespace retort::test {

using Parts = std::vector<std::pair<std::string, std::string>>;  // name, content

// A .zip file with these entries, as libzip writes it.
inline std::string zipped(const Parts& parts, bool locked = false) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* out = zip_source_buffer_create(nullptr, 0, 0, &error);
  zip_source_keep(out);
  zip_t* zip = zip_open_from_source(out, ZIP_TRUNCATE, &error);
  for (const auto& [name, content] : parts) {
    zip_source_t* entry = zip_source_buffer(zip, content.data(), content.size(), 0);
    zip_int64_t at = zip_file_add(zip, name.c_str(), entry, ZIP_FL_ENC_UTF_8 | ZIP_FL_OVERWRITE);
    EXPECT_GE(at, 0) << name;
    if (locked) zip_file_set_encryption(zip, static_cast<zip_uint64_t>(at), ZIP_EM_AES_256, "secret");
  }
  EXPECT_EQ(zip_close(zip), 0);
  zip_stat_t stat;
  zip_source_stat(out, &stat);
  std::string bytes(stat.size, '\0');
  zip_source_open(out);
  zip_source_read(out, bytes.data(), bytes.size());
  zip_source_close(out);
  zip_source_free(out);
  return bytes;
}

inline const char* const kDocxTop =
    R"(<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">)"
    R"(<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="word/document.xml"/></Relationships>)";

inline const char* const kDocxRoot =
    R"(<?xml version="1.0" encoding="UTF-8" standalone="yes"?><w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main")"
    R"( xmlns:m="http://schemas.openxmlformats.org/officeDocument/2006/math" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006")"
    R"( xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main")"
    R"( xmlns:v="urn:schemas-microsoft-com:vml" xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape"><w:body>)";

// A .docx file whose body holds `body`; `more` are further parts.
inline std::string docx(const std::string& body, const Parts& more = {}) {
  Parts parts = {{"_rels/.rels", kDocxTop}, {"word/document.xml", kDocxRoot + body + "</w:body></w:document>"}};
  parts.insert(parts.end(), more.begin(), more.end());
  return zipped(parts);
}

inline std::string part(const std::string& root, const std::string& content) {
  return "<w:" + root + R"( xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main">)" + content + "</w:" + root + ">";
}

}  // namespace retort::test

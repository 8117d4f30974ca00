// The page's own files, inside the program.
#pragma once
#include <string_view>

namespace retort::serve {

struct Asset {
  std::string_view path;     // "/write.mjs"; "/" for the first page
  std::string_view type;     // its media type
  std::string_view content;
};

// The asset under exactly this path; null if there is none.
const Asset* find_asset(std::string_view path);

}  // namespace retort::serve

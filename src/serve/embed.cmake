cmake_minimum_required(VERSION 3.25)
# Writes OUTPUT, a C++ file with the files of FOLDER as byte arrays, in the order of their names: the same bytes out for
# the same bytes in.
file(GLOB files RELATIVE ${FOLDER} ${FOLDER}/*.html ${FOLDER}/*.css ${FOLDER}/*.mjs ${FOLDER}/*.svg)
list(SORT files)
set(arrays "")
set(rows "")
set(index 0)
foreach(name ${files})
  file(READ ${FOLDER}/${name} hex HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${hex}")
  string(APPEND arrays "constexpr unsigned char kFile${index}[] = {${bytes}0};\n")
  string(REGEX REPLACE ".*\\." "" ending ${name})
  if(ending STREQUAL "html")
    set(type "text/html; charset=utf-8")
  elseif(ending STREQUAL "css")
    set(type "text/css; charset=utf-8")
  elseif(ending STREQUAL "svg")
    set(type "image/svg+xml")
  else()
    set(type "text/javascript; charset=utf-8")
  endif()
  string(REGEX REPLACE "\\.html$" "" path ${name})
  if(path STREQUAL "index")
    set(path "")
  endif()
  string(APPEND rows "    Asset{\"/${path}\", \"${type}\", view(kFile${index}, sizeof kFile${index} - 1)},\n")
  math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUTPUT}.new "// Made by src/serve/embed.cmake from src/serve/page.
#include \"serve/assets.h\"

namespace retort::serve {
namespace {

${arrays}
std::string_view view(const unsigned char* bytes, std::size_t size) { return {reinterpret_cast<const char*>(bytes), size}; }

}  // namespace

const Asset* find_asset(std::string_view path) {
  static const Asset kAssets[] = {
${rows}  };
  for (const Asset& asset : kAssets) {
    if (asset.path == path) return &asset;
  }
  return nullptr;
}

}  // namespace retort::serve
")
file(COPY_FILE ${OUTPUT}.new ${OUTPUT} ONLY_IF_DIFFERENT)
file(REMOVE ${OUTPUT}.new)

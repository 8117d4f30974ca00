#include "serve/api.h"

#include "base/digest.h"
#include "report/html_page.h"

namespace retort::serve {

Response page_style_sheet() {
  Response out;
  out.type = "text/css; charset=utf-8";
  out.body = page_styles();
  return out;
}

std::string report_style_source() { return "'sha256-" + base64(sha256(page_styles())) + "'"; }


}  // namespace retort::serve

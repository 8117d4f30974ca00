#include "serve/api.h"

#include "report/html_page.h"
#include "report/slips_html.h"

namespace retort::serve {

Response page_style_sheet() {
  Response out;
  out.type = "text/css; charset=utf-8";
  out.body = page_styles();
  return out;
}

std::string report_style_source() { return style_source(style_sheet({"", "", std::string(class_styles())})); }

}  // namespace retort::serve

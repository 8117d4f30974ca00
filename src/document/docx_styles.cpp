#include "document/docx_styles.h"

#include <cstdlib>

namespace retort {
namespace {

constexpr int kLongestChain = 20;  // of styles based on each other

bool on(const XmlAttributes& attributes) {
  std::string_view value = attributes.get("w:val");
  return value != "0" && value != "false" && value != "off";
}

}  // namespace

void RunFormat::inherit(const RunFormat& other) {
  if (!hidden) hidden = other.hidden;
  if (!script) script = other.script;
}

void read_run_property(std::string_view name, const XmlAttributes& attributes, RunFormat& format) {
  if (name == "w:vanish") {
    format.hidden = on(attributes);
  } else if (name == "w:vertAlign") {
    std::string_view value = attributes.get("w:val");
    format.script = value == "superscript" ? Script::super : value == "subscript" ? Script::sub : Script::none;
  } else if (name == "w:position" && !format.script) {
    int half_points = std::atoi(std::string(attributes.get("w:val")).c_str());  // NOLINT: 0 for what is no number
    constexpr int kRaised = 4;
    if (half_points >= kRaised) format.script = Script::super;
    if (half_points <= -kRaised) format.script = Script::sub;
  }
}

void DocxStyles::start(std::string_view name, const XmlAttributes& attributes) {
  if (name == "w:style") {
    at_ = &styles_[std::string(attributes.get("w:styleId"))];
  } else if (name == "w:rPr") {
    ++run_properties_;
  } else if (at_ != nullptr && name == "w:basedOn") {
    at_->based_on = attributes.get("w:val");
  } else if (at_ != nullptr && run_properties_ > 0) {
    read_run_property(name, attributes, at_->format);
  }
}

void DocxStyles::end(std::string_view name) {
  if (name == "w:style") at_ = nullptr;
  if (name == "w:rPr") --run_properties_;
}

RunFormat DocxStyles::of(const std::string& id) const {
  RunFormat out;
  auto style = styles_.find(id);
  for (int i = 0; i < kLongestChain && style != styles_.end(); ++i) {
    out.inherit(style->second.format);
    style = styles_.find(style->second.based_on);
  }
  return out;
}

}  // namespace retort

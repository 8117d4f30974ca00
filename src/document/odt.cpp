#include "document/document.h"
#include "document/odt_body.h"

namespace retort {
namespace {

constexpr std::string_view kKind = "application/vnd.oasis.opendocument.text";

// Whether META-INF/manifest.xml says that parts are locked (ISO/IEC 26300-3, 4.8).
class Manifest : public XmlHandler {
 public:
  void start(std::string_view name, const XmlAttributes&) override { locked_ = locked_ || name == "manifest:encryption-data"; }
  void end(std::string_view) override {}
  void text(std::string_view) override {}
  [[nodiscard]] bool locked() const { return locked_; }

 private:
  bool locked_ = false;
};

class Odt {
 public:
  Odt(Archive archive, const std::string& file, const DocumentLimits& limits) : archive_(std::move(archive)), file_(file), limits_(limits) {}

  Result<std::string> read(Findings& findings) {
    Status done = check_kind();
    Manifest manifest;
    if (done) done = part("META-INF/manifest.xml", false, manifest);
    if (done && (manifest.locked() || archive_.find("encrypted-package"))) done = make_finding(Code::document_protected, file_);
    OdtStyles styles;
    if (done) done = part("styles.xml", false, styles);
    OdtBody body(styles, limits_.text_bytes, [this](const std::string& object) { return formula(object); });
    if (done) done = part("content.xml", true, body);
    if (!done) return done.finding();
    std::string text = body.finish();
    if (body.overflowed() || text.size() > limits_.text_bytes) {
      return make_finding(Code::answer_too_long, file_, {"more than " + std::to_string(limits_.text_bytes), std::to_string(limits_.text_bytes)});
    }
    if (text.empty() && body.pictures() > 0) findings.push_back(make_finding(Code::document_no_text, file_, {std::to_string(body.pictures())}));
    return text;
  }

 private:
  Status part(const std::string& name, bool needed, XmlHandler& handler) {
    return read_part(archive_, name, needed, handler, odt_namespaces(), file_);
  }

  Status check_kind() {
    std::optional<std::uint64_t> at = archive_.find("mimetype");
    if (!at) return Done{};
    Result<std::string> kind = archive_.read(*at);
    if (!kind) return kind.finding();
    if (kind->starts_with(kKind)) return Done{};
    return make_finding(Code::document_damaged, file_, {"it holds no text but something else"});
  }

  // A formula stands in a part of its own: "./Object 1" is "Object 1/content.xml".
  std::string formula(const std::string& object) {
    std::string folder = object.starts_with("./") ? object.substr(2) : object;
    if (folder.empty() || ++formulas_ > kMostFormulas) return "";
    MathBody math;
    Status read = part(folder + "/content.xml", false, math);
    return read ? math.in_line() : "";
  }

  static constexpr std::size_t kMostFormulas = 1000;
  Archive archive_;
  const std::string& file_;
  const DocumentLimits& limits_;
  std::size_t formulas_ = 0;
};

}  // namespace

Result<std::string> read_odt(int fd, const std::string& file, Findings& findings, const DocumentLimits& limits) {
  Result<Archive> archive = Archive::open(fd, file, limits.archive);
  if (!archive) return archive.finding();
  return Odt(std::move(*archive), file, limits).read(findings);
}

}  // namespace retort

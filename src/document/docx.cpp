#include <filesystem>

#include "document/document.h"
#include "document/docx_body.h"

namespace retort {
namespace {

// The relations of a part to others (ECMA-376 part 2, 9.3).
class Relations : public XmlHandler {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name != "rel:Relationship" || attributes.get("TargetMode") == "External") return;
    std::string_view type = attributes.get("Type");
    std::size_t slash = type.rfind('/');
    if (slash != std::string_view::npos) targets_.emplace(type.substr(slash + 1), attributes.get("Target"));
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

  // The part that is `type` to the one in `folder`, such as "styles"; `otherwise` if none is named.
  [[nodiscard]] std::string part(const std::string& type, const std::string& folder, const std::string& otherwise) const {
    auto target = targets_.find(type);
    if (target == targets_.end()) return otherwise;
    std::string path = target->second.starts_with('/') ? target->second : "/" + folder + "/" + target->second;
    return std::filesystem::path(path).lexically_normal().string().substr(1);
  }

 private:
  std::map<std::string, std::string> targets_;
};

class Docx {
 public:
  Docx(Archive archive, const std::string& file, const DocumentLimits& limits) : archive_(std::move(archive)), file_(file), limits_(limits) {}

  Result<std::string> read(Findings& findings) {
    Relations top;
    Status done = part("_rels/.rels", false, top);
    if (!done) return done.finding();
    std::string main = top.part("officeDocument", "", "word/document.xml");
    std::filesystem::path path(main);
    std::string folder = path.parent_path().string();
    Relations of_main;
    done = part(folder + "/_rels/" + path.filename().string() + ".rels", false, of_main);
    DocxStyles styles;
    if (done) done = part(of_main.part("styles", folder, folder + "/styles.xml"), false, styles);
    DocxBody body(styles, limits_.text_bytes);
    if (done) done = part(main, true, body);
    if (!done) return done.finding();
    std::string text = body.finish();
    for (const char* type : {"footnotes", "endnotes"}) {
      if (body.notes_spoken_of().empty()) break;
      done = add_notes(of_main.part(type, folder, folder + "/" + type + ".xml"), body, styles, text);
      if (!done) return done.finding();
    }
    if (body.overflowed() || text.size() > limits_.text_bytes) {
      return make_finding(Code::answer_too_long, file_, {"more than " + std::to_string(limits_.text_bytes), std::to_string(limits_.text_bytes)});
    }
    if (text.empty() && body.pictures() > 0) findings.push_back(make_finding(Code::document_no_text, file_, {std::to_string(body.pictures())}));
    return text;
  }

 private:
  Status part(const std::string& name, bool needed, XmlHandler& handler) {
    return read_part(archive_, name, needed, handler, docx_namespaces(), file_);
  }

  // Notes come behind the text, in the order in which it speaks of them.
  Status add_notes(const std::string& name, const DocxBody& body, const DocxStyles& styles, std::string& text) {
    DocxBody story(styles, limits_.text_bytes);
    Status done = part(name, false, story);
    if (!done) return done;
    for (const std::string& id : body.notes_spoken_of()) {
      auto note = story.notes().find(id);
      if (note == story.notes().end() || text.size() > limits_.text_bytes) continue;
      std::size_t begin = note->second.find_first_not_of(" \t\n");  // behind the note's number
      if (begin == std::string::npos) continue;
      text += "\n" + note->second.substr(begin);
      while (text.ends_with('\n')) text.pop_back();
    }
    return Done{};
  }

  Archive archive_;
  const std::string& file_;
  const DocumentLimits& limits_;
};

}  // namespace

Result<std::string> read_docx(int fd, const std::string& file, Findings& findings, const DocumentLimits& limits) {
  Result<Archive> archive = Archive::open(fd, file, limits.archive);
  if (!archive) return archive.finding();
  return Docx(std::move(*archive), file, limits).read(findings);
}

}  // namespace retort

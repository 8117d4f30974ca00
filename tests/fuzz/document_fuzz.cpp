// Any bytes as what pupils hand in: archives, the parts of documents, CSV files. The first byte says which.
#include <cstdlib>
#include <string>

#include "base/messages.h"
#include "document/document.h"
#include "document/docx_body.h"
#include "document/odt_body.h"
#include "intake/csv_answers.h"
#include "intake/pdf.h"
#include "intake/windows_text.h"
#include "intake/zip_answers.h"

namespace {

using namespace retort;

constexpr std::size_t kTextBytes = 1U << 16;

void must_be_text(const std::string& text) {
  std::size_t odd = 0;
  as_utf8(text, odd);
  if (odd > 0) std::abort();
}

void archive(std::string_view bytes) {
  Descriptor file = memory_file(bytes);
  Findings findings;
  DocumentLimits limits;
  limits.archive.entry_bytes = 1U << 20;
  Result<std::string> docx = read_docx(file.get(), "fuzz", findings, limits);
  if (docx) must_be_text(*docx);
  Result<std::string> odt = read_odt(file.get(), "fuzz", findings, limits);
  if (odt) must_be_text(*odt);
  Result<std::vector<InputFile>> files = files_in_zip(file, "fuzz", findings);
  for (std::size_t i = 0; files && i < files->size(); ++i) {
    if (!stays_inside((*files)[i].rest)) std::abort();
    (void)open_input_file((*files)[i], "fuzz").ok();
  }
  for (const Finding& finding : findings) describe(finding, {});
}

void docx_part(std::string_view xml) {
  DocxStyles styles;
  XmlParser of_styles(styles, docx_namespaces(), "fuzz", "styles");
  if (of_styles.feed(xml)) (void)of_styles.finish().ok();
  DocxBody body(styles, kTextBytes);
  XmlParser parser(body, docx_namespaces(), "fuzz", "part");
  if (parser.feed(xml)) (void)parser.finish().ok();
  must_be_text(body.finish());
  for (const auto& [id, note] : body.notes()) must_be_text(note);
}

void odt_part(std::string_view xml) {
  OdtStyles styles;
  OdtBody body(styles, kTextBytes, [](const std::string& object) { return object; });
  XmlParser parser(body, odt_namespaces(), "fuzz", "part");
  if (parser.feed(xml)) (void)parser.finish().ok();
  must_be_text(body.finish());
}

void csv(std::string_view bytes) {
  std::unique_ptr<AnswerSource> source = open_csv_answers(memory_file(bytes), "fuzz", {});
  Findings findings;
  Answer answer;
  while (source->next(answer, findings)) {
    must_be_text(answer.text);
    if (answer.id.empty() || answer.mark > 100) std::abort();
  }
  for (const Finding& finding : findings) describe(finding, {});
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  std::string_view rest(reinterpret_cast<const char*>(data) + 1, size - 1);
  switch (data[0]) {
    case 'z': archive(rest); break;
    case 'w': docx_part(rest); break;
    case 'o': odt_part(rest); break;
    case 'c': csv(rest); break;
    case 'p': join_wrapped(mark_powers(rest)); break;
    default: break;
  }
  return 0;
}

// What each address under /api/ does; the Service has checked who asks. Nothing is kept.
#pragma once
#include "rubric/json.h"
#include "rubric/rubric_edits.h"
#include "serve/desk.h"
#include "serve/http.h"

namespace retort::serve {

Response list_rubrics(const Desks& desks);
Response show_rubric(Desks& desks, std::string_view id);
Response check_draft(Desks& desks, const json::Value& body);
Response work_results(Desks& desks, const json::Value& body);
Response edit_rubric(Desks& desks, const json::Value& body);

// {"error": sentence, "findings": [...]}; `source` is what the findings' places are in.
Response problem(int status, std::string_view sentence, const Findings& findings, std::string_view source);

// The member `key` of `body` if it is text of at most `longest` bytes; null if not.
const std::string* text_member(const json::Value& body, std::string_view key, std::size_t longest);

// The desk that a body asks for by "rubric" and "edits"; or why there is none.
struct Asked {
  std::shared_ptr<Desk> desk;
  Response why;         // if there is no desk
  std::string source;   // the edited rubric's file; empty without edits
  Findings findings;    // of the edited rubric
};
Asked open_asked(Desks& desks, const json::Value& body);

// The style sheet that the page shares with reports.
Response page_style_sheet();
// The source expression ('sha256-...') of the style sheet in reports, for the page's policy.
std::string report_style_source();

}  // namespace retort::serve

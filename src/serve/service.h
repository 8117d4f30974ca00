// Request → Response: all that the page asks for. Knows nothing of sockets and keeps nothing of what it is sent.
//
//   GET  /api/rubrics                  the investigations
//   GET  /api/rubric?id=ID             one: its question, table, steps
//   POST /api/check                    {"rubric", "text", "edits"?}  → the review of a draft, as 'retort check --format json'
//   POST /api/results                  {"table", "rubric"?}          → the results table worked through, and its graph
//   POST /api/rubric                   {"rubric", "edits"}           → the edited rubric's file
//   POST /api/file?name=NAME           a file of drafts as it is      → {"answers": [{"id", "text"}], "findings"}
//   POST /api/class                    {"rubric", "edits"?, "drafts", "before"?, "as"}  → 'retort class': html, csv, json,
//                                      slips; or changes: what the edits change over the class
//   GET  anything else                 the page's own files
// Errors are {"error": sentence, "findings": [...]} with a status of 400 or more.
#pragma once
#include "serve/desk.h"
#include "serve/guard.h"
#include "serve/http.h"

namespace retort::serve {

// Threads: any number at once.
class Service {
 public:
  explicit Service(RubricFolder folder) : desks_(std::move(folder)) {}

  // Makes all rubrics ready, so that the first pupil does not wait.
  void warm();
  // Never throws for anything that a request may hold.
  Response answer(const Request& request, const Place& place);

 private:
  Response route(const Request& request);
  Response api(const Request& request);

  Desks desks_;
};

// The headers that every response carries: what the browser must not do with the page.
const Fields& safe_headers();

}  // namespace retort::serve

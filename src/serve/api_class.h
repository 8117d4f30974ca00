// What the teacher's page asks for. Nothing is kept.
#pragma once
#include "serve/api.h"

namespace retort::serve {

// The answers in a file of any kind that the program reads, sent as it is; `name` is what the teacher calls it.
Response read_sent_file(const std::string& name, std::string body);

// The class report as "as" says: html, csv, json, slips (HTML to print), or changes (what the edits change over the class).
Response class_report(Desks& desks, const json::Value& body);

}  // namespace retort::serve

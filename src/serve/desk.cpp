#include "serve/desk.h"

#include <algorithm>

#include "review/shelf.h"
#include "rubric/json.h"

namespace retort::serve {
namespace {

constexpr std::size_t kMostEdited = 4;
constexpr std::string_view kEnding = ".json";

Desks::Listed listed(const std::string& id, const std::string& name, const std::string& content) {
  Findings ignored;
  Result<json::Value> root = json::parse(content, name, ignored);
  auto text = [&](std::string_view key) {
    const json::Value* value = root && root->is(json::Type::object) ? root->find(key) : nullptr;
    return value != nullptr && value->is(json::Type::string) ? value->text : "";
  };
  std::string title = text("title");
  return {id, title.empty() ? name : title, text("kind") == "points"};
}

}  // namespace

Review Desk::review(std::string_view text) {
  std::unique_ptr<Reviewer> reviewer;
  {
    std::lock_guard lock(mutex_);
    if (!idle_.empty()) {
      reviewer = std::move(idle_.back());
      idle_.pop_back();
    }
  }
  if (!reviewer) reviewer = std::make_unique<Reviewer>(*checker_);
  Review out = reviewer->review(text);
  std::lock_guard lock(mutex_);
  idle_.push_back(std::move(reviewer));
  return out;
}

Desks::Desks(RubricFolder folder) : folder_(std::move(folder)) {
  for (const auto& [name, content] : folder_.files) {
    if (!name.ends_with(kEnding) || !looks_like_rubric(name, content)) continue;
    std::string id = name.substr(0, name.size() - kEnding.size());
    listed_.push_back(serve::listed(id, name, content));
    slots_.try_emplace(id);
  }
}

const std::string* Desks::source(std::string_view id) const {
  if (!slots_.contains(id)) return nullptr;
  auto file = folder_.files.find(std::string(id) + std::string(kEnding));
  return file == folder_.files.end() ? nullptr : &file->second;
}

std::shared_ptr<Desk> Desks::make(const std::string& name, const SourceFiles& files, Findings& findings) {
  Checker::Made made = Checker::make(name, files, folder_.real_words);
  findings.insert(findings.end(), made.findings.begin(), made.findings.end());
  return made.checker ? std::make_shared<Desk>(std::move(made.checker)) : nullptr;
}

std::shared_ptr<Desk> Desks::open(std::string_view id) {
  auto slot = slots_.find(id);
  if (slot == slots_.end()) return nullptr;
  std::call_once(slot->second.made, [&] {
    Findings ignored;  // 'retort rubric lint' shows them
    slot->second.desk = make(slot->first + std::string(kEnding), folder_.files, ignored);
  });
  return slot->second.desk;
}

std::shared_ptr<Desk> Desks::open_edited(std::string_view id, const std::string& source, Findings& findings) {
  std::string name = std::string(id) + std::string(kEnding);
  if (!slots_.contains(id)) return nullptr;
  {
    std::lock_guard lock(edited_mutex_);
    auto known = std::find_if(edited_.begin(), edited_.end(), [&](const Edited& e) { return e.id == id && e.source == source; });
    if (known != edited_.end()) {
      edited_.splice(edited_.begin(), edited_, known);
      findings.insert(findings.end(), known->findings.begin(), known->findings.end());
      return known->desk;
    }
  }
  SourceFiles files = folder_.files;
  files[name] = source;
  Edited edited{std::string(id), source, nullptr, {}};
  edited.desk = make(name, files, edited.findings);
  findings.insert(findings.end(), edited.findings.begin(), edited.findings.end());
  std::lock_guard lock(edited_mutex_);
  edited_.push_front(edited);
  if (edited_.size() > kMostEdited) edited_.pop_back();
  return edited.desk;
}

}  // namespace retort::serve

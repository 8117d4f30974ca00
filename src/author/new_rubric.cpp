#include "author/new_rubric.h"

#include <algorithm>
#include <cctype>

#include "author/items.h"
#include "author/ways.h"
#include "quantity/quantity.h"
#include "rubric/json.h"

namespace retort::author {
namespace {

std::string quoted(std::string_view text) {
  return json::quoted(text);
}

std::string list_of(const std::vector<std::string>& texts) {
  std::string out = "[";
  for (const std::string& text : texts) out += (out.size() > 1 ? ", " : "") + quoted(text);
  return out + "]";
}

// "Measure the starting length" → "measure-the-starting", an id that no other step has.
std::string id_of(const std::string& text, std::set<std::string>& taken) {
  std::string out;
  std::size_t words = 1;
  for (char c : text) {
    bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (letter)
      out += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    else if (!out.empty() && out.back() != '-' && ++words <= 4)
      out += '-';
    if (words > 4) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  if (out.empty() || (out[0] >= '0' && out[0] <= '9')) out = "step-" + out;
  while (!out.empty() && out.back() == '-') out.pop_back();
  std::string base = out;
  for (int number = 2; !taken.insert(out).second; ++number) out = base + "-" + std::to_string(number);
  return out;
}

const PointKind& kind_of(const ItemReader::Read& read, const PointKinds& kinds) {
  bool instrument = std::any_of(read.items.begin(), read.items.end(), [](const Item& item) { return item.instrument; });
  // "time it with a stopwatch, same time every run": what is measured with comes before what is kept the same
  bool tool_first = false;
  for (const Item& item : read.items) {
    if (item.name == "same" || item.name == "keep same") break;
    tool_first = tool_first || item.instrument;
  }
  for (const PointKind& kind : kinds.kinds) {
    bool word = std::any_of(kind.words.begin(), kind.words.end(), [&](const std::string& w) { return read.words.contains(w); });
    if (tool_first && kind.facet == "control") continue;
    if (word || (kind.instrument && instrument) || (kind.words.empty() && !kind.instrument)) return kind;
  }
  return kinds.kinds.back();
}

class Builder {
 public:
  Builder(const PlainPoints& points, const std::string& name, const PointKinds& kinds, ItemReader& reader, NewRubric& out)
      : points_(points), name_(name), kinds_(kinds), reader_(reader), out_(out) {}

  std::string steps() {
    for (const PlainPoint& point : points_.points) {
      reads_.push_back(reader_.read(point.text));
      for (const Item& item : reads_.back().items) ++often_[item.pattern];
    }
    std::string out;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      std::string step = this->step(i);
      if (!step.empty()) out += (out.empty() ? "" : ", ") + step;
    }
    return out;
  }

 private:
  std::string step(std::size_t index) {
    const PlainPoint& point = points_.points[index];
    const ItemReader::Read& read = reads_[index];
    const PointKind& kind = kind_of(read, kinds_);
    bool listed = read.words.contains("values") || read.words.contains("range");
    bool values = (kind.facet == "independent" && (read.numbers > 1 || listed)) ||
                  (!points_.values.empty() && (read.numbers > 2 || read.words.contains("table") || table_values_in(point.text) > 2));
    if (values && points_.values.empty()) {
      out_.findings.push_back(make_finding(Code::point_is_table, name_, point.span, {point.text}));
      values = false;
    }
    for (const std::string& word : read.fresh) out_.findings.push_back(make_finding(Code::point_word_new, name_, point.span, {word}));
    Ways ways = values ? values_ways(read.items) : all_ways(point.text, kind.facet);
    if (ways.present.empty() && ways.use.empty() && !values) {
      out_.findings.push_back(make_finding(Code::point_not_placed, name_, point.span, {point.text}));
      return {};
    }
    Placed placed{point.text, values ? "values" : kind.facet, {}, ways.present, ways.vague};
    for (const Item& item : read.items) placed.looked_for.push_back(item.name);
    out_.placed.push_back(placed);
    std::string out = "{\"id\": " + quoted(id_of(point.text, ids_)) + ", \"title\": " + quoted(point.text) + ", \"facet\": " + quoted(placed.facet);
    out += ", \"core\": " + std::string(point.core ? "true" : "false") + ", \"present-means\": " + quoted(point.text);
    if (values) out += ", \"values\": true";
    if (!ways.use.empty()) out += ", \"use\": " + list_of(ways.use);
    if (!ways.present.empty()) out += ", \"present\": " + list_of(ways.present);
    if (!ways.vague.empty()) out += ", \"vague\": " + list_of(ways.vague) + ", \"lacks\": \"It is said only in part.\"";
    out += ", \"hint\": " + quoted(kind.hint);
    std::string example = values ? all_values() : point.text;
    out += ", \"examples\": {\"present\": " + list_of({example}) + ", \"missing\": " + list_of({"I had a nice lunch."}) + "}";
    return out + "}";
  }

  // How many of the table's values stand in a point, with their unit or without: "0, 200, 400, 600 and 800 g".
  [[nodiscard]] std::size_t table_values_in(const std::string& text) const {
    auto part_of_number = [](char c) { return (c >= '0' && c <= '9') || c == '.'; };
    std::size_t found = 0;
    for (const std::string& value : points_.values) {
      std::string number = value.substr(0, value.find_first_not_of("0123456789."));
      bool stands = false;
      for (std::size_t at = text.find(number); !number.empty() && at != std::string::npos && !stands; at = text.find(number, at + 1)) {
        std::size_t end = at + number.size();
        stands = (at == 0 || !part_of_number(text[at - 1])) && (end == text.size() || !part_of_number(text[end]));
      }
      found += stands ? 1U : 0U;
    }
    return found;
  }

  [[nodiscard]] bool in_title(const std::string& name) const {
    auto same = [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b)); };
    return std::search(points_.title.begin(), points_.title.end(), name.begin(), name.end(), same) != points_.title.end();
  }

  [[nodiscard]] std::string all_values() const {
    std::string out;
    for (const std::string& value : points_.values) out += (out.empty() ? "Use " : ", ") + value;
    return out;
  }

  // The ways of each alternative that a point leaves open.
  Ways all_ways(const std::string& text, const std::string& facet) {
    Known known{[&](const Item& item) { return often_[item.pattern] * 3 > reads_.size() && often_[item.pattern] > 2; },
                [&](const Item& item) { return often_[item.pattern] > 1; }, [&](const Item& item) { return in_title(item.name); }};
    Ways out;
    for (const std::string& one : alternatives(text)) {
      Ways ways = ways_of(facet, reader_.read(one).items, known);
      auto add = [](std::vector<std::string>& to, const std::vector<std::string>& from) {
        for (const std::string& pattern : from) {
          if (std::find(to.begin(), to.end(), pattern) == to.end()) to.push_back(pattern);
        }
      };
      add(out.use, ways.use);
      add(out.present, ways.present);
      add(out.vague, ways.vague);
    }
    std::erase_if(out.vague,
                  [&](const std::string& pattern) { return std::find(out.present.begin(), out.present.end(), pattern) != out.present.end(); });
    return out;
  }

  const PlainPoints& points_;
  const std::string& name_;
  const PointKinds& kinds_;
  ItemReader& reader_;
  NewRubric& out_;
  std::vector<ItemReader::Read> reads_;
  std::map<std::string, std::size_t> often_;  // in how many points an item stands
  std::set<std::string> ids_;
};

// The teacher may call it "depth" or "layers"; the rubric wants a quantity that has that unit.
std::string quantity_of(const PlainPoints& points) {
  if (find_quantity_name(points.quantity) != nullptr) return points.quantity;
  Quantity first;
  return read_quantity(points.values.front(), first) ? std::string(quantity_name(first.dimension())) : points.quantity;
}

std::string given_of(const PlainPoints& points) {
  if (points.values.empty()) return {};
  return "\"given\": {\"values\": {\"quantity\": " + quoted(quantity_of(points)) + ", \"list\": " + list_of(points.values) + "}}, ";
}

}  // namespace

Result<NewRubric> make_rubric(const std::string& id, const PlainPoints& points, const std::string& name, const RubricFolder& folder) {
  auto data = folder.files.find(std::string(kKindsFile));
  if (data == folder.files.end()) return make_finding(Code::file_missing, folder.path + "/" + std::string(kKindsFile));
  Result<PointKinds> kinds = read_kinds(data->second);
  if (!kinds) return kinds.finding();
  Result<std::unique_ptr<ItemReader>> reader = ItemReader::make(folder, *kinds);
  if (!reader) return reader.finding();
  NewRubric out;
  Builder builder(points, name, *kinds, **reader, out);
  std::string steps = builder.steps();
  std::string words;
  for (const auto& [list, content] : (*reader)->lists()) words += (words.empty() ? "" : ", ") + quoted(list) + ": " + content;
  std::string title = points.title.empty() ? id : points.title;
  std::string file = "{\"$schema\": \"rubric.schema.json\", \"format\": 1, \"id\": " + quoted(id) + ", \"title\": " + quoted(title) +
                     ", \"question\": " + quoted(points.question.empty() ? "Write the question here, as the pupil sees it." : points.question) +
                     ", " + given_of(points) + "\"cautions\": [], \"include\": [\"common.json\"], \"words\": {" + words + "}, \"steps\": [" + steps +
                     "]}";
  Result<std::string> laid_out = json::laid_out(file);
  if (!laid_out) return laid_out.finding();
  out.file = std::move(*laid_out);
  return out;
}

}  // namespace retort::author

// What each address answers, without sockets.
#include "serve/service.h"

#include <gtest/gtest.h>

#include "rubric/json.h"
#include "../support.h"

namespace retort::serve {
namespace {

const Place kHere{8000, true, ""};

class ServiceTest : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    service_ = new Service(test::shipped());  // NOLINT: one for all tests
  }
  static void TearDownTestSuite() { delete service_; }  // NOLINT

  static Response get(std::string path, Fields query = {}) {
    Request request;
    request.method = "GET";
    request.path = std::move(path);
    request.query = std::move(query);
    request.headers = {{"Host", "127.0.0.1:8000"}};
    return service_->answer(request, kHere);
  }
  static Response send_file(std::string name, std::string body, std::string type = "application/octet-stream") {
    Request request;
    request.method = "POST";
    request.path = "/api/file";
    request.query = {{"name", std::move(name)}};
    request.headers = {{"Host", "127.0.0.1:8000"}, {"Origin", "http://127.0.0.1:8000"}, {"Content-Type", std::move(type)}};
    request.body = std::move(body);
    return service_->answer(request, kHere);
  }
  static Response post(std::string path, std::string body, std::string type = "application/json") {
    Request request;
    request.method = "POST";
    request.path = std::move(path);
    request.headers = {{"Host", "127.0.0.1:8000"}, {"Origin", "http://127.0.0.1:8000"}, {"Content-Type", std::move(type)}};
    request.body = std::move(body);
    return service_->answer(request, kHere);
  }

 private:
  static Service* service_;
};
Service* ServiceTest::service_ = nullptr;

TEST_F(ServiceTest, Answers) {
  const std::string deep(200, '[');
  const struct {
    const char* name;
    Response response;
    int status;
    const char* holds;
  } rows[] = {
      {"the first page", get("/"), 200, "<!doctype html>"},
      {"a script", get("/write.mjs"), 200, "import"},
      {"the shared style sheet", get("/base.css"), 200, "prefers-color-scheme"},
      {"no such page", get("/nothing"), 404, "no such page"},
      {"a path that climbs", get("/../CMakeLists.txt"), 404, "no such page"},
      {"a file of the machine", get("//etc/passwd"), 404, "no such page"},
      {"the investigations", get("/api/rubrics"), 200, "spring-extension"},
      {"one", get("/api/rubric", {{"id", "ripple-tank"}}), 200, "\"steps\":["},
      {"one that is not there", get("/api/rubric", {{"id", "../vocabulary"}}), 404, "no such investigation"},
      {"the vocabulary is none", get("/api/rubric", {{"id", "vocabulary"}}), 404, "no such investigation"},
      {"no such data", get("/api/secret"), 404, "nothing here"},
      {"a post to a page", post("/", "{}"), 405, "sent"},
      {"a draft", post("/api/check", R"({"rubric":"spring-extension","text":"measure the length with a ruler"})"), 200, "\"status\":\"present\""},
      {"an empty draft", post("/api/check", R"({"rubric":"spring-extension","text":""})"), 200, "\"status\":\"missing\""},
      {"no draft", post("/api/check", R"({"rubric":"spring-extension"})"), 400, "missing"},
      {"a draft that is no text", post("/api/check", R"({"rubric":"spring-extension","text":5})"), 400, "missing"},
      {"a draft for nothing", post("/api/check", R"({"text":"x"})"), 404, "no such investigation"},
      {"a rubric's name that climbs", post("/api/check", R"({"rubric":"../../etc/passwd","text":"x"})"), 404, "no such investigation"},
      {"no JSON", post("/api/check", "{"), 400, "not valid JSON"},
      {"JSON that is too deep", post("/api/check", deep), 400, "not valid JSON"},
      {"JSON that is no object", post("/api/check", "[]"), 400, "object is expected"},
      {"a form", post("/api/check", "a=b", "application/x-www-form-urlencoded"), 415, "JSON is expected"},
      {"a post to nowhere", post("/api/other", "{}"), 404, "sent"},
      {"a results table", post("/api/results", R"({"table":"Force / N,Extension / cm\n1,2.0\n2,4.0\n3,6.1\n"})"), 200, "<svg"},
      {"a results table with its practical", post("/api/results", R"({"table":"Force / N,Extension / cm\n1,2.0\n2,4.0\n3,6.1\n","rubric":"spring-extension"})"), 200, "spring constant"},
      {"a table of words", post("/api/results", R"({"table":"a\nb\n"})"), 422, "\"findings\":[{"},
      {"an edited table of the question", post("/api/check", R"({"rubric":"spring-extension","text":"add 20 N and 40 N","edits":{"values":["20 N","40 N"]}})"), 200, "20 N and 40 N"},
      {"an edited value that is none", post("/api/check", R"({"rubric":"spring-extension","text":"x","edits":{"values":["heavy"]}})"), 422, "value-unreadable"},
      {"an edit of no step", post("/api/rubric", R"({"rubric":"spring-extension","edits":{"steps":{"nope":{"title":"x"}}}})"), 400, "step-unknown"},
      {"an edit of the wrong kind", post("/api/rubric", R"({"rubric":"spring-extension","edits":{"hypothesis":5}})"), 400, "wrong-type"},
      {"an edited rubric as a file", post("/api/rubric", R"({"rubric":"spring-extension","edits":{"hypothesis":"It \"grows\"."}})"), 200, "It \\\\\\\"grows\\\\\\\"."},
      {"a file of drafts", send_file("Ann.txt", "measure the length"), 200, "{\"id\":\"Ann\",\"text\":\"measure the length\"}"},
      {"a file in a folder", send_file("9A/Ann.txt", "x"), 200, "\"id\":\"Ann\""},
      {"a file whose name climbs", send_file("../../etc/passwd", "x"), 200, "\"answers\":[]"},
      {"a file without a name", send_file("", "x"), 400, "no name"},
      {"a file of no known kind", send_file("Ann.exe", "x"), 200, "ending-unknown"},
      {"a Word file that is none", send_file("Ann.docx", "x"), 200, "\"severity\":\"error\""},
      {"a table of answers", send_file("form.csv", "Name,Answer\nAnn,\"measure it, twice\"\n"), 200, "measure it, twice"},
      {"a file as a form", send_file("Ann.txt", "x", "text/plain"), 415, "A file is expected"},
      {"a class", post("/api/class", R"({"rubric":"spring-extension","as":"html","drafts":[{"id":"Ann <b>","text":"measure the length with a ruler"}]})"), 200, "Ann &lt;b"},
      {"a class as a table", post("/api/class", R"({"rubric":"spring-extension","as":"csv","drafts":[{"id":"=1+1","text":"measure the length with a ruler"}]})"), 200, "'=1+1"},
      {"a class as JSON", post("/api/class", R"({"rubric":"spring-extension","as":"json","drafts":[{"id":"Ann","text":"use a ruler"}]})"), 200, "\"format\""},
      {"slips", post("/api/class", R"({"rubric":"spring-extension","as":"slips","perSheet":2,"drafts":[{"id":"Ann","text":"use a ruler"}]})"), 200, "slip half"},
      {"second drafts", post("/api/class", R"({"rubric":"spring-extension","as":"json","drafts":[{"id":"Ann","text":"use a ruler to measure the length"}],"before":[{"id":"Ann","text":"hang the spring"}]})"), 200, "\"gained\""},
      {"what edits change", post("/api/class", R"({"rubric":"spring-extension","as":"changes","drafts":[{"id":"Ann","text":"zibble the wobbler"}],"edits":{"steps":{"repeat-mean":{"present":["zibble the wobbler"]}}}})"), 200, "\"was\":\"missing\",\"is\":\"present\""},
      {"a class without drafts", post("/api/class", R"({"rubric":"spring-extension","as":"html","drafts":[]})"), 400, "no drafts"},
      {"a class as nothing known", post("/api/class", R"({"rubric":"spring-extension","as":"exe","drafts":[{"id":"a","text":"b"}]})"), 400, "must say html"},
      {"a class of numbers", post("/api/class", R"({"rubric":"spring-extension","as":"html","drafts":[5]})"), 400, "must hold objects"},
      {"a class for nothing", post("/api/class", R"({"rubric":"nope","as":"html","drafts":[{"id":"a","text":"b"}]})"), 404, "no such investigation"},
  };
  for (const auto& row : rows) {
    EXPECT_EQ(row.response.status, row.status) << row.name << ": " << row.response.body.substr(0, 300);
    EXPECT_NE(row.response.body.find(row.holds), std::string::npos) << row.name << ": " << row.response.body.substr(0, 300);
  }
}

TEST_F(ServiceTest, EveryAnswerCarriesThePolicy) {
  for (const Response& response : {get("/"), get("/nothing"), post("/api/check", "{"), post("/api/check", "x", "text/plain")}) {
    std::string policy;
    for (const auto& [key, value] : response.headers) {
      if (key == "Content-Security-Policy") policy = value;
    }
    EXPECT_NE(policy.find("default-src 'none'; script-src 'self';"), std::string::npos);
    EXPECT_EQ(policy.find("unsafe"), std::string::npos);
  }
}

TEST_F(ServiceTest, PagesNameNothingElsewhere) {
  for (const char* path : {"/", "/write", "/table", "/class", "/class.mjs", "/files.mjs", "/editing.mjs", "/look.css", "/base.css", "/page.mjs", "/start.mjs", "/write.mjs", "/marks.mjs", "/found.mjs", "/table.mjs", "/grid.mjs", "/question.mjs"}) {
    Response response = get(path);
    ASSERT_EQ(response.status, 200) << path;
    EXPECT_EQ(response.body.find("https:"), std::string::npos) << path;
    EXPECT_EQ(response.body.find("http:"), std::string::npos) << path;
    EXPECT_EQ(response.body.find("innerHTML"), std::string::npos) << path;
  }
}

TEST_F(ServiceTest, AnswersAreJsonWhateverTheDraftHolds) {
  std::string odd = "\"\\\\u0000 </script> \\ud800 \xF0\x9F\x98\x80 \"";
  for (const std::string& text : {std::string("\"</script><b>\""), std::string("\"a\\u0000b\\n\\t\""), odd}) {
    Response response = post("/api/check", "{\"rubric\":\"ripple-tank\",\"text\":" + text + "}");
    if (response.status != 200) {
      EXPECT_EQ(response.status, 400);
      continue;
    }
    Findings findings;
    EXPECT_TRUE(json::parse(response.body, "response", findings)) << text;
  }
}

}  // namespace
}  // namespace retort::serve

#include "planner/trip/json_document.h"

#include "geo/input_error.h"
#include "planner/trip/json_pointer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

std::string problem_of(const std::string& text, const JsonLimits& limits = {}) {
    try {
        (void)read_json(text, "t.json", limits);
        return "none";
    } catch (const geo::InputError& error) {
        return to_string(error.problems().front());
    }
}

constexpr const char* json =
    "expected JSON (keys and texts in double quotation marks, a comma between "
    "entries and none after the last)";

TEST(JsonDocument, ReadsCommentsAndAByteOrderMark) {
    const JsonValue value = read_json(
        "\xEF\xBB\xBF// one\n{\"a\": /* two */ [1, -2.5, true, null, \"\u00e5\"]}\n// three", "");
    ASSERT_NE(value.find("a"), nullptr);
    const JsonValue& list = *value.find("a");
    ASSERT_EQ(list.items.size(), 5U);
    EXPECT_EQ(list.items[0].number, 1.0);
    EXPECT_TRUE(list.items[0].whole);
    EXPECT_EQ(list.items[1].number, -2.5);
    EXPECT_EQ(list.items[1].text, "-2.5");
    EXPECT_TRUE(list.items[2].flag);
    EXPECT_EQ(list.items[3].kind, JsonValue::Kind::null);
    EXPECT_EQ(list.items[4].text, "\u00e5");
    EXPECT_EQ(value.find("b"), nullptr);
}

TEST(JsonDocument, SaysWhereTheSyntaxIsWrong) {
    const std::string expected = json;
    EXPECT_EQ(problem_of("{\"a\": NaN}"), "t.json: line 1, column 7: found 'NaN', " + expected);
    EXPECT_EQ(problem_of("{\"a\": 1e999}"), "t.json: line 1, column 7: found '1e999', " + expected);
    EXPECT_EQ(problem_of("{'a': 1}"), "t.json: line 1, column 2: found ''', " + expected);
    EXPECT_EQ(problem_of("{\"\u00e5\": x}"), "t.json: line 1, column 7: found 'x', " + expected);
    EXPECT_EQ(problem_of("{\"a\": \"x\ny\"}"),
              "t.json: line 1, column 9: found the end of the line within a text, " + expected);
    EXPECT_EQ(problem_of("{\"a\": [1, 2"),
              "t.json: line 1, column 12: found the end of the file, expected the rest of it: a "
              "bracket, a text or a comment is still open");
}

TEST(JsonDocument, NamesAMissingCommaWhereItIsMissing) {
    EXPECT_EQ(problem_of("{\n  \"a\": \"x\" // no comma, \"b\"\n  \"b\": 2\n}"),
              "t.json: line 2, column 11: found no comma before '\"', expected a comma between two "
              "entries");
    EXPECT_EQ(problem_of("[1,\n 2\n\n 3]"),
              "t.json: line 2, column 3: found no comma before '3', expected a comma between two "
              "entries");
    EXPECT_EQ(problem_of("{\"a\": {\"b\": 1}\n \"c\": 2}"),
              "t.json: line 1, column 15: found no comma before '\"', expected a comma between two "
              "entries");
    EXPECT_EQ(problem_of("{\"a\" 1}"),
              "t.json: line 1, column 5: found no colon after the key, expected \"key\": value");
    EXPECT_EQ(
        problem_of("{\"a\": 1,\n}"),
        "t.json: line 1, column 8: found a comma before '}', expected no comma after the last "
        "entry");
}

TEST(JsonDocument, EveryValueKnowsItsLine) {
    const JsonValue value = read_json("// head\n{\n \"a\": 1\n,\"b\": [\n 2, // two\n {\n"
                                      "\"c\": null }\n],\n \"d\":\n \"x\" }",
                                      "t.json");
    EXPECT_EQ(value.line, 2U);
    EXPECT_EQ(value.find("a")->line, 3U);
    EXPECT_EQ(value.find("b")->line, 4U);
    EXPECT_EQ(value.find("b")->items[0].line, 5U);
    EXPECT_EQ(value.find("b")->items[1].line, 6U);
    EXPECT_EQ(value.find("b")->items[1].find("c")->line, 7U);
    EXPECT_EQ(value.find("d")->line, 10U);
}

TEST(JsonDocument, RefusesAKeyGivenTwice) {
    EXPECT_EQ(problem_of("{\"a\": [0, {\"b/c\": 1, \"b/c\": 2}]}"),
              "t.json: /a/1/b~1c: found this key a second time, expected each key once");
}

TEST(JsonDocument, NamesTheFirstByteThatIsNotUtf8) {
    EXPECT_EQ(
        problem_of("{\n\"a\": \"\xFC\"}"),
        "t.json: line 2, column 7: found the byte 0xFC, expected UTF-8 text; save the file as "
        "UTF-8");
}

TEST(JsonDocument, HasLimits) {
    JsonLimits limits;
    limits.deepest = 3;
    EXPECT_EQ(problem_of("[[[1]]]", limits), "none");
    EXPECT_THAT(problem_of("[[[[1]]]]", limits),
                testing::HasSubstr("more than 3 levels of brackets"));
    limits = {};
    limits.longest_bytes = 10;
    EXPECT_EQ(problem_of("[1, 2, 3, 4]", limits),
              "t.json: found 12 bytes, expected at most 10 bytes");
    limits = {};
    limits.most_values = 3;
    EXPECT_THAT(problem_of("[1, 2, 3, 4]", limits), testing::HasSubstr("more than 3 values"));
    limits = {};
    limits.most_members = 2;
    EXPECT_THAT(problem_of(R"({"a": 1, "b": 2, "c": 3})", limits),
                testing::HasSubstr("more than 2 keys"));
}

TEST(JsonDocument, RefusesMoreThan16Megabytes) {
    EXPECT_THAT(problem_of(std::string(std::size_t{17} << 20U, ' ')),
                testing::HasSubstr("expected at most 16777216 bytes"));
}

// RFC 6901, section 5, gives these pointers and keys.
TEST(JsonPointer, FollowsTheExamplesOfTheRfc) {
    JsonValue value = read_json(
        R"({"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8})",
        "");
    EXPECT_EQ(set_at(value, "/foo/0", "x"), "");
    EXPECT_EQ(set_at(value, "/", "10"), "");
    EXPECT_EQ(set_at(value, "/a~1b", "11"), "");
    EXPECT_EQ(set_at(value, "/c%d", "12"), "");
    EXPECT_EQ(set_at(value, "/i\\j", "15"), "");
    EXPECT_EQ(set_at(value, "/k\"l", "16"), "");
    EXPECT_EQ(set_at(value, "/ ", "17"), "");
    EXPECT_EQ(set_at(value, "/m~0n", "18"), "");
    EXPECT_EQ(value.members.size(), 10U);
    EXPECT_EQ(value.find("foo")->items[0].text, "x");
    EXPECT_EQ(value.find("")->number, 10.0);
    EXPECT_EQ(value.find("a/b")->number, 11.0);
    EXPECT_EQ(value.find("c%d")->number, 12.0);
    EXPECT_EQ(value.find("i\\j")->number, 15.0);
    EXPECT_EQ(value.find("k\"l")->number, 16.0);
    EXPECT_EQ(value.find(" ")->number, 17.0);
    EXPECT_EQ(value.find("m~n")->number, 18.0);
}

TEST(JsonPointer, MakesObjectsAndAppends) {
    JsonValue value = read_json("{}", "");
    EXPECT_EQ(set_at(value, "/days/set_off", "07:00"), "");
    EXPECT_EQ(value.find("days")->find("set_off")->text, "07:00");
    EXPECT_EQ(set_at(value, "/kit", "[]"), "");
    EXPECT_EQ(set_at(value, "/kit/-", R"({"item": "pot"})"), "");
    EXPECT_EQ(set_at(value, "/kit/0/mass", "300 g"), "");
    EXPECT_EQ(set_at(value, "/kit/-/item", "lid"), "");
    ASSERT_EQ(value.find("kit")->items.size(), 2U);
    EXPECT_EQ(value.find("kit")->items[0].find("mass")->text, "300 g");
    EXPECT_EQ(value.find("kit")->items[1].find("item")->text, "lid");
}

TEST(JsonPointer, RefusesWhatIsNoneAndLeavesTheDocument) {
    JsonValue value = read_json(R"({"a": [1], "b": 2})", "");
    for (const char* pointer :
         {"", "a", "/a/1", "/a/01", "/a/x", "/a/-1", "/b/c", "/a~2", "/a~", "/new/deep/../x~"})
        EXPECT_NE(set_at(value, pointer, "1"), "") << pointer;
    EXPECT_NE(set_at(value, std::string(200, '/'), "1"), "");
    EXPECT_EQ(value.members.size(), 2U);
    EXPECT_EQ(value.find("a")->items.size(), 1U);
}

} // namespace
} // namespace tumpline::planner

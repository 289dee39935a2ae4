/// RFC 6901: its own examples, and what an edit leaves alone.

#include "planner/trip/json_pointer.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// The document of section 5 of RFC 6901.
JsonValue example() {
    return read_json(R"({"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4,
                         "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8})",
                     "example");
}

TEST(JsonPointer, FindsWhatTheStandardFinds) {
    const JsonValue document = example();
    const auto number = [&](const char* pointer) {
        const JsonValue* found = find_at(document, pointer);
        return found == nullptr ? -1.0 : found->number;
    };
    ASSERT_NE(find_at(document, "/foo/0"), nullptr);
    EXPECT_EQ(find_at(document, "/foo/0")->text, "bar");
    EXPECT_EQ(number("/"), 0.0);
    EXPECT_EQ(number("/a~1b"), 1.0);
    EXPECT_EQ(number("/c%d"), 2.0);
    EXPECT_EQ(number("/e^f"), 3.0);
    EXPECT_EQ(number("/g|h"), 4.0);
    EXPECT_EQ(number("/i\\j"), 5.0);
    EXPECT_EQ(number("/k\"l"), 6.0);
    EXPECT_EQ(number("/ "), 7.0);
    EXPECT_EQ(number("/m~0n"), 8.0);
    EXPECT_EQ(find_at(document, "/foo/2"), nullptr);
    EXPECT_EQ(find_at(document, "/foo/01"), nullptr) << "no leading zeros";
    EXPECT_EQ(find_at(document, "/nothing"), nullptr);
}

TEST(JsonPointer, SetsAppendsAndMakesObjectsOnTheWay) {
    JsonValue document = example();
    EXPECT_EQ(set_at(document, "/foo/-", "\"third\""), "");
    EXPECT_EQ(find_at(document, "/foo/2")->text, "third");
    EXPECT_EQ(set_at(document, "/new/inner", "12 km"), ""); // no JSON: taken as a text
    EXPECT_EQ(find_at(document, "/new/inner")->text, "12 km");
    EXPECT_EQ(set_at(document, "/m~0n", "true"), "");
    EXPECT_TRUE(find_at(document, "/m~0n")->flag);
}

TEST(JsonPointer, ABadPointerChangesNothing) {
    JsonValue document = example();
    EXPECT_NE(set_at(document, "/foo/7", "1"), "");
    EXPECT_NE(set_at(document, "foo", "1"), "");
    EXPECT_EQ(find_at(document, "/foo")->items.size(), 2U);
}

} // namespace
} // namespace tumpline::planner

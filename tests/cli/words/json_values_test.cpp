#include "cli/words/json_values.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

TEST(JsonValues, AreLinesAndValidWhateverANameHolds) {
    EXPECT_EQ(in_lines(Json{{"name", "Ada"}}), "{\n  \"name\": \"Ada\"\n}\n");
    const std::string text = in_lines(Json{{"name", "half a letter \xc3"}});
    EXPECT_EQ(Json::parse(text).at("name"), "half a letter \uFFFD");
}

} // namespace
} // namespace tumpline::cli

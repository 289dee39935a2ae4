#include "planner/quantities/spelling.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(Words, CountsEditsAndSwaps) {
    EXPECT_EQ(edit_distance("kitten", "sitting"),
              3U); // the usual example of the Levenshtein distance
    EXPECT_EQ(edit_distance("mass", "mass"), 0U);
    EXPECT_EQ(edit_distance("wron", "worn"), 1U);
    EXPECT_EQ(edit_distance("", "sea"), 3U);
    EXPECT_EQ(edit_distance("Put_In", "put-in"), 0U);
}

TEST(Words, FindsTheNearest) {
    EXPECT_EQ(nearest_word("mas", {"item", "mass", "for"}), "mass");
    EXPECT_EQ(nearest_word("carry_limits", {"carry_limit", "portage_limit"}), "carry_limit");
    EXPECT_EQ(nearest_word("din", {"tobler", "din-33466"}), "din-33466");
    EXPECT_EQ(nearest_word("zzz", {"item", "mass"}), "");
    EXPECT_EQ(nearest_word("x", {"C", "F"}), "");
    EXPECT_EQ(nearest_word("", {"item"}), "");
    EXPECT_EQ(nearest_word(std::string(100'000, 'a'), {"item"}), "");
}

TEST(Words, JoinsAlternatives) {
    EXPECT_EQ(either({}), "");
    EXPECT_EQ(either({"lake"}), "lake");
    EXPECT_EQ(either({"lake", "river"}), "lake or river");
    EXPECT_EQ(either({"lake", "river", "sea"}), "lake, river or sea");
}

} // namespace
} // namespace tumpline::planner

#include "geo/input_error.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TEST(Problem, SaysFilePlaceFoundExpectedAndAdvice) {
    EXPECT_EQ(to_string({.file = "bad-mass.json",
                         .place = "/kit/3/mass",
                         .found = "1.9",
                         .expected = "a mass with a unit (g, kg, oz, lb)",
                         .advice = "write \"1.9 kg\""}),
              "bad-mass.json: /kit/3/mass: found 1.9, expected a mass with a unit (g, kg, oz, lb); "
              "write \"1.9 kg\"");
}

TEST(Problem, LeavesOutWhatIsEmpty) {
    EXPECT_EQ(
        to_string({.file = "a.gpx", .place = "", .found = "", .expected = "a track", .advice = ""}),
        "a.gpx: expected a track");
}

} // namespace
} // namespace tumpline::geo

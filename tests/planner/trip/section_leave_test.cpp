/// What the trip file leaves on the way, read right and wrong.

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

Trip with_leave(const std::string& entry) {
    const std::string text = R"({"tumpline": 1,
      "route": {"tracks": ["a.gpx"], "places": [{"name": "Tarn head", "kind": "camp"}]},
      "party": [{"name": "Ada", "body": "68 kg"}],
      "craft": [{"name": "red boat", "mass": "3.3 kg", "crew": ["Ada"]}],
      "kit": [{"item": "tent", "mass": "1.9 kg"}],
      "leave": [)" + entry + "]}";
    return read_trip_text(text, "t.json", {});
}

std::vector<std::string> problems_of_leave(const std::string& entry) {
    std::vector<std::string> found;
    try {
        (void)with_leave(entry);
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            found.push_back(to_string(problem));
    }
    return found;
}

TEST(SectionLeave, ReadsEveryKey) {
    const Trip trip = with_leave(R"({"at": "Tarn head", "day": 2, "pass": 1, "fetch_day": 3,
                                     "things": ["red boat", "tent"]})");
    ASSERT_EQ(trip.leaves.size(), 1U);
    const Leave& leave = trip.leaves[0];
    EXPECT_EQ(leave.at, "Tarn head");
    EXPECT_EQ(leave.day, 2);
    EXPECT_EQ(leave.pass, 1);
    EXPECT_EQ(leave.fetch_day, 3);
    EXPECT_FALSE(leave.all_but);
    EXPECT_THAT(leave.things, ElementsAre("red boat", "tent"));
    const Trip other = with_leave(R"({"at": "Tarn head", "all_but": ["tent"]})");
    EXPECT_TRUE(other.leaves[0].all_but);
    EXPECT_THAT(other.leaves[0].things, ElementsAre("tent"));
    EXPECT_FALSE(other.leaves[0].day);
}

TEST(SectionLeave, RefusesWhatNobodyKnows) {
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn haed", "things": ["tent"]})"),
                ElementsAre(AllOf(HasSubstr("/leave/0/at"), HasSubstr("write \"Tarn head\""))));
    EXPECT_THAT(
        problems_of_leave(R"({"at": "Tarn head", "things": ["tent", "red baot"]})"),
        ElementsAre(AllOf(HasSubstr("/leave/0/things/1"), HasSubstr("write \"red boat\""))));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "all_but": ["tnet"]})"),
                ElementsAre(HasSubstr("/leave/0/all_but/0")));
}

TEST(SectionLeave, RefusesWhatContradictsItself) {
    EXPECT_THAT(
        problems_of_leave(R"({"at": "Tarn head", "day": 3, "fetch_day": 2, "things": ["tent"]})"),
        ElementsAre(AllOf(HasSubstr("/leave/0/fetch_day"), HasSubstr("day 3 or a later one"))));
    EXPECT_THAT(
        problems_of_leave(R"({"at": "Tarn head", "things": ["tent"], "all_but": ["red boat"]})"),
        ElementsAre(AllOf(HasSubstr("/leave/0:"), HasSubstr("either"))));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head"})"),
                ElementsAre(AllOf(HasSubstr("/leave/0:"), HasSubstr("either"))));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "things": []})"),
                ElementsAre(HasSubstr("/leave/0/things")));
}

TEST(SectionLeave, ReadsFoodAmongTheThings) {
    const Trip trip =
        with_leave(R"({"at": "Tarn head", "things": [{"food": "1200 g"}, "red boat"]})");
    ASSERT_EQ(trip.leaves.size(), 1U);
    EXPECT_NEAR(trip.leaves[0].food_kg.value(), 1.2, 1e-9);
    EXPECT_THAT(trip.leaves[0].things, ElementsAre("", "red boat"));
    EXPECT_FALSE(with_leave(R"({"at": "Tarn head", "things": ["tent"]})").leaves[0].food_kg);
}

TEST(SectionLeave, TellsMistakesOfFood) {
    EXPECT_THAT(
        problems_of_leave(
            R"({"at": "Tarn head", "things": [{"food": "1 kg"}, "tent", {"food": "2 kg"}]})"),
        ElementsAre(AllOf(HasSubstr("/leave/0/things/2"), HasSubstr("food once in an entry"))));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "all_but": ["tent", {"food": "1 kg"}]})"),
                ElementsAre(AllOf(HasSubstr("/leave/0/all_but/1"), HasSubstr("come along"))));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "things": [{"food": "2 L"}]})"),
                ElementsAre(HasSubstr("/leave/0/things/0/food")));
    const Leave stores = with_leave(R"({"at": "Tarn head", "things": [{"fuel": "200 g"},
                                       {"water": "2 L"}, {"food": "1 kg"}]})")
                             .leaves[0];
    EXPECT_NEAR(stores.fuel_kg.value(), 0.2, 1e-9);
    EXPECT_NEAR(stores.water_l.value(), 2.0, 1e-9);
    EXPECT_NEAR(stores.food_kg.value(), 1.0, 1e-9);
    EXPECT_THAT(
        problems_of_leave(R"({"at": "Tarn head", "things": [{"fuel": "1 kg", "water": "1 L"}]})"),
        ElementsAre(HasSubstr("one of \"food\", \"fuel\" and \"water\"")));
    EXPECT_THAT(
        problems_of_leave(R"({"at": "Tarn head", "things": [{"water": "1 L"}, {"water": "2 L"}]})"),
        ElementsAre(HasSubstr("water once in an entry")));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "things": [{"water": "2 kg"}]})"),
                ElementsAre(HasSubstr("/leave/0/things/0/water")));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "things": [{"fod": "2 kg"}]})"),
                testing::Contains(HasSubstr("/leave/0/things/0")));
    EXPECT_THAT(problems_of_leave(R"({"at": "Tarn head", "things": [{"food": "1 kg"}, "tnet"]})"),
                ElementsAre(HasSubstr("/leave/0/things/1")));
}

} // namespace
} // namespace tumpline::planner

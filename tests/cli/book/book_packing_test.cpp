#include "cli/book/book_parts.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

/// The data of the book's packing lists, before they become a page.
namespace tumpline::cli {
namespace {

using planner::Plan;
using planner::UnitSystem;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

template <typename Value> Value field(const Fields& fields, std::string_view name) {
    for (const auto& [key, value] : fields.values())
        if (key == name)
            return std::get<Value>(value);
    ADD_FAILURE() << "no field " << name;
    return {};
}

std::vector<Fields> list(const Fields& fields, std::string_view name) {
    return field<std::vector<Fields>>(fields, name);
}

std::string text(const Fields& fields, std::string_view name) {
    return field<std::string>(fields, name);
}

Fields packing(const Plan& plan, const planner::Route& route, UnitSystem units) {
    Fields fields;
    const Figures shown(units, plan.trip.time_zone, Blank::kept);
    const BookMaps maps(plan, route, nullptr, units);
    add_packing(fields, {plan, route, shown, maps});
    return fields;
}

/// A printed mass and half a step of its rounding, kilograms.
struct Printed {
    double mass_kg = 0.0;
    double rounding_kg = 0.0;
};

/// "1.9 kg" is within 50 g, "640 g" within 2.5 g and "64 g" within 0.5 g.
Printed printed(const std::string& mass) {
    const double number = std::strtod(mass.c_str(), nullptr);
    if (mass.ends_with("kg"))
        return {number, 0.05};
    return {number / 1000.0, number < 100.0 ? 0.0005 : 0.0025};
}

/// The mass that follows a word in the line of sums.
Printed after(const std::string& sums, const std::string& word) {
    const std::size_t at = sums.find(word);
    return at == std::string::npos
               ? Printed{}
               : printed(sums.substr(at + word.size(), sums.find(',', at) - at - word.size()));
}

/// Each list sums to its head within the rounding of its rows, and the one figure is the plan's.
void expect_sums(const Plan& plan, const planner::Route& route) {
    const std::vector<Fields> lists = list(packing(plan, route, UnitSystem::metric), "lists");
    ASSERT_EQ(lists.size(), plan.trip.party.size());
    for (const Fields& one : lists) {
        Printed pack, worn, hand;
        for (const Fields& group : list(one, "groups")) {
            const std::string title = text(group, "title");
            Printed& sum = title == "Worn at the start"      ? worn
                           : title == "In hand at the start" ? hand
                                                             : pack;
            if (title == "On the water at the start")
                continue;
            for (const Fields& row : list(group, "items")) {
                const Printed mass = printed(text(row, "mass"));
                sum.mass_kg += mass.mass_kg;
                sum.rounding_kg += mass.rounding_kg;
            }
        }
        const std::string sums = text(one, "sums");
        for (const auto& [head, rows] : {std::pair{after(sums, "at the start "), pack},
                                         std::pair{after(sums, "worn "), worn},
                                         std::pair{after(sums, "in hand "), hand}})
            EXPECT_NEAR(head.mass_kg, rows.mass_kg, head.rounding_kg + rows.rounding_kg + 1e-9)
                << plan.trip.name << ", " << text(one, "name") << ": " << sums;
    }
}

class RandomLists : public testing::TestWithParam<int> {};

INSTANTIATE_TEST_SUITE_P(Seeds, RandomLists, testing::Range(100, 140));

TEST_P(RandomLists, SumToTheirHeads) {
    const test::RandomTrip random = test::random_trip(static_cast<std::uint64_t>(GetParam()));
    expect_sums(planner::make_plan(random.trip, random.route), random.route);
}

class SampleLists : public testing::TestWithParam<const char*> {};

TEST_P(SampleLists, SumToTheirHeads) {
    const planner::Trip trip =
        planner::read_trip(test::root / "sample-routes" / GetParam() / "trip.json");
    const planner::Route route = planner::build_route(trip);
    expect_sums(planner::make_plan(trip, route), route);
}

INSTANTIATE_TEST_SUITE_P(All,
                         SampleLists,
                         testing::Values("saddle",
                                         "lake-chain",
                                         "desert-river",
                                         "three-day-pass",
                                         "fourteen-portages",
                                         "five-over-two-passes",
                                         "northern-autumn"),
                         [](const auto& row) {
                             std::string name = row.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

/// Titles of a member's groups with the names of their rows.
std::vector<std::string> rows(const Fields& fields, std::size_t member, std::string_view title) {
    std::vector<std::string> names;
    for (const Fields& group : list(list(fields, "lists").at(member), "groups"))
        if (text(group, "title") == title)
            for (const Fields& row : list(group, "items"))
                names.push_back(text(row, "item"));
    return names;
}

TEST(PackingLists, KeepEachOfTwoThingsOfOneNameApart) {
    const Plan made = test::hand_built_plan();
    Plan plan = made;
    // Björn has a dry suit too, which stays at home; Ada's comes.
    plan.items.push_back(plan.items[15]);
    planner::PackedItem& his = plan.items.back();
    ASSERT_EQ(his.item, "dry suit");
    his.owner = "Björn";
    his.comes = false;
    his.bearer.reset();
    his.at_start.reset();
    his.why = "not asked for";
    const Fields fields = packing(plan, test::hand_built_route(plan), UnitSystem::metric);
    EXPECT_THAT(rows(fields, 0, "In the pack"), Contains("dry suit"));
    EXPECT_THAT(rows(fields, 1, "In the pack"), Not(Contains("dry suit")));
    std::vector<std::string> home;
    for (const Fields& row : list(fields, "stays_home"))
        home.push_back(text(row, "item"));
    EXPECT_THAT(home, ElementsAre("thigh straps (Ada)", "dry suit (Björn)"));
}

TEST(PackingLists, HaveEachThingWithItsBearerAndPlace) {
    const Plan plan = test::hand_built_plan();
    const Fields fields = packing(plan, test::hand_built_route(plan), UnitSystem::metric);
    EXPECT_THAT(rows(fields, 0, "Worn at the start"), ElementsAre("boots"));
    EXPECT_THAT(rows(fields, 0, "Of the party's things"),
                ElementsAre("stove and pot", "throw bag"));
    EXPECT_THAT(rows(fields, 1, "Of the party's things"), ElementsAre("tent", "repair kit"));
    EXPECT_THAT(rows(fields, 0, "Boat, food, fuel and water at the start"),
                ElementsAre("red boat", "food", "fuel", "water"));
    EXPECT_THAT(rows(fields, 1, "Boat, food, fuel and water at the start"),
                ElementsAre("blue boat", "food", "water"));
    EXPECT_EQ(text(list(fields, "lists")[0], "sums"),
              "In the pack at the start 18.4\u00A0kg, worn 1.1\u00A0kg, limit 22.0\u00A0kg");
    EXPECT_EQ(text(list(fields, "lists")[1], "sums"),
              "In the pack at the start 18.7\u00A0kg, worn 1.1\u00A0kg, limit 24.0\u00A0kg");
}

} // namespace
} // namespace tumpline::cli

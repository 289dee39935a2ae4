#include "cli/live/live_view.h"

#include "planner/trip/trip_file.h"
#include "planner/trip/trip_text.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

const std::filesystem::path saddle = test::root / "sample-routes" / "saddle" / "trip.json";

planner::Edit taken(const Json& edit) {
    return {.way = planner::Edit::Way::add,
            .pointer = edit.at("path").get<std::string>(),
            .value = edit.at("value").dump()};
}

std::vector<planner::Edit> all_taken(const Json& edits) {
    std::vector<planner::Edit> list;
    for (const Json& edit : edits)
        list.push_back(taken(edit));
    return list;
}

Figures metric_figures(const LivePlan& live) {
    return {planner::UnitSystem::metric, live.plan.trip.time_zone, Blank::kept};
}

/// Every list of edits that a view offers.
std::vector<std::vector<planner::Edit>> offers(const Json& view) {
    std::vector<std::vector<planner::Edit>> all;
    for (const Json& slider : view.at("conditions"))
        for (const Json& stop : slider.at("stops"))
            all.push_back(all_taken(stop.at("edits")));
    for (const Json& thing : view.at("things"))
        for (const Json& move : thing.at("moves"))
            all.push_back(all_taken(move.at("edits")));
    for (const Json& leg : view.at("legs"))
        for (const Json& choice : leg.at("choices"))
            all.push_back(all_taken(choice.at("edits")));
    return all;
}

TEST(LiveView, WhateverThePageOffersIsATripAndStaysOneWhenItIsWritten) {
    LiveTrip trip(saddle);
    const LivePlan live = trip.planned({});
    const std::string text = trip.text();
    const std::vector<std::vector<planner::Edit>> all =
        offers(live_view(live, metric_figures(live)));
    EXPECT_GT(all.size(), 150U);
    for (const std::vector<planner::Edit>& edits : all) {
        ASSERT_FALSE(edits.empty());
        EXPECT_NO_THROW((void)planner::edited_trip(text, saddle, edits)) << edits[0].pointer;
        EXPECT_NO_THROW((void)planner::read_trip_text(
            planner::edited_text(text, saddle.string(), edits), saddle));
    }
}

TEST(LiveView, ASliderStandsAtThePlansOwnValue) {
    LiveTrip trip(saddle);
    const LivePlan live = trip.planned({{planner::Edit::Way::add, "/weather/wind", "\"9 m/s\""},
                                        {planner::Edit::Way::add, "/party/0/pace", "0.9"}});
    const Json sliders = live_conditions(live, metric_figures(live));
    for (const Json& slider : sliders) {
        const std::size_t at = slider.at("at").get<std::size_t>();
        if (slider.at("id") == "wind") {
            EXPECT_EQ(at, 9U); // stops of 1 m/s from 0
        }
        if (slider.at("id") == "pace") {
            EXPECT_EQ(at, 4U); // Ada has no pace in the file: 0.9 of 1, stops of 5 % from 70 %
        }
    }
    EXPECT_GE(sliders.size(), 7U); // set-off, hours, pace, wind, rain, two rivers
}

TEST(LiveView, TheGivenThingIsInTheOthersPack) {
    LiveTrip trip(saddle);
    const LivePlan before = trip.planned({});
    const Json things = live_things(before, metric_figures(before));
    const Json& tent = things.at(0);
    ASSERT_EQ(tent.at("name"), "tent");
    const std::size_t had = tent.at("bearer").get<std::size_t>();
    const Json& move = tent.at("moves").at(0);
    ASSERT_EQ(move.at("to"), "member:" + std::to_string(1 - had)); // a party of two
    const LivePlan after = trip.planned(all_taken(move.at("edits")));
    EXPECT_EQ(live_things(after, metric_figures(after)).at(0).at("bearer"), 1 - had);
}

/// Over a limit is what is over it by 50 g, as in every other output, and on foot only.
TEST(LiveView, APackIsOverItsLimitWhereThePlanSaysSo) {
    LivePlan live = LiveTrip(saddle).planned({});
    const auto load_of = [&](std::size_t leg, double pack_kg) {
        live.plan.legs.at(leg).loads.at(0).pack_max_kg = pack_kg;
        live.plan.legs.at(leg).loads.at(0).limit_kg = 22.0;
        return live_packs(live, metric_figures(live)).at(leg).at("loads").at(0);
    };
    ASSERT_EQ(live.plan.legs.at(0).travel, planner::Travel::walk);
    ASSERT_EQ(live.plan.legs.at(2).travel, planner::Travel::paddle);
    EXPECT_EQ(load_of(0, 22.02).at("over"), false);
    EXPECT_EQ(load_of(0, 22.2).at("over"), true);
    EXPECT_EQ(load_of(0, 22.2).at("limit"), "22.0\u00A0kg");
    EXPECT_EQ(load_of(2, 22.2).at("over"), false) << "in the boat nobody bears it";
    EXPECT_EQ(load_of(2, 22.2).at("limit"), "");
    EXPECT_EQ(load_of(2, 22.2).at("limit_kg"), 0.0);
}

TEST(LiveView, AMeetingWithinItsMarginIsNotMissed) {
    LivePlan live = LiveTrip(saddle).planned({});
    ASSERT_EQ(live.plan.appointments.size(), 1U);
    live.plan.appointments[0].margin_s = 3600.0;
    live.plan.appointments[0].spare_s = -600.0; // 50 min early, where an hour is wanted
    const std::string text = live_view(live, metric_figures(live))
                                 .at("appointments")
                                 .at(0)
                                 .at("text")
                                 .get<std::string>();
    EXPECT_EQ(text.find("missed"), std::string::npos) << text;
    EXPECT_NE(text.find("10\u00A0min less than the margin"), std::string::npos) << text;
}

TEST(LiveView, ThePartsOfAPackSumToIt) {
    LiveTrip trip(saddle);
    const LivePlan live = trip.planned({});
    for (const Json& leg : live_packs(live, metric_figures(live)))
        for (const Json& load : leg.at("loads")) {
            double sum_kg = 0.0;
            for (const Json& part : load.at("parts"))
                sum_kg += part.at("kg").get<double>();
            EXPECT_NEAR(sum_kg, load.at("kg").get<double>(), 1e-6);
        }
}

TEST(LiveView, TheDaysSayWhatToLeaveAndToFetch) {
    LivePlan live = LiveTrip(saddle).planned({});
    planner::LaidThings left;
    left.at = "Long Tarn";
    left.day = 1;
    left.fetch_day = 2;
    left.mass_kg = 2.0;
    left.things = {{.part = planner::Part::food, .what = "food", .mass_kg = 2.0}};
    EXPECT_TRUE(live_view(live, metric_figures(live)).at("days").at(0).at("left").empty());
    live.plan.left = {left};
    const Json days = live_view(live, metric_figures(live)).at("days");
    EXPECT_EQ(days.at(0).at("left"),
              Json::array({"Leave at Long Tarn: 2.0\u00A0kg of food (2.0\u00A0kg)"}));
    EXPECT_EQ(days.at(1).at("left"),
              Json::array({"Fetch at Long Tarn: 2.0\u00A0kg of food (2.0\u00A0kg)"}));
    EXPECT_TRUE(days.at(2).at("left").empty());
}

TEST(LiveView, ACartIsChosenApartFromTheCountOfCarries) {
    using Way = planner::Edit::Way;
    LiveTrip trip(saddle);
    const auto portage = [&](std::vector<planner::Edit> edits) {
        const LivePlan live = trip.planned(edits);
        const Json legs = live_packs(live, metric_figures(live));
        return *std::find_if(
            legs.begin(), legs.end(), [](const Json& leg) { return !leg.at("choices").empty(); });
    };
    const Json bare = portage({});
    EXPECT_TRUE(bare.at("hands").empty()); // each piece on one back is the only way
    for (const Json& choice : bare.at("choices"))
        EXPECT_EQ(choice.at("edits").size(), 2U);
    std::vector<planner::Edit> edits{
        {Way::add, "/kit/-", R"({"item": "cart", "mass": "5 kg", "cart_payload": "60 kg"})"},
        {Way::add, bare.at("choices").at(0).at("edits").at(0).at("path").get<std::string>(), "2"}};
    std::string at = edits.back().pointer;
    at.erase(at.rfind('/'));
    edits.push_back({Way::add, at + "/cart", "true"});
    const Json hands = portage(edits).at("hands");
    ASSERT_EQ(hands.size(), 3U); // nothing here may be borne by two
    EXPECT_EQ(hands.at(2).at("label"), "On the cart");
    EXPECT_TRUE(hands.at(0).at("chosen").get<bool>());
    for (const std::size_t taken : {1U, 2U}) {
        std::vector<planner::Edit> more = edits;
        more.push_back(cli::taken(hands.at(taken).at("edits").at(0)));
        const Json leg = portage(more);
        EXPECT_TRUE(leg.at("hands").at(taken).at("chosen").get<bool>());
        for (const Json& choice : leg.at("choices"))
            if (choice.at("chosen").get<bool>()) {
                EXPECT_EQ(choice.at("edits").at(2).at("value"), taken == 1 ? "hands" : "cart");
                EXPECT_EQ(choice.at("edits").at(0).at("value"), 2); // carries, as asked for
            }
    }
}

} // namespace

} // namespace tumpline::cli

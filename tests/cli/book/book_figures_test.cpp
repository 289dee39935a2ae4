#include "cli/book/book.h"
#include "cli/book/book_parts.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

/// Figures of the book, each where its heading says.
namespace tumpline::cli {
namespace {

using planner::Plan;
using testing::HasSubstr;
using testing::Not;

/// The data of the book's days, contact sheet and packing lists.
Fields parts_of_book(const Plan& plan) {
    const planner::Route route = test::hand_built_route(plan);
    const Figures shown(planner::UnitSystem::metric, plan.trip.time_zone, Blank::kept);
    const BookMaps maps(plan, route, nullptr, planner::UnitSystem::metric);
    const BookSource source{plan, route, shown, maps};
    Fields fields;
    add_days(fields, source);
    add_contact(fields, source);
    add_packing(fields, source);
    return fields;
}

const Fields::Value& value_of(const Fields& fields, std::string_view name) {
    for (const auto& [key, value] : fields.values())
        if (key == name)
            return value;
    throw std::out_of_range(std::string(name));
}

const Fields& row(const Fields& fields, std::string_view list, std::size_t index) {
    return std::get<std::vector<Fields>>(value_of(fields, list)).at(index);
}

std::string text_of(const Fields& fields, std::string_view name) {
    return std::get<std::string>(value_of(fields, name));
}

TEST(BookFigures, WindAndCurrentAreSaidToHelpOrToHinder) {
    Plan plan = test::hand_built_plan();
    planner::PlanLeg& tarn = plan.legs[1];
    const auto detail = [&] {
        return text_of(row(row(parts_of_book(plan), "days", 0), "legs", 1), "detail");
    };
    tarn.wind_head_mps = 1.2; // 4.3 km/h against the boat
    EXPECT_THAT(detail(), HasSubstr("headwind 4.3\u00A0km/h"));
    EXPECT_THAT(detail(), Not(HasSubstr("tailwind")));
    tarn.wind_head_mps = -1.2;
    EXPECT_THAT(detail(), HasSubstr("tailwind 4.3\u00A0km/h"));
    EXPECT_THAT(detail(), Not(HasSubstr("headwind")));
    tarn.current_mps = 1.0;
    EXPECT_THAT(detail(), HasSubstr("current 3.6\u00A0km/h as used"));
    tarn.current_mps = -1.0;
    EXPECT_THAT(detail(), HasSubstr("current 3.6\u00A0km/h against as used"));
}

TEST(BookFigures, AnAppointmentIsMissedByWhatIsBeyondItsMargin) {
    Plan plan = test::hand_built_plan();
    ASSERT_EQ(plan.appointments.size(), 1U);
    plan.appointments[0].margin_s = 1800.0;
    const auto standing = [&](double spare_s) {
        plan.appointments[0].spare_s = spare_s;
        const planner::Route route = test::hand_built_route(plan);
        const Figures shown(planner::UnitSystem::metric, plan.trip.time_zone, Blank::plain);
        const BookMaps maps(plan, route, nullptr, planner::UnitSystem::metric);
        Fields fields;
        add_trip(fields, {plan, route, shown, maps});
        return text_of(row(fields, "appointments", 0), "standing");
    };
    EXPECT_EQ(standing(-600.0), "met, but with 10 min less than the margin of 30 min");
    EXPECT_EQ(standing(-3000.0), "missed by 20 min"); // 50 min into the margin of 30
}

TEST(BookFigures, TheContactHasTheLateHourBesideThePlannedOne) {
    const Fields first = row(parts_of_book(test::hand_built_plan()), "timetable", 0);
    EXPECT_EQ(text_of(first, "set_off"), "08:00");
    EXPECT_EQ(text_of(first, "arrive"), "15:26");
    EXPECT_EQ(text_of(first, "late"), "16:46"); // 80 minutes later, the slow end of the band
}

TEST(BookFigures, LeftAndRightBagsStandUnderTheirNames) {
    const Fields fields = parts_of_book(test::hand_built_plan());
    const Fields& boat = row(fields, "boats", 0);
    EXPECT_EQ(text_of(row(boat, "bags", 0), "bag"), "Left bag");
    EXPECT_EQ(text_of(row(boat, "bags", 0), "mass"), "3.7\u00A0kg"); // bedding 1.4, food 2.31
    EXPECT_EQ(text_of(row(row(boat, "bags", 0), "items", 1), "item"), "food");
    EXPECT_EQ(text_of(row(boat, "bags", 1), "bag"), "Right bag");
    EXPECT_EQ(text_of(row(boat, "bags", 1), "mass"), "2.6\u00A0kg"); // clothes 2.1, stove 0.52
    EXPECT_EQ(text_of(row(row(boat, "bags", 1), "items", 1), "item"), "stove and pot");
    const Fields& on_the_day = row(row(fields, "days", 0), "craft", 0);
    EXPECT_EQ(text_of(on_the_day, "left"), "3.7\u00A0kg");
    EXPECT_EQ(text_of(on_the_day, "right"), "2.6\u00A0kg");
}

TEST(BookFigures, APackIsThatOfTheMinuteOfSettingOff) {
    const Fields fields = parts_of_book(test::hand_built_plan());
    EXPECT_EQ(text_of(row(row(fields, "days", 0), "members", 0), "set_off"),
              "19.1\u00A0kg"); // as the first leg begins
}

TEST(BookFigures, AClimbThatNobodyKnowsIsUnknown) {
    Plan plan = test::hand_built_plan();
    plan.days[0].heights_known = false;
    plan.legs[0].heights_known = false;
    const Fields fields = parts_of_book(plan);
    const Fields& day = row(fields, "days", 0);
    EXPECT_EQ(text_of(row(day, "figures", 3), "label"), "Up");
    EXPECT_EQ(text_of(row(day, "figures", 3), "value"), "unknown");
    EXPECT_EQ(text_of(row(day, "figures", 3), "more"), "");
    EXPECT_EQ(text_of(row(day, "legs", 0), "ascent"), "unknown");
    EXPECT_EQ(text_of(row(row(fields, "days", 1), "figures", 3), "value"), "12\u00A0m");
}

// On foot are what is walked, carried, lined and waded: where something is led the figure is more
// than the trip's first line says is walked.
TEST(BookFigures, OnFootSaysWhatIsCounted) {
    Plan plan = test::hand_built_plan();
    const auto printed = [&] {
        return book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
    };
    EXPECT_THAT(printed(), HasSubstr("every pass of a portage counted"));
    plan.totals.led_m = 700.0;
    EXPECT_THAT(printed(), HasSubstr("every pass of a portage, lining and wading counted"));
    EXPECT_THAT(printed(), Not(HasSubstr("every pass of a portage counted")));
}

TEST(BookFigures, TheKeyOfTheMapStandsOncePerWidth) {
    const Plan plan = test::hand_built_plan();
    const std::string html = book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
    const std::string begin = "<ul class=\"key\"";
    const std::string key =
        html.substr(html.find(begin), html.find("</ul>", html.find(begin)) - html.find(begin));
    const auto times = [&](std::string_view what) {
        std::size_t count = 0;
        for (std::size_t at = key.find(what); at != std::string::npos; at = key.find(what, at + 1))
            ++count;
        return count;
    };
    EXPECT_EQ(times("<li class=\"for-wide\">"), 3U); // the classes that book.css shows and hides
    EXPECT_EQ(times("<li class=\"for-narrow\">"), 3U);
    EXPECT_EQ(times("<li class="), 6U);
}

} // namespace
} // namespace tumpline::cli

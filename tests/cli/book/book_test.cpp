#include "cli/book/book.h"

#include "cli/json/plan_json.h"
#include "geo/input_error.h"
#include "planner/cautions/verdict.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::UnitSystem;
using testing::HasSubstr;
using testing::Not;

std::string metric_book(const Plan& plan) {
    return book(plan, test::hand_built_route(plan), UnitSystem::metric);
}

std::size_t count(std::string_view text, std::string_view word) {
    std::size_t found = 0;
    for (std::size_t at = text.find(word); at != std::string_view::npos;
         at = text.find(word, at + word.size()))
        ++found;
    return found;
}

/// What stands between the first `from` and the `to` after it.
std::string between(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t begin = text.find(from);
    if (begin == std::string::npos)
        return {};
    const std::size_t end = text.find(to, begin + from.size());
    return text.substr(begin, end == std::string::npos ? end : end - begin);
}

/// Every element that must be closed is, in order: a small check of well-formedness.
std::string first_misnesting(const std::string& html) {
    static const std::vector<std::string> empty{"meta", "link", "!DOCTYPE"};
    std::vector<std::string> open;
    for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at)) {
        const bool closes = html[at + 1] == '/';
        const std::size_t begin = at + (closes ? 2 : 1);
        const std::size_t name_end = html.find_first_of(" />\n", begin);
        const std::string name = html.substr(begin, name_end - begin);
        std::size_t end = name_end;
        for (char quote = 0; end < html.size() && (quote != 0 || html[end] != '>'); ++end) {
            if (quote != 0)
                quote = html[end] == quote ? '\0' : quote;
            else if (html[end] == '"' || html[end] == '\'')
                quote = html[end];
        }
        at = end;
        if (closes) {
            if (open.empty() || open.back() != name)
                return "</" + name + "> inside <" + (open.empty() ? "" : open.back()) + ">";
            open.pop_back();
        } else if (html[end - 1] != '/' &&
                   std::find(empty.begin(), empty.end(), name) == empty.end()) {
            open.push_back(name);
            if (name == "script" || name == "style")
                at = html.find("</" + name, end);
        }
    }
    return open.empty() ? "" : "<" + open.back() + "> is never closed";
}

} // namespace

TEST(Book, IsWellFormedAndFilled) {
    for (const Plan& plan : {test::hand_built_plan(),
                             test::with_hostile_names(test::hand_built_plan()),
                             test::one_leg(test::hand_built_plan()),
                             test::repeated(test::hand_built_plan(), 20)}) {
        const std::string html = metric_book(plan);
        EXPECT_EQ(first_misnesting(html), "");
        if (plan.trip.name.find("{{") == std::string::npos) {
            EXPECT_THAT(html, Not(HasSubstr("{{")));
        }
        EXPECT_EQ(count(html, "class=\"day\""), plan.days.size());
    }
}

TEST(Book, AsksForNothing) {
    const std::string html = metric_book(test::hand_built_plan());
    for (const char* word : {"http://", "https://", "src=", "@import", "url(//"})
        if (std::string(word) == "http://") // the name of SVG, in the script, is no address
            EXPECT_EQ(count(html, word), count(html, "http://www.w3.org/2000/svg")) << word;
        else
            EXPECT_THAT(html, Not(HasSubstr(word)));
    EXPECT_THAT(html, HasSubstr("default-src 'none'"));
}

TEST(Book, IsTheSameEveryTime) {
    EXPECT_EQ(metric_book(test::hand_built_plan()), metric_book(test::hand_built_plan()));
}

TEST(Book, KeepsNamesFromBreakingOut) {
    const std::string html = metric_book(test::with_hostile_names(test::hand_built_plan()));
    EXPECT_THAT(html, Not(HasSubstr(test::hostile_mark)));
    EXPECT_THAT(html, HasSubstr("&lt;script&gt;window.broken=1&lt;/script&gt;"));
    EXPECT_THAT(html, Not(HasSubstr("<b>bold</b>")));
    EXPECT_THAT(html, HasSubstr("{{trip_name}}")) << "braces in a name are text, not a template";
    EXPECT_THAT(html, Not(HasSubstr("\u202E"))) << "a name turns the text after it round";
    EXPECT_THAT(html, Not(HasSubstr("\xFF"))) << "bytes that are no UTF-8 reach the document";
    EXPECT_THAT(html, HasSubstr("two lines"));
    // The figures stand in a <script>; nothing of theirs may end it.
    const std::string figures = between(html, "id=\"figures\">", "</script>");
    EXPECT_TRUE(nlohmann::json::accept(figures.substr(figures.find('>') + 1)));
}

TEST(Book, NeverSaysTheWordThatNobodyCanPromise) {
    const std::string html = metric_book(test::hand_built_plan());
    for (const char* word : {" safe", "Safe", "guarantee", "!</"})
        EXPECT_THAT(html, Not(HasSubstr(word)));
}

TEST(Book, PutsCautionsBesideWhatTheyConcern) {
    Plan plan = test::hand_built_plan();
    plan.cautions = {
        {planner::Level::note, "a", {}, {}, "concerns the whole", "x"},
        {planner::Level::caution, "b", 2, {}, "concerns the day", "x"},
        {planner::Level::caution, "c", 2, planner::LegNumber{4}, "concerns the leg", "x"}};
    const std::string html = metric_book(plan);
    EXPECT_THAT(between(html, "<section id=\"trip\"", "</section>"),
                HasSubstr("concerns the whole"));
    const std::string day = between(html, "id=\"day-2\"", "</section>");
    EXPECT_THAT(day, HasSubstr("concerns the day"));
    EXPECT_THAT(between(day, "Upper river", "</tbody>"), HasSubstr("concerns the leg"));
    EXPECT_EQ(count(html, "concerns the leg"), 1U);
    EXPECT_EQ(count(html, "concerns the day"), 1U);
    EXPECT_THAT(html, Not(HasSubstr("cannot be done")));
}

TEST(Book, SaysFirstThatAPlanCannotBeDone) {
    Plan plan = test::hand_built_plan();
    planner::Caution wind{planner::Level::stop,
                          "wind",
                          1,
                          planner::LegNumber{2},
                          "The wind stops the boat.",
                          "docs/models/wind.md"};
    wind.title = "Wind stops the boat";
    plan.cautions.push_back(wind);
    plan.verdict = planner::verdict_of(plan, {{"wind", "wind", "/weather/wind", {}}});
    const std::string html = metric_book(plan);
    EXPECT_LT(html.find("This plan cannot be done."), html.find("<h3>Map</h3>"));
    const std::string verdict = between(html, "class=\"verdict cannot\"", "</div>");
    EXPECT_THAT(verdict, HasSubstr("<a href=\"#day-1\"><bdi>Wind stops the boat: day 1, leg 2"));
    EXPECT_THAT(verdict, HasSubstr("Not judged, because not given: wind."));
    EXPECT_EQ(count(html, "The wind stops the boat."), 1U) << "its paragraph stands with its leg";
}

TEST(Book, NamesHazardsAtTheHeadOfTheirDayAndAlongTheirLeg) {
    Plan plan = test::hand_built_plan();
    plan.hazards = {{.hazard = true,
                     .place = planner::PlaceKind::hazard,
                     .name = "Sieve bend",
                     .note = "keep left",
                     .day = 2,
                     .leg = 4,
                     .along_m = 20500.0},
                    {.hazard = false,
                     .place = planner::PlaceKind::camp,
                     .name = "Birch spit",
                     .note = "no fires",
                     .day = 2,
                     .leg = 4,
                     .along_m = 21000.0}};
    const std::string html = metric_book(plan);
    const std::string day = between(html, "id=\"day-2\"", "</section>");
    EXPECT_THAT(between(day, "Hazards on this day:", "</p>"), HasSubstr("Sieve bend"));
    EXPECT_THAT(between(day, "Hazards on this day:", "</p>"), Not(HasSubstr("Birch spit")));
    EXPECT_THAT(between(day, "Upper river", "</tbody>"), HasSubstr("keep left"));
    EXPECT_THAT(between(day, "Upper river", "</tbody>"), HasSubstr("no fires"));
    EXPECT_THAT(between(html, "id=\"day-1\"", "</section>"), Not(HasSubstr("Hazards on")));
}

TEST(Book, SetsTheHourOfTheAlarmFromThePlannedReturn) {
    Plan plan = test::hand_built_plan();
    const auto sheet = [](const Plan& of) {
        return between(metric_book(of), "class=\"strong\"", "</dl>");
    };
    EXPECT_THAT(sheet(plan), HasSubstr("agree on it"));
    EXPECT_THAT(sheet(plan), HasSubstr("class=\"blank-line\""));
    plan.trip.contact.alarm_after = std::chrono::hours{20};
    // The bus leaves on Sunday the 20th at 18:05.
    EXPECT_THAT(sheet(plan), HasSubstr("Mon 21 June 2027, 14:05 (UTC+02:00)"));
    const std::string html = metric_book(plan);
    const std::string back = between(html, "Planned return", "class=\"strong\"");
    EXPECT_THAT(back, HasSubstr("Sun 20 June 2027, 18:05"));
    EXPECT_THAT(back, HasSubstr("morning bus from Road bridge"));
    EXPECT_THAT(back, HasSubstr("the next one: Mon 21 June 2027, 09:10"));
    plan.connections.clear();
    // The plan arrives on that day at 11:51.
    EXPECT_THAT(sheet(plan), HasSubstr("Mon 21 June 2027, 07:51 (UTC+02:00)"));
    EXPECT_THAT(sheet(plan), HasSubstr("after the planned return"));
}

TEST(Book, ShowsLoadsInTheUnitsAskedFor) {
    const Plan plan = test::hand_built_plan();
    const planner::Route route = test::hand_built_route(plan);
    // Ada's pack over the saddle: 19.104 kg; 1 lb is 0.45359237 kg, so 42.1 lb.
    EXPECT_THAT(book(plan, route, UnitSystem::metric), HasSubstr("19.1\u00A0kg"));
    const std::string pounds = book(plan, route, UnitSystem::imperial);
    EXPECT_THAT(pounds, HasSubstr("42.1\u00A0lb"));
    EXPECT_THAT(pounds, Not(HasSubstr("\u00A0kg")));
}

TEST(Book, SaysThatHeightsAreUnknown) {
    const Plan plan = test::hand_built_plan();
    const planner::Route route = test::without_heights(test::hand_built_route(plan));
    EXPECT_THAT(book(plan, route, UnitSystem::metric), HasSubstr("Heights are unknown"));
}

TEST(Book, DrawsARouteOverTheAntimeridianAndByThePole) {
    const Plan plan = test::hand_built_plan();
    for (const geo::Position& start :
         {geo::Position{66.0, 179.8}, geo::Position{-16.8, 179.8}, geo::Position{89.9, 20.0}}) {
        const std::string html =
            book(plan, test::hand_built_route(plan, start), UnitSystem::metric);
        const std::string map = between(html, "<svg class=\"map\"", "</svg>");
        EXPECT_THAT(map, Not(HasSubstr("nan")));
        EXPECT_THAT(map, Not(HasSubstr("inf")));
        // The route of 46 km fills the width of 700; a torn one would be a smear of a few pixels.
        const std::string band = between(map, "class=\"fill\"", "</g>");
        EXPECT_GT(band.size(), 400U) << start.lat_deg;
        EXPECT_GT(count(map, "<path"), 10U);
    }
}

TEST(Book, TellsLightAlsoWhereTheSunStaysUpOrDown) {
    Plan plan = test::hand_built_plan();
    plan.days[0].light = {};
    plan.days[0].light.sun.day = geo::SunDay::always_above;
    plan.days[0].light.twilight.day = geo::SunDay::always_above;
    plan.days[1].light = {};
    plan.days[1].light.sun.day = geo::SunDay::always_below;
    plan.days[1].light.twilight.day = geo::SunDay::always_below;
    const std::string html = metric_book(plan);
    EXPECT_THAT(between(html, "id=\"day-1\"", "</section>"), HasSubstr("The sun does not set."));
    EXPECT_THAT(between(html, "id=\"day-2\"", "</section>"),
                HasSubstr("The sun does not rise; dark all day."));
}

TEST(Book, OfSixtyDaysStaysSmall) {
    EXPECT_LT(metric_book(test::repeated(test::hand_built_plan(), 20)).size(), 1'500'000U);
}

} // namespace tumpline::cli

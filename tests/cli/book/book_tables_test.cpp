/// The tables of the book as people read them: each figure under its heading, worked from the
/// hand-built plan; what stands beside each cell on a narrow screen agrees with the heading.

#include "cli/book/book.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/html_tables.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using Row = std::map<std::string, std::string>;

std::string hand_built_book(const planner::Plan& plan = test::hand_built_plan()) {
    return book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
}

TEST(BookTables, OfTheTripAtAGlance) {
    const test::HtmlTable table = test::table_with(
        hand_built_book(), {"Day", "To", "On the way", "Up, down", "Hours", "Heaviest"});
    ASSERT_EQ(table.rows.size(), 3U);
    EXPECT_EQ(table.row("1 Fri 18 June"),
              (Row{{"Day", "1 Fri 18 June"},
                   {"To", "Birch spit"},
                   {"On the way", "17.3 km walk 14.2 km, afloat 3.1 km"},
                   {"Up, down", "620 m 310 m"},
                   {"Hours", "08:00–15:26 5 h 59 min moving"}, // 18 600 s and 2 940 s
                   {"Heaviest", "20.2 kg Björn"}}));
    EXPECT_EQ(table.row("2 Sat 19 June"),
              (Row{{"Day", "2 Sat 19 June"},
                   {"To", "Gravel bar"},
                   {"On the way", "15.1 km portage 1.10 km, afloat 14.0 km"},
                   {"Up, down", "12 m 100 m"}, // 68 m and 33 m, to 5 m
                   {"Hours", "08:00–11:53 2 h 49 min moving"},
                   {"Heaviest", "13.9 kg Björn"}}));
}

TEST(BookTables, OfTheWaysToCarry) {
    const std::string html = hand_built_book();
    const test::HtmlTable all =
        test::table_with(html, {"Carries", "Time", "Each walks", "Heaviest load", "Of the limit"});
    EXPECT_EQ(all.row("one carry, boats inflated"),
              (Row{{"Carries", "one carry, boats inflated"},
                   {"Time", "41 min 33 min shorter"}, // 1 260 s and 1 200 s; 1 980 s
                   {"Each walks", "1.1 km"},
                   {"Heaviest load", "17.7 kg Björn"},
                   {"Of the limit", "129 % over it on one portage, by 4.0 kg at most"}}));
    const test::HtmlTable one = test::table_with(
        html,
        {"Carries", "Time", "Of which transitions", "Each walks", "Heaviest load", "Of the limit"});
    EXPECT_EQ(one.row("one carry, boats rolled"),
              (Row{{"Carries", "one carry, boats rolled"},
                   {"Time", "1 h 56 min"}, // 1 230 s and 5 700 s
                   {"Of which transitions", "1 h 35 min"},
                   {"Each walks", "1.1 km"},
                   {"Heaviest load", "17.9 kg Björn"},
                   {"Of the limit", "130 %, over it"}}));
}

TEST(BookTables, OfTheLegsOfADay) {
    const test::HtmlTable table =
        test::table_with(hand_built_book(), {"Leg", "Length", "Up, down", "From, to", "Moving"}, 1);
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_EQ(table.row("3 Fall carry portage"),
              (Row{{"Leg", "3 Fall carry portage"},
                   {"Length", "1.10 km 3.3 km walked"},
                   {"Up, down", "12 m 68 m"},
                   {"From, to", "08:00 09:14"},
                   {"Moving", "54 min 46 min to 1 h 08 min"}})); // 2 760 s and 4 100 s
    const std::vector<std::string>& river = table.rows[1];
    EXPECT_EQ(river[1], "14.0 km");
    EXPECT_EQ(river[2], "0 m 33 m");
    EXPECT_EQ(river[3], "09:14 11:53");
    EXPECT_EQ(river[4], "1 h 55 min 1 h 42 min to 2 h 23 min");
}

TEST(BookTables, OfThePeopleOfADay) {
    planner::Plan plan = test::hand_built_plan();
    planner::MemberDay& second = plan.days[2].members[1];
    second.set_off_kg = 12.3;
    second.heaviest_kg = 16.4;
    second.food_kg = 0.72;
    second.water_l = 4.6;
    second.energy_j = 2930.0 * 4184.0;
    const test::HtmlTable table = test::table_with(
        hand_built_book(plan), {"Person", "Sets off", "Worst", "Eats", "Drinks"}, 2);
    EXPECT_EQ(table.row("Björn"),
              (Row{{"Person", "Björn"},
                   {"Sets off", "12.3 kg"},
                   {"Worst", "16.4 kg leg 5"},
                   {"Eats", "720 g 2930 kcal"},
                   {"Drinks", "4.6 L"}}));
}

TEST(BookTables, OfTheBoatsOfADay) {
    const test::HtmlTable table =
        test::table_with(hand_built_book(), {"Boat", "Load", "Left", "Right", "At hand"}, 0);
    EXPECT_EQ(table.row("red boat leg 2"),
              (Row{{"Boat", "red boat leg 2"},
                   {"Load", "77.5 kg of 160.0 kg; freeboard 18 cm"},
                   {"Left", "3.7 kg"},
                   {"Right", "2.6 kg"},
                   {"At hand", "1.4 kg"}}));
}

TEST(BookTables, OfWhoCarriesWhatOverAPortage) {
    const test::HtmlTable table = test::table_with(hand_built_book(), {"Person", "Load", "Weight"});
    EXPECT_EQ(table.rows,
              (std::vector<std::vector<std::string>>{{"Ada", "1. pack", "12.9 kg"},
                                                     {"Ada", "2. red boat , paddle", "3.9 kg"},
                                                     {"Björn", "1. pack", "13.9 kg"},
                                                     {"Björn", "2. blue boat", "3.8 kg"}}));
}

TEST(BookTables, OfFoodFuelAndWater) {
    planner::Plan plan = test::hand_built_plan();
    plan.stages[0].bearer_share = {0.36, 0.64};
    plan.days[1].food_kg = 1.4;
    plan.days[1].fuel_kg = 0.08;
    plan.days[1].water_l = 9.2;
    const std::string html = hand_built_book(plan);
    EXPECT_EQ(
        test::table_with(
            html, {"Person", "Breakfasts: 2", "Trail food, days: 3", "Dinners: 3", "Together"})
            .row("Ada"),
        (Row{{"Person", "Ada"},
             {"Breakfasts: 2", "920 g"},
             {"Trail food, days: 3", "1.7 kg"},
             {"Dinners: 3", "1.2 kg"},
             {"Together", "3.8 kg"}}));
    const test::HtmlTable shares = test::table_with(html, {"Person", "Share"});
    EXPECT_EQ(shares.row("Ada").at("Share"), "36 %");
    EXPECT_EQ(shares.row("Björn").at("Share"), "64 %");
    EXPECT_EQ(test::table_with(html, {"Day", "Food eaten", "Fuel burnt", "Water drunk"})
                  .row("2 Sat 19 June"),
              (Row{{"Day", "2 Sat 19 June"},
                   {"Food eaten", "1.4 kg"},
                   {"Fuel burnt", "80 g"},
                   {"Water drunk", "9.2 L"}}));
    const test::HtmlTable water = test::table_with(html, {"From, to", "Distance", "Fill"});
    EXPECT_EQ(water.row("Road end to Shelf spring day 1"),
              (Row{{"From, to", "Road end to Shelf spring day 1"},
                   {"Distance", "6.3 km 2 h 40 min"},
                   {"Fill", "Ada 2.7 L, Björn 2.8 L vessels hold 4.0 L each"}}));
}

TEST(BookTables, OfTheWaysOut) {
    const test::HtmlTable table = test::table_with(hand_built_book(), {"At", "Forward", "Back"});
    EXPECT_EQ(table.row("6.0 km"),
              (Row{{"At", "6.0 km"},
                   {"Forward", "8 h 53 min"}, // 40 km at 800 s
                   {"Back", "1 h 50 min"}})); // 6 km at 1 100 s
    // Where they lead stands in the first row that leads there.
    EXPECT_THAT(table.rows.front().at(1), testing::EndsWith(" to Road bridge"));
    EXPECT_THAT(table.rows.front().at(2), testing::EndsWith(" to Road end"));
}

TEST(BookTables, OfTheMeetings) {
    const test::HtmlTable table =
        test::table_with(hand_built_book(), {"What", "Where", "By", "Arrive", "To spare"});
    EXPECT_EQ(table.row("last bus"),
              (Row{{"What", "last bus"},
                   {"Where", "Road bridge"},
                   {"By", "day 3, 18:05 margin 1 h 30 min"},
                   {"Arrive", "11:51"},
                   {"To spare", "4 h 44 min"}}));
}

TEST(BookTables, OfTheContact) {
    const test::HtmlTable table =
        test::table_with(hand_built_book(), {"Day", "From, to", "How", "Camp in the evening"});
    EXPECT_EQ(table.row("1 Fri 18 June"),
              (Row{{"Day", "1 Fri 18 June"},
                   {"From, to", "Road end to Birch spit 08:00 to 15:26; late 16:46"},
                   {"How", "walk 14.2 km, afloat 3.1 km"},
                   {"Camp in the evening",
                    "61.62000, 13.10000 61° 37.200' N, 13° 06.000' E"}})); // 0.62 * 60 = 37.2
}

TEST(BookTables, OfWhatStaysAndWhatComes) {
    const std::string html = hand_built_book();
    EXPECT_EQ(test::table_with(html, {"Thing, and why", "Carry cost saved"})
                  .row("thigh straps (Ada) no leg is of class III or harder")
                  .at("Carry cost saved"),
              "450 g 8.7 kg km, 290 kg m up"); // 19.36 km and 640 m up, to 10 kg m
    EXPECT_EQ(test::table_with(html, {"Thing, and why", "Carry cost"})
                  .row("dry suit (Ada) water at 9 C, below 14 C")
                  .at("Carry cost"),
              "1.4 kg 27.1 kg km, 900 kg m up");
}

/// On a narrow screen each cell has its heading beside it, or one that begins alike.
TEST(BookTables, SayBesideEachCellWhatItsHeadingSays) {
    const std::string html = hand_built_book();
    std::size_t looked_at = 0;
    for (std::size_t table = html.find("<table"); table != std::string::npos;
         table = html.find("<table", table + 1)) {
        const std::string piece = html.substr(table, html.find("</table>", table) - table);
        const std::vector<test::HtmlTable> read = test::tables_of_html(piece + "</table>");
        std::size_t row = piece.find("<tr", piece.find("<tbody"));
        for (; row != std::string::npos; row = piece.find("<tr", row + 1)) {
            const std::string cells = piece.substr(row, piece.find("</tr>", row) - row);
            std::size_t column = 0;
            for (std::size_t at = cells.find("<t", 1); at != std::string::npos;
                 at = cells.find("<t", at + 1)) {
                const std::string tag = cells.substr(at, cells.find('>', at) - at);
                const std::size_t label = tag.find("data-label=\"");
                if (label != std::string::npos && column < read.front().heads.size()) {
                    std::string said = tag.substr(label + 12);
                    said = test::text_of_html(said.substr(0, said.find('"')));
                    const std::string& head = read.front().heads[column];
                    EXPECT_TRUE(said.starts_with(head) || head.starts_with(said))
                        << said << " beside cells under " << head;
                    ++looked_at;
                }
                ++column;
            }
        }
    }
    EXPECT_GT(looked_at, 100U);
}

} // namespace
} // namespace tumpline::cli

#include "cli/app.h"
#include "cli/json/odds_json.h"
#include "cli/text/odds_text.h"
#include "cli/words/text_width.h"
#include "tests/support/random_trip.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdint>
#include <filesystem>
#include <iterator>
#include <sstream>
#include <string>

namespace tumpline::cli {
namespace {

/// Of the sample trip saddle, with these further arguments.
std::string odds(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), "odds");
    arguments.push_back(test::root / "sample-routes" / "saddle" / "trip.json");
    return test::printed(arguments);
}

TEST(OddsCommand, PrintsTheSameBytesOnAnyNumberOfThreads) {
    for (const char* format : {"text", "json"}) {
        const std::string alone = odds({"--draws", "50", "--threads", "1", "--format", format});
        EXPECT_EQ(alone, odds({"--draws", "50", "--threads", "3", "--format", format}));
        EXPECT_EQ(alone, odds({"--draws", "50", "--threads", "8", "--format", format}));
        EXPECT_NE(alone, odds({"--draws", "50", "--seed", "2", "--format", format}));
    }
}

TEST(OddsCommand, EveryKeyOfTheJsonStandsInThePage) {
    const std::string page = test::text_of(test::root / "docs" / "odds.md");
    const auto json = nlohmann::json::parse(odds({"--draws", "20", "--format", "json"}));
    std::size_t keys = 0;
    const auto look = [&](const nlohmann::json& value, const auto& self) -> void {
        if (value.is_object())
            for (const auto& [key, inner] : value.items()) {
                // "time_share" is written there as "_share" with "time"
                const std::size_t end = key.find('_');
                const bool whole = page.find("`" + key + "`") != page.npos;
                const bool in_parts = end != key.npos &&
                                      page.find("`" + key.substr(0, end) + "`") != page.npos &&
                                      page.find("`" + key.substr(end) + "`") != page.npos;
                EXPECT_TRUE(whole || in_parts || (key.size() == 3 && key[0] == 'q')) << key;
                ++keys;
                self(inner, self);
            }
        else if (value.is_array())
            for (const auto& inner : value)
                self(inner, self);
    };
    look(json, look);
    EXPECT_GT(keys, 50U);
}

TEST(OddsCommand, TextKeepsToItsWidth) {
    for (std::uint64_t seed = 1; seed <= 15; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        const planner::Odds odds =
            planner::odds_of(random.trip, random.route, {.draws = 10, .seed = seed, .threads = 2});
        for (const auto units : {planner::UnitSystem::metric, planner::UnitSystem::imperial}) {
            const std::string text = odds_text(odds, {.units = units, .show = show_all("odds")});
            std::istringstream lines(text);
            for (std::string line; std::getline(lines, line);)
                EXPECT_LE(columns_of(line), line_columns) << "seed " << seed << ": " << line;
            EXPECT_EQ(text.find("nan"), text.npos) << "seed " << seed;
        }
        EXPECT_TRUE(nlohmann::json::accept(odds_json(odds, "1"))) << "seed " << seed;
    }
}

} // namespace
} // namespace tumpline::cli

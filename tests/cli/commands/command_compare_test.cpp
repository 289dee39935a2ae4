#include "cli/json/compare_json.h"
#include "cli/text/compare_text.h"
#include "cli/words/text_width.h"
#include "planner/make_plan.h"
#include "tests/support/random_trip.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

planner::Comparison comparison_of(std::uint64_t first_seed, std::size_t count) {
    std::vector<planner::Plan> plans;
    for (std::uint64_t seed = first_seed; plans.size() < count; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        plans.push_back(planner::make_plan(random.trip, random.route));
    }
    return planner::compare(std::move(plans));
}

TEST(CompareCommand, TextKeepsToItsWidth) {
    const std::vector<std::string> labels(8, "trip.json");
    for (const std::size_t count : {2U, 3U, 4U, 8U}) {
        const planner::Comparison comparison = comparison_of(7 * count, count);
        for (const auto units : {planner::UnitSystem::metric, planner::UnitSystem::imperial}) {
            const std::string text =
                compare_text(comparison, labels, {.units = units, .colour = false});
            std::istringstream lines(text);
            for (std::string line; std::getline(lines, line);)
                EXPECT_LE(columns_of(line), line_columns) << line;
            EXPECT_EQ(text.find("nan"), text.npos);
        }
    }
}

TEST(CompareCommand, EveryKeyOfTheJsonStandsInThePage) {
    std::string page = test::text_of(test::root / "docs" / "commands.md");
    page = page.substr(page.find("\n## compare"));
    page = page.substr(0, page.find("\n## ", 1));
    const auto json =
        nlohmann::json::parse(compare_json(comparison_of(1, 3), {"a", "b", "c"}, "1"));
    const auto look = [&](const nlohmann::json& value, const auto& self) -> void {
        if (value.is_object())
            for (const auto& [key, inner] : value.items()) {
                EXPECT_NE(page.find("`" + key + "`"), page.npos) << key;
                self(inner, self);
            }
        else if (value.is_array())
            for (const auto& inner : value)
                self(inner, self);
    };
    look(json, look);
}

const std::string river = (test::root / "sample-routes/desert-river/trip.json").string();

TEST(CompareCommand, LaysATripBesideItselfAtALevelOfItsRivers) {
    const auto json = nlohmann::json::parse(
        test::printed({"compare", river, "--flow", "high", "--format", "json"}));
    ASSERT_EQ(json["plans"].size(), 2U);
    EXPECT_EQ(json["plans"][0]["label"], river);
    EXPECT_EQ(json["plans"][1]["label"], river + " with --flow high");
    const auto figure = [&](const nlohmann::json& plan) {
        return plan["totals"]["moving_s"].get<double>();
    };
    const auto alone = [&](const std::vector<std::string>& more) {
        std::vector<std::string> arguments{"plan", river, "--format", "json"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return figure(nlohmann::json::parse(test::printed(arguments)));
    };
    const double usual_s = alone({});
    const double high_s = alone({"--flow", "high"});
    EXPECT_LT(high_s, usual_s);
    const nlohmann::json& moving_s = json["totals"]["moving_s"]["values"];
    EXPECT_EQ(moving_s[0].get<double>(), usual_s);
    EXPECT_EQ(moving_s[1].get<double>(), high_s);
}

TEST(CompareCommand, LaysATripSideBySideAtEachLevel) {
    const std::string text = test::printed({"compare", river, "--flow", "each"});
    const auto low = text.find("with --flow low");
    const auto normal = text.find("with --flow normal");
    const auto high = text.find("with --flow high");
    ASSERT_NE(high, text.npos);
    EXPECT_LT(low, normal);
    EXPECT_LT(normal, high);
}

TEST(CompareCommand, SaysWhereNoRiverGivesALevel) {
    const std::string tarn = (test::root / "sample-routes/saddle/trip.json").string();
    const test::Said each = test::say({"compare", tarn, "--flow", "each"});
    EXPECT_EQ(each.code, ExitCode::bad_input);
    EXPECT_NE(each.err.find("no river with two levels"), each.err.npos);
    const test::Said two = test::say({"compare", tarn, river, "--flow", "each"});
    EXPECT_EQ(two.code, ExitCode::bad_input);
    EXPECT_NE(two.err.find("--flow low, normal or high"), two.err.npos);
    const test::Said high = test::say({"compare", tarn, river, "--flow", "high"});
    std::string joined = high.out; // lines are folded
    std::replace(joined.begin(), joined.end(), '\n', ' ');
    EXPECT_NE(joined.find("none of its"), joined.npos);
}

} // namespace
} // namespace tumpline::cli

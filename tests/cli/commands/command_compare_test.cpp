#include "cli/json/compare_json.h"
#include "cli/text/compare_text.h"
#include "cli/words/text_width.h"
#include "planner/make_plan.h"
#include "tests/support/random_trip.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

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

} // namespace
} // namespace tumpline::cli

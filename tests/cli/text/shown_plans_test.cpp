/// What must hold of every plan that is shown, over made-up trips.

#include "cli/export/plan_csv.h"
#include "cli/json/plan_json.h"
#include "cli/text/plan_text.h"
#include "cli/words/text_width.h"
#include "planner/make_plan.h"
#include "tests/support/random_trip.h"
#include "tests/support/source_tree.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

constexpr std::uint64_t first_seed = 1;
constexpr std::uint64_t last_seed = 60;

planner::Plan plan_of(std::uint64_t seed) {
    const test::RandomTrip random = test::random_trip(seed);
    return planner::make_plan(random.trip, random.route);
}

std::set<std::string> caution_codes() {
    std::set<std::string> codes;
    std::ifstream lines(test::root / "docs" / "cautions.md");
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with("| `"))
            codes.insert(line.substr(3, line.find('`', 3) - 3));
    for (const char* level : {"note", "caution", "stop"}) // explained on the same page
        codes.erase(level);
    return codes;
}

class ShownPlans : public testing::TestWithParam<std::uint64_t> {};

TEST_P(ShownPlans, TextKeepsToItsWidth) {
    const planner::Plan plan = plan_of(GetParam());
    for (const auto units : {planner::UnitSystem::metric, planner::UnitSystem::imperial})
        for (const std::string& text :
             {plan_text(plan, {.units = units, .show = show_all("plan")}),
              pack_text(plan, {.units = units, .show = show_all("pack")})}) {
            std::istringstream lines(text);
            for (std::string line; std::getline(lines, line);)
                EXPECT_LE(columns_of(line), line_columns) << "seed " << GetParam() << ": " << line;
            EXPECT_EQ(text.find("nan"), text.npos) << "seed " << GetParam();
            EXPECT_EQ(text.find("inf "), text.npos) << "seed " << GetParam();
        }
}

/// Figures whose unit stands at the beginning of the next line.
std::vector<std::string> parted_figures(const std::string& text) {
    static const std::regex parted(
        R"re([0-9]( (h|ft|lb))?\n *((\d\d min|h|min|kg|g|km|m|km/h|lb|oz|ft|mi|L|ml|%|kcal)[ .,;:)\n]).*)re");
    std::vector<std::string> found;
    for (auto at = std::sregex_iterator(text.begin(), text.end(), parted);
         at != std::sregex_iterator();
         ++at)
        if (!(*at)[2].matched || (*at)[4].str().ends_with("min"))
            found.push_back(at->str());
    return found;
}

TEST_P(ShownPlans, FiguresStayWithTheirUnitsAtAnyWidth) {
    const planner::Plan plan = plan_of(GetParam());
    // Each seed some of the widths, all of them together every width from 72 to 120.
    for (std::size_t columns = least_columns + GetParam() % 7; columns <= most_columns;
         columns += 7) {
        const std::string text = plan_text(plan, {.columns = columns, .show = show_all("plan")});
        EXPECT_TRUE(parted_figures(text).empty())
            << columns << " columns: " << parted_figures(text).front();
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);)
            EXPECT_LE(columns_of(line), columns) << line;
    }
}

TEST_P(ShownPlans, JsonAndCsvHaveTheirShape) {
    const planner::Plan plan = plan_of(GetParam());
    const auto json = nlohmann::json::parse(plan_json(plan, "1"));
    ASSERT_EQ(json["legs"].size(), plan.legs.size());
    for (const auto& leg : json["legs"]) {
        for (const char* key : {"distance_m", "moving_s", "changeover_s", "lengths"})
            EXPECT_TRUE(leg[key].is_number()) << "seed " << GetParam() << ": " << key;
        // null where no heights are known
        EXPECT_TRUE(leg["ascent_m"].is_number() || leg["ascent_m"].is_null());
    }
    const std::string csv = plan_csv(plan);
    EXPECT_EQ(static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n')),
              plan.legs.size() + 1);
}

TEST_P(ShownPlans, EveryCautionHasItsLineInThePage) {
    static const std::set<std::string> codes = caution_codes();
    for (const planner::Caution& caution : plan_of(GetParam()).cautions)
        EXPECT_EQ(codes.count(caution.code), 1U)
            << caution.code << " is not in docs/cautions.md; seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, ShownPlans, testing::Range(first_seed, last_seed + 1));

TEST(CautionsPage, EveryCodeIsSaidSomewhereInThePlanner) {
    std::string sources;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(test::root / "planner"))
        if (entry.path().extension() == ".cpp" &&
            entry.path().filename() != "caution_titles.cpp") { // names them all, says none
            std::ifstream in(entry.path());
            sources.append(std::istreambuf_iterator<char>(in), {});
        }
    ASSERT_GT(caution_codes().size(), 10U);
    for (const std::string& code : caution_codes())
        EXPECT_NE(sources.find(fmt::format("\"{}\"", code)), sources.npos) << code;
}

} // namespace
} // namespace tumpline::cli

#include "cli/app.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

/// Headline figures of a sample trip as planned here: they guard against drift and prove nothing.
/// In expected.json each figure stands under its JSON pointer into the plan, numbers with a
/// tolerance: {"exit": 0, "figures": {"/totals/walk_m": [22100, 10], "/totals/days": [4, 0]}}.
class SamplePlans : public testing::TestWithParam<const char*> {};

TEST_P(SamplePlans, KeepTheirHeadlineFigures) {
    const fs::path folder = test::root / "sample-routes" / GetParam();
    std::ifstream in(folder / "expected.json");
    ASSERT_TRUE(in) << folder << " has no expected.json";
    const Json expected = Json::parse(in);
    EXPECT_EQ(expected.at("published"), false);

    std::ostringstream out, err;
    const ExitCode code =
        run({"plan", (folder / "trip.json").string(), "--format", "json"}, {out, err});
    EXPECT_EQ(static_cast<int>(code), expected.at("exit").get<int>()) << err.str();
    const Json plan = Json::parse(out.str());

    const Json& figures = expected.at("figures");
    EXPECT_GE(figures.size(), 8U);
    for (const auto& [pointer, figure] : figures.items()) {
        const Json::json_pointer at(pointer);
        ASSERT_TRUE(plan.contains(at)) << pointer << " is not in the plan";
        const Json& planned = plan.at(at);
        if (figure.is_array())
            EXPECT_NEAR(planned.get<double>(), figure[0].get<double>(), figure[1].get<double>())
                << pointer << " is now " << planned;
        else
            EXPECT_EQ(planned, figure) << pointer << " is now " << planned;
    }
}

INSTANTIATE_TEST_SUITE_P(All,
                         SamplePlans,
                         testing::Values("saddle",
                                         "lake-chain",
                                         "desert-river",
                                         "three-day-pass",
                                         "fourteen-portages",
                                         "five-over-two-passes",
                                         "northern-autumn"),
                         [](const auto& row) {
                             std::string name = row.param;
                             for (char& letter : name)
                                 if (letter == '-')
                                     letter = '_';
                             return name;
                         });

} // namespace
} // namespace tumpline::cli

#include "cli/app.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::printed;
using test::root;

const fs::path recording = root / "sample-routes" / "saddle" / "recorded.gpx";

nlohmann::json learned(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"pace", recording.string(), "--format", "json"});
    return nlohmann::json::parse(printed(arguments));
}

const fs::path trip = root / "sample-routes" / "saddle" / "trip.json";

TEST(PaceCommand, BesideAPlanEveryLegHasALine) {
    const std::string text = printed({"pace", recording.string(), "--against", trip.string()});
    EXPECT_THAT(text, testing::HasSubstr("Beside the plan"));
    EXPECT_THAT(text, testing::HasSubstr("Upper river"));
    // The recording was made elsewhere: nothing of it belongs to the route.
    EXPECT_THAT(text, testing::HasSubstr("off the route: 3 h"));
    EXPECT_EQ(learned({"--against", trip.string()})["against"]["on_foot"], nullptr);
}

TEST(PaceCommand, EveryKeyOfItsJsonIsTold) {
    const std::string page = test::text_of(root / "docs" / "pace.md");
    const auto json = learned({"--against", trip.string()});
    const auto told = [&](const nlohmann::json& object) {
        for (const auto& [key, value] : object.items())
            EXPECT_NE(page.find("`" + key + (value.is_array() ? "[]`" : "`")), std::string::npos)
                << key;
    };
    told(json);
    told(json.at("pace"));
    told(json.at("slopes").at(0));
    told(json.at("models").at(0));
    told(json.at("lines").at(0));
    told(json.at("against"));
    told(json.at("against").at("legs").at(0));
}

TEST(PaceCommand, UnitsChangeNothingThatProgramsRead) {
    EXPECT_EQ(learned({}), learned({"--units", "imperial"}));
}

TEST(PaceCommand, APackThatIsNamedMakesThePaceWithoutItFaster) {
    const double bare = learned({})["pace"]["value"];
    const double under = learned({"--load", "15 kg", "--body", "70 kg"})["pace"]["value"];
    EXPECT_GT(under, 1.05 * bare);
    EXPECT_LT(under, 1.6 * bare);
}

TEST(PaceCommand, ItsLinesAreLinesOfATripFile) {
    const auto json = learned({});
    ASSERT_GE(json.at("lines").size(), 4U);
    std::vector<std::string> arguments = {
        "plan", (root / "sample-routes" / "saddle" / "trip.json").string()};
    for (const auto& line : json.at("lines")) {
        const auto entry = nlohmann::json::parse("{" + line.at("line").get<std::string>() + "}");
        for (const auto& [key, value] : entry.items()) {
            arguments.emplace_back("--set");
            arguments.push_back(line.at("place").get<std::string>() + "/" + key + "=" +
                                (value.is_string() ? value.get<std::string>() : value.dump()));
        }
    }
    const test::Said said = test::say(arguments);
    EXPECT_NE(said.code, ExitCode::bad_input) << said.err;
}

TEST(PaceCommand, ALoadWithoutABodyIsRefused) {
    for (const auto& [option, mass] : std::vector<std::pair<std::string, std::string>>{
             {"--load", "15 kg"}, {"--body", "70 kg"}}) {
        const test::Said said = test::say({"pace", recording.string(), option, mass});
        EXPECT_EQ(said.code, ExitCode::bad_input) << option;
        EXPECT_THAT(said.err, testing::HasSubstr("only one of --load and --body")) << option;
    }
}

} // namespace
} // namespace tumpline::cli

#include "cli/app.h"
#include "geo/lines/geodesic.h"
#include "planner/plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <iterator>
#include <set>
#include <sstream>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::root;
using test::Said;
using test::say;
using test::text_of;
using testing::HasSubstr;

/// The text with every line taken into force that can be.
std::string all_in_force(const std::string& text) {
    std::istringstream lines(text);
    std::string result;
    for (std::string line; std::getline(lines, line);) {
        const std::size_t start = line.find_first_not_of(' ');
        if (start != std::string::npos &&
            (line.compare(start, 4, "// \"") == 0 || line.compare(start, 4, "// {") == 0))
            line.erase(start, 3);
        result += line + "\n";
    }
    return result;
}

void keys_of(const nlohmann::json& schema, std::set<std::string>& keys) {
    if (schema.is_object()) {
        if (const auto found = schema.find("properties"); found != schema.end())
            for (const auto& [key, value] : found->items())
                keys.insert(key);
        for (const auto& [key, value] : schema.items())
            keys_of(value, keys);
    } else if (schema.is_array()) {
        for (const auto& value : schema)
            keys_of(value, keys);
    }
}

class NewCommand : public testing::Test {
  protected:
    Said make(const fs::path& track, const std::vector<std::string>& more = {}) {
        std::vector<std::string> arguments = {"new", track};
        arguments.insert(arguments.end(), more.begin(), more.end());
        arguments.insert(arguments.end(), {"-o", output});
        return say(arguments);
    }

    test::TempFolder folder;
    fs::path output = folder.path() / "trip.json";
    fs::path saddle = root / "sample-routes" / "saddle" / "saddle.gpx";
};

TEST_F(NewCommand, EverySampleBecomesATripThatPlansAtOnce) {
    const std::vector<std::string> samples = {"saddle/saddle.gpx",
                                              "saddle/recorded.gpx",
                                              "lake-chain/lake-chain.gpx",
                                              "desert-river/desert-river.geojson",
                                              "three-day-pass/three-day-pass.gpx",
                                              "fourteen-portages/fourteen-portages.gpx",
                                              "five-over-two-passes/five-over-two-passes.gpx",
                                              "northern-autumn/northern-autumn.gpx"};
    for (const std::string& sample : samples) {
        fs::remove(output);
        const Said said = make(root / "sample-routes" / sample);
        ASSERT_EQ(said.code, ExitCode::done) << sample << said.err;
        EXPECT_EQ(say({"check", output}).code, ExitCode::done) << sample;
        const Said plan = say({"plan", output});
        EXPECT_NE(plan.code, ExitCode::bad_input) << sample << plan.err;
        EXPECT_NE(plan.code, ExitCode::fault) << sample << plan.err;
        EXPECT_THAT(plan.out, HasSubstr("Days")) << sample;
    }
}

TEST_F(NewCommand, TheLegsOfASampleAreThoseOfItsTripFile) {
    ASSERT_EQ(make(saddle).code, ExitCode::done);
    const planner::Route made = planner::build_route(planner::read_trip(output));
    const planner::Route known =
        planner::build_route(planner::read_trip(saddle.parent_path() / "trip.json"));
    ASSERT_EQ(made.legs.size(), known.legs.size());
    for (std::size_t i = 0; i < made.legs.size(); ++i) {
        EXPECT_EQ(made.legs[i].travel, known.legs[i].travel) << i;
        EXPECT_EQ(made.legs[i].spec.water, known.legs[i].spec.water) << i;
        EXPECT_NEAR(made.legs[i].to_m, known.legs[i].to_m, 1.0) << i;
    }
}

TEST_F(NewCommand, EveryKeyOfTheTripFileStandsInIt) {
    ASSERT_EQ(make(saddle).code, ExitCode::done);
    const std::string text = text_of(output);
    std::set<std::string> keys;
    keys_of(nlohmann::json::parse(text_of(root / "docs" / "trip.schema.json")), keys);
    EXPECT_GT(keys.size(), 80U);
    for (const std::string& key : keys)
        EXPECT_NE(text.find("\"" + key + "\""), std::string::npos) << key;
}

TEST_F(NewCommand, EveryLineCanBeTakenIntoForce) {
    for (const char* name : {"saddle/saddle.gpx", "lake-chain/lake-chain.gpx"}) {
        fs::remove(output);
        ASSERT_EQ(make(root / "sample-routes" / name).code, ExitCode::done);
        const std::string before = text_of(output);
        const std::string text = all_in_force(before);
        EXPECT_GT(before.size(), text.size() + 150) << "few lines were taken into force";
        EXPECT_NO_THROW(static_cast<void>(planner::read_trip_text(text, output)));
    }
}

TEST_F(NewCommand, NeverOverwrites) {
    folder.write("trip.json", "mine");
    const Said said = make(saddle);
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_THAT(said.err, HasSubstr("there already"));
    EXPECT_EQ(text_of(output), "mine");
    EXPECT_EQ(say({"new", saddle, "-o", saddle}).code, ExitCode::bad_input);
    fs::remove(output);
    fs::create_symlink(folder.path() / "nowhere", output); // not even what points to nothing
    EXPECT_EQ(make(saddle).code, ExitCode::bad_input);
    EXPECT_FALSE(fs::exists(folder.path() / "nowhere"));
}

TEST_F(NewCommand, AllProblemsAreToldTogetherAndNothingIsWritten) {
    const Said said = make("one.gpx", {"two.gpx", "--elevation", "three.tif"});
    EXPECT_EQ(said.code, ExitCode::bad_input);
    for (const char* name : {"one.gpx", "two.gpx", "three.tif"})
        EXPECT_THAT(said.err, HasSubstr(name));
    EXPECT_FALSE(fs::exists(output));
}

TEST_F(NewCommand, NamesThatWouldBreakTheFileDoNot) {
    const fs::path track =
        folder.write("odd.gpx",
                     "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"test\" "
                     "xmlns=\"http://www.topografix.com/GPX/1/1\">"
                     "<wpt lat=\"61\" lon=\"1\"><name>\"quoted\" \\ camp &#10; // x</name></wpt>"
                     "<wpt lat=\"61\" lon=\"1\"><name>what &#10;is this</name></wpt>"
                     "<wpt lat=\"63\" lon=\"1\"><name>far camp</name></wpt>"
                     "<trk><name>a \"b\" */ c</name><trkseg><trkpt lat=\"61\" lon=\"1\"/>"
                     "<trkpt lat=\"61.02\" lon=\"1\"/></trkseg></trk></gpx>");
    ASSERT_EQ(make(track).code, ExitCode::done);
    EXPECT_EQ(say({"plan", output}).code, ExitCode::done) << text_of(output);
    EXPECT_NO_THROW(
        static_cast<void>(planner::read_trip_text(all_in_force(text_of(output)), output)));
    EXPECT_THAT(text_of(output), HasSubstr("km off the route"));
}

TEST_F(NewCommand, AFileWhoseNameATripCannotHoldIsRefused) {
    const std::string gpx = "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"test\" "
                            "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>up</name>"
                            "<trkseg><trkpt lat=\"61\" lon=\"1\"/><trkpt lat=\"61.02\" "
                            "lon=\"1\"/></trkseg></trk></gpx>";
    for (const char* name : {"two\nlines.gpx", "caf\xE9.gpx"}) {
        const Said said = make(folder.write(name, gpx));
        EXPECT_EQ(said.code, ExitCode::bad_input);
        EXPECT_THAT(said.err, HasSubstr("rename the file"));
        EXPECT_FALSE(fs::exists(output));
    }
}

TEST_F(NewCommand, TwoFilesInTheWrongOrderPlanInThatOfTheWay) {
    const auto line = [&](const char* name, int from_m, int to_m) {
        std::string gpx =
            fmt::format("<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"test\" "
                        "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>{}"
                        "</name><trkseg>",
                        name);
        for (int along_m = from_m; along_m <= to_m; along_m += 100) {
            const geo::Position at = geo::destination({61.0, 1.0}, 45.0, along_m);
            gpx += fmt::format("<trkpt lat=\"{:.7f}\" lon=\"{:.7f}\"><ele>{}</ele></trkpt>",
                               at.lat_deg,
                               at.lon_deg,
                               along_m < 5000 ? 400.0 + 0.02 * along_m : 510.0 - 0.002 * along_m);
        }
        return folder.write(fmt::format("{}.gpx", name), gpx + "</trkseg></trk></gpx>");
    };
    const fs::path river = line("long river", 5000, 24000);
    const Said said = make(river, {line("approach", 0, 5000)});
    ASSERT_EQ(said.code, ExitCode::done) << said.err;
    EXPECT_THAT(said.out, HasSubstr("another order than the way"));
    const planner::Route route = planner::build_route(planner::read_trip(output));
    ASSERT_EQ(route.legs.size(), 2U);
    EXPECT_EQ(route.legs[0].name, "approach");
    EXPECT_FALSE(route.legs[0].turned_round || route.legs[1].turned_round);
    EXPECT_NEAR(route.legs[1].profile.heights_m.front(), 500.0, 2.0) << "down the river, not up";
    EXPECT_NEAR(route.legs[1].profile.heights_m.back(), 462.0, 2.0);
}

TEST_F(NewCommand, ATrackThatIsCutComesOutAtItsLengths) {
    std::string gpx = "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"test\" "
                      "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>all of it</name>"
                      "<trkseg>";
    for (int i = 0; i <= 400; ++i) { // 4 km up, 2 km of lake, 2 km on
        const double height_m = i <= 200 ? 300.0 + i : (i <= 300 ? 500.0 : 500.0 + (i - 300));
        const geo::Position at = geo::destination({61.0, 1.0}, 45.0, 20.0 * i);
        gpx += fmt::format("<trkpt lat=\"{:.7f}\" lon=\"{:.7f}\"><ele>{}</ele></trkpt>",
                           at.lat_deg,
                           at.lon_deg,
                           height_m);
    }
    ASSERT_EQ(make(folder.write("all.gpx", gpx + "</trkseg></trk></gpx>")).code, ExitCode::done);
    const planner::Route route = planner::build_route(planner::read_trip(output));
    ASSERT_EQ(route.legs.size(), 3U);
    EXPECT_EQ(route.legs[1].travel, planner::Travel::paddle);
    EXPECT_NEAR(route.legs[1].from_m, 4000.0, 40.0);
    EXPECT_NEAR(route.legs[1].to_m, 6000.0, 40.0);
    EXPECT_NEAR(route.length_m, 8000.0, 0.5) << "nothing is lost or told twice";
    EXPECT_TRUE(route.cautions.empty());
}

} // namespace
} // namespace tumpline::cli

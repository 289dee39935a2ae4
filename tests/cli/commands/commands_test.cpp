#include "cli/app.h"
#include "cli/words/text_width.h"
#include "planner/models/catalogue.h"
#include "tests/support/json_keys.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <set>
#include <sstream>
#include <streambuf>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using test::Said;
using test::say;
using testing::HasSubstr;

const std::filesystem::path samples = test::root / "sample-routes";

TEST(Commands, ModelsNamesEveryModelInBothFormats) {
    const Said text = say({"models"});
    EXPECT_EQ(text.code, ExitCode::done);
    EXPECT_EQ(text.err, "");
    const auto json = nlohmann::json::parse(say({"models", "--format", "json"}).out);
    const auto catalogue = planner::model_catalogue();
    ASSERT_EQ(json.at("models").size(), catalogue.size());
    for (std::size_t i = 0; i < catalogue.size(); ++i) {
        EXPECT_THAT(text.out, HasSubstr(std::string(catalogue[i].name)));
        EXPECT_EQ(json["models"][i]["name"], catalogue[i].name);
        EXPECT_EQ(json["models"][i]["source"], catalogue[i].source);
        EXPECT_EQ(json["models"][i]["default"], catalogue[i].is_default);
    }
}

TEST(Commands, TrackHasItsKeysAndTheFilesOrder) {
    const Said answer = say({"track",
                             (samples / "saddle" / "saddle.gpx").string(),
                             (samples / "desert-river" / "desert-river.geojson").string(),
                             "--format",
                             "json"});
    ASSERT_EQ(answer.code, ExitCode::done) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    ASSERT_EQ(json.at("files").size(), 2U);
    ASSERT_GT(json.at("tracks").size(), 7U);
    EXPECT_EQ(json["tracks"][0]["name"], "approach");
    const test::KeysByPlace told = test::keys_in_page(test::root / "docs" / "commands.md");
    for (const auto& track : json["tracks"]) {
        std::set<std::string> printed;
        for (const auto& [key, value] : track.items())
            printed.insert(key);
        EXPECT_EQ(printed, told.at("track"));
    }
}

TEST(Commands, TrackTellsARouteFromATrack) {
    const test::TempFolder folder;
    const std::string file =
        folder
            .write("both.gpx",
                   "<gpx version=\"1.1\"><rte><name>drawn</name><rtept lat=\"60\" lon=\"8\"/>"
                   "<rtept lat=\"60.01\" lon=\"8\"/></rte><trk><name>walked</name><trkseg>"
                   "<trkpt lat=\"60\" lon=\"8\"/><trkpt lat=\"60.01\" "
                   "lon=\"8\"/></trkseg></trk></gpx>")
            .string();
    const Said text = say({"track", file});
    EXPECT_THAT(text.out, HasSubstr(": 1 track, 1 route, 0 waypoints\n"));
    EXPECT_THAT(text.out, HasSubstr("drawn (route)"));
    EXPECT_THAT(text.out, testing::Not(HasSubstr("walked (route)")));
    const auto json = nlohmann::json::parse(say({"track", file, "--format", "json"}).out);
    for (const auto& track : json["tracks"]) { // no height is written in the file
        EXPECT_EQ(track.at("heights"), "none");
        EXPECT_TRUE(track.at("ascent_m").is_null());
        EXPECT_TRUE(track.at("descent_m").is_null());
    }
    for (const auto& track : json.at("tracks"))
        EXPECT_EQ(track.at("kind"), track.at("name") == "drawn" ? "route" : "track");
    EXPECT_EQ(json["tracks"].size(), 2U);
    const std::string line = (samples / "desert-river" / "desert-river.geojson").string();
    EXPECT_EQ(
        nlohmann::json::parse(say({"track", line, "--format", "json"}).out)["tracks"][0]["kind"],
        "line");
}

TEST(Commands, WhatStopsAWrittenPlanIsToldInTheTripsUnits) {
    const test::TempFolder folder;
    const std::string trip = (samples / "saddle" / "trip.json").string();
    const auto stops = [&](const std::string& units) {
        return say({"export",
                    trip,
                    "--gpx",
                    (folder.path() / (units + ".gpx")).string(),
                    "--set",
                    "/craft/0/payload=60 kg",
                    "--set",
                    "/units=" + units});
    };
    const Said metric = stops("metric");
    EXPECT_EQ(metric.code, ExitCode::no_plan);
    EXPECT_THAT(metric.err, HasSubstr("60.0 kg"));
    EXPECT_THAT(stops("imperial").err, HasSubstr("132.3 lb")); // 60 / 0.45359237
}

TEST(Commands, ProblemsOfAllFilesAreToldTogether) {
    const Said answer = say({"track", "one.gpx", "two.gpx", "--elevation", "three.tif"});
    EXPECT_EQ(answer.code, ExitCode::bad_input);
    EXPECT_EQ(answer.out, "");
    for (const char* name : {"one.gpx", "two.gpx", "three.tif"})
        EXPECT_THAT(answer.err, HasSubstr(name));
}

TEST(Commands, UnitsMayStandBeforeAndAfterTheCommand) {
    const std::string file = (samples / "saddle" / "saddle.gpx").string();
    const Said before = say({"--units", "imperial", "track", file});
    EXPECT_THAT(before.out, HasSubstr(" mi"));
    EXPECT_EQ(before.out, say({"track", file, "--units", "imperial"}).out);
    EXPECT_EQ(before.out, say({"track", "--units=imperial", file}).out);
}

TEST(Commands, UnitsChangeNothingThatProgramsRead) {
    const std::string file = (samples / "saddle" / "saddle.gpx").string();
    EXPECT_EQ(say({"track", file, "--format", "json"}).out,
              say({"track", file, "--format", "json", "--units", "imperial"}).out);
}

TEST(Commands, EveryHelpFitsTheLine) {
    const auto check = [](const std::vector<std::string>& arguments) {
        const Said help = say(arguments);
        EXPECT_EQ(help.code, ExitCode::done);
        EXPECT_EQ(help.err, "");
        std::istringstream lines(help.out);
        for (std::string line; std::getline(lines, line);)
            EXPECT_LE(columns_of(line), line_columns) << line;
        return help.out;
    };
    std::istringstream lines(check({"--help"}));
    std::size_t commands = 0;
    bool listed = false;
    for (std::string line; std::getline(lines, line);) {
        if (line == "Commands")
            listed = true;
        else if (line.empty())
            listed = false;
        else if (listed && line[2] != ' ') {
            check({line.substr(2, line.find(' ', 2) - 2), "--help"});
            ++commands;
        }
    }
    EXPECT_GE(commands, 2U);
}

TEST(Commands, ACautionAndTheTableTellTheSameHour) { // the caution cut seconds off once
    for (int percent = 90; percent <= 110; percent += 2) {
        const Said plan = say({"plan",
                               (samples / "saddle" / "trip.json").string(),
                               "--set",
                               "/appointments/0/by=09:00",
                               "--set",
                               fmt::format("/party/0/pace={:.2f}", percent / 100.0),
                               "--show",
                               "all"});
        const std::string said = plan.out.substr(plan.out.find("Quarry stop: arrival ") + 21, 5);
        std::istringstream lines(plan.out);
        std::string last_day; // the fourth row of the first table
        for (std::string line; last_day.empty() && std::getline(lines, line);)
            if (line.starts_with("    4  "))
                last_day = line;
        EXPECT_THAT(last_day, HasSubstr(" " + said + "  ")) << percent << " %";
    }
}

/// A disk that is full: takes nothing.
class FullStream : public std::streambuf {
  protected:
    int_type overflow(int_type /*letter*/) override { return traits_type::eof(); }
};

TEST(Commands, OutputThatCannotBeWrittenIsNotDone) {
    FullStream disk;
    std::ostream out(&disk);
    std::ostringstream err;
    EXPECT_EQ(run({"models"}, {.out = out, .err = err}), ExitCode::bad_input);
    EXPECT_THAT(err.str(), HasSubstr("cannot be written"));
}

TEST(Check, FindsWhatThePlanWouldRefuse) {
    const std::string trip = (test::root / "sample-routes/saddle/trip.json").string();
    const std::string nights = R"(/days/nights=["Birch spit","Shelf camp"])";
    EXPECT_EQ(say({"check", trip}).code, ExitCode::done);
    const Said checked = say({"check", trip, "--set", nights});
    const Said planned = say({"plan", trip, "--set", nights});
    EXPECT_EQ(checked.code, ExitCode::bad_input);
    EXPECT_EQ(planned.code, ExitCode::bad_input);
    EXPECT_NE(checked.out.find("/days/nights/1: found \"Shelf camp\""), std::string::npos);
}

} // namespace
} // namespace tumpline::cli

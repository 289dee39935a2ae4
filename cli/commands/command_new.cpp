#include "cli/commands/command_new.h"

#include "cli/files/whole_file.h"
#include "cli/text/new_trip_text.h"
#include "cli/words/progress.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "geo/tracks/read_tracks.h"
#include "planner/recordings/new_trip.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "planner/trip/vocabulary.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <memory>
#include <string>
#include <system_error>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;

void refuse_if_there(const fs::path& file) {
    std::error_code error;
    if (fs::exists(fs::symlink_status(file, error)))
        throw geo::InputError({{.file = file.string(),
                                .place = {},
                                .found = "a file that is there already",
                                .expected = "the name of a new file",
                                .advice = "choose another name; this command replaces nothing"}});
}

/// A trip file is UTF-8 text and names each file in one line.
void refuse_odd_names(const std::vector<fs::path>& files) {
    std::vector<geo::Problem> problems;
    for (const fs::path& file : files)
        if (const std::string name = file.string(); one_line(name) != name)
            problems.push_back({.file = one_line(name),
                                .place = {},
                                .found = "a file name that a trip file cannot hold",
                                .expected = "a name in one line of UTF-8 text",
                                .advice = "rename the file"});
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
}

/// Reads every file, so that all problems are told in one run.
std::vector<geo::TrackFile> read_all(const NewOptions& options,
                                     std::unique_ptr<geo::Elevation>& elevation) {
    std::vector<geo::TrackFile> files;
    std::vector<geo::Problem> problems;
    const auto note = [&](const geo::InputError& error) {
        problems.insert(problems.end(), error.problems().begin(), error.problems().end());
    };
    for (const fs::path& file : options.tracks) {
        try {
            files.push_back(geo::read_tracks(file));
        } catch (const geo::InputError& error) {
            note(error);
        }
    }
    if (!options.elevation.empty()) {
        try {
            elevation = std::make_unique<geo::Elevation>(options.elevation);
        } catch (const geo::InputError& error) {
            note(error);
        }
    }
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
    return files;
}

planner::FirstTrip recognised(const NewOptions& options, Console console) {
    Progress progress(console, "reading tracks and elevation");
    std::unique_ptr<geo::Elevation> elevation;
    const std::vector<geo::TrackFile> files = read_all(options, elevation);
    progress.now("looking for water");
    return planner::first_trip(files, elevation.get());
}

/// Paths as they stand from the trip file's folder; whole ones where there is no way from there.
std::vector<std::string> seen_from(const fs::path& output, const std::vector<fs::path>& files) {
    const fs::path folder = fs::weakly_canonical(fs::absolute(output).parent_path());
    std::vector<std::string> seen;
    seen.reserve(files.size());
    for (const fs::path& file : files)
        seen.push_back(
            fs::weakly_canonical(fs::absolute(file)).lexically_proximate(folder).string());
    return seen;
}

std::size_t left_open(const planner::FirstTrip& trip) {
    return static_cast<std::size_t>(std::count_if(
        trip.places.begin(), trip.places.end(), [](const auto& place) { return !place.kind; }));
}

void tell(const NewOptions& options, const planner::FirstTrip& trip, Console console) {
    fmt::print(console.out,
               "{}: written, {} {} and {} places\n",
               options.output.string(),
               trip.legs.size(),
               trip.legs.size() == 1 ? "leg" : "legs",
               trip.places.size() - left_open(trip));
    Table table({{"Leg"}, {"Length", true}, {"Travel"}, {"Because", false, true}});
    for (const planner::FirstLeg& leg : trip.legs)
        table.row({one_line(leg.name),
                   planner::show_distance(leg.length_m, options.units),
                   std::string(planner::word(leg.travel)),
                   one_line(leg.why)});
    console.out << table.text(2, console.columns);
    for (const std::string& remark : trip.remarks)
        console.out << hanging("- ", one_line(remark), console.columns);
    if (!trip.heights)
        fmt::print(console.out,
                   "No height is known, so no climb: name rasters with --elevation.\n");
    if (const std::size_t open = left_open(trip); open > 0)
        fmt::print(console.out,
                   "{} {} no known kind; the file lists them behind //.\n",
                   open,
                   open == 1 ? "waypoint tells" : "waypoints tell");
    fmt::print(console.out,
               "It plans as it stands (tumpline plan {}), but people, boats and things in it are\n"
               "invented: write yours.\n",
               options.output.string());
}

} // namespace

ExitCode new_trip(const NewOptions& options, Console console) {
    refuse_if_there(options.output);
    std::vector<fs::path> inputs = options.tracks;
    inputs.insert(inputs.end(), options.elevation.begin(), options.elevation.end());
    refuse_odd_names(inputs);
    const OutputFile output{options.output, inputs};
    check_writable(output);
    const planner::FirstTrip trip = recognised(options, console);
    std::vector<fs::path> tracks;
    for (const std::size_t file : trip.files)
        tracks.push_back(options.tracks[file]);
    const std::string text =
        first_trip_text(trip,
                        {.name = options.tracks.front().stem().string(),
                         .tracks = seen_from(options.output, tracks),
                         .elevation = seen_from(options.output, options.elevation)});
    static_cast<void>(planner::build_route(planner::read_trip_text(text, options.output)));
    write_new(output, text);
    tell(options, trip, console);
    return ExitCode::done;
}

} // namespace tumpline::cli

#include "cli/commands/command_track.h"

#include "cli/words/json_values.h"
#include "cli/words/progress.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/version.h"
#include "cli/words/words.h"
#include "geo/input_error.h"
#include "geo/light/time_zone.h"
#include "geo/profiles/track_summary.h"
#include "geo/tracks/read_tracks.h"
#include "geo/tracks/steady_way.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

using geo::TrackSummary;

/// A file that was read, its tracks summed up.
struct Read {
    geo::TrackFile file;
    std::vector<TrackSummary> tracks;
};

/// Repairs by the name of their key, with what they are for people.
std::vector<std::pair<std::string_view, std::size_t>> counted(const geo::Repairs& repairs) {
    return {{"duplicates", repairs.duplicates},
            {"spikes", repairs.spikes},
            {"invalid_points", repairs.invalid_points},
            {"missing_heights", repairs.missing_heights},
            {"void_heights", repairs.void_heights},
            {"backward_times", repairs.backward_times},
            {"invalid_times", repairs.invalid_times},
            {"antimeridian", repairs.antimeridian},
            {"joined_parts", repairs.joined_parts}};
}

/// To the whole second; a track's zone is not known, so all its times are UTC.
std::string utc(const geo::Instant& instant) {
    const std::string text = geo::rfc3339(std::chrono::floor<std::chrono::seconds>(instant), "UTC");
    return text.substr(0, 19) + "Z";
}

/// Reads every file; the problems of all of them are told together.
std::vector<Read> read_all(const TrackOptions& options) {
    std::vector<Read> files;
    std::vector<geo::Problem> problems;
    for (const std::filesystem::path& file : options.files)
        try {
            files.push_back({geo::read_tracks(file), {}});
        } catch (const geo::InputError& error) {
            problems.insert(problems.end(), error.problems().begin(), error.problems().end());
        }
    std::optional<geo::Elevation> elevation;
    try {
        if (!options.elevation.empty())
            elevation.emplace(options.elevation);
    } catch (const geo::InputError& error) {
        problems.insert(problems.end(), error.problems().begin(), error.problems().end());
    }
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
    for (Read& read : files)
        for (const geo::Track& track : read.file.tracks)
            read.tracks.push_back(geo::summary(track, elevation ? &*elevation : nullptr));
    return files;
}

Json track_json(const Read& read, const TrackSummary& sum) {
    Json gaps = Json::array();
    for (const geo::TrackGap& gap : sum.gaps)
        gaps.push_back({{"along_m", gap.along_m},
                        {"length_m", gap.length_m},
                        {"lasts_s", or_null(gap.lasts_s)}});
    const bool known = sum.heights != geo::HeightSource::none;
    Json repairs = Json::object();
    for (const auto& [key, count] : counted(sum.repairs))
        repairs[std::string(key)] = count;
    return {{"file", read.file.file.string()},
            {"name", sum.name},
            {"type", sum.type},
            {"points", sum.points},
            {"parts", sum.parts},
            {"length_m", sum.length_m},
            {"cleaned_length_m", or_null(sum.cleaned_length_m)},
            {"kind", word(sum.kind)},
            {"heights", word(sum.heights)},
            {"ascent_m", known_or_null(sum.ascent_m, known)},
            {"descent_m", known_or_null(sum.descent_m, known)},
            {"lowest_m", or_null(sum.lowest_m)},
            {"highest_m", or_null(sum.highest_m)},
            {"steepest_up", or_null(sum.steepest_up)},
            {"steepest_down", or_null(sum.steepest_down)},
            {"started", sum.started ? Json(utc(*sum.started)) : Json(nullptr)},
            {"duration_s", or_null(sum.duration_s)},
            {"moving_s", or_null(sum.moving_s)},
            {"gaps", std::move(gaps)},
            {"longest_step_m", sum.longest_step_m},
            {"repairs", std::move(repairs)}};
}

void print_json(const std::vector<Read>& files, Console console) {
    Json tracks = Json::array();
    Json of_files = Json::array();
    for (const Read& read : files) {
        Json waypoints = Json::array();
        for (const geo::Waypoint& waypoint : read.file.waypoints)
            waypoints.push_back({{"name", waypoint.name},
                                 {"type", waypoint.type},
                                 {"lat_deg", waypoint.at.lat_deg},
                                 {"lon_deg", waypoint.at.lon_deg},
                                 {"height_m", or_null(waypoint.height_m)}});
        of_files.push_back({{"file", read.file.file.string()},
                            {"heights", word(read.file.heights)},
                            {"waypoints", std::move(waypoints)}});
        for (const TrackSummary& sum : read.tracks)
            tracks.push_back(track_json(read, sum));
    }
    const Json json = {
        {"version", version()}, {"files", std::move(of_files)}, {"tracks", std::move(tracks)}};
    fmt::print(console.out, "{}", in_lines(json));
}

std::string slope(const std::optional<double>& slope) {
    return slope ? fmt::format("{:.0f} %", 100.0 * *slope) : std::string();
}

void remark_times(Table& table, const TrackSummary& sum) {
    if (!sum.started)
        return;
    table.remark(fmt::format(
        "recorded from {}, {}{}",
        utc(*sum.started),
        planner::show_duration(sum.duration_s.value_or(0.0)),
        sum.moving_s ? ", of it moving " + planner::show_duration(*sum.moving_s) : std::string()));
}

void remark_wander(Table& table, const TrackSummary& sum, planner::UnitSystem units) {
    if (sum.cleaned_length_m && sum.length_m > 0.0)
        table.remark(
            fmt::format("cleaned of wander about {}{}",
                        planner::show_distance(*sum.cleaned_length_m, units),
                        sum.length_m > (1.0 + geo::wander_counts) * *sum.cleaned_length_m
                            ? fmt::format("; a plan measures the line as it stands, {:.0f} % more",
                                          100.0 * (sum.length_m / *sum.cleaned_length_m - 1.0))
                            : std::string()));
}

void remark_repairs(Table& table, const TrackSummary& sum) {
    std::vector<std::string> made;
    for (const auto& [key, count] : counted(sum.repairs))
        if (count > 0) {
            std::string words(key);
            std::replace(words.begin(), words.end(), '_', ' ');
            made.push_back(fmt::format("{} {}", words, count));
        }
    if (!made.empty())
        table.remark(fmt::format("repaired: {}", fmt::join(made, ", ")));
}

void remark_gaps(Table& table, const TrackSummary& sum, planner::UnitSystem units) {
    for (const geo::TrackGap& gap : sum.gaps)
        table.remark(fmt::format("a gap of {} after {}{}",
                                 planner::show_distance(gap.length_m, units),
                                 planner::show_distance(gap.along_m, units),
                                 gap.lasts_s ? ", lasting " + planner::show_duration(*gap.lasts_s)
                                             : std::string()));
}

/// "6 tracks, 1 route, 12 waypoints"; routes only where there are some.
std::string contents(const Read& read) {
    const auto counted_as = [](std::size_t count, const char* what) {
        return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
    };
    const auto routes = static_cast<std::size_t>(
        std::ranges::count(read.tracks, geo::TrackKind::route, &TrackSummary::kind));
    std::string words;
    if (routes < read.tracks.size() || routes == 0)
        words = counted_as(read.tracks.size() - routes, "track") + ", ";
    if (routes > 0)
        words += counted_as(routes, "route") + ", ";
    return words + counted_as(read.file.waypoints.size(), "waypoint");
}

void print_text(const std::vector<Read>& files, const TrackOptions& options, Console console) {
    const auto height = [&](const std::optional<double>& height_m) {
        return height_m ? planner::show_height(*height_m, options.units) : std::string();
    };
    for (const Read& read : files) {
        fmt::print(console.out,
                   "{}{}: {}\n",
                   &read == &files.front() ? "" : "\n",
                   one_line(read.file.file.string()),
                   contents(read));
        Table table({{"Track", false, true},
                     {"Points", true},
                     {"Length", true},
                     {"Up", true},
                     {"Down", true},
                     {"Lowest", true},
                     {"Highest", true},
                     {"Steepest up", true},
                     {"down", true}});
        for (const TrackSummary& sum : read.tracks) {
            const bool known = sum.heights != geo::HeightSource::none;
            const std::string name = sum.name.empty() ? "(without a name)" : sum.name;
            table.row({sum.kind == geo::TrackKind::route ? name + " (route)" : name,
                       fmt::format("{}", sum.points),
                       planner::show_distance(sum.length_m, options.units),
                       known ? height(sum.ascent_m) : std::string("unknown"),
                       known ? height(sum.descent_m) : std::string("unknown"),
                       height(sum.lowest_m),
                       height(sum.highest_m),
                       slope(sum.steepest_up),
                       slope(sum.steepest_down)});
            remark_times(table, sum);
            remark_wander(table, sum, options.units);
            remark_gaps(table, sum, options.units);
            remark_repairs(table, sum);
        }
        console.out << table.text(2, console.columns);
    }
}

} // namespace

ExitCode track(const TrackOptions& options, Console console) {
    std::vector<Read> files;
    {
        const Progress progress(console, "reading tracks");
        files = read_all(options);
    }
    switch (options.format) {
    case TrackFormat::text:
        print_text(files, options, console);
        break;
    case TrackFormat::json:
        print_json(files, console);
        break;
    }
    return ExitCode::done;
}

} // namespace tumpline::cli

#include "cli/commands/command_pace.h"

#include "cli/text/against_text.h"
#include "cli/text/pace_text.h"
#include "cli/words/progress.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/version.h"
#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "geo/tracks/read_tracks.h"
#include "planner/make_plan.h"
#include "planner/models/load_effect.h"
#include "planner/quantities/spelling.h"
#include "planner/recordings/learned_pace.h"
#include "planner/recordings/plan_against_recording.h"
#include "planner/recordings/recorded_motion.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"

#include <fmt/ostream.h>

#include <map>
#include <memory>
#include <optional>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

/// A problem with an option of this command.
[[noreturn]] void refuse(geo::Problem problem) {
    problem.file = "tumpline pace";
    throw geo::InputError({std::move(problem)});
}

planner::WalkingModel model_of(const PaceOptions& options) {
    if (options.walking.empty())
        return planner::WalkingModel::swiss_signpost;
    if (const auto model = planner::walking_model(options.walking))
        return *model;
    std::vector<std::string_view> names;
    for (const planner::ModelEntry& entry : planner::walking_speed_entries())
        names.push_back(entry.name);
    const std::string near = planner::nearest_word(options.walking, names);
    refuse({.file = {},
            .place = "--walking",
            .found = fmt::format("\"{}\"", options.walking),
            .expected = planner::either(names),
            .advice = near.empty() ? std::string() : fmt::format("write \"{}\"", near)});
}

double mass(std::string_view option, const std::string& text) {
    const planner::Reading reading = planner::read_quantity(text, planner::Dimension::mass);
    if (!reading.value || *reading.value < 0.0)
        refuse({.file = {},
                .place = std::string(option),
                .found = fmt::format("\"{}\"", text),
                .expected = planner::expected_quantity(planner::Dimension::mass),
                .advice = reading.advice});
    return *reading.value;
}

planner::RecordedUnder under(const PaceOptions& options, planner::WalkingModel model) {
    if (options.body.empty() && options.load.empty())
        return {};
    if (options.body.empty() || options.load.empty())
        refuse({.file = {},
                .place = options.body.empty() ? "--body" : "--load",
                .found = "only one of --load and --body",
                .expected = "both: what was carried, and the person's own mass",
                .advice = "add the other"});
    const double body_kg = mass("--body", options.body);
    const double load_kg = mass("--load", options.load);
    if (body_kg < 20.0 || load_kg > 2.0 * body_kg)
        refuse({.file = {},
                .place = body_kg < 20.0 ? "--body" : "--load",
                .found = fmt::format("\"{}\"", body_kg < 20.0 ? options.body : options.load),
                .expected = "a body of 20 kg or more, and a load of at most twice that",
                .advice = {}});
    return {.load_factor = planner::load_factor(planner::LoadEffect::equal_effort,
                                                load_kg / body_kg,
                                                planner::walking_model_load_ratio(model)),
            .terrain_factor = 1.0};
}

/// Reads every file, so that all problems are told in one run.
planner::Recorded read(const PaceOptions& options, Console console) {
    Progress progress(console, "reading recordings");
    std::vector<geo::TrackFile> files;
    std::vector<geo::Problem> problems;
    const auto trying = [&](const auto& what) {
        try {
            what();
        } catch (const geo::InputError& error) {
            problems.insert(problems.end(), error.problems().begin(), error.problems().end());
        }
    };
    for (const std::filesystem::path& file : options.recorded)
        trying([&] { files.push_back(geo::read_tracks(file)); });
    std::unique_ptr<geo::Elevation> elevation;
    if (!options.elevation.empty())
        trying([&] { elevation = std::make_unique<geo::Elevation>(options.elevation); });
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
    progress.now("learning");
    planner::Recorded recorded = planner::recorded_motion(files, elevation.get());
    if (recorded.runs.empty()) {
        std::map<std::string, std::size_t> reasons;
        for (const planner::TrackReading& track : recorded.tracks)
            ++reasons[one_line(track.why)];
        std::string found = "no track with times on which somebody walks or paddles";
        for (const auto& [why, count] : reasons)
            found += fmt::format("; {} {}: {}", count, count == 1 ? "track" : "tracks", why);
        throw geo::InputError({{.file = options.recorded.front().string(),
                                .place = {},
                                .found = std::move(found),
                                .expected = "a recorded track",
                                .advice = "a planned line has no pace"}});
    }
    return recorded;
}

void tell(const planner::Recorded& recorded, const planner::LearnedPace& learned, Console console) {
    double foot_s = 0.0;
    double afloat_s = 0.0;
    for (const planner::Run& run : recorded.runs)
        for (const planner::Window& window : run.windows) {
            const bool foot = window.motion == planner::Motion::on_foot ||
                              window.motion == planner::Motion::carrying;
            (foot ? foot_s : afloat_s) += window.lasts_s;
        }
    const auto say = [&](const std::string& text) {
        console.out << hanging("", text, console.columns);
    };
    say(fmt::format("On the move {} on foot and {} afloat; {} of halts set aside",
                    planner::show_duration(foot_s),
                    planner::show_duration(afloat_s),
                    planner::show_duration(learned.halted_s)));
    if (recorded.too_fast_s >= 60.0)
        say(fmt::format("{} faster than 15 km/h set aside as well",
                        planner::show_duration(recorded.too_fast_s)));
    const auto set_aside = [&](double lasts_s, std::string_view what) {
        if (lasts_s >= 60.0)
            say(fmt::format("{} {}", planner::show_duration(lasts_s), what));
    };
    set_aside(recorded.other_s, "of runs, rides and the like set aside");
    set_aside(recorded.unsure_s,
              "on level ground that may be a water set aside: give the track a type, or name a "
              "raster");
    Table table({{"Track", false, true}, {"Taken as"}, {"Moving", true}, {"Because", false, true}});
    for (const planner::TrackReading& track : recorded.tracks)
        table.row({track.name.empty() ? std::string("(without a name)") : one_line(track.name),
                   track.taken_as,
                   track.moving_s > 0.0 ? planner::show_duration(track.moving_s) : std::string(),
                   one_line(track.why)});
    console.out << table.text(2, console.columns);
}

/// Plans the trip that was recorded, and lays the recording over it.
Compared compare(const PaceOptions& options, const planner::Recorded& recorded, Console console) {
    Progress progress(console, "planning the trip");
    const planner::Trip trip = planner::read_trip(options.against);
    const planner::Route route = planner::build_route(trip);
    planner::Plan plan = planner::make_plan(trip, route);
    planner::Against against = planner::against_plan(recorded, plan, route);
    return {std::move(plan), std::move(against)};
}

} // namespace

ExitCode pace(const PaceOptions& options, Console console) {
    const planner::WalkingModel model = model_of(options);
    const planner::RecordedUnder burden = under(options, model);
    const planner::Recorded recorded = read(options, console);
    const planner::LearnedPace learned = planner::learned_pace(recorded, model, burden);
    std::optional<Compared> compared;
    if (!options.against.empty())
        compared = compare(options, recorded, console);
    if (options.format == PaceFormat::json) {
        console.out << pace_json(recorded, learned, compared, version());
        return ExitCode::done;
    }
    tell(recorded, learned, console);
    if (compared)
        console.out << against_text(*compared, console.columns);
    console.out << pace_text(
        learned, {.units = options.units, .colour = console.colour, .columns = console.columns});
    return ExitCode::done;
}

} // namespace tumpline::cli

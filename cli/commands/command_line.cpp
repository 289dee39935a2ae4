#include "cli/commands/command_line.h"

#include "cli/commands/command_book.h"
#include "cli/commands/command_check.h"
#include "cli/commands/command_compare.h"
#include "cli/commands/command_craft.h"
#include "cli/commands/command_export.h"
#include "cli/commands/command_live.h"
#include "cli/commands/command_models.h"
#include "cli/commands/command_new.h"
#include "cli/commands/command_nights.h"
#include "cli/commands/command_odds.h"
#include "cli/commands/command_pace.h"
#include "cli/commands/command_pack.h"
#include "cli/commands/command_plan.h"
#include "cli/commands/command_track.h"
#include "cli/commands/trip_options.h"
#include "cli/words/sections.h"
#include "cli/words/text_width.h"
#include "cli/words/usage.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/decisions/nights_compared.h"
#include "planner/decisions/odds.h"
#include "planner/quantities/spelling.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <charconv>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

namespace tumpline::cli {

/// One command line while it is being understood.
struct DeclaredCommands {
    CLI::App app{"plans trips of several days that alternate walking and paddling, offline"};
    std::optional<planner::UnitSystem> units; ///< as asked
    std::function<ExitCode(Console)> chosen;
};

namespace {

/// A word of a closed set and what it stands for.
template <typename Value> using Words = std::vector<std::pair<std::string_view, Value>>;

/// An option with a closed set of words.
template <typename Value, typename Taken>
void add_choice(CLI::App& command,
                const std::string& name,
                Taken& value,
                const Words<Value>& words,
                const std::string& help) {
    std::vector<std::string_view> names;
    for (const auto& [word, meant] : words)
        names.push_back(word);
    const auto take = [&command, &value, name, words, names](const std::string& given) {
        for (const auto& [word, meant] : words)
            if (word == given) {
                value = meant;
                return;
            }
        const std::string near = planner::nearest_word(given, names);
        throw geo::InputError(
            {{.file = command_name(command),
              .place = name,
              .found = fmt::format("\"{}\"", given),
              .expected = planner::either(names),
              .advice = near.empty() ? std::string() : fmt::format("write \"{}\"", near)}});
    };
    command.add_option_function<std::string>(name, take, help)
        ->type_name(fmt::format("{}", fmt::join(names, "|")))
        ->take_last();
}

/// What changes a trip file.
void add_settings(CLI::App& command,
                  std::vector<planner::Setting>& settings,
                  const std::string& help) {
    const auto take = [&command, &settings](const std::vector<std::string>& given) {
        for (const std::string& setting : given) {
            const std::size_t sign = setting.find('=');
            if (sign == std::string::npos || !setting.starts_with('/'))
                throw geo::InputError(
                    {{.file = command_name(command),
                      .place = "--set",
                      .found = fmt::format("\"{}\"", fitted(one_line(setting), 60)),
                      .expected = "a JSON pointer into the trip file, \"=\" and "
                                  "a value",
                      .advice = "write it like --set /days/set_off=07:00"}});
            settings.push_back({setting.substr(0, sign), setting.substr(sign + 1)});
        }
    };
    command.add_option_function<std::vector<std::string>>("--set", take, help)
        ->type_name("POINTER=VALUE")
        ->expected(1)
        ->take_all()
        ->allow_extra_args(false);
}

/// Which sections of the text are shown, and whether a plan must keep what was asked.
template <typename Options> void add_show(CLI::App& command, Options& options) {
    const auto take = [&command, &options](const std::vector<std::string>& given) {
        for (const std::string& names : given)
            for (const Section section : show_named(command.get_name(), names).sections)
                if (!options.show.wants(section))
                    options.show.sections.push_back(section);
    };
    std::vector<std::string_view> names;
    for (const Section section : sections_of(command.get_name()))
        names.push_back(word(section));
    command
        .add_option_function<std::vector<std::string>>(
            "--show",
            take,
            fmt::format("instead of the first screen: {} or all; JSON is always whole",
                        fmt::join(names, ", ")))
        ->type_name("SECTION,...")
        ->expected(1)
        ->take_all()
        ->allow_extra_args(false);
    command.add_flag(
        "--strict",
        options.strict,
        "exit 3 also if the plan breaks what was asked, not only if it cannot be done");
}

/// TRIP and what may change it.
void add_trip(CLI::App& command, TripOptions& options) {
    command.add_option("TRIP", options.trip, "the trip file (docs/trip-file.md)")->required();
    add_settings(
        command, options.settings, "plan as if the trip file said so, like /days/set_off=07:00");
}

/// The level at which rivers are taken that give several.
void add_flow_level(CLI::App& command, TripOptions& options) {
    add_choice<planner::FlowLevel>(command,
                                   "--flow",
                                   options.flow,
                                   {{"low", planner::FlowLevel::low},
                                    {"normal", planner::FlowLevel::normal},
                                    {"high", planner::FlowLevel::high}},
                                   "plan every river that gives such a level at it, in place of "
                                   "what it carries now");
}

/// Makes `function` what is done if `command` is chosen; its options get the reader's units.
template <typename Options>
void runs(DeclaredCommands& line,
          CLI::App& command,
          std::shared_ptr<Options> options,
          ExitCode (*function)(const Options&, Console)) {
    command.final_callback([&line, options = std::move(options), function] {
        if constexpr (requires { options->trip.units; })
            options->trip.units = line.units;
        else if constexpr (requires { options->units.has_value(); })
            options->units = line.units;
        else if constexpr (requires { options->units; })
            options->units = line.units.value_or(planner::UnitSystem::metric);
        line.chosen = [options, function](Console console) { return function(*options, console); };
    });
}

void add_plan(DeclaredCommands& line) {
    const auto options = std::make_shared<PlanOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "plan", "computes the plan: days, legs, portages, loads, cautions");
    add_trip(command, options->trip);
    add_choice<PlanFormat>(
        command,
        "--format",
        options->format,
        {{"text", PlanFormat::text}, {"json", PlanFormat::json}, {"csv", PlanFormat::csv}},
        "text for people; json is the whole plan and csv its legs, for programs");
    add_flow_level(command, options->trip);
    add_show(command, options->trip);
    runs(line, command, options, plan);
}

void add_check(DeclaredCommands& line) {
    const auto options = std::make_shared<CheckOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "check", "reads everything, prints every problem with its place, plans nothing");
    add_trip(command, options->trip);
    runs(line, command, options, check);
}

void add_pack(DeclaredCommands& line) {
    const auto options = std::make_shared<PackOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "pack", "who carries what leg by leg, how the bags balance, what is left at home and why");
    add_trip(command, options->trip);
    add_choice<PackFormat>(command,
                           "--format",
                           options->format,
                           {{"text", PackFormat::text}, {"json", PackFormat::json}},
                           "text for people, json for programs");
    add_show(command, options->trip);
    runs(line, command, options, pack);
}

void add_nights(DeclaredCommands& line) {
    const auto options = std::make_shared<NightsOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "nights", "the best places to sleep, the next two and what each costs");
    add_trip(command, options->trip);
    add_choice<NightsFormat>(command,
                             "--format",
                             options->format,
                             {{"text", NightsFormat::text}, {"json", NightsFormat::json}},
                             "text for people, json for programs");
    add_show(command, options->trip);
    runs(line, command, options, nights);
}

/// A whole number within bounds.
template <typename Number>
void add_count(CLI::App& command,
               const std::string& name,
               Number& value,
               const std::pair<Number, Number>& bounds,
               const std::string& help) {
    const auto take = [&command, &value, name, bounds](const std::string& given) {
        Number number{};
        const char* const end = given.data() + given.size();
        const auto [stop, error] = std::from_chars(given.data(), end, number);
        if (error == std::errc() && stop == end && number >= bounds.first &&
            number <= bounds.second) {
            value = number;
            return;
        }
        throw geo::InputError(
            {{.file = command_name(command),
              .place = name,
              .found = fmt::format("\"{}\"", given),
              .expected = fmt::format("a whole number from {} to {}", bounds.first, bounds.second),
              .advice = {}}});
    };
    command.add_option_function<std::string>(name, take, help)->type_name("N")->take_last();
}

void add_odds(DeclaredCommands& line) {
    constexpr std::size_t most_threads = 256;
    const auto options = std::make_shared<OddsCommandOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "odds", "the spread: arrivals, packs, food and appointments over seeded draws");
    add_trip(command, options->trip);
    add_count<std::size_t>(command,
                           "--draws",
                           options->draws,
                           {1, planner::most_draws},
                           "how often the trip is drawn");
    add_count<std::uint64_t>(command,
                             "--seed",
                             options->seed,
                             {0, std::numeric_limits<std::uint64_t>::max()},
                             "the same seed gives the same odds");
    add_count<std::size_t>(command,
                           "--threads",
                           options->threads,
                           {1, most_threads},
                           "how many to use; changes no figure");
    add_choice<OddsFormat>(command,
                           "--format",
                           options->format,
                           {{"text", OddsFormat::text}, {"json", OddsFormat::json}},
                           "text for people, json for programs");
    add_show(command, options->trip);
    runs(line, command, options, odds);
}

void add_compare(DeclaredCommands& line) {
    const auto options = std::make_shared<CompareOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "compare", "plans side by side: totals, days, packs, appointments, and what breaks");
    command
        .add_option("TRIP", options->trips, "two to eight trip files, or one with --set or --flow")
        ->required();
    add_settings(command,
                 options->settings,
                 "with one trip: what the other is like; with several: what all are like");
    using planner::FlowLevel;
    add_choice<std::vector<FlowLevel>>(
        command,
        "--flow",
        options->flows,
        {{"low", {FlowLevel::low}},
         {"normal", {FlowLevel::normal}},
         {"high", {FlowLevel::high}},
         {"each", {planner::flow_levels.begin(), planner::flow_levels.end()}}},
        "with one trip: the level of the other's rivers, or each that they give; with several: "
        "that of all");
    add_choice<CompareFormat>(command,
                              "--format",
                              options->format,
                              {{"text", CompareFormat::text}, {"json", CompareFormat::json}},
                              "text for people, json for programs");
    add_show(command, *options);
    runs(line, command, options, compare);
}

void add_craft(DeclaredCommands& line) {
    const auto options = std::make_shared<CraftOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "craft", "the trip with each boat that it offers: time, packs, margins, wind, price");
    add_trip(command, options->trip);
    add_choice<CraftFormat>(command,
                            "--format",
                            options->format,
                            {{"text", CraftFormat::text}, {"json", CraftFormat::json}},
                            "text for people, json for programs");
    add_flow_level(command, options->trip);
    command.add_flag("--strict",
                     options->trip.strict,
                     "exit 3 also if every choice breaks what was asked, not only if none can be "
                     "done");
    runs(line, command, options, craft);
}

void add_models(DeclaredCommands& line) {
    const auto options = std::make_shared<ModelsOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "models", "every model by name: what it answers, source, range, which is the default");
    add_choice<ModelsFormat>(command,
                             "--format",
                             options->format,
                             {{"text", ModelsFormat::text}, {"json", ModelsFormat::json}},
                             "text for people, json for programs");
    runs(line, command, options, models);
}

void add_track(DeclaredCommands& line) {
    const auto options = std::make_shared<TrackOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "track", "prints what is in track files: length, climb, gaps, times");
    command.add_option("FILE", options->files, "GPX, GeoJSON, KML, GeoPackage or shapefile")
        ->required();
    command.add_option("--elevation", options->elevation, "rasters of the ground's height")
        ->type_name("DEM");
    add_choice<TrackFormat>(command,
                            "--format",
                            options->format,
                            {{"text", TrackFormat::text}, {"json", TrackFormat::json}},
                            "text for people, json for programs");
    runs(line, command, options, track);
}

void add_overwrite(CLI::App& command, bool& overwrite) {
    command.add_flag("--overwrite",
                     overwrite,
                     "replace files that tumpline did not write, or that were changed since");
}

void add_live(DeclaredCommands& line) {
    const auto options = std::make_shared<LiveOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "live", "a page on this machine on which nights and things are moved");
    command.add_option("TRIP", options->trip, "the trip file (docs/trip-file.md)")->required();
    add_count<int>(
        command, "--port", options->port, {0, 65535}, "of 127.0.0.1; left out or 0, any free one");
    command.add_flag("--open", options->open, "also start the desktop's browser");
    runs(line, command, options, live);
}

void add_book(DeclaredCommands& line) {
    const auto options = std::make_shared<BookOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "book", "the printable book: map, profile, day pages, packing lists, the contact's sheet");
    add_trip(command, options->trip);
    command.add_option("-o,--output", options->output, "the HTML file to write")
        ->type_name("BOOK.html")
        ->required();
    add_overwrite(command, options->overwrite);
    runs(line, command, options, book);
}

void add_new(DeclaredCommands& line) {
    const auto options = std::make_shared<NewOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "new", "a first trip file from tracks: legs recognised, every key explained");
    command.add_option("TRACK", options->tracks, "GPX, GeoJSON, KML, GeoPackage or shapefile")
        ->required();
    command.add_option("--elevation", options->elevation, "rasters of the ground's height")
        ->type_name("DEM");
    command
        .add_option("-o,--output", options->output, "the trip file to write; never over another")
        ->type_name("TRIP")
        ->required();
    runs(line, command, options, new_trip);
}

void add_export(DeclaredCommands& line) {
    const auto options = std::make_shared<ExportOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "export", "the plan for GPS receivers, map programs and spreadsheets");
    add_trip(command, options->trip);
    command.add_option("--gpx", options->gpx, "GPX 1.1: tracks by leg, nights and places")
        ->type_name("FILE");
    command.add_option("--geojson", options->geojson, "the same as GeoJSON, with figures by leg")
        ->type_name("FILE");
    command.add_option("--gpkg", options->gpkg, "GeoPackage: legs and places with figures")
        ->type_name("FILE");
    command.add_option("--kml", options->kml, "KML: the same for viewers of globes")
        ->type_name("FILE");
    command.add_option("--csv", options->csv_folder, "tables of days, legs, loads and cautions")
        ->type_name("FOLDER");
    add_overwrite(command, options->overwrite);
    runs(line, command, options, export_plan);
}

void add_pace(DeclaredCommands& line) {
    const auto options = std::make_shared<PaceOptions>();
    CLI::App& command = *line.app.add_subcommand(
        "pace", "learns a person's own walking and paddling pace from recorded tracks");
    command.add_option("RECORDED", options->recorded, "recorded tracks with times")->required();
    command.add_option("--elevation", options->elevation, "rasters of the ground's height")
        ->type_name("DEM");
    command
        .add_option("--walking", options->walking, "the walking model that the pace is a factor on")
        ->type_name("MODEL");
    command.add_option("--load", options->load, "what was carried and worn, like \"12 kg\"")
        ->type_name("MASS");
    command.add_option("--body", options->body, "the person's own mass, like \"68 kg\"")
        ->type_name("MASS");
    command.add_option("--against", options->against, "the plan of the recorded trip, leg by leg")
        ->type_name("TRIP");
    add_choice<PaceFormat>(command,
                           "--format",
                           options->format,
                           {{"text", PaceFormat::text}, {"json", PaceFormat::json}},
                           "text for people, json for programs");
    runs(line, command, options, pace);
}

/// The commands, in the order in which the help lists them.
constexpr auto commands = {add_new,
                           add_plan,
                           add_check,
                           add_pack,
                           add_nights,
                           add_odds,
                           add_compare,
                           add_craft,
                           add_live,
                           add_book,
                           add_export,
                           add_pace,
                           add_track,
                           add_models};

void declare(DeclaredCommands& line) {
    line.app.set_help_flag("--help,-h", "what a command does and its options");
    line.app.set_version_flag("--version", std::string(version()), "the program's version");
    line.app.require_subcommand(1);
    line.app.fallthrough();
    line.app.footer("Exit codes: 0 done; 1 a fault of the program; 2 wrong usage or bad input, "
                    "nothing written; 3 the input is fine but its hard limits allow no plan. "
                    "NO_COLOR in the environment turns colour off.");
    add_choice<planner::UnitSystem>(
        line.app,
        "--units",
        line.units,
        {{"metric", planner::UnitSystem::metric}, {"imperial", planner::UnitSystem::imperial}},
        "what people read; JSON, CSV and files for programs are SI always");
    for (const auto add : commands)
        add(line);
}

} // namespace

CommandLine::CommandLine() : declared_(std::make_unique<DeclaredCommands>()) {
    declare(*declared_);
}

CommandLine::~CommandLine() = default;

CLI::App& CommandLine::app() {
    return declared_->app;
}

ExitCode CommandLine::run(Console console) const {
    return declared_->chosen(console);
}

} // namespace tumpline::cli

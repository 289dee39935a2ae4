#include "cli/commands/command_export.h"

#include "cli/commands/planning.h"
#include "cli/export/export_csv.h"
#include "cli/export/export_geojson.h"
#include "cli/export/export_gpx.h"
#include "cli/export/export_maps.h"
#include "cli/files/whole_file.h"
#include "cli/words/progress.h"
#include "geo/input_error.h"
#include "planner/make_plan.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse_output(const fs::path& file, std::string found, std::string advice) {
    throw geo::InputError({{.file = file.string(),
                            .place = {},
                            .found = std::move(found),
                            .expected = "an output of its own",
                            .advice = std::move(advice)}});
}

/// The names of the files that are asked for, without the tables.
std::vector<fs::path> single_files(const ExportOptions& options) {
    std::vector<fs::path> files;
    for (const fs::path& file : {options.gpx, options.geojson, options.gpkg, options.kml})
        if (!file.empty())
            files.push_back(file);
    return files;
}

void check_named(const ExportOptions& options) {
    if (single_files(options).empty() && options.csv_folder.empty())
        throw geo::InputError(
            {{.file = "tumpline export",
              .place = {},
              .found = "no output",
              .expected = "one or more of --gpx, --geojson, --gpkg, --kml and --csv",
              .advice = "name a file, like --gpx trip.gpx"}});
}

/// The folder of the tables must be there, or its own folder, so that it can be made.
void check_folder(const fs::path& folder) {
    std::error_code error;
    if (fs::is_directory(folder, error))
        return;
    if (fs::exists(folder, error))
        refuse_output(folder, "a file", "name a folder for the tables");
    const fs::path above = fs::absolute(folder / "..", error).lexically_normal();
    if (!fs::is_directory(above, error))
        refuse_output(folder, "no folder above it", "make that folder first");
}

void check_outputs(const ExportOptions& options, const std::vector<fs::path>& inputs) {
    std::vector<fs::path> files = single_files(options);
    for (const fs::path& file : files)
        check_writable({file, inputs, options.overwrite});
    if (!options.csv_folder.empty()) {
        check_folder(options.csv_folder);
        for (const std::string& name : csv_table_names()) {
            const fs::path file = options.csv_folder / name;
            if (fs::is_directory(options.csv_folder))
                check_writable({file, inputs, options.overwrite});
            files.push_back(file);
        }
    }
    if (!options.csv_folder.empty())
        files.push_back(options.csv_folder);
    std::vector<fs::path> known;
    std::error_code error;
    for (const fs::path& file : files) {
        // Absolute first: a name that is not there yet keeps its spelling otherwise.
        const fs::path target = fs::weakly_canonical(fs::absolute(file));
        if (std::any_of(known.begin(), known.end(), [&](const fs::path& other) {
                return other == target || fs::equivalent(other, target, error);
            }))
            refuse_output(file, "the name of two outputs", "give each a name of its own");
        known.push_back(target);
    }
}

/// Writes all files or none; a folder made for tables that could not be written goes again.
void write(const std::vector<WholeFile>& files, const fs::path& folder) {
    std::error_code error;
    const bool made = !folder.empty() && fs::create_directory(folder, error);
    if (error)
        refuse_output(folder, error.message(), "choose a folder that you may write to");
    try {
        write_all_whole(files);
    } catch (...) {
        if (made)
            fs::remove(folder, error);
        throw;
    }
}

} // namespace

ExitCode export_plan(const ExportOptions& options, Console console) {
    check_named(options);
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options.trip);
    const std::vector<fs::path> inputs = files_read(options.trip, trip);
    check_outputs(options, inputs);
    progress.now("reading tracks and elevation");
    const planner::Route route = planner::build_route(trip);
    progress.now("planning");
    const planner::Plan plan = planner::make_plan(trip, route);
    progress.now("writing");
    std::vector<WholeFile> files;
    if (!options.gpx.empty())
        files.push_back({{options.gpx, inputs, options.overwrite}, export_gpx(plan, route)});
    if (!options.geojson.empty())
        files.push_back(
            {{options.geojson, inputs, options.overwrite}, export_geojson(plan, route)});
    if (!options.gpkg.empty())
        files.push_back({{options.gpkg, inputs, options.overwrite}, export_gpkg(plan, route)});
    if (!options.kml.empty())
        files.push_back({{options.kml, inputs, options.overwrite}, export_kml(plan, route)});
    if (!options.csv_folder.empty())
        for (CsvTable& table : export_csv(plan))
            files.push_back({{options.csv_folder / table.name, inputs, options.overwrite},
                             std::move(table.text)});
    write(files, options.csv_folder);
    return answer_of(plan, units_of(options.trip, plan.trip), console);
}

} // namespace tumpline::cli

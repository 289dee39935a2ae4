#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

#include <filesystem>

namespace tumpline::cli {

/// What is left empty is not written; one at least is named.
struct ExportOptions {
    TripOptions trip;
    std::filesystem::path gpx;
    std::filesystem::path geojson;
    std::filesystem::path gpkg;
    std::filesystem::path kml;
    std::filesystem::path csv_folder; ///< made if it is not there
    bool overwrite = false;           ///< replace also what tumpline did not write
};

/// Plans the trip and writes it for receivers, map programs and spreadsheets (docs/export.md): all
/// files whole or none at all, none over an input. A plan that cannot be done is written as
/// well, with its cautions; the answer is then ExitCode::no_plan.
/// Throws: geo::InputError, before anything is written, if no output is named, two are the same
/// file, or one cannot be written.
[[nodiscard]] ExitCode export_plan(const ExportOptions& options, Console console);

} // namespace tumpline::cli

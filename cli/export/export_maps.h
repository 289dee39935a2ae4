#pragma once

#include "planner/plan.h"
#include "planner/route/route.h"

#include <string>

/// The plan for map programs: legs as lines with their figures, places and nights as points
/// (docs/export.md). Both carry tumpline's mark.
namespace tumpline::cli {

/// The bytes of a GeoPackage with the layers "legs" and "places".
[[nodiscard]] std::string export_gpkg(const planner::Plan& plan, const planner::Route& route);

/// The text of a KML with the folders "legs" and "places".
[[nodiscard]] std::string export_kml(const planner::Plan& plan, const planner::Route& route);

} // namespace tumpline::cli

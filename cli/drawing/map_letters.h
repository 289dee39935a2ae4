#pragma once

#include "cli/drawing/ground_picture.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "cli/drawing/load_band_places.h"
#include "cli/drawing/map_frame.h"
#include "geo/ground/map_projection.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// What a map's letters stand for and must keep clear of each other on.
struct LetteredMap {
    const geo::MapProjection& projection;
    Frame frame;
    const std::vector<DrawnPoint>& line; ///< of the route
    std::vector<Mark> marks;
    const planner::PlanDay* day; ///< null: the whole route, without the UTM grid and kilometres
    GroundView ground;
    std::vector<const GroundPicture*> pictures; ///< of the ground, the more important first
};

/// The letters of a map: nothing of one lies on the other.
struct MapLetters {
    std::string degrees; ///< under the route: meridians and parallels
    std::string names;   ///< above it
};

/// Degrees at the frame first, but on no symbol; then the UTM grid's figures, names of places,
/// kilometres, and what the ground is called where there is room.
[[nodiscard]] MapLetters map_letters(LetteredMap map, const Drawing& drawing, const Figures& shown);

} // namespace tumpline::cli

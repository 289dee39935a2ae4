#pragma once

#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "cli/drawing/map_frame.h"
#include "cli/drawing/map_labels.h"

#include <functional>
#include <string>
#include <vector>

/// Places and nights on the map.
namespace tumpline::cli {

struct Mark {
    DrawnPoint at;
    std::string name;
    planner::PlaceKind kind = planner::PlaceKind::landing;
    int night = 0;              ///< 0: no night is spent here
    std::vector<int> more = {}; ///< the nights after the first that are spent here
};

/// Nights first, then the route's places where no night is; `place_at` draws a distance along.
[[nodiscard]] std::vector<Mark> marks(const planner::Plan& plan,
                                      const planner::Route& route,
                                      const std::function<DrawnPoint(double)>& place_at);

/// On a way there and back a place lies along twice: marks that would hide each other become one,
/// with the numbers of all nights spent there. `text`: height of the letters.
[[nodiscard]] std::vector<Mark> one_per_place(std::vector<Mark> all, double text);

/// Nothing is to be written upon the symbols.
void take_symbols(const std::vector<Mark>& all, Labels& labels, double text);

/// Symbols, whose room is taken already, and names: one for each place. A name lies neither on
/// another nor, if it can be helped, on the route's line; one without room is left out (the list
/// beside the map has them all).
[[nodiscard]] std::string
places_markup(std::vector<Mark> all, Labels& labels, const Drawing& drawing);

/// The symbol of a place or the number of a night, at its point.
[[nodiscard]] std::string mark_markup(const Mark& mark, double text);

/// The symbol alone in a drawing of 20 by 20, for the key.
[[nodiscard]] std::string place_symbol(planner::PlaceKind kind);

} // namespace tumpline::cli

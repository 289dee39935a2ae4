#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"
#include "planner/route/route.h"

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::planner {
struct InstantQuantiles;
} // namespace tumpline::planner

/// The load band: the route drawn as a band as wide as the load that the party bears there.
/// On foot that is what is on the backs (on a portage each member's heaviest carry), afloat the
/// goods in the boats, on a ride nothing. Colour and pattern tell the way of travel.
namespace tumpline::cli {

/// What each member bears at one point; a step is two points at the same place.
struct BandPoint {
    double along_m;
    std::vector<double> member_kg; ///< party order

    [[nodiscard]] double sum_kg() const;
};

struct BandLeg {
    planner::PlanLegNumber plan_leg;
    planner::Travel travel;
    std::vector<BandPoint> points; ///< from the leg's start to its end, at least two
};

/// The band over the whole plan: starts from each leg's loads and follows the ledger's entries,
/// where it has any on the leg; straight to the leg's last loads otherwise.
[[nodiscard]] std::vector<BandLeg> load_band(const planner::Plan& plan);

/// The heaviest the party bears at one point; 0 for an empty band.
[[nodiscard]] double heaviest_kg(const std::vector<BandLeg>& band);

/// How large a drawing is and what it is for.
struct Drawing {
    double width;       ///< in CSS pixels; the text's size is in the same
    double text;        ///< height of the letters
    bool names = true;  ///< write the names of places, not only the nights' numbers
    std::string id;     ///< makes the names inside one drawing unlike those in another
    bool marks = false; ///< of a profile: places and hazards, with their names, upon it
};

/// The smallest letters of a page: 9 pt where 700 pixels are 184 mm.
inline constexpr double page_text = 12.1;

/// The same with places and hazards upon the profile.
[[nodiscard]] inline Drawing with_marks(Drawing drawing) {
    drawing.marks = true;
    return drawing;
}

inline constexpr double wide_drawing = 700.0;   ///< fills a printed page and a desk's screen
inline constexpr double narrow_drawing = 340.0; ///< a telephone held upright

/// The map: band, places, nights, north, scale, grid, on an empty sheet; an <svg> element. A
/// RouteMap draws the ground under it.
[[nodiscard]] std::string map_drawing(const planner::Plan& plan,
                                      const planner::Route& route,
                                      const Drawing& drawing,
                                      const Figures& shown);

/// A stretch of the route.
struct Stretch {
    double from_m;
    double to_m;
};

/// The ground's profile and under it the band, over a stretch of the route; an <svg> element.
[[nodiscard]] std::string profile_drawing(const planner::Plan& plan,
                                          const planner::Route& route,
                                          const Stretch& stretch,
                                          const Drawing& drawing,
                                          const Figures& shown);

/// When a day is arrived by in draws of what one does not know, along the hours of `day_drawing`:
/// from 5 to 95 of 100, from 10 to 90, half of them, and where the plan arrives; an <svg> element.
[[nodiscard]] std::string arrivals_drawing(const planner::PlanDay& day,
                                           const planner::InstantQuantiles& arrive,
                                           const Drawing& drawing,
                                           const Figures& shown);

/// The hours of a day: night, twilight and light, and what is done when; an <svg> element.
[[nodiscard]] std::string day_drawing(const planner::Plan& plan,
                                      const planner::PlanDay& day,
                                      const Drawing& drawing,
                                      const Figures& shown);

/// What each one's vessels hold along the route, under what they can hold; an <svg> element.
[[nodiscard]] std::string
water_drawing(const planner::Plan& plan, const Drawing& drawing, const Figures& shown);

/// Widths of the map's band for its key, largest first.
struct BandKey {
    std::string label; ///< "40 kg"
    double width;
};

[[nodiscard]] std::vector<BandKey>
band_key(const planner::Plan& plan, const Drawing& drawing, const Figures& shown);

} // namespace tumpline::cli

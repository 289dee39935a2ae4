#pragma once

#include "planner/defaults/defaults.h"
#include "planner/trip/trip.h"

#include <array>
#include <string_view>
#include <vector>

/// What one does not know about a trip, and how far it may be off.
namespace tumpline::planner {

/// Each is drawn on its own (docs/odds.md).
enum class Assumption {
    pace_on_foot,
    pace_afloat,
    day_form,
    wind,
    current,
    changeovers,
    drinking,
    eating
};

inline constexpr std::array all_assumptions{Assumption::pace_on_foot,
                                            Assumption::pace_afloat,
                                            Assumption::day_form,
                                            Assumption::wind,
                                            Assumption::current,
                                            Assumption::changeovers,
                                            Assumption::drinking,
                                            Assumption::eating};

/// "pace_on_foot", for programs.
[[nodiscard]] std::string_view name_of(Assumption assumption);

/// Standard deviations of the logarithms of the factors by which things are off: 0.1 means that two
/// draws of three lie within about a tenth of what is assumed. Medians are 1.
struct AssumedSpread {
    double pace; ///< on foot and afloat, drawn apart
    double day_form;
    double wind;
    double current;
    double changeovers;
    double drinking;
    double eating;
    std::vector<DefaultUsed> defaults; ///< each value the file did not state

    [[nodiscard]] double of(Assumption assumption) const;
};

/// Fills what the trip leaves open.
[[nodiscard]] AssumedSpread assume_spread(const Spread& given);

} // namespace tumpline::planner

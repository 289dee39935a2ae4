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

/// Whose pace is their own: of everybody on foot, of every boat afloat.
struct PaceKnown {
    bool on_foot = true;
    bool afloat = true;
};

[[nodiscard]] PaceKnown pace_known(const Trip& trip, const Assumed& assumed);

/// How far a pace may be off, as below, to either side: people whose pace is not known lie further
/// apart on the slow side.
struct PaceSpread {
    double slower;
    double faster;
};

/// Standard deviations of the logarithms of the factors by which things are off: 0.1 means that two
/// draws of three lie within about a tenth of what is assumed. Medians are 1.
struct AssumedSpread {
    PaceSpread on_foot; ///< of the pace; drawn apart from that afloat
    PaceSpread afloat;
    double day_form;
    double wind;
    double current;
    double changeovers;
    double drinking;
    double eating;
    std::vector<DefaultUsed> defaults; ///< each value the file did not state

    /// Of a pace the mean of its two sides.
    [[nodiscard]] double of(Assumption assumption) const;
};

/// The spread of currents where the trip says none.
inline constexpr double usual_current_spread = 0.25;

/// Fills what the trip leaves open. A pace that nobody has learned spreads as the band between
/// people does (models/time_band.h).
[[nodiscard]] AssumedSpread assume_spread(const Spread& given, PaceKnown known = {});

} // namespace tumpline::planner

#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/segments.h"
#include "planner/models/paddling.h"

#include <compare>
#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// A load that changes evenly from the start to the end of a stretch, carried and worn together.
struct ChangingLoad {
    double start_kg;
    double end_kg;
};

/// Time a member needs for a stretch on foot, seconds: the walking model's time over the profile,
/// times the ground's factor, over the member's pace and the effect of the load. Integrated over
/// the changing load by Simpson's rule (its error is below a part in a million).
[[nodiscard]] double walk_s(const Stretch& stretch,
                            const AssumedMember& member,
                            const AssumedModels& models,
                            const ChangingLoad& load);

/// The same over the ground the other way, for the way back to the next load.
[[nodiscard]] double walk_back_s(const Stretch& stretch,
                                 const AssumedMember& member,
                                 const AssumedModels& models,
                                 const ChangingLoad& load);

/// Time of a boat that is lined, waded with or poled: its own pace, slowed on days on which
/// somebody goes slower than they do. `index` is the stretch's.
[[nodiscard]] double led_s(const Stretch& stretch, const Assumed& assumed, std::size_t index);

/// A member on a stretch, with the pace of that day.
[[nodiscard]] AssumedMember
member_on(const Assumed& assumed, std::size_t stretch, std::size_t member);

/// The member on a walk that takes the party so long: whoever could be faster goes at the pace of
/// the others, and all of them go slower in the dark.
struct PartyWalk {
    const Stretch& stretch;
    const ChangingLoad& load;
    double moving_s;
};

[[nodiscard]] AssumedMember
at_party_pace(AssumedMember member, const AssumedModels& models, const PartyWalk& walk);

/// Speed factor of a load for a member: 1 without one.
[[nodiscard]] double
load_factor(const AssumedMember& member, const AssumedModels& models, double load_kg);

/// A stretch afloat.
struct Paddle {
    double moving_s;
    double through_water_mps; ///< mean
    double head_wind_mps;     ///< mean component against the boat
    bool stopped;             ///< wind or current leaves no way ahead somewhere
    bool by_current;          ///< the current alone does
};

/// Factors on what a stretch afloat meets.
struct Conditions {
    double wind = 1.0;
    double calm_speed = 1.0;
    double current = 1.0;
};

/// What the day of a stretch brings.
[[nodiscard]] Conditions conditions_on(const Assumed& assumed, std::size_t stretch);

/// What the wind does on each course of a stretch, whatever the load.
using WindAlong = std::vector<WindOnCourse>;

[[nodiscard]] WindAlong wind_along(const Stretch& stretch,
                                   HullKind kind,
                                   const Assumed& assumed,
                                   const Conditions& conditions);

/// A wind over open water; without a direction it comes from ahead on every course.
struct Blowing {
    double wind_mps = 0.0;
    std::optional<double> from_deg = {};

    [[nodiscard]] auto operator<=>(const Blowing&) const = default;
};

/// The same in a given wind, which the stretch's shelter lessens.
[[nodiscard]] WindAlong wind_along(const Stretch& stretch, HullKind kind, const Blowing& blowing);

struct LoadedCraft {
    const AssumedCraft& craft;
    double all_up_kg;
};

/// How a loaded craft fares on a stretch under the wind. Where it cannot make way its time is
/// counted at 0.3 m/s so that everything stays finite, and `stopped` says so.
[[nodiscard]] Paddle paddle(const Stretch& stretch,
                            const AssumedCraft& craft,
                            const Assumed& assumed,
                            double all_up_kg,
                            const Conditions& conditions = {});

/// The same with the wind worked out before, which takes most of the time.
[[nodiscard]] Paddle paddle(const Stretch& stretch,
                            const LoadedCraft& loaded,
                            PaddlingModel model,
                            const WindAlong& winds,
                            const Conditions& conditions);

} // namespace tumpline::planner

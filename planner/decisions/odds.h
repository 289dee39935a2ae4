#pragma once

#include "planner/decisions/draws.h"
#include "planner/decisions/statistics.h"
#include "planner/defaults/uncertainty_defaults.h"
#include "planner/plan.h"
#include "planner/quantities/leg_number.h"
#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// The plan over seeded draws of what one does not know (docs/odds.md).
namespace tumpline::planner {

struct OddsOptions {
    std::size_t draws;
    std::uint64_t seed;
    std::size_t threads; ///< at least 1; changes no figure
};

/// Quantiles of instants.
struct InstantQuantiles {
    sys_seconds q05, q10, q50, q90, q95;
};

struct OddsDay {
    int day = 1;
    InstantQuantiles arrive{};
    std::optional<double> after_dusk; ///< chance; empty where no dusk falls on that day
    double held_up = 0.0; ///< chance that wind or current stops a boat, or that the wind is over a
                          ///< craft's ceiling on an open crossing
    std::optional<Assumption> leading; ///< on which the arrival depends most
    double leading_correlation = 0.0;  ///< of ranks
};

struct OddsAppointment {
    std::size_t appointment = 0; ///< index into Plan::appointments
    InstantQuantiles arrive{};
    double missed = 0.0;        ///< chance of arriving after `by`
    double within_margin = 0.0; ///< chance of arriving before it with less than the margin left
};

/// A departure from the end and how often it is the one that a party takes: the first after it is
/// there, whatever margin was asked for.
struct OddsDeparture {
    std::size_t connection = 0; ///< index into Plan::connections
    sys_seconds at{};
    double chance = 0.0;
    bool planned = false; ///< the one that the plan takes
};

/// A river whose level is drawn between its columns.
struct OddsRiver {
    LegNumber leg = {}; ///< of the route
    std::string name;
    double plan_mps = 0.0;
    Quantiles current_mps{};
    std::optional<double> not_runnable = {}; ///< chance; empty where no range is given
    std::optional<double> harder = {};       ///< chance that the class may be above the plan's
};

/// A member's pack at the start of a leg on foot.
struct OddsPack {
    std::string member;
    double plan_kg = 0.0;
    Quantiles start_kg{};
    double over_limit = 0.0; ///< chance
};

struct OddsLeg {
    PlanLegNumber plan_leg = {};
    std::vector<OddsPack> packs;
};

/// Food from one supply to the next.
struct OddsStage {
    std::size_t stage = 0;        ///< index into Plan::stages
    Quantiles left_kg{};          ///< at its end; negative: so much is missing
    std::vector<double> runs_out; ///< chance, with 0, 1, … days lost in it
};

/// Water between two sources.
struct OddsWater {
    std::size_t stretch = 0;   ///< index into Plan::water
    double needs_more = 0.0;   ///< chance that what the plan fills does not last, reserve included
    double uses_reserve = 0.0; ///< chance that the reserve is drunk from, or more
};

struct Influence {
    Assumption assumption{};
    double spread = 0.0;
    double time = 0.0;       ///< rank correlation with the time under way, all days together
    double time_share = 0.0; ///< square of it over the sum of the squares
    double food = 0.0;       ///< with the food eaten
    double food_share = 0.0;
    double water = 0.0; ///< with the water drunk from the vessels
    double water_share = 0.0;
};

struct Odds {
    Plan plan; ///< from which the draws depart; its nights are kept
    OddsOptions options{};
    AssumedSpread spread;
    Quantiles under_way_s{};   ///< moving, change-overs and rests of all days
    std::vector<OddsDay> days; ///< without rest days
    std::vector<OddsAppointment> appointments;
    std::vector<OddsDeparture> departures;        ///< in order, those that are ever taken
    double no_departure = 0.0;                    ///< chance that none leaves any more
    std::optional<double> connection_missed = {}; ///< chance that the plan's own is gone
    std::vector<OddsRiver> rivers;                ///< in route order
    std::vector<OddsLeg> legs;                    ///< on foot
    std::vector<OddsStage> stages;
    std::vector<OddsWater> water;
    std::vector<Influence> influences;
    std::vector<std::string> remarks; ///< what these odds do not cover on this trip
};

/// How many draws can be asked for.
inline constexpr std::size_t most_draws = 100'000;

/// Plans `trip` over `route` and again for each draw. The same seed gives the same answer with any
/// number of threads.
/// Throws: geo::InputError where the figures of so many draws would take more than about half a
/// gigabyte.
[[nodiscard]] Odds odds_of(const Trip& trip, const Route& route, const OddsOptions& options);

/// The same while somebody watches; empty if they stopped it.
[[nodiscard]] std::optional<Odds> watched_odds_of(const Trip& trip,
                                                  const Route& route,
                                                  const OddsOptions& options,
                                                  const DrawWatch& watch);

} // namespace tumpline::planner

#pragma once

#include "planner/defaults/defaults.h"
#include "planner/defaults/kit_choice.h"
#include "planner/journey/energy.h"
#include "planner/journey/pace.h"
#include "planner/journey/provisions.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"
#include "planner/loads/loads.h"
#include "planner/solution/moving_times.h"
#include "planner/solution/waiting.h"

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

/// The loop: load, pace, hours, days, energy and water, load; repeated until nothing moves.
namespace tumpline::planner {

/// How the loop ended.
struct Converged {
    int rounds = 0;
    double largest_change_kg = 0.0;
    double largest_change_s = 0.0;
    bool settled = true; ///< false: nights flipped and the safer choice was kept
};

/// What does not change from round to round. Trip and route must outlive it.
struct Prepared {
    const Trip& trip;
    const Route& route;
    Assumed assumed;
    Stretches stretches;
    KitChoice kit;
};

[[nodiscard]] Prepared prepare(const Trip& trip, const Route& route);

/// From which loads the first round starts; the fixed point must not depend on it.
enum class FirstGuess { empty_packs, full_limits };

struct Solved;

struct SolveOptions {
    /// Boundaries slept at, ascending; empty optional: by hours.
    std::optional<std::vector<std::size_t>> nights;
    FirstGuess guess = FirstGuess::empty_packs;
    bool record = true;     ///< keep the ledger, and every way of a portage
    double close_kg = 1e-4; ///< hoped for in the first rounds
    double close_s = 0.05;
    double shown_kg = 5e-3; ///< what no longer shows: half of the last digit of a printed mass,
    double shown_s = 0.5;   ///< far below a printed minute; enough after some rounds
    int most_rounds = 40;
    const Assumed* assumed = nullptr;  ///< in place of the prepared trip's own
    const Solved* packed = nullptr;    ///< its food and fuel are put in, whatever is eaten, and
                                       ///< its things stay with their bearers
    const Loads* warm_start = nullptr; ///< loads of a like trip to start from instead of a guess
};

/// The fixed point.
struct Solved {
    std::vector<std::size_t> nights;
    Timeline timeline;
    Provisions provisions;
    WaterCarry water;
    Loads loads;
    Expenditure spent;
    std::vector<Afloat> afloat;     ///< per stretch; meaningless on foot
    std::vector<Darkness> darkness; ///< per day of the timeline, where it ends
    Converged converged;
    std::vector<Caution> cautions;                 ///< of the choice of nights
    std::optional<Waiting> waiting = {};           ///< for a connection at the end
    std::shared_ptr<const Stretches> on_snow = {}; ///< where the snow changes by the day

    /// As they are met: under the snow of their days.
    [[nodiscard]] const Stretches& stretches_met(const Prepared& prepared) const {
        return on_snow ? *on_snow : prepared.stretches;
    }
};

[[nodiscard]] Solved solve(const Prepared& prepared, const SolveOptions& options);

/// The boundaries of the nights that the trip file lists by name.
/// Throws: geo::InputError where a night lies before the one ahead of it, at the start or at the
/// end.
[[nodiscard]] std::vector<std::size_t> listed_nights(const Prepared& prepared);

} // namespace tumpline::planner

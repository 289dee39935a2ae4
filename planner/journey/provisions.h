#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// What one member eats on one day, whole milligrams without packaging: breakfast, trail, dinner.
using MealMasses = std::array<std::int64_t, 3>;

/// From one supply to the next.
struct SupplyStage {
    std::size_t boundary; ///< where it begins; 0 is the start
    int first_day;
    int last_day;
    std::int64_t food_mg;    ///< to be eaten in it
    std::int64_t reserve_mg; ///< carried through it
    std::int64_t fuel_mg;    ///< to be burnt in it, reserve included
    std::int64_t burnt_mg;   ///< of that by plan
    int containers;
    std::int64_t whole_day_mg = 0;      ///< food of a day of it, no meal left out; the mean
    std::int64_t whole_day_fuel_mg = 0; ///< the same of fuel
    std::int64_t lacks_mg = 0;     ///< of what it needs, where the trip file says what is there;
                                   ///< packaging included
    std::int64_t for_later_mg = 0; ///< laid down in it, and eaten in a later one
    std::int64_t fetched_mg = 0;   ///< eaten in it, and laid down in an earlier one

    std::int64_t fuel_for_later_mg = 0; ///< laid down in it, and burnt in a later one
    std::int64_t fuel_fetched_mg = 0;   ///< burnt in it, and laid down in an earlier one

    /// Fuel to be put in, without containers.
    [[nodiscard]] std::int64_t fuel_packed_mg() const {
        return fuel_mg + fuel_for_later_mg - fuel_fetched_mg;
    }

    /// To be put in, without the reserve.
    [[nodiscard]] std::int64_t packed_mg() const { return food_mg + for_later_mg - fetched_mg; }
};

/// Food or fuel that lies at a place between two boundaries of the way.
struct StoreCache {
    std::size_t left_at;
    std::size_t fetched_at;
    std::int64_t mass_mg; ///< of food packaging included
};

/// What lies somewhere for a while.
struct StoreCaches {
    std::vector<StoreCache> food = {};
    std::vector<StoreCache> fuel = {};
};

/// Water that lies somewhere, litres of each member.
struct WaterCache {
    std::size_t left_at;
    std::optional<std::size_t> fetched_at; ///< empty: never
    double each_l;
};

/// Deals a day's trail food out to its stretches by moving time, the last one taking what is left:
/// `take(stretch, mass_mg)`. Nothing is dealt on a day without moving; what remains is returned.
template <class Take>
std::int64_t
deal_trail(std::int64_t mass_mg, const DaySpan& day, const Timeline& timeline, const Take& take) {
    double moving_s = 0.0;
    for (std::size_t i = day.first; i < day.last; ++i)
        moving_s += timeline.stretches[i].moving_s;
    std::int64_t left_mg = mass_mg;
    for (std::size_t i = day.first; i < day.last && moving_s > 0.0; ++i) {
        const std::int64_t part_mg = i + 1 == day.last
                                         ? left_mg
                                         : std::llround(static_cast<double>(mass_mg) *
                                                        timeline.stretches[i].moving_s / moving_s);
        take(i, part_mg);
        left_mg -= part_mg;
    }
    return left_mg;
}

struct Provisions {
    std::vector<std::vector<MealMasses>> eaten;        ///< per day, per member
    std::vector<std::array<std::int64_t, 2>> burnt_mg; ///< per day: morning, evening, whole party
    std::vector<std::size_t> day_stage_morning; ///< stage from which breakfast comes, per day
    std::vector<std::size_t> day_stage_evening;
    std::vector<std::size_t> stretch_stage; ///< stage from which trail food comes
    std::vector<SupplyStage> stages;
};

/// Food by energy or ration, fuel by litres boiled, split into the stages between supplies. Where a
/// supply is said to hold more food than its stage needs, the rest is carried on as reserve; where
/// it holds less, the stage has what it needs and `lacks_mg` says how much is not there. Food or
/// fuel that is laid down in one stage and fetched in a later one is put in with the earlier.
/// `energy_j[day][member]` is what each spends on each day of the timeline.
[[nodiscard]] Provisions provide(const Assumed& assumed,
                                 const Stretches& route,
                                 const Timeline& timeline,
                                 const std::vector<std::vector<double>>& energy_j,
                                 const StoreCaches& caches = {});

/// Makes the stages hold what was packed for them: what is not eaten or burnt stays as reserve. If
/// more is eaten than was packed the stage holds what is eaten, without a reserve; whoever asks
/// compares the two. Both must have the same stages.
void keep_packed(Provisions& provisions, const Provisions& packed);

/// What one member carries and drinks, litres.
struct WaterCarry {
    std::vector<double> fill_l; ///< per boundary: taken aboard before the stretch that begins there
    std::vector<double> drunk_l;   ///< per stretch, from the pack
    std::vector<double> scooped_l; ///< per stretch, from the water paddled on or found on the way
    std::vector<bool> dry_camp;    ///< per day: the night after it
    std::vector<std::array<double, 2>> camp_l; ///< per day: morning, evening
    std::vector<std::array<bool, 2>> camp_from_pack;
    double held_least_l;             ///< reserve
    std::vector<double> left_l = {}; ///< per boundary: laid down there, once the vessels are filled
    std::vector<double> back_l = {}; ///< per boundary: fetched there

    struct Run {
        std::size_t from_boundary;
        std::size_t to_boundary;
        int first_day;
        int last_day;
        double need_l; ///< between the sources, without reserve
        double hours;  ///< of travel
        int dry_nights;
        std::vector<std::size_t> dry_days = {}; ///< those of the timeline before these nights
        double camps_l = 0.0;                   ///< of need_l, at the dry camps
        double laid_l = 0.0;                    ///< of need_l, to be laid down on the way
    };

    std::vector<Run> runs; ///< stretches between sources on which water is carried
};

/// Time on a stretch: moving, and at rests and change-overs.
struct UnderWay {
    double moving_s;
    double halts_s;
};

/// What one member drinks on a stretch, litres.
[[nodiscard]] double
drunk_under_way_l(const AssumedWater& water, const Stretch& stretch, const UnderWay& time);

/// What one member uses in a camp, litres, by the time from arriving to setting off.
[[nodiscard]] double used_in_camp_l(const AssumedWater& water, double stay_s);

/// The smallest carry that reaches from each dependable source to the next with the reserve left.
/// The same for every member (docs/water.md). What is laid down is carried there besides, and what
/// is fetched is drunk before anything else.
[[nodiscard]] WaterCarry carry_water(const Assumed& assumed,
                                     const Stretches& route,
                                     const Timeline& timeline,
                                     const std::vector<WaterCache>& caches = {});

} // namespace tumpline::planner

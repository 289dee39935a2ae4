#include "planner/journey/provisions.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

bool eats(const AssumedFood& food, const std::vector<DaySpan>& days, std::size_t d, Meal meal) {
    if (d == 0 && meal < food.first_meal)
        return false;
    return d + 1 != days.size() || meal <= food.last_meal;
}

/// Number of the stage in force once `boundary` has been reached.
std::size_t stage_at(const std::vector<SupplyStage>& stages, std::size_t boundary) {
    std::size_t stage = 0;
    while (stage + 1 < stages.size() && stages[stage + 1].boundary <= boundary)
        ++stage;
    return stage;
}

std::vector<SupplyStage> empty_stages(const Stretches& route) {
    std::vector<SupplyStage> stages{{0, 1, 1, 0, 0, 0, 0, 0}};
    for (std::size_t b = 1; b + 1 < route.boundaries.size(); ++b)
        if (route.boundaries[b].supply)
            stages.push_back({b, 0, 0, 0, 0, 0, 0, 0});
    return stages;
}

/// What the party eats and burns on a whole day of the timeline, no meal left out.
struct WholeDay {
    double food_kg;
    double fuel_kg;
};

int containers_for(const SupplyStage& stage, const AssumedFuel& fuel) {
    const std::int64_t packed_mg = stage.fuel_packed_mg();
    if (packed_mg <= 0)
        return 0;
    return fuel.container_holds_kg
               ? static_cast<int>(std::ceil(mg_to_kg(packed_mg) / *fuel.container_holds_kg))
               : 1;
}

/// Reserves are whole days: the mean of the stage's own, so that a first day without breakfast or a
/// day that two stages share makes none of them smaller. The fuel to cook them comes along.
void fit_reserves(Provisions& result, const Assumed& assumed, const std::vector<WholeDay>& days) {
    std::vector<WholeDay> sums(result.stages.size(), {0.0, 0.0});
    std::vector<int> days_of(result.stages.size(), 0);
    for (std::size_t d = 0; d < days.size(); ++d)
        for (std::size_t s = result.day_stage_morning[d]; s <= result.day_stage_evening[d]; ++s) {
            sums[s].food_kg += days[d].food_kg;
            sums[s].fuel_kg += days[d].fuel_kg;
            ++days_of[s];
        }
    for (std::size_t s = 0; s < result.stages.size(); ++s) {
        SupplyStage& stage = result.stages[s];
        stage.whole_day_mg = kg_to_mg(sums[s].food_kg / std::max(1, days_of[s]));
        stage.reserve_mg =
            std::llround(static_cast<double>(stage.whole_day_mg) * assumed.food.reserve_days);
        // A day lost is cooked for, also where no meal of the stage as planned asks for fuel.
        stage.burnt_mg = stage.fuel_mg;
        stage.whole_day_fuel_mg = kg_to_mg(sums[s].fuel_kg / std::max(1, days_of[s]));
        stage.fuel_mg +=
            std::llround(static_cast<double>(stage.whole_day_fuel_mg) * assumed.food.reserve_days);
        stage.fuel_mg += std::llround(static_cast<double>(stage.fuel_mg) * assumed.fuel.reserve);
    }
}

/// What is eaten in a stage from a boundary on.
std::int64_t eaten_from(const Provisions& result,
                        const Timeline& timeline,
                        const StoreCache& cache,
                        std::size_t stage) {
    std::int64_t sum_mg = 0;
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];

        struct Eaten {
            std::size_t stage;
            std::size_t boundary;
        };

        const auto add = [&](const Eaten& at, std::int64_t mass_mg) {
            if (at.stage == stage && at.boundary >= cache.fetched_at)
                sum_mg += mass_mg;
        };
        for (const MealMasses& masses : result.eaten[d]) {
            add({result.day_stage_morning[d], day.first}, masses[0]);
            add({result.day_stage_evening[d], day.last}, masses[2]);
            const std::int64_t in_camp_mg =
                deal_trail(masses[1], day, timeline, [&](std::size_t i, std::int64_t part_mg) {
                    add({result.stretch_stage[i], i}, part_mg);
                });
            add({result.day_stage_evening[d], day.last}, in_camp_mg);
        }
    }
    return sum_mg;
}

/// What is burnt in a stage from a boundary on: in camp alone.
std::int64_t burnt_from(const Provisions& result,
                        const Timeline& timeline,
                        const StoreCache& cache,
                        std::size_t stage) {
    std::int64_t sum_mg = 0;
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        if (result.day_stage_morning[d] == stage && day.first >= cache.fetched_at)
            sum_mg += result.burnt_mg[d][0];
        if (result.day_stage_evening[d] == stage && day.last >= cache.fetched_at)
            sum_mg += result.burnt_mg[d][1];
    }
    return sum_mg;
}

/// Where a stage counts a store that lies somewhere for a while, and what its packaging multiplies
/// it by.
struct CacheAccount {
    std::int64_t SupplyStage::*for_later_mg;
    std::int64_t SupplyStage::*fetched_mg;
    double packed;
};

/// What is fetched in another stage than it is laid down in comes with the earlier one; the later
/// one needs less, as far as there is something to be used after the fetching:
/// `used_from(cache, stage)`.
template <typename UsedFrom>
void take_caches(std::vector<SupplyStage>& stages,
                 std::vector<StoreCache> caches,
                 const CacheAccount& account,
                 const UsedFrom& used_from) {
    std::stable_sort(caches.begin(), caches.end(), [](const StoreCache& a, const StoreCache& b) {
        return a.fetched_at > b.fetched_at;
    });
    for (const StoreCache& cache : caches) {
        const std::size_t from = stage_at(stages, cache.left_at);
        const std::size_t to = stage_at(stages, cache.fetched_at);
        if (from == to)
            continue;
        const std::int64_t bare_mg =
            std::llround(static_cast<double>(cache.mass_mg) / account.packed);
        stages[from].*account.for_later_mg += bare_mg;
        std::int64_t& fetched_mg = stages[to].*account.fetched_mg;
        fetched_mg += std::clamp<std::int64_t>(used_from(cache, to) - fetched_mg, 0, bare_mg);
    }
}

/// Food and fuel that lie somewhere for a while.
void take_caches(Provisions& result,
                 const Timeline& timeline,
                 const StoreCaches& caches,
                 double packed) {
    take_caches(result.stages,
                caches.food,
                {&SupplyStage::for_later_mg, &SupplyStage::fetched_mg, packed},
                [&](const StoreCache& cache, std::size_t stage) {
                    return eaten_from(result, timeline, cache, stage);
                });
    take_caches(result.stages,
                caches.fuel,
                {&SupplyStage::fuel_for_later_mg, &SupplyStage::fuel_fetched_mg, 1.0},
                [&](const StoreCache& cache, std::size_t stage) {
                    return burnt_from(result, timeline, cache, stage);
                });
}

/// Where it is said how much food a supply holds.
void take_what_is_there(Provisions& result, const Stretches& route, double packed) {
    double held_mg = 0.0; // reserve, packaging included
    for (SupplyStage& stage : result.stages) {
        const double reserve_mg = static_cast<double>(stage.reserve_mg) * packed;
        const std::optional<double>& there_kg = route.boundaries[stage.boundary].food_kg;
        if (stage.boundary > 0 && there_kg) {
            const double needs_mg = static_cast<double>(stage.packed_mg()) * packed +
                                    std::max(0.0, reserve_mg - held_mg);
            const double over_mg = *there_kg * mg_per_kg - needs_mg;
            if (over_mg > 0.0) // on top of what is held, or of what the stage wants in reserve
                stage.reserve_mg = std::llround((std::max(reserve_mg, held_mg) + over_mg) / packed);
            else
                stage.lacks_mg = std::llround(-over_mg);
        }
        held_mg = std::max(held_mg, static_cast<double>(stage.reserve_mg) * packed);
    }
}

} // namespace

Provisions provide(const Assumed& assumed,
                   const Stretches& route,
                   const Timeline& timeline,
                   const std::vector<std::vector<double>>& energy_j,
                   const StoreCaches& caches) {
    const AssumedFood& food = assumed.food;
    const std::size_t members = assumed.members.size();
    Provisions result;
    result.stages = empty_stages(route);
    std::vector<WholeDay> whole_days;
    result.stretch_stage.resize(route.stretches.size());
    for (std::size_t i = 0; i < route.stretches.size(); ++i)
        result.stretch_stage[i] = stage_at(result.stages, i);
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        const std::size_t morning = stage_at(result.stages, day.first);
        const std::size_t evening = stage_at(result.stages, day.last);
        result.day_stage_morning.push_back(morning);
        result.day_stage_evening.push_back(evening);
        std::vector<MealMasses> masses(members, MealMasses{0, 0, 0});
        whole_days.push_back(
            {0.0,
             assumed.fuel.boiled_l * assumed.fuel.kg_per_litre * static_cast<double>(members)});
        for (std::size_t m = 0; m < members; ++m) {
            const double whole_kg =
                food.ration_kg ? *food.ration_kg
                               : energy_j[d][m] * food.replace / food.energy_density_j_per_kg;
            whole_days.back().food_kg += whole_kg;
            for (const Meal meal : {Meal::breakfast, Meal::trail, Meal::dinner}) {
                const auto k = static_cast<std::size_t>(meal);
                if (!eats(food, timeline.days, d, meal))
                    continue;
                masses[m][k] = kg_to_mg(whole_kg * food.shares[k]);
            }
            result.stages[morning].food_mg += masses[m][0];
            result.stages[evening].food_mg += masses[m][2];
            // Trail food comes from the stage in which it is eaten; in camp from the evening's.
            result.stages[evening].food_mg +=
                deal_trail(masses[m][1], day, timeline, [&](std::size_t i, std::int64_t part_mg) {
                    result.stages[result.stretch_stage[i]].food_mg += part_mg;
                });
        }
        result.eaten.push_back(std::move(masses));
        const double half_kg = 0.5 * whole_days.back().fuel_kg;
        const bool breakfast = eats(food, timeline.days, d, Meal::breakfast);
        const bool dinner = eats(food, timeline.days, d, Meal::dinner);
        result.burnt_mg.push_back(
            {breakfast ? kg_to_mg(half_kg) : 0, dinner ? kg_to_mg(half_kg) : 0});
        result.stages[morning].fuel_mg += result.burnt_mg.back()[0];
        result.stages[evening].fuel_mg += result.burnt_mg.back()[1];
        for (std::size_t s = morning; s <= evening; ++s) {
            SupplyStage& stage = result.stages[s];
            stage.last_day = day.day;
            if (stage.first_day == 0)
                stage.first_day = day.day;
        }
    }
    fit_reserves(result, assumed, whole_days);
    take_caches(result, timeline, caches, 1.0 + food.packaging);
    for (SupplyStage& stage : result.stages)
        stage.containers = containers_for(stage, assumed.fuel);
    take_what_is_there(result, route, 1.0 + food.packaging);
    return result;
}

void keep_packed(Provisions& provisions, const Provisions& packed) {
    for (std::size_t s = 0; s < provisions.stages.size(); ++s) {
        SupplyStage& stage = provisions.stages[s];
        const SupplyStage& put_in = packed.stages[s];
        stage.reserve_mg =
            std::max<std::int64_t>(0, put_in.food_mg + put_in.reserve_mg - stage.food_mg);
        stage.for_later_mg = put_in.for_later_mg;
        stage.fetched_mg = put_in.fetched_mg;
        stage.fuel_for_later_mg = put_in.fuel_for_later_mg;
        stage.fuel_fetched_mg = put_in.fuel_fetched_mg;
        stage.fuel_mg = std::max(stage.burnt_mg, put_in.fuel_mg);
        stage.containers = put_in.containers;
    }
}

} // namespace tumpline::planner

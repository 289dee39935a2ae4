#include "planner/calendar.h"
#include "planner/plan_draft.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

constexpr double mg_per_kg = 1e6;

double to_kg(std::int64_t mg) {
    return static_cast<double>(mg) / mg_per_kg;
}

} // namespace

std::vector<Stage> plan_stages(const Draft& draft) {
    const Prepared& prepared = draft.prepared;
    const std::vector<SupplyStage>& stages = draft.settled.provisions.stages;
    const double packaging = prepared.assumed.food.packaging;
    std::vector<Stage> result;
    double held_kg = 0.0;
    for (std::size_t s = 0; s < stages.size(); ++s) {
        const SupplyStage& from = stages[s];
        const std::size_t to = s + 1 < stages.size() ? stages[s + 1].boundary
                                                     : prepared.stretches.boundaries.size() - 1;
        Stage stage;
        stage.from = boundary_name(draft, from.boundary);
        stage.to = boundary_name(draft, to);
        stage.first_day = from.first_day;
        stage.last_day = from.last_day;
        stage.reserve_kg = to_kg(from.reserve_mg) * (1.0 + packaging);
        // The reserve of the stage before is still in the packs: only what it lacks is added.
        stage.food_kg =
            to_kg(from.food_mg) * (1.0 + packaging) + std::max(0.0, stage.reserve_kg - held_kg);
        held_kg = std::max(held_kg, stage.reserve_kg);
        stage.packaging_kg = stage.food_kg * packaging / (1.0 + packaging);
        stage.fuel_kg = to_kg(from.fuel_mg);
        stage.containers = from.containers;
        stage.bearer_share = draft.settled.loads.stage_share[s];
        for (const std::size_t index : prepared.stretches.boundaries[from.boundary].places) {
            const TripPlace& place = prepared.trip.route.places[prepared.route.places[index].asked];
            if (s > 0 && is_closed(place, date_of(draft, from.first_day)))
                stage.closed = true;
        }
        const int days = std::max(1, from.last_day - from.first_day + 1);
        const double per_day_kg = to_kg(from.food_mg) / days;
        stage.lost_day_short_kg = std::max(0.0, per_day_kg - to_kg(from.reserve_mg));
        result.push_back(std::move(stage));
    }
    return result;
}

std::vector<WaterStretch> plan_water(const Draft& draft) {
    std::vector<WaterStretch> result;
    const AssumedWater& water = draft.prepared.assumed.water;
    const std::size_t members = draft.prepared.assumed.members.size();
    for (const WaterCarry::Run& run : draft.settled.water.runs) {
        WaterStretch stretch;
        stretch.from = boundary_name(draft, run.from_boundary);
        stretch.to = boundary_name(draft, run.to_boundary);
        stretch.from_m = draft.prepared.stretches.boundaries[run.from_boundary].along_m;
        stretch.to_m = draft.prepared.stretches.boundaries[run.to_boundary].along_m;
        stretch.first_day = run.first_day;
        stretch.last_day = run.last_day;
        stretch.hours = run.hours;
        stretch.nights = run.dry_nights;
        stretch.fill_l.assign(members, run.need_l + water.reserve_l);
        stretch.capacity_l = water.capacity_l;
        stretch.over_capacity = run.need_l + water.reserve_l > water.capacity_l + 1e-9;
        result.push_back(std::move(stretch));
    }
    return result;
}

Sharing plan_sharing(const Draft& draft, const std::vector<PlanLeg>& legs) {
    const Prepared& prepared = draft.prepared;
    const Loads& loads = draft.settled.loads;
    Sharing sharing;
    sharing.lower_bound = loads.shared.lower_bound;
    for (std::size_t k = 0; k < legs.size(); ++k) {
        if (legs[k].travel != Travel::walk)
            continue;
        for (const MemberLoad& load : legs[k].loads) {
            const double ratio = load.pack_max_kg / load.limit_kg;
            if (ratio > sharing.heaviest_ratio) {
                sharing.heaviest_ratio = ratio;
                sharing.member = load.member;
                sharing.plan_leg = k + 1;
            }
        }
    }
    const auto name = [&](std::size_t member) { return prepared.trip.party[member].name; };
    for (std::size_t k = 0; k < prepared.trip.kit.size(); ++k) {
        const KitItem& item = prepared.trip.kit[k];
        if (item.owner.empty() && prepared.kit.brought[k])
            sharing.bearers.push_back(
                {item.name, item.mass_kg * item.count, name(loads.item_bearer[k])});
    }
    for (std::size_t c = 0; c < prepared.trip.craft.size(); ++c)
        sharing.bearers.push_back({prepared.trip.craft[c].name,
                                   prepared.trip.craft[c].mass_kg,
                                   name(loads.craft_bearer[c])});
    return sharing;
}

} // namespace tumpline::planner

#include "planner/results/models_used.h"

#include "planner/models/catalogue.h"
#include "planner/models/elevation.h"
#include "planner/models/paddling.h"
#include "planner/models/resting_energy.h"
#include "planner/models/walking_speed.h"
#include "planner/results/time_bands.h"

#include <algorithm>
#include <string_view>

namespace tumpline::planner {

namespace {

bool any_leg(const std::vector<PlanLeg>& legs, bool (*is)(const PlanLeg&)) {
    return std::any_of(legs.begin(), legs.end(), is);
}

bool is_on_foot(const PlanLeg& leg) {
    return leg.travel != Travel::paddle;
}

bool is_afloat(const PlanLeg& leg) {
    return leg.travel == Travel::paddle;
}

/// Which of the family of elevation the heights under a leg were cleaned by; none if there were
/// none.
std::string_view cleaned_by(const RouteLeg& leg, HeightRecorder recorder) {
    if (leg.profile.source == geo::HeightSource::none)
        return {};
    if (leg.travel == Travel::paddle)
        return leg.spec.water.value_or(Water::lake) == Water::river ? river_fall : lake_median;
    if (leg.profile.source == geo::HeightSource::raster)
        return raster_swings;
    return recorder == HeightRecorder::barometer ? barometer_swings : receiver_swings;
}

BandUsed used(std::string_view family, const TimeBand& band) {
    return {.family = std::string(family),
            .low = band.low,
            .high = band.high,
            .basis = std::string(band.basis)};
}

} // namespace

std::vector<ModelUsed> models_used(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    const Assumed& assumed = draft.prepared.assumed;
    const Trip& trip = draft.prepared.trip;
    std::vector<ModelUsed> models = assumed.models_used;
    const auto add = [&](bool is_used, std::string_view family, std::string_view name) {
        if (!is_used)
            return;
        for (const ModelEntry& entry : model_catalogue())
            if (entry.family == family && entry.name == name)
                models.push_back(
                    {std::string(family), std::string(name), std::string(entry.source)});
    };
    const bool on_foot = any_leg(legs, is_on_foot);
    const bool afloat = any_leg(legs, is_afloat);
    const auto& route_legs = draft.prepared.route.legs;
    for (const ModelEntry& entry : elevation_entries())
        add(std::any_of(route_legs.begin(),
                        route_legs.end(),
                        [&](const RouteLeg& leg) {
                            return cleaned_by(leg,
                                              trip.route.recorder.value_or(HeightRecorder::gnss)) ==
                                   entry.name;
                        }),
            elevation_family,
            entry.name);
    add(on_foot && assumed.models.energy != CarriageModel::compendium_met,
        "energy_check",
        "yamamoto-course-constant");
    const RestingModel resting = assumed.models.resting;
    for (const AssumedMember& member : assumed.members) {
        const RestingModel used = resting_model_for(resting, member.age_years);
        if (used == resting)
            continue;
        add(true, "resting", resting_model_name(used));
        break;
    }
    add(on_foot, "terrain", "ground-factors");
    add(std::any_of(route_legs.begin(),
                    route_legs.end(),
                    [](const RouteLeg& leg) {
                        return leg.travel != Travel::paddle && leg.spec.night.value_or(false);
                    }) ||
            any_leg(legs,
                    [](const PlanLeg& leg) {
                        return leg.travel != Travel::paddle && leg.dark_s > 0.0;
                    }),
        "terrain",
        "night-factors");
    add(true, "compendium", "compendium-2024");
    add(any_leg(legs, [](const PlanLeg& leg) { return leg.current_estimate.has_value(); }),
        "river",
        "manning");
    add(any_leg(
            legs,
            [](const PlanLeg& leg) { return leg.current_estimate && leg.current_estimate->steep; }),
        "river",
        "jarrett-1985");
    add(any_leg(legs, [](const PlanLeg& leg) { return leg.current_mps > 0.0; }),
        "river",
        "downstream-credit");
    add(afloat && assumed.weather.wind_mps > 0.0, "wind", "beaufort");
    add(std::any_of(route_legs.begin(),
                    route_legs.end(),
                    [](const RouteLeg& leg) {
                        return leg.travel == Travel::paddle &&
                               leg.spec.water.value_or(Water::lake) != Water::river;
                    }),
        "wind",
        "crossing-ceiling");
    add(any_leg(legs, [](const PlanLeg& leg) { return leg.waves.has_value(); }),
        "waves",
        "fetch-limited");
    add(trip.weather.humidity && trip.weather.high_c, "heat", "wbgt-by-humidity");
    add(std::any_of(trip.route.places.begin(),
                    trip.route.places.end(),
                    [](const TripPlace& place) { return place.kind == PlaceKind::ford; }),
        "ford",
        "depth-times-speed");
    add(assumed.water.by_model, "drinking", "effort-and-air");
    add(!trip.food.ration_kg, "food", "energy-density");
    add(trip.food.ration_kg.has_value(), "food", "fixed-ration");
    add(assumed.fuel.by_model, "stove_fuel", "heat-balance");
    return models;
}

std::vector<BandUsed> bands_used(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    std::vector<BandUsed> bands;
    if (any_leg(legs, is_on_foot))
        bands.push_back(used("walking", band_on_foot(draft)));
    if (any_leg(legs, is_afloat))
        bands.push_back(used("paddling", band_afloat(draft)));
    return bands;
}

} // namespace tumpline::planner

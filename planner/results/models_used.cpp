#include "planner/results/models_used.h"

#include "planner/models/catalogue.h"
#include "planner/models/elevation.h"
#include "planner/models/paddling.h"
#include "planner/models/resting_energy.h"
#include "planner/models/walking_speed.h"
#include "planner/results/time_bands.h"
#include "planner/trip/vocabulary.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

bool is_on_foot(const PlanLeg& leg) {
    return on_foot(leg.travel);
}

bool is_paddled(const PlanLeg& leg) {
    return leg.travel == Travel::paddle;
}

/// Which of the family of elevation the heights under a leg were cleaned by; none if there were
/// none.
std::string_view cleaned_by(const RouteLeg& leg, HeightRecorder recorder) {
    if (leg.profile.source == geo::HeightSource::none)
        return {};
    if (afloat(leg.travel))
        return leg.spec.on_water() == Water::river ? river_fall : lake_median;
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

bool walked_by_night(const RouteLeg& leg) {
    return on_foot(leg.travel) && leg.spec.night.value_or(false);
}

bool walked_in_the_dark(const PlanLeg& leg) {
    return is_on_foot(leg) && leg.dark_s > 0.0;
}

bool on_still_water(const RouteLeg& leg) {
    return afloat(leg.travel) && leg.spec.on_water() != Water::river;
}

bool is_ford(const TripPlace& place) {
    return place.kind == PlaceKind::ford;
}

/// The models of a plan in the order in which they are told: first those that the trip chooses.
class Used {
  public:
    Used(const Assembly& draft, const std::vector<PlanLeg>& legs)
        : trip_(draft.prepared.trip), assumed_(draft.prepared.assumed),
          route_(draft.prepared.route.legs), legs_(legs), models_(assumed_.models_used) {}

    void add_walking() {
        const HeightRecorder recorder = trip_.route.recorder.value_or(HeightRecorder::gnss);
        for (const ModelEntry& entry : elevation_entries())
            if (any(route_,
                    [&](const RouteLeg& leg) { return cleaned_by(leg, recorder) == entry.name; }))
                add(elevation_family, entry.name);
        const bool on_foot = any(legs_, is_on_foot);
        if (on_foot && assumed_.models.energy != CarriageModel::compendium_met)
            add("energy_check", "yamamoto-course-constant");
        add_resting();
        if (on_foot)
            add("terrain", "ground-factors");
        if (any(route_, walked_by_night) || any(legs_, walked_in_the_dark))
            add("terrain", "night-factors");
        add("compendium", "compendium-2024");
    }

    void add_water() {
        if (any(legs_, [](const PlanLeg& leg) { return leg.current_estimate.has_value(); }))
            add("river", "manning");
        if (any(legs_, [](const PlanLeg& leg) {
                return leg.current_estimate && leg.current_estimate->steep;
            }))
            add("river", "jarrett-1985");
        if (any(legs_, [](const PlanLeg& leg) { return is_paddled(leg) && leg.current_mps > 0.0; }))
            add("river", "downstream-credit");
    }

    void add_weather() {
        if (any(legs_, is_paddled) && assumed_.weather.wind_mps > 0.0)
            add("wind", "beaufort");
        if (any(route_, on_still_water))
            add("wind", "crossing-ceiling");
        if (any(legs_, [](const PlanLeg& leg) { return leg.waves.has_value(); }))
            add("waves", "fetch-limited");
        if (trip_.weather.humidity && trip_.weather.high_c)
            add("heat", "wbgt-by-humidity");
        if (any(trip_.route.places, is_ford))
            add("ford", "depth-times-speed");
    }

    void add_supplies() {
        if (assumed_.water.by_model)
            add("drinking", "effort-and-air");
        add("food", trip_.food.ration_kg ? "fixed-ration" : "energy-density");
        if (assumed_.fuel.by_model)
            add("stove_fuel", "heat-balance");
    }

    [[nodiscard]] std::vector<ModelUsed> models() && { return std::move(models_); }

  private:
    template <typename List, typename Is> static bool any(const List& list, const Is& is) {
        return std::any_of(list.begin(), list.end(), is);
    }

    void add(std::string_view family, std::string_view name) {
        for (const ModelEntry& entry : model_catalogue())
            if (entry.family == family && entry.name == name)
                models_.push_back(
                    {std::string(family), std::string(name), std::string(entry.source)});
    }

    /// Whoever is too young for the resting model of the party has another.
    void add_resting() {
        const RestingModel chosen = assumed_.models.resting;
        for (const AssumedMember& member : assumed_.members) {
            const RestingModel own = resting_model_for(chosen, member.age_years);
            if (own == chosen)
                continue;
            add("resting", resting_model_name(own));
            return;
        }
    }

    const Trip& trip_;
    const Assumed& assumed_;
    const std::vector<RouteLeg>& route_;
    const std::vector<PlanLeg>& legs_;
    std::vector<ModelUsed> models_;
};

} // namespace

std::vector<ModelUsed> models_used(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    Used used(draft, legs);
    used.add_walking();
    used.add_water();
    used.add_weather();
    used.add_supplies();
    return std::move(used).models();
}

std::vector<BandUsed> bands_used(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    std::vector<BandUsed> bands;
    if (std::any_of(legs.begin(), legs.end(), is_on_foot))
        bands.push_back(used("walking", band_on_foot(draft)));
    if (std::any_of(legs.begin(), legs.end(), is_paddled))
        bands.push_back(used("paddling", band_afloat(draft)));
    std::set<std::pair<Travel, bool>> told; // at their usual pace, and at one that is given
    for (const PlanLeg& leg : legs)
        if (led(leg.travel) &&
            told.emplace(leg.travel,
                         draft.prepared.route.legs[leg.leg.index()].spec.led_mps.has_value())
                .second)
            bands.push_back(used(word(leg.travel), band_led(draft, leg.leg.index())));
    return bands;
}

} // namespace tumpline::planner

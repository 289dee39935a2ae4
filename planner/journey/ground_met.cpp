#include "planner/journey/ground_met.h"

#include "planner/models/terrain.h"

#include <algorithm>
#include <string_view>

namespace tumpline::planner {

namespace {

std::string_view ground_name(Terrain terrain) {
    switch (terrain) {
    case Terrain::path:
        return "path";
    case Terrain::rough_path:
        return "rough-path";
    case Terrain::forest:
        return "forest";
    case Terrain::off_path:
        return "off-path";
    case Terrain::brush:
        return "brush";
    case Terrain::bog:
        return "bog";
    case Terrain::sand:
        return "sand";
    case Terrain::snow:
        return "snow";
    }
    return "path";
}

/// Snow into which one sinks as far as `met` says, on a snow leg or on other ground.
void meet_snow(GroundMet& met, bool on_other_ground) {
    const double eta = snow_eta(met.sinks_m);
    const double time_factor = equal_effort_time_factor(eta);
    met.eta = on_other_ground ? std::max(met.eta, eta) : eta;
    met.time_factor = on_other_ground ? std::max(met.time_factor, time_factor) : time_factor;
}

} // namespace

GroundMet ground_met(const LegOnDay& where, const Assumed& assumed) {
    const TripLeg& spec = where.leg.spec;
    const Terrain terrain = spec.terrain.value_or(Terrain::path);
    const Ground& under = ground(ground_name(terrain));
    GroundMet met{.time_factor = under.time_factor, .eta = under.eta};
    met.snow_m = assumed.forecast.deepest_snow_m(where);
    const bool footprints = terrain == Terrain::snow && spec.footprint_m;
    if (footprints)
        met.sinks_m = *spec.footprint_m;
    else if (met.snow_m)
        met.sinks_m = sinking_m({*met.snow_m, settled_snow_kg_m3});
    if (footprints || met.sinks_m > 0.0)
        meet_snow(met, terrain != Terrain::snow);
    // A model with a curve of its own for such ground needs no factor of ours, but that of snow
    // beyond it.
    const bool wild = terrain == Terrain::forest || terrain == Terrain::off_path;
    if (wild && walking_model_knows_footing(assumed.models.walking)) {
        met.footing = Footing::off_path;
        met.time_factor /= under.time_factor;
    }
    if (spec.night.value_or(false))
        met.time_factor *= night_time_factor(under);
    else
        met.dark_factor = night_time_factor(under);
    return met;
}

} // namespace tumpline::planner

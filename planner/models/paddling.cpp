#include "planner/models/paddling.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace tumpline::planner {

namespace {

constexpr double drag_exponent = 2.26;  // of the water, [Zamparo1999]
constexpr double air_density = 1.225;   // kg/m3, standard atmosphere at sea level
constexpr double height_share = 0.75;   // of the wind at 10 m, at 0.7 m over open water
constexpr double thrust_cap = 1.35;     // of the reference thrust, for hours; fitted
constexpr double most_tail_gain = 1.10; // waves and steering take the rest
constexpr double most_wind_mps = 100.0; // no wind on record is stronger; keeps squares finite
constexpr double mph = 0.44704;

struct HullFacts {
    Hull hull;
    double calm_speed_mps;
    double wind_ceiling_mps;
    double leeway_slope;
    double leeway_offset_mps;
    bool estimate;
};

// Reference speed, thrust and drag area: the kayak from a printed drag table and wind chart, the
// packraft fitted to one observation, the others estimates. Leeway: [AllenPlourde1999], rows raft
// without ballast, V-hulled skiff, sea kayak.
constexpr std::array<HullFacts, 5> kinds{{
    {{1.12, 12.0, 0.35, 2.2}, 0.85, 7.9, 0.0370, 0.0, true},      // packraft
    {{1.40, 14.0, 0.45, 3.5}, 0.95, 7.9, 0.0370, 0.0, true},      // inflatable canoe or kayak
    {{1.45, 12.0, 0.40, 4.6}, 1.00, 7.9, 0.0287, 0.0398, true},   // solo canoe
    {{1.70, 24.0, 0.55, 4.9}, 1.10, 7.9, 0.0287, 0.0398, true},   // tandem canoe, two paddlers
    {{2.058, 8.8, 0.22, 5.2}, 1.50, 10.7, 0.0116, 0.1112, false}, // touring kayak, 4 knots
}};

const HullFacts& of(HullKind kind) {
    return kinds[static_cast<std::size_t>(kind)];
}

/// The balance in shares of reference speed and thrust: x is v / v_ref.
class Balance {
  public:
    Balance(const Hull& hull, double headwind_mps)
        : air_(std::min(0.5 * air_density * hull.drag_area_m2 * hull.reference_speed_mps *
                            hull.reference_speed_mps / hull.reference_thrust_n,
                        1.0)),
          water_(1.0 - air_),
          wind_(height_share * std::clamp(headwind_mps, -most_wind_mps, most_wind_mps) /
                hull.reference_speed_mps) {}

    [[nodiscard]] bool stands_still() const { return air_ * wind_ * std::abs(wind_) >= thrust_cap; }

    struct Excess {
        double drag; ///< over thrust; rises with x
        double slope;
    };

    [[nodiscard]] Excess at(double x) const {
        const double through_air = x + wind_;
        const double water = water_ * std::pow(x, drag_exponent - 1.0);
        Excess excess{.drag = water * x + air_ * through_air * std::abs(through_air),
                      .slope = drag_exponent * water + 2.0 * air_ * std::abs(through_air)};
        if (x * thrust_cap <= 1.0) {
            excess.drag -= thrust_cap;
        } else {
            excess.drag -= 1.0 / x;
            excess.slope += 1.0 / (x * x);
        }
        return excess;
    }

    /// Of the drag at reference speed in calm.
    [[nodiscard]] double drag_share(double x) const {
        const double through_air = x + wind_;
        return water_ * std::pow(x, drag_exponent) + air_ * through_air * std::abs(through_air);
    }

    /// Root between two speeds that enclose it: Newton's steps, halving where one leaves the
    /// bracket.
    [[nodiscard]] double root(double low, double high) const {
        double x = std::min(1.0, high);
        for (int step = 0; step < 60; ++step) {
            const Excess excess = at(x);
            if (excess.drag == 0.0)
                return x;
            (excess.drag < 0.0 ? low : high) = x;
            double next = x - excess.drag / excess.slope;
            if (!(next > low && next < high))
                next = 0.5 * (low + high);
            if (std::abs(next - x) <= 1e-10)
                return next;
            x = next;
        }
        return x;
    }

    [[nodiscard]] double high_end() const {
        double high = 1.0;
        while (at(high).drag < 0.0)
            high *= 2.0;
        return high;
    }

  private:
    double air_; ///< share of the air in the drag at reference speed
    double water_;
    double wind_;
};

bool usable(const Hull& hull) {
    return hull.reference_speed_mps > 0.0 && hull.reference_thrust_n > 0.0 &&
           hull.drag_area_m2 >= 0.0;
}

double radians(double angle_deg) {
    return angle_deg * std::numbers::pi / 180.0;
}

} // namespace

std::optional<PaddlingModel> paddling_model(std::string_view name) {
    if (name == "power-balance")
        return PaddlingModel::power_balance;
    if (name == "constant")
        return PaddlingModel::constant;
    return std::nullopt;
}

const Hull& hull(HullKind kind) {
    return of(kind).hull;
}

bool hull_is_estimate(HullKind kind) {
    return of(kind).estimate;
}

double default_calm_speed_mps(HullKind kind) {
    return of(kind).calm_speed_mps;
}

bool calm_speed_is_estimate(HullKind kind) {
    return kind == HullKind::packraft || kind == HullKind::inflatable ||
           kind == HullKind::solo_canoe;
}

double default_wind_ceiling_mps(HullKind kind) {
    return of(kind).wind_ceiling_mps;
}

double headwind_mps(const Wind& wind, double bearing_deg) {
    return wind.speed_mps * std::cos(radians(wind.from_deg - bearing_deg));
}

double crosswind_mps(const Wind& wind, double bearing_deg) {
    return std::abs(wind.speed_mps * std::sin(radians(wind.from_deg - bearing_deg)));
}

double power_balance_mps(const Hull& hull, double headwind_mps) {
    if (!usable(hull))
        return 0.0;
    const Balance balance(hull, headwind_mps);
    if (balance.stands_still())
        return 0.0;
    return hull.reference_speed_mps * balance.root(0.0, balance.high_end());
}

bool power_balance_covers(double headwind_mps) {
    return headwind_mps >= -strongest_tail_mps && headwind_mps <= strongest_head_mps;
}

double calm_drag_n(const Hull& hull, double speed_mps) {
    if (!usable(hull))
        return 0.0;
    return hull.reference_thrust_n *
           Balance(hull, 0.0).drag_share(std::abs(speed_mps) / hull.reference_speed_mps);
}

double wind_speed_ratio(const Hull& hull, double headwind_mps) {
    if (!usable(hull))
        return 0.0;
    if (headwind_mps == 0.0)
        return 1.0;
    const Balance balance(hull, headwind_mps);
    if (balance.stands_still())
        return 0.0;
    if (headwind_mps > 0.0)
        return balance.root(0.0, 1.0);
    if (balance.at(most_tail_gain).drag <= 0.0)
        return most_tail_gain;
    return balance.root(1.0, most_tail_gain);
}

double stopping_headwind_mps(const Hull& hull) {
    const double pressure = 0.5 * air_density * hull.drag_area_m2;
    if (!usable(hull) || pressure <= 0.0)
        return most_wind_mps;
    return std::min(std::sqrt(thrust_cap * hull.reference_thrust_n / pressure) / height_share,
                    most_wind_mps);
}

double steering_factor(double crosswind_mps) {
    return 1.0 - 0.10 * std::clamp((std::abs(crosswind_mps) - 2.5) / 5.0, 0.0, 1.0);
}

double leeway_mps(HullKind kind, double crosswind_mps) {
    const HullFacts& craft = of(kind);
    const double wind_mps = std::abs(crosswind_mps);
    return craft.leeway_slope * wind_mps + craft.leeway_offset_mps * std::min(wind_mps / 5.0, 1.0);
}

WindOnCourse wind_on_course(HullKind kind, double bearing_deg, const Wind& wind) {
    const double head_mps = headwind_mps(wind, bearing_deg);
    const double across_mps = crosswind_mps(wind, bearing_deg);
    return {.speed_ratio = wind_speed_ratio(hull(kind), head_mps),
            .drift_mps = leeway_mps(kind, across_mps),
            .steering = steering_factor(across_mps),
            .head_mps = head_mps};
}

double made_good_under(const WindOnCourse& wind, double calm_speed_mps) {
    const double through_water_mps = calm_speed_mps * wind.speed_ratio;
    if (through_water_mps <= wind.drift_mps)
        return 0.0;
    const double sine = wind.drift_mps / through_water_mps;
    return through_water_mps * std::min(wind.steering, std::sqrt(1.0 - sine * sine));
}

UnderWind under_wind(HullKind kind, const PaddledCourse& course, const Wind& wind) {
    const WindOnCourse on_course = wind_on_course(kind, course.bearing_deg, wind);
    UnderWind boat{.through_water_mps = course.calm_speed_mps * on_course.speed_ratio,
                   .made_good_mps = made_good_under(on_course, course.calm_speed_mps),
                   .held_off_deg = 90.0};
    if (boat.through_water_mps > on_course.drift_mps)
        boat.held_off_deg =
            std::asin(on_course.drift_mps / boat.through_water_mps) * 180.0 / std::numbers::pi;
    else if (on_course.drift_mps == 0.0)
        boat.held_off_deg = 0.0;
    return boat;
}

double load_speed_factor(double mass_kg, double reference_mass_kg) {
    if (mass_kg <= reference_mass_kg || reference_mass_kg <= 0.0)
        return 1.0;
    return std::pow(mass_kg / reference_mass_kg, -0.3);
}

std::optional<double> made_good_mps(double through_water_mps, double current_mps) {
    const double credit = current_mps > 0.0 ? downstream_credit : 1.0;
    const double along_mps = through_water_mps + credit * current_mps;
    if (along_mps < least_made_good_mps)
        return std::nullopt;
    return along_mps;
}

std::optional<double> ferry_made_good_mps(const FerryGlide& ferry) {
    const double with_mps = ferry.current_mps * std::cos(radians(ferry.angle_deg));
    const double across_mps = ferry.current_mps * std::sin(radians(ferry.angle_deg));
    const double forward =
        ferry.through_water_mps * ferry.through_water_mps - across_mps * across_mps;
    if (forward < 0.0)
        return std::nullopt;
    const double along_mps = with_mps + std::sqrt(forward);
    if (along_mps <= 0.0)
        return std::nullopt;
    return along_mps;
}

double froude(double speed_mps, double length_m) {
    return length_m > 0.0 ? speed_mps / std::sqrt(g_mps2 * length_m) : 0.0;
}

double hull_speed_mps(double length_m) {
    constexpr double foot_m = 0.3048;
    constexpr double knot = 1852.0 / 3600.0;
    return length_m > 0.0 ? 1.34 * std::sqrt(length_m / foot_m) * knot : 0.0;
}

bool calm_speed_covers(HullKind kind, double speed_mps) {
    return speed_mps > 0.0 && speed_mps <= hull_speed_mps(hull(kind).length_m);
}

TimeBand paddling_time_band() {
    return {.low = 0.85,
            .high = 1.25,
            .basis = "a judgement, from the speeds told of one kind of craft [PackraftForum]"};
}

double paddling_met(PaddlingEffort effort) {
    switch (effort) {
    case PaddlingEffort::floating:
        return 2.3;
    case PaddlingEffort::light:
        return 2.8;
    case PaddlingEffort::pleasure:
        return 3.5;
    case PaddlingEffort::touring:
        return 4.0;
    case PaddlingEffort::kayaking:
    case PaddlingEffort::white_water:
        return 5.0;
    case PaddlingEffort::moderate:
        return 5.8;
    case PaddlingEffort::portaging:
        return 7.0;
    case PaddlingEffort::racing:
        return 12.5;
    }
    return 4.0;
}

PaddlingEffort paddling_effort(const PaddledWater& water) {
    if (water.calm_speed_mps > 6.0 * mph)
        return PaddlingEffort::racing;
    if (water.calm_speed_mps >= 4.0 * mph)
        return PaddlingEffort::moderate;
    if (water.river_class >= 3)
        return PaddlingEffort::white_water;
    if (water.calm_speed_mps <= 0.0)
        return PaddlingEffort::floating;
    if (water.current_mps > water.calm_speed_mps)
        return PaddlingEffort::pleasure;
    return PaddlingEffort::touring;
}

std::span<const ModelEntry> paddling_entries() {
    static constexpr std::array<ModelEntry, 2> entries{{
        {.family = "paddling",
         .name = "power-balance",
         .answers =
             "How fast does a boat go under wind from any bearing, and when does it stand still?",
         .source = "Zamparo1999",
         .covers = "head wind 15 m/s to tail wind 20 m/s at 10 m, without waves; inflatable boats "
                   "and open canoes are estimates without a published test",
         .is_default = true,
         .why = "wind decides lake days; the only choice that tells when a boat makes no way"},
        {.family = "paddling",
         .name = "constant",
         .answers = "How fast does a boat go if the wind is left out?",
         .source = "PaddlingFaq",
         .covers = "up to 3 m/s of wind, or narrow and sheltered water",
         .why = "your own speeds already contain the usual wind, or the river is sheltered"},
    }};
    return entries;
}

} // namespace tumpline::planner

#include "planner/models/river.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr std::array<Roughness, 10> rows{{
    {"clean-straight-full", 0.025, 0.030, 0.033, "straight and clean, full to the banks, no pools"},
    {"straight-stones-weeds", 0.030, 0.035, 0.040, "straight, with some stones and weeds"},
    {"winding-pools-shoals", 0.033, 0.040, 0.045, "winding and clean, with pools and shoals"},
    {"winding-weeds-stones", 0.035, 0.045, 0.050, "winding, pools, shoals, some weeds and stones"},
    {"winding-low-stage", 0.040, 0.048, 0.055, "the same at low water, banks and bed less even"},
    {"winding-more-stones", 0.045, 0.050, 0.060, "winding, pools and shoals, many stones"},
    {"sluggish-weedy-pools", 0.050, 0.070, 0.080, "sluggish reaches, weeds and deep pools"},
    {"very-weedy", 0.075, 0.100, 0.150, "very weedy, or standing timber and brush in the way"},
    {"mountain-gravel-cobble-few-boulders",
     0.030,
     0.040,
     0.050,
     "steep banks, bed of gravel and cobbles with few boulders"},
    {"mountain-cobble-large-boulders",
     0.040,
     0.050,
     0.070,
     "steep banks, bed of cobbles with large boulders"},
}};

} // namespace

double manning_mps(const Channel& channel) {
    if (channel.hydraulic_radius_m <= 0.0 || channel.slope <= 0.0 || channel.roughness <= 0.0)
        return 0.0;
    return std::pow(channel.hydraulic_radius_m, 2.0 / 3.0) * std::sqrt(channel.slope) /
           channel.roughness;
}

double manning_slope(const Channel& channel_without_slope, double velocity_mps) {
    if (channel_without_slope.hydraulic_radius_m <= 0.0)
        return 0.0;
    const double root = velocity_mps * channel_without_slope.roughness /
                        std::pow(channel_without_slope.hydraulic_radius_m, 2.0 / 3.0);
    return root * root;
}

double area_m2(const TrapezoidSection& section) {
    return section.depth_m * (section.bottom_m + section.side_slope * section.depth_m);
}

double hydraulic_radius_m(const TrapezoidSection& section) {
    const double perimeter_m =
        section.bottom_m + 2.0 * section.depth_m * std::hypot(1.0, section.side_slope);
    return perimeter_m > 0.0 ? area_m2(section) / perimeter_m : 0.0;
}

std::span<const Roughness> chow_rows() {
    return rows;
}

std::optional<Roughness> chow_roughness(std::string_view name) {
    const auto* const row = std::ranges::find(rows, name, &Roughness::name);
    if (row == rows.end())
        return std::nullopt;
    return *row;
}

double jarrett_roughness(double slope, double hydraulic_radius_m) {
    if (slope <= 0.0 || hydraulic_radius_m <= 0.0)
        return 0.0;
    return 0.39 * std::pow(slope, 0.38) * std::pow(hydraulic_radius_m / m_per_foot, -0.16);
}

bool jarrett_covers(double slope, double hydraulic_radius_m) {
    return slope >= jarrett_least_slope && slope <= jarrett_most_slope &&
           hydraulic_radius_m >= jarrett_least_radius_m &&
           hydraulic_radius_m <= jarrett_most_radius_m;
}

bool estimated_current_covers(const Bed& bed) {
    if (bed.slope < jarrett_least_slope || jarrett_covers(bed.slope, bed.depth_m))
        return true;
    const double nearest =
        jarrett_roughness(std::min(bed.slope, jarrett_most_slope),
                          std::clamp(bed.depth_m, jarrett_least_radius_m, jarrett_most_radius_m));
    return nearest <= bed.roughness.normal; // the row would count there as well
}

CurrentEstimate estimated_current(const Bed& bed) {
    CurrentEstimate current{};
    if (bed.slope <= 0.0 || bed.depth_m <= 0.0)
        return current;
    Roughness n = bed.roughness;
    if (jarrett_covers(bed.slope, bed.depth_m)) {
        const double steep = jarrett_roughness(bed.slope, bed.depth_m);
        if (steep > n.normal) {
            const double share = steep / n.normal; // the spread of the row, about the steep figure
            n = {n.name, n.least * share, steep, n.most * share, n.looks};
            current.jarrett = true;
        }
    }
    const double critical_mps = std::sqrt(g_mps2 * bed.depth_m);
    const auto held = [&](double roughness) {
        const double v_mps = manning_mps(
            {.hydraulic_radius_m = bed.depth_m, .slope = bed.slope, .roughness = roughness});
        current.limited = current.limited || v_mps > critical_mps;
        return std::min(v_mps, critical_mps);
    };
    current.slow_mps = held(n.most);
    current.likely_mps = held(n.normal);
    current.fast_mps = held(n.least);
    return current;
}

std::optional<TravelVelocity> jobson(const Basin& basin) {
    const double Q = basin.discharge_m3ps;
    const double Qa = basin.mean_annual_discharge_m3ps;
    const double Da = basin.drainage_area_m2;
    if (!(Q > 0.0 && Qa > 0.0 && Da > 0.0) || (basin.slope && !(*basin.slope > 0.0)))
        return std::nullopt;
    const double area = std::pow(Da, 1.25) * std::sqrt(9.8) / Qa; // the report's g
    const double flow = Q / Qa;
    if (basin.slope) {
        const double term =
            std::pow(area, 0.919) * std::pow(flow, -0.469) * std::pow(*basin.slope, 0.159) * Q / Da;
        return TravelVelocity{.probable_mps = 0.094 + 0.0143 * term,
                              .maximum_mps = 0.25 + 0.02 * term};
    }
    const double term = std::pow(area, 0.821) * std::pow(flow, -0.465) * Q / Da;
    return TravelVelocity{.probable_mps = 0.020 + 0.051 * term, .maximum_mps = 0.2 + 0.093 * term};
}

double m_per_km(double slope) {
    return 1000.0 * slope;
}

double ft_per_mile(double slope) {
    return slope * m_per_mile / m_per_foot;
}

double gradient_reach_m(double slope) {
    return slope < 0.001 ? 5000.0 : 2000.0;
}

std::string_view gradient_hint(double slope) {
    const double fall = m_per_km(slope); // the steps are from memory, common practice
    if (fall < 1.0)
        return "little fall on the whole; a single drop or weir does not show in a mean";
    if (fall < 3.0)
        return "some fall; look at the map for where it is gathered, and for a guidebook's word";
    if (fall < 6.0)
        return "a good deal of fall; look closely: guidebook, recent reports, gauge";
    if (fall < 12.0)
        return "steep; look very closely, and ask people who know the river at this level";
    return "very steep; expect carries until someone who knows the river says otherwise";
}

std::span<const ModelEntry> river_entries() {
    static constexpr std::array<ModelEntry, 5> entries{{
        {.family = "river",
         .name = "manning",
         .answers = "How fast does a river run on a bed of this slope, depth and roughness?",
         .source = "Chow1959",
         .covers = "steady flow in even reaches below critical flow; not pools, falls or backwater",
         .is_default = true,
         .why =
             "needs only what a profile and a look at the bed give; a measured current is better"},
        {.family = "river",
         .name = "jarrett-1985",
         .answers = "How rough is a steep stream of cobbles and boulders?",
         .source = "Jarrett1985",
         .covers = "slope 0.002 to 0.09, hydraulic radius 0.15 to 2.1 m",
         .why = "taken on steep beds wherever it is rougher than the table's row"},
        {.family = "river",
         .name = "jobson-1996",
         .answers = "How fast does a river run at a known discharge, its bed unknown?",
         .source = "Jobson1996",
         .covers = "rivers of about 90 basins in the United States; standard error 0.15 m/s",
         .why = "when a gauge gives discharge and the basin's area is known"},
        {.family = "river",
         .name = "hydraulic-geometry",
         .answers = "How does the current change with the discharge at one place?",
         .source = "LeopoldMaddock1953",
         .covers = "section means within the banks, discharges up to five times apart",
         .is_default = true,
         .why = "carries a known current to a level at which nobody measured one"},
        {.family = "river",
         .name = "downstream-credit",
         .answers = "How much of the current does a boat get on its way?",
         .source = "PaddlingFaq",
         .covers = "0.85 downstream, all of it upstream; below 0.3 m/s made good it is no paddle",
         .is_default = true,
         .why = "nobody holds the fastest thread all day"},
    }};
    return entries;
}

} // namespace tumpline::planner

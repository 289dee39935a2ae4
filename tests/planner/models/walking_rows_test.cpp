#include "planner/models/load_effect.h"
#include "planner/models/terrain.h"
#include "planner/models/walking_curves.h"
#include "planner/models/walking_rules.h"
#include "planner/models/walking_speed.h"
#include "tests/support/family_rows.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <numbers>
#include <vector>

namespace tumpline::planner {
namespace {

using test::PublishedValue;
using test::RowCheck;

double slope_of_deg(double degrees) {
    return std::tan(degrees * (std::numbers::pi / 180.0));
}

double deg(const PublishedValue& row) {
    return slope_of_deg(row.input("slope_deg"));
}

double slope(const PublishedValue& row) {
    return row.input("slope_rise_per_run");
}

WalkTotals totals(const PublishedValue& row) {
    return {.length_m = 1000.0 * row.input("distance_km"),
            .ascent_m = row.input("ascent_m"),
            .descent_m = row.input_if("descent_m").value_or(0.0)};
}

CrewPace crew_pace(const PublishedValue& row) {
    const std::string& pace = row.text("pace");
    return pace == "low" ? CrewPace::low : pace == "high" ? CrewPace::high : CrewPace::moderate;
}

SurveyedGround surveyed(const PublishedValue& row) {
    return {.vegetation_density = row.input("vegetation_density_frac"),
            .roughness_m = row.input("roughness_m")};
}

/// The slope in degrees, to 0.001, at which `speed` is highest.
template <class Speed> double steepness_of_peak_deg(Speed speed) {
    int best = 0;
    for (int thousandth = -30000; thousandth <= 30000; ++thousandth)
        if (speed(slope_of_deg(thousandth / 1000.0)) > speed(slope_of_deg(best / 1000.0)))
            best = thousandth;
    return best / 1000.0;
}

double wood_kmh(const PublishedValue& row) {
    return 3.6 * wood_2023_paved_mps(slope_of_deg(row.input("walking_slope_deg")),
                                     slope_of_deg(row.input("hill_slope_deg")));
}

double tranter_h(const PublishedValue& row) {
    return tranter_s(3600.0 * row.input("naismith_time_h"),
                     60.0 * row.input("fitness_min_per_300m_in_800m"))
               .value_or(0.0) /
           3600.0;
}

double scarf_m(const PublishedValue& row) {
    return scarf_2007_m({.length_m = 1000.0 * row.input("distance_km"),
                         .ascent_m = row.input("ascent_m"),
                         .descent_m = 0.0},
                        row.input("alpha_m_per_m"));
}

double signpost_min_per_km(double S) {
    return swiss_signpost_s_per_m(S) * 1000.0 / 60.0;
}

double swiss_route_min(const PublishedValue& row) {
    const auto lengths_m = nlohmann::json::parse(row.text("segments_length_m"));
    const auto rises_m = nlohmann::json::parse(row.text("segments_dh_m"));
    double time_s = 0.0;
    for (std::size_t i = 0; i < lengths_m.size(); ++i)
        time_s += lengths_m[i].get<double>() /
                  walking_speed_mps(WalkingModel::swiss_signpost,
                                    rises_m[i].get<double>() / lengths_m[i].get<double>());
    return time_s / 60.0;
}

const std::vector<RowCheck> walking_checks = {
    {"naismith_imperial",
     [](const PublishedValue& row) {
         return naismith_1892_s({.length_m = 1609.344 * row.input("distance_mi"),
                                 .ascent_m = 0.3048 * row.input("ascent_ft"),
                                 .descent_m = 0.0}) /
                3600.0;
     }},
    {"naismith_metric",
     [](const PublishedValue& row) { return naismith_metric_s(totals(row)) / 3600.0; }},
    {"naismith_exact",
     [](const PublishedValue& row) { return naismith_1892_s(totals(row)) / 3600.0; }},
    {"naismith_pub_pace",
     [](const PublishedValue& row) { return naismith_metric_s(totals(row)) / 60.0; }},
    {"naismith_pub_equivalence",
     [](const PublishedValue& row) {
         const double length_m = 0.3048 * row.input("distance_ft");
         const double ascent_m = 0.3048 * row.input("ascent_ft");
         // the climb that costs as long as the way, by our own rule
         const double way_s = naismith_1892_s({length_m, 0.0, 0.0});
         const double climb_s = naismith_1892_s({0.0, ascent_m, 0.0});
         return length_m / way_s / (ascent_m / climb_s);
     }},
    {"naismith_pub_flat_ms",
     [](const PublishedValue& row) { return naismith_langmuir_mps(deg(row)); }},
    {"routecard_pub",
     [](const PublishedValue& row) {
         // at the member's own level speed, as the walking model `constant` is scaled
         const double speed_mps =
             walking_speed_mps(WalkingModel::constant, 0.0) * row.input("speed_km_per_h") / 3.6;
         return row.input("distance_m") / speed_mps / 60.0;
     }},
    {"langmuir_speed", [](const PublishedValue& row) { return naismith_langmuir_mps(deg(row)); }},
    {"langmuir_pub", [](const PublishedValue& row) { return naismith_langmuir_mps(deg(row)); }},
    {"langmuir_time",
     [](const PublishedValue& row) {
         return langmuir_1984_s(totals(row),
                                {.moderate_m = row.input("descent_5_to_12deg_m"),
                                 .steep_m = row.input("descent_above_12deg_m")}) /
                3600.0;
     }},
    {"langmuir_group",
     [](const PublishedValue& row) { return langmuir_party_s(totals(row)) / 3600.0; }},
    {"tranter_", tranter_h},
    {"scarf_", [](const PublishedValue& row) { return scarf_m(row) / 1000.0; }},
    {"scarf_pub_5kmh",
     [](const PublishedValue& row) {
         return scarf_m(row) / 1000.0 / row.input("flat_speed_km_per_h");
     }},
    {"scarf_pub_8kmh",
     [](const PublishedValue& row) {
         return scarf_m(row) / 1000.0 / row.input("flat_speed_km_per_h");
     }},
    {"tobler_onpath", [](const PublishedValue& row) { return 3.6 * tobler_1993_mps(slope(row)); }},
    {"tobler_offpath",
     [](const PublishedValue& row) {
         return 3.6 * tobler_1993_off_path * tobler_1993_mps(slope(row));
     }},
    {"tobler_horse",
     [](const PublishedValue& row) {
         return 3.6 * tobler_1993_horseback * tobler_1993_mps(slope(row));
     }},
    {"tobler_pub",
     [](const PublishedValue& row) {
         return 3.6 * walking_speed_mps(WalkingModel::tobler, deg(row));
     }},
    {"tobler_pub_pace",
     [](const PublishedValue& row) {
         return 1.0 / walking_speed_mps(WalkingModel::tobler, deg(row));
     }},
    {"marquezperez",
     [](const PublishedValue& row) { return 3.6 * marquez_perez_2017_mps(slope(row)); }},
    {"irmischer_on",
     [](const PublishedValue& row) {
         return irmischer_clarke_2018_mps(slope(row), Footing::on_path);
     }},
    {"irmischer_off",
     [](const PublishedValue& row) {
         return irmischer_clarke_2018_mps(slope(row), Footing::off_path);
     }},
    {"irmischer_on_female",
     [](const PublishedValue& row) {
         return irmischer_clarke_2018_women *
                irmischer_clarke_2018_mps(slope(row), Footing::on_path);
     }},
    {"irmischer_off_female",
     [](const PublishedValue& row) {
         return irmischer_clarke_2018_women *
                irmischer_clarke_2018_mps(slope(row), Footing::off_path);
     }},
    {"campbell2019_d",
     [](const PublishedValue& row) {
         const auto decile = static_cast<int>(row.input("percentile_pct")) / 10;
         return campbell_2019_mps(deg(row), static_cast<Percentile>(decile));
     }},
    {"campbell2019_p5",
     [](const PublishedValue& row) {
         return walking_speed_mps(WalkingModel::campbell_2019, deg(row));
     }},
    {"xcheck_campbell_p5",
     [](const PublishedValue& row) { return campbell_2019_mps(deg(row), Percentile::p5); }},
    {"sullivan_pub_high_km",
     [](const PublishedValue& row) {
         return row.input("distance_m") / sullivan_2020_mps(deg(row), crew_pace(row)) / 60.0;
     }},
    {"sullivan_pub_high_mi",
     [](const PublishedValue& row) {
         return row.input("distance_m") / sullivan_2020_mps(deg(row), crew_pace(row)) / 60.0;
     }},
    {"sullivan_pub_mod",
     [](const PublishedValue& row) {
         return 1000.0 / sullivan_2020_mps(deg(row), CrewPace::moderate) / 60.0;
     }},
    {"sullivan_pub_low",
     [](const PublishedValue& row) {
         return 1000.0 / walking_speed_mps(WalkingModel::sullivan_2020, deg(row)) / 60.0;
     }},
    {"sullivan_pub_peak_",
     [](const PublishedValue& row) {
         const auto speed = [&row](double S) { return sullivan_2020_mps(S, crew_pace(row)); };
         return speed(slope_of_deg(steepness_of_peak_deg(speed)));
     }},
    {"sullivan_pub_peakslope",
     [](const PublishedValue& row) {
         return steepness_of_peak_deg(
             [&row](double S) { return sullivan_2020_mps(S, crew_pace(row)); });
     }},
    {"sullivan_",
     [](const PublishedValue& row) { return sullivan_2020_mps(deg(row), crew_pace(row)); }},
    {"xcheck_sullivan",
     [](const PublishedValue& row) { return sullivan_2020_mps(deg(row), crew_pace(row)); }},
    {"campbell2017_",
     [](const PublishedValue& row) { return campbell_2017_mps(deg(row), surveyed(row)); }},
    {"campbell2017_pub_peak",
     [](const PublishedValue& row) {
         const auto speed = [&row](double S) { return campbell_2017_mps(S, surveyed(row)); };
         return speed(slope_of_deg(steepness_of_peak_deg(speed)));
     }},
    {"campbell2017_pub_peakslope",
     [](const PublishedValue& row) {
         return steepness_of_peak_deg(
             [&row](double S) { return campbell_2017_mps(S, surveyed(row)); });
     }},
    {"get2024", [](const PublishedValue& row) { return campbell_fire_2024_mps(deg(row)); }},
    {"xcheck_get2024", [](const PublishedValue& row) { return campbell_fire_2024_mps(deg(row)); }},
    {"stride_",
     [](const PublishedValue& row) { return campbell_cutler_2024_mps(deg(row), surveyed(row)); }},
    {"xcheck_stride",
     [](const PublishedValue& row) { return campbell_cutler_2024_mps(deg(row), surveyed(row)); }},
    {"wood_paved", wood_kmh},
    {"xcheck_wood", wood_kmh},
    {"swiss_pace", [](const PublishedValue& row) { return signpost_min_per_km(slope(row)); }},
    {"swiss_pub_flat",
     [](const PublishedValue& row) {
         return 3.6 * walking_speed_mps(WalkingModel::swiss_signpost, slope(row));
     }},
    {"swiss_route", swiss_route_min},
    {"swiss_simple",
     [](const PublishedValue& row) { return swiss_rule_of_thumb_s(totals(row)) / 3600.0; }},
    {"sac_", [](const PublishedValue& row) { return swiss_training_rule_s(totals(row)) / 3600.0; }},
    {"din_", [](const PublishedValue& row) { return din_33466_s(totals(row)) / 3600.0; }},
    {"lkm_",
     [](const PublishedValue& row) {
         return swiss_effort_km({.length_m = 1000.0 * row.input("distance_km"),
                                 .ascent_m = row.input("ascent_m"),
                                 .descent_m = row.input("steep_descent_m")});
     }},
    {"default_pace",
     [](const PublishedValue& row) {
         const double speed_mps = walking_speed_mps(WalkingModel::swiss_signpost, slope(row)) *
                                  equal_effort_factor(row.input("load_to_body_mass_ratio")) *
                                  row.input("personal_pace_factor") /
                                  row.input("terrain_time_factor");
         return 1000.0 / speed_mps / 60.0;
     }},
    {"march_pub_road_night",
     [](const PublishedValue&) { return 4.0 / night_time_factor(ground("path")); }},
    {"march_pub_crosscountry_night",
     [](const PublishedValue&) { return 2.5 / night_time_factor(ground("off-path")); }},
    {"march_pub_forest_lodgepole",
     [](const PublishedValue&) { return ground("forest").time_factor; }},
};

TEST(WalkingRows, AreMet) {
    test::expect_rows("walking", walking_checks, {});
}

} // namespace
} // namespace tumpline::planner

#include "planner/models/walking_curves.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace tumpline::planner {

namespace {

constexpr double kmh = 1.0 / 3.6; // one km/h in m/s

double degrees(double slope) {
    return std::atan(slope) * (180.0 / std::numbers::pi);
}

double slope_at(double degrees_up) {
    return std::tan(degrees_up * (std::numbers::pi / 180.0));
}

/// Pace of [Langmuir1984] in seconds per metre, jumps and all.
double langmuir_s_per_m(double slope) {
    // The edges are of the printed degrees; -12 itself still counts as moderate.
    static const double moderate = slope_at(-5.0);
    static const double steep = slope_at(-12.0);
    if (slope >= 0.0)
        return 0.72 + 6.0 * slope;
    if (slope > moderate)
        return 0.72;
    if (slope >= steep)
        return 0.72 + 2.0 * slope;
    return 0.72 - 2.0 * slope;
}

} // namespace

double swiss_signpost_s_per_m(double slope) {
    static constexpr std::array<double, 16> C = {14.271,
                                                 3.6991,
                                                 2.5922,
                                                 -1.4384,
                                                 0.32105,
                                                 0.81542,
                                                 -0.090261,
                                                 -0.20757,
                                                 0.010192,
                                                 0.028588,
                                                 -0.00057466,
                                                 -0.0021842,
                                                 1.5176e-5,
                                                 8.6894e-5,
                                                 -1.3584e-7,
                                                 -1.4026e-6};
    const double x = 10.0 * slope; // slope in tenths
    double min_per_km = 0.0;
    if (slope >= 0.40) {
        min_per_km = 17.0 * x;
    } else if (slope <= -0.40) {
        min_per_km = -9.0 * x;
    } else {
        for (std::size_t i = C.size(); i-- > 0;)
            min_per_km = min_per_km * x + C[i];
    }
    return min_per_km * 0.06; // 60 s over 1000 m
}

double tobler_1993_mps(double slope) {
    const double S = slope;
    return 6.0 * std::exp(-3.5 * std::abs(S + 0.05)) * kmh;
}

double marquez_perez_2017_mps(double slope) {
    const double S = slope;
    return 4.8 * std::exp(-5.3 * std::abs(0.7 * S + 0.03)) * kmh;
}

double irmischer_clarke_2018_mps(double slope, Footing footing) {
    const double G = 100.0 * slope; // percent
    if (footing == Footing::on_path)
        return 0.11 + std::exp(-(G + 5.0) * (G + 5.0) / 1800.0);
    return 0.11 + 0.67 * std::exp(-(G + 2.0) * (G + 2.0) / 1800.0);
}

double lorentz_mps(const LorentzCurve& curve, double slope) {
    const double theta = degrees(slope);
    const double t = (theta - curve.a) / curve.b;
    return curve.c / (std::numbers::pi * curve.b * (1.0 + t * t)) + curve.d + curve.e * theta;
}

double campbell_2019_mps(double slope, Percentile percentile) {
    static constexpr std::array<LorentzCurve, 10> curves = {{
        {-1.53, 14.04, 36.81, 0.32, -0.0027},
        {-1.568, 13.328, 38.892, 0.404, -0.003},
        {-1.71, 10.154, 36.905, 0.557, -0.004},
        {-1.858, 8.412, 39.994, 0.645, -0.004},
        {-1.958, 8.96, 50.34, 0.649, -0.005},
        {-2.171, 10.064, 63.66, 0.628, -0.005},
        {-2.459, 11.311, 79.287, 0.599, -0.005},
        {-2.823, 12.784, 98.697, 0.566, -0.005},
        {-3.371, 15.395, 134.409, 0.443, -0.005},
        {-3.06, 16.653, 138.875, 0.823, -0.0139},
    }};
    return lorentz_mps(curves.at(static_cast<std::size_t>(percentile)), slope);
}

double campbell_fire_2024_mps(double slope) {
    return lorentz_mps({.a = 0.0, .b = 22.4056, .c = 77.6196, .d = 0.0464, .e = 0.0}, slope);
}

double campbell_2017_mps(double slope, const SurveyedGround& ground) {
    const double D = ground.vegetation_density;
    const double R = ground.roughness_m;
    const double theta = degrees(slope);
    return std::max(0.0,
                    1.662 - 1.076 * D - 9.011 * R - 0.005191 * theta - 0.001127 * theta * theta);
}

double campbell_cutler_2024_mps(double slope, const SurveyedGround& ground) {
    const double D = ground.vegetation_density;
    const double R = ground.roughness_m;
    const double bare =
        lorentz_mps({.a = -2.320, .b = 26.315, .c = 147.362, .d = 0.0, .e = 0.0}, slope);
    return bare / (1.0 + 15.265 * D + 16.505 * R);
}

double sullivan_2020_mps(double slope, CrewPace pace) {
    static constexpr std::array<LorentzCurve, 3> curves = {{
        {-3.3717, 25.8255, 92.6594, -0.1624, 0.0019},
        {-2.8292, 20.9482, 77.6346, 0.2228, -0.0004},
        {-2.2893, 19.4024, 65.3577, 0.6226, -0.0020},
    }};
    return lorentz_mps(curves.at(static_cast<std::size_t>(pace)), slope);
}

double wood_2023_paved_mps(double slope) {
    return wood_2023_paved_mps(slope, std::abs(slope));
}

double wood_2023_paved_mps(double slope, double hill_slope) {
    const double phi = degrees(hill_slope);
    const double theta = degrees(slope);
    return std::exp(1.580 - 0.00389 * phi - 0.00726 * theta - 0.00218 * theta * theta) * kmh;
}

double naismith_langmuir_mps(double slope) {
    return 1.0 / langmuir_s_per_m(slope);
}

double naismith_langmuir_smoothed_mps(double slope) {
    struct Ramp {
        double from; // the gentler end
        double to;
        double pace_from;
        double pace_to;
    };

    static const std::array<Ramp, 2> ramps = [] {
        const auto ramp = [](double from, double to) {
            return Ramp{from, to, langmuir_s_per_m(from), langmuir_s_per_m(to)};
        };
        return std::array{ramp(slope_at(-4.5), slope_at(-5.5)),
                          ramp(slope_at(-10.0), slope_at(-14.0))};
    }();
    for (const Ramp& ramp : ramps) {
        if (slope <= ramp.from && slope >= ramp.to) {
            const double share = (ramp.from - slope) / (ramp.from - ramp.to);
            return 1.0 / (ramp.pace_from + share * (ramp.pace_to - ramp.pace_from));
        }
    }
    return naismith_langmuir_mps(slope);
}

} // namespace tumpline::planner

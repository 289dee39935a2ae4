#pragma once

#include <array>
#include <string_view>

/// How the speed and depth of a river at one place follow its discharge. Section means of rivers
/// that stay within their banks; a gauge and people who know the reach come first.
namespace tumpline::planner {

/// w = a Q^width, d = c Q^depth, v = k Q^velocity at one place; the three sum to one.
struct AtAStation {
    std::string_view name;
    double width;
    double depth;
    double velocity;
    std::string_view source;
};

/// Mean of twenty stations [LeopoldMaddock1953], as restated; and of steep mountain streams at low
/// flow [Reid2010], abstract.
inline constexpr std::array<AtAStation, 2> at_a_station{{
    {.name = "lowland",
     .width = 0.26,
     .depth = 0.40,
     .velocity = 0.34,
     .source = "LeopoldMaddock1953"},
    {.name = "steep", .width = 0.20, .depth = 0.29, .velocity = 0.51, .source = "Reid2010"},
}};

/// Between the two; chosen here, no source.
inline constexpr double default_velocity_exponent = 0.40;

/// By how much a quantity with this exponent changes when the discharge changes by `flow_ratio`.
[[nodiscard]] double at_a_station_ratio(double flow_ratio, double exponent);

/// Ratios of discharge within which a current is carried from one level to another; chosen here.
inline constexpr double least_flow_ratio = 0.2;
inline constexpr double most_flow_ratio = 5.0;
[[nodiscard]] bool at_a_station_covers(double flow_ratio);

} // namespace tumpline::planner

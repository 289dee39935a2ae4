#pragma once

#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <utility>

namespace tumpline::planner {

/// A text in both systems of units.
struct UnitText {
    UnitText(std::string same) // NOLINT: a text without units is the same in both
        : metric(same), imperial(std::move(same)) {}

    UnitText(std::string_view same) : UnitText(std::string(same)) {} // NOLINT: likewise

    UnitText(const char* same) : UnitText(std::string(same)) {} // NOLINT: likewise

    UnitText(std::string in_metric, std::string in_imperial)
        : metric(std::move(in_metric)), imperial(std::move(in_imperial)) {}

    std::string metric;
    std::string imperial;
};

/// The imperial text as plans keep it: empty if it is the metric one.
[[nodiscard]] inline std::string imperial_if_other(const UnitText& text) {
    return text.imperial == text.metric ? std::string() : text.imperial;
}

/// A figure as people read it, by one of the functions show_... of units.h.
[[nodiscard]] inline UnitText in_both(std::string (*show)(double, UnitSystem), double value) {
    return {show(value, UnitSystem::metric), show(value, UnitSystem::imperial)};
}

/// "25 km/h"; "16 mph": of wind, to the whole number.
[[nodiscard]] inline UnitText wind_words(double speed_mps) {
    return {fmt::format("{:.0f} km/h", speed_mps / mps_per_kmh),
            fmt::format("{:.0f} mph", speed_mps * s_per_h / m_per_mile)};
}

/// "0.75 L"; "0.79 qt": of what is drunk in an hour, to the hundredth.
[[nodiscard]] inline UnitText hourly_words(double volume_l) {
    return {fmt::format("{:.2f} L", volume_l),
            fmt::format("{:.2f} qt", volume_l / (l_per_us_gallon / 4.0))};
}

namespace wording {

inline const std::string& metric(const UnitText& words) {
    return words.metric;
}

inline const std::string& imperial(const UnitText& words) {
    return words.imperial;
}

template <typename Other> const Other& metric(const Other& other) {
    return other;
}

template <typename Other> const Other& imperial(const Other& other) {
    return other;
}

} // namespace wording

/// `pattern` with its {} filled, once in each system.
/// Throws: fmt::format_error if the pattern does not fit.
template <typename... Parts>
[[nodiscard]] UnitText format_both(std::string_view pattern, const Parts&... parts) {
    return {fmt::format(fmt::runtime(pattern), wording::metric(parts)...),
            fmt::format(fmt::runtime(pattern), wording::imperial(parts)...)};
}

} // namespace tumpline::planner

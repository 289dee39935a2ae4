#include "planner/trip/route_distance.h"

#include "planner/models/constants.h"

#include <fmt/format.h>

#include <charconv>
#include <system_error>

namespace tumpline::planner {

namespace {

constexpr double longest_m = 50'000'000.0; // further than any route

/// Takes `word` off the front of `text`; whether it was there.
bool take(std::string_view& text, std::string_view word) {
    if (!text.starts_with(word))
        return false;
    text.remove_prefix(word.size());
    return true;
}

} // namespace

std::optional<RouteDistance> read_route_distance(std::string_view text) {
    double unit_m = 1000.0;
    if (take(text, "mi "))
        unit_m = m_per_mile;
    else if (!take(text, "km "))
        return std::nullopt;
    double number = 0.0;
    const auto [end, fault] =
        std::from_chars(text.data(), text.data() + text.size(), number, std::chars_format::fixed);
    if (fault != std::errc{} || !(number >= 0.0) || number * unit_m > longest_m)
        return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    RouteDistance along{.distance_m = number * unit_m, .leg = {}, .before_end = false};
    along.before_end = take(text, " before the end");
    if (text.empty())
        return along;
    if (!take(text, " of ") || text.empty())
        return std::nullopt;
    along.leg = text;
    return along;
}

std::string show_route_distance(const RouteDistance& along) {
    return fmt::format("km {:.1f}{}{}{}",
                       along.distance_m / 1000.0,
                       along.before_end ? " before the end" : "",
                       along.leg.empty() ? "" : " of ",
                       along.leg);
}

} // namespace tumpline::planner

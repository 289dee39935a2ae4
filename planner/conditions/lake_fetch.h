#pragma once

#include "planner/route/route.h"

#include <optional>
#include <string_view>

/// Over how much open water the waves of a leg grow.
namespace tumpline::planner {

enum class FetchFrom {
    trip,   ///< the leg's own "fetch"
    layers, ///< the lake's outline in the map's layers
    length, ///< nobody says: the length of the leg, which is the least that it can be
};

/// "trip", "layers" or "length": a stable word for programs.
[[nodiscard]] std::string_view fetch_word(FetchFrom from);

struct LegFetch {
    double fetch_m;
    FetchFrom from;
};

/// The longest open water to windward from any place of a leg afloat; where the bearing of the wind
/// is not known, to the side from which most of it lies. An outline says so only if it holds half
/// of the leg or more.
[[nodiscard]] LegFetch
leg_fetch(const Route& route, LegNumber leg, const std::optional<double>& wind_from_deg);

} // namespace tumpline::planner

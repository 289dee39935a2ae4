#pragma once

/// The ways of travel, and the questions that all of the planner and its pages ask of one.
namespace tumpline::planner {

enum class Travel { walk, portage, paddle, ride };

/// People go on their own feet: time by pace and climb, energy of walking, the dark, rests, heat.
[[nodiscard]] constexpr bool on_foot(Travel travel) {
    return travel == Travel::walk || travel == Travel::portage;
}

/// People sit in the boats: wind, waves, current, class, payload.
[[nodiscard]] constexpr bool afloat(Travel travel) {
    return travel == Travel::paddle;
}

/// Others take them and what they have: no pace, no effort and no load of their own.
[[nodiscard]] constexpr bool is_ride(Travel travel) {
    return travel == Travel::ride;
}

/// What the party has is on backs there, within what one may bear.
[[nodiscard]] constexpr bool bears_packs(Travel travel) {
    return on_foot(travel);
}

} // namespace tumpline::planner

#pragma once

/// The ways of travel, and the questions that all of the planner and its pages ask of one.
namespace tumpline::planner {

/// `line`: the boat on a rope led from the shore; `wade`: beside it in the water; `pole`: standing
/// in it and pushing off the bed.
enum class Travel { walk, portage, paddle, ride, line, wade, pole };

/// People go on their own feet under what they bear: time by pace and climb, energy of walking,
/// rests, heat.
[[nodiscard]] constexpr bool on_foot(Travel travel) {
    return travel == Travel::walk || travel == Travel::portage;
}

/// The boats are rigged on the water with the goods in them: current, flow, craft loads.
[[nodiscard]] constexpr bool afloat(Travel travel) {
    return travel == Travel::paddle || travel == Travel::line || travel == Travel::wade ||
           travel == Travel::pole;
}

/// The people are outside the boats, on their own feet along the shore or in the water.
[[nodiscard]] constexpr bool beside_boat(Travel travel) {
    return travel == Travel::line || travel == Travel::wade;
}

/// Their mass is in the boats, and what happens to a boat happens to them: class, payload, capsize.
[[nodiscard]] constexpr bool aboard(Travel travel) {
    return travel == Travel::paddle || travel == Travel::pole;
}

/// The boat goes up or down a river at a pace of its own, whatever it does when paddled.
[[nodiscard]] constexpr bool led(Travel travel) {
    return afloat(travel) && travel != Travel::paddle;
}

/// Others take them and what they have: no pace, no effort and no load of their own.
[[nodiscard]] constexpr bool is_ride(Travel travel) {
    return travel == Travel::ride;
}

/// What the party has is on backs there, within what one may bear.
[[nodiscard]] constexpr bool bears_packs(Travel travel) {
    return on_foot(travel);
}

/// Metres of it are gone on foot, with or without a load.
[[nodiscard]] constexpr bool feet_on_ground(Travel travel) {
    return on_foot(travel) || beside_boat(travel);
}

} // namespace tumpline::planner

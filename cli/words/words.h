#pragma once

#include "geo/light/sun.h"
#include "geo/light/time_zone.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"
#include "planner/caution.h"
#include "planner/loads/ledger.h"
#include "planner/plan.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/vocabulary.h"

#include <cstddef>
#include <string>
#include <string_view>

/// The words that programs and people read for the closed sets of a plan. Those that the trip file
/// has as well are `planner::word`.
namespace tumpline::cli {

[[nodiscard]] std::string_view word(planner::Level level);
[[nodiscard]] std::string_view word(planner::EventKind kind);
[[nodiscard]] std::string_view word(planner::Part part);
[[nodiscard]] std::string_view word(planner::Account account);
[[nodiscard]] std::string_view word(geo::SunDay day);
[[nodiscard]] std::string_view word(geo::HeightSource source);
[[nodiscard]] std::string_view word(geo::HeightDatum datum);
[[nodiscard]] std::string_view word(geo::TrackKind kind);
[[nodiscard]] std::string_view word(planner::LitresStep step);
[[nodiscard]] std::string_view word(planner::LeaveBound bound);
[[nodiscard]] std::string_view word(planner::TurnLimit limit);
/// "left", "right", "at_hand"; empty for none.
[[nodiscard]] std::string_view word(planner::Stowage stowage);

/// "on foot", "portage", "afloat".
[[nodiscard]] std::string_view travel_phrase(planner::Travel travel);
/// "put-in", "drinking water", ...
[[nodiscard]] std::string_view place_word(planner::PlaceKind kind);

/// A latest hour as it is shown: cut off to the minute, since rounded up it would be too late.
[[nodiscard]] geo::sys_seconds at_latest(geo::sys_seconds hour);

/// A text of a plan in both systems of units; `imperial` is empty if it is the same.
struct BothTexts {
    const std::string& metric;
    const std::string& imperial;
};

[[nodiscard]] const std::string& in_units(const BothTexts& text, planner::UnitSystem units);
/// A climb or a descent; "unknown" where no heights are known.
[[nodiscard]] std::string
climb_words(double height_m, bool heights_known, planner::UnitSystem units);

/// "840 m up, 610 m down"; "heights unknown": of a leg, a day or the whole.
template <typename Way>
[[nodiscard]] std::string climbs_words(const Way& way, planner::UnitSystem units) {
    return way.heights_known ? planner::show_height(way.ascent_m, units) + " up, " +
                                   planner::show_height(way.descent_m, units) + " down"
                             : "heights unknown";
}

/// "42 %", of a share.
[[nodiscard]] std::string percent(double share);
/// "day 2, leg 4: Upper river", of an index into Plan::legs + 1; empty for 0.
[[nodiscard]] std::string leg_place(const planner::Plan& plan, planner::PlanLegNumber plan_leg);
/// "one", "one and a half": how many carries a portage takes.
[[nodiscard]] std::string_view carries_word(double carries);

/// ", by two", ", with cart"; "" where each piece goes on one back.
[[nodiscard]] std::string_view by_words(planner::CarryBy by);
/// "one carry", "one and a half carries".
[[nodiscard]] std::string_view carries_phrase(double carries);

/// How boats go over a portage: "rolled", "inflated", or "whole" where none of them rolls up.
[[nodiscard]] std::string_view boats_word(const planner::Plan& plan, bool rolled);

/// How a portage is borne: "one carry", "one and a half carries"...
[[nodiscard]] std::string
carries_words(const planner::Plan& plan, double carries, bool rolled, planner::CarryBy by);

/// "no return upstream from here"; where no current runs, of wind, without the direction.
[[nodiscard]] std::string no_return_words(const planner::Plan& plan,
                                          const planner::TurnRound& turn);

} // namespace tumpline::cli

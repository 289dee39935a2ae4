#pragma once

#include "planner/models/model_entry.h"
#include "planner/models/time_band.h"

#include <optional>
#include <span>
#include <string_view>

/// Speed over the water of a loaded boat under wind and current, and what paddling costs.
/// How well each part is supported by evidence: docs/models/paddling.md.
namespace tumpline::planner {

enum class PaddlingModel {
    power_balance, ///< calm speed, lowered or raised by the wind through drag and limited thrust
    constant,      ///< calm speed whatever the wind
};

/// "power-balance" or "constant"; empty for any other name.
[[nodiscard]] std::optional<PaddlingModel> paddling_model(std::string_view name);

enum class HullKind { packraft, inflatable, solo_canoe, tandem_canoe, kayak };

/// A kind of craft as the power balance needs it.
struct Hull {
    double reference_speed_mps; ///< sustained in calm with the reference thrust
    double reference_thrust_n;
    double drag_area_m2; ///< of boat, people and load in the air, drag coefficient times area
    double length_m;     ///< of the waterline
};

[[nodiscard]] const Hull& hull(HullKind kind);

/// Whether the hull's figures are an estimate: no published test of such boats was found, so the
/// plan says that speeds under wind are a guess. True of all but the kayak, which agrees with a
/// printed drag table and a printed wind chart.
[[nodiscard]] bool hull_is_estimate(HullKind kind);

/// Planning speed through still water for a touring day with camping load; the user's own is
/// better.
[[nodiscard]] double default_calm_speed_mps(HullKind kind);

/// Whether that speed is an estimate: from memory or a few messages, not from a club's pages. True
/// of inflatable boats and the solo canoe.
[[nodiscard]] bool calm_speed_is_estimate(HullKind kind);

/// No open crossing above this wind at 10 m: upper limit of force 4 for open and inflatable boats,
/// of force 5 for the kayak. Common practice; a party's own limit is often lower.
[[nodiscard]] double default_wind_ceiling_mps(HullKind kind);

struct Wind {
    double speed_mps; ///< at 10 m height, as forecasts give it
    double from_deg;  ///< bearing from which it blows, clockwise from north
};

/// Component against a boat that travels towards `bearing_deg`; positive from ahead.
[[nodiscard]] double headwind_mps(const Wind& wind, double bearing_deg);

/// Component across the course, without sign.
[[nodiscard]] double crosswind_mps(const Wind& wind, double bearing_deg);

/// Speed through the water at which thrust meets the drag of water and air:
///
///     kw v^2.26 + ka (v + 0.75 W) |v + 0.75 W| = min(F v_ref / v, 1.35 F)
///     ka = 1.225 CdA / 2,   kw = (F - ka v_ref^2) / v_ref^2.26
///
/// with F and v_ref the hull's reference thrust and speed, W the head component at 10 m. The
/// paddler holds the power; thrust is limited to about a third above that of cruising, because
/// nobody pushes harder for hours. 0 when the wind alone takes the whole thrust.
///
/// Source: exponent of the water's drag [Zamparo1999]; the balance itself is this project's,
/// compared with three observations [BurchNavigation], [KayakDiary2008], [PackraftForum]
/// (docs/models/paddling.md).
/// Covers: -20 to 15 m/s; without waves, which slow more than wind does.
/// Known bias: too fast in waves; a tail wind in waves gives less than this.
[[nodiscard]] double power_balance_mps(const Hull& hull, double headwind_mps);

/// Head components over which the balance was compared with anything.
inline constexpr double strongest_tail_mps = 20.0;
inline constexpr double strongest_head_mps = 15.0;
[[nodiscard]] bool power_balance_covers(double headwind_mps);

/// Up to this wind the model `constant`, which leaves it out, does not mislead: a gentle breeze,
/// common practice.
inline constexpr double constant_most_wind_mps = 3.0;

/// Drag of water and air in calm, kw v^2.26 + ka v^2, in newtons.
[[nodiscard]] double calm_drag_n(const Hull& hull, double speed_mps);

/// v(W) / v(0) of `power_balance_mps`, the gain under a tail wind limited to 10 %; 0 where no
/// progress is made. Never rises with W. Total: any finite hull and wind have an answer.
[[nodiscard]] double wind_speed_ratio(const Hull& hull, double headwind_mps);

/// The least head component at 10 m at which the boat stands still.
[[nodiscard]] double stopping_headwind_mps(const Hull& hull);

/// Share of the speed left after the correcting strokes that a side wind asks for: 1 up to 2.5 m/s,
/// 0.95 at 5, 0.90 from 7.5 m/s. From memory, no printed source.
[[nodiscard]] double steering_factor(double crosswind_mps);

/// Sideways drift through the water that a side wind gives a boat lying across it: slope and offset
/// of the search-and-rescue tables for the nearest craft in them (rafts without ballast, open
/// skiffs, a sea kayak). The offset fades out below 5 m/s, so that calm air gives no drift.
/// Source: [AllenPlourde1999].
[[nodiscard]] double leeway_mps(HullKind kind, double crosswind_mps);

/// A boat held on its course under wind from any bearing.
struct UnderWind {
    double through_water_mps; ///< forward speed of the boat, before the drift is held against
    double made_good_mps;     ///< along the course, in still water; 0 when the course is not held
    double held_off_deg;      ///< angle between bow and course that cancels the drift
};

struct PaddledCourse {
    double calm_speed_mps; ///< with this load
    double bearing_deg;
};

/// Head, side or tail: the power balance with the head component, then the greater of the two
/// losses to a side wind (correcting strokes, or the angle held against the drift), not both,
/// since the rule of thumb for the first includes some of the second.
[[nodiscard]] UnderWind under_wind(HullKind kind, const PaddledCourse& course, const Wind& wind);

/// What a wind does on a course to every boat of a kind, whatever its own speed.
struct WindOnCourse {
    double speed_ratio; ///< by the power balance
    double drift_mps;   ///< across the course
    double steering;    ///< factor of correcting strokes
    double head_mps;    ///< component against the boat
};

[[nodiscard]] WindOnCourse wind_on_course(HullKind kind, double bearing_deg, const Wind& wind);

/// Speed along the course in still water, as `under_wind` has it, of a boat with that calm speed; 0
/// where the course is not held.
[[nodiscard]] double made_good_under(const WindOnCourse& wind, double calm_speed_mps);

/// (m/m0)^-0.3, never above 1: what more mass aboard leaves of the calm speed.
/// Between -2/9 from the growth of wetted surface at constant power and -0.4 from one printed pair
/// of canoe speeds [PaddlingFaq]. 1 if either mass is not positive.
[[nodiscard]] double load_speed_factor(double mass_kg, double reference_mass_kg);

/// Speed made good along a river. Downstream (current positive) counts 0.85 of the current, since
/// nobody holds the fastest thread all day; upstream (negative) all of it. Empty below
/// `least_made_good_mps`: that stretch is waited for, tracked or carried instead.
/// Source: [PaddlingFaq], 80 to 90 % of the current.
[[nodiscard]] std::optional<double> made_good_mps(double through_water_mps, double current_mps);

inline constexpr double downstream_credit = 0.85;
inline constexpr double least_made_good_mps = 0.3;

/// A boat that keeps a course at an angle to a current.
struct FerryGlide {
    double through_water_mps;
    double current_mps; ///< not negative
    double angle_deg;   ///< between course and current: 0 with it, 90 across, 180 against
};

/// Speed along the course, c cos a + sqrt(v^2 - (c sin a)^2); empty when the current carries the
/// boat off the course or back along it.
[[nodiscard]] std::optional<double> ferry_made_good_mps(const FerryGlide& ferry);

/// v / sqrt(g L). Wave drag grows steeply above about 0.35.
[[nodiscard]] double froude(double speed_mps, double length_m);

/// Speed at which the boat climbs its own bow wave, Froude number 0.40 (1.34 sqrt(L in feet)
/// knots); from memory. The drag in the power balance knows nothing of that wave.
[[nodiscard]] double hull_speed_mps(double length_m);

/// Whether such a boat can keep this calm speed: above 0, not above its hull speed.
[[nodiscard]] bool calm_speed_covers(HullKind kind, double speed_mps);

/// How far a time afloat may be out before the party's own calm speed is known: a spread of one
/// mile per hour either way was told of one kind of craft [PackraftForum]; the band is a judgement.
[[nodiscard]] TimeBand paddling_time_band();

/// Rows of the Compendium of Physical Activities on the water.
enum class PaddlingEffort {
    floating,    ///< 18352, carried by a river
    light,       ///< 18040, 2.0 to 3.9 mph, light effort
    pleasure,    ///< 18070, for pleasure, general
    touring,     ///< 18020, canoeing on a camping trip
    kayaking,    ///< 18100, kayaking, moderate effort
    white_water, ///< 18370, white water in any boat
    moderate,    ///< 18050, 4.0 to 5.9 mph
    portaging,   ///< 18030, a canoe on the shoulders
    racing,      ///< 18060, above 6 mph
};

/// Metabolic equivalents, rest included; `met_w` of planner/models/compendium.h makes watts of
/// them. Source: [Ainsworth2011].
[[nodiscard]] double paddling_met(PaddlingEffort effort);

/// What a stretch of water asks, for the choice of a row.
struct PaddledWater {
    double calm_speed_mps; ///< through the water with this load; 0 when only drifting
    double current_mps;    ///< downstream positive, upstream negative
    int river_class;       ///< 0 unknown or flat
};

/// The row for a stretch: by speed through the water, white water from class III, and downstream
/// on a current faster than the boat, `pleasure` instead of `touring`, since one rests there.
/// The wind has no say: the power balance holds the power, so that wind costs hours.
[[nodiscard]] PaddlingEffort paddling_effort(const PaddledWater& water);

[[nodiscard]] std::span<const ModelEntry> paddling_entries();

} // namespace tumpline::planner

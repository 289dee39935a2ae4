#pragma once

#include "geo/light/sun.h"
#include "geo/profiles/profile.h"
#include "planner/caution.h"
#include "planner/conditions/lake_fetch.h"
#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/loads/ledger.h"
#include "planner/loads/loads.h"
#include "planner/plan/alternatives.h"
#include "planner/plan/carrying.h"
#include "planner/plan/connections.h"
#include "planner/plan/decision_cards.h"
#include "planner/plan/flows.h"
#include "planner/plan/hazards.h"
#include "planner/plan/left_things.h"
#include "planner/plan/luggage.h"
#include "planner/plan/packed_items.h"
#include "planner/plan/remedies.h"
#include "planner/plan/suitability.h"
#include "planner/plan/supplies.h"
#include "planner/plan/verdict.h"
#include "planner/plan/volumes.h"
#include "planner/quantities/leg_number.h"
#include "planner/route/route.h"
#include "planner/solution/fixed_point.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// The finished plan: data, SI units, everything in route order. Whoever shows it formats it and
/// computes nothing. Weights are sums over `Plan::ledger`, in whole milligrams until the last step.
namespace tumpline::planner {

using geo::sys_seconds;

/// The factors between which most parties' times lie, beside each time of the plan.
struct BandUsed {
    std::string family; ///< "walking", "paddling"
    double low = 1.0;
    double high = 1.0;
    std::string basis; ///< where they come from, in words
};

/// Mass by part, kilograms.
struct Parts {
    double kit_kg = 0.0;
    double craft_kg = 0.0;
    double food_kg = 0.0;
    double fuel_kg = 0.0; ///< with its containers
    double water_kg = 0.0;
    double waste_kg = 0.0;

    [[nodiscard]] double sum_kg() const {
        return kit_kg + craft_kg + food_kg + fuel_kg + water_kg + waste_kg;
    }
};

/// Things of one name in one load.
struct CarriedThing {
    std::string what;
    int count = 1;                     ///< pieces of that name; food and the like count as one
    std::vector<std::string> owners{}; ///< names of members, each once; empty: the party's
    bool one_end = false;              ///< of a piece that two carry between them
};

/// One load over a portage.
struct Carry {
    int carry = 1;                    ///< from 1, in the order in which this member takes them
    double pack_kg = 0.0;             ///< at the start of the portage
    double share = 1.0;               ///< of the way: 0.5 where two members relay it
    std::vector<CarriedThing> pieces; ///< what it is
    bool on_cart = false; ///< pulled beside the load of the same number, with the cart's own mass
};

/// What one member bears on one leg of one day. On foot: what is on the back (on a portage the
/// heaviest carry). Afloat: this member's goods in the craft.
struct MemberLoad {
    std::string member;
    double pack_start_kg = 0.0;
    double pack_end_kg = 0.0;
    double pack_max_kg = 0.0;
    double worn_kg = 0.0;
    double limit_kg = 0.0; ///< on this kind of leg
    Parts parts;           ///< of pack_max_kg; sums to it
    double energy_j = 0.0;
    double laid_down_kg = 0.0;  ///< what this member had and has left on the way, not yet fetched
    std::vector<Carry> carries; ///< on portages
};

/// An item or a bag in a craft.
struct Stowed {
    std::string what;
    double mass_kg = 0.0;
    std::vector<std::size_t>
        kit{}; ///< indices into Trip::kit of what it is; empty: food and the like
};

/// What lies at the ends of a boat by the trip file.
struct EndsLoad {
    double bow_kg = 0.0;
    double stern_kg = 0.0;
    std::vector<Stowed> bow = {}, stern = {};
};

struct CraftLoad {
    std::string craft;
    double load_kg = 0.0;    ///< people, what they wear, goods
    double payload_kg = 0.0; ///< 0 if not given
    double left_kg = 0.0;
    double right_kg = 0.0;
    double at_hand_kg = 0.0;
    std::vector<Stowed> left, right, at_hand;
    bool fits_volume = true;
    std::optional<double> draft_change_m; ///< against the empty craft with its crew
    std::optional<double> freeboard_m;    ///< left; where the trip file gives it without goods
    std::optional<EndsLoad> ends = {};    ///< where the file says of a thing that it lies there
};

/// The current of a river that nobody measured, from its fall and its bed; negative upstream.
struct PlanCurrent {
    double slow_mps = 0.0;
    double likely_mps = 0.0; ///< the one used
    double fast_mps = 0.0;
    double slope = 0.0; ///< fall over length of the leg, without sign
    double depth_m = 0.0;
    std::string bed;      ///< row of the roughness table, or "given"
    bool steep = false;   ///< roughness by [Jarrett1985] instead of the row
    bool limited = false; ///< held at critical flow: such a reach is falls and pools
};

/// Waves of wind, the highest of a leg.
struct PlanWaves {
    double height_m = 0.0; ///< significant
    double period_s = 0.0;
    double fetch_m = 0.0;
    FetchFrom fetch_from = FetchFrom::length;
    double wind_mps = 0.0;
};

/// From when on the wind over open water is above a boat's ceiling.
struct WindRise {
    sys_seconds at{};
    double wind_mps = 0.0; ///< or its gusts
    std::string craft;
    double ceiling_mps = 0.0;
};

/// A leg, or the part of it that one day covers.
struct PlanLeg {
    LegNumber leg = {}; ///< of the route
    int day = 1;
    int part = 0; ///< 0 if whole, else from 1
    std::string name;
    Travel travel = Travel::walk;
    double from_m = 0.0; ///< along the route
    double to_m = 0.0;
    bool heights_known = true; ///< false: ascent and descent are not known, and 0 here
    double ascent_m = 0.0;
    double descent_m = 0.0;
    double moving_s = 0.0;
    double dark_s = 0.0;       ///< of it, after dusk and before dawn; on foot at the night's pace
    double moving_low_s = 0.0; ///< the band beside the time (docs/models/walking_speed.md)
    double moving_high_s = 0.0;
    double changeover_s = 0.0; ///< change-overs, landings, scouting
    double rest_s = 0.0;
    sys_seconds start{};
    sys_seconds end{};
    double lengths = 1.0;               ///< route lengths walked by each person
    double on_foot_m = 0.0;             ///< metres really walked; 0 afloat
    std::optional<double> speed_mps;    ///< metres really covered over `moving_s`; empty: stopped
    std::vector<MemberLoad> loads;      ///< party order
    std::vector<CraftLoad> craft;       ///< afloat only
    std::vector<CarryChoice> choices;   ///< portages only
    std::optional<double> break_even_m; ///< length at which rolled and whole take the same time
    double gradient = 0.0;              ///< of a river: fall over length
    double steepest_500m = 0.0;         ///< of a river: the steepest 500 m
    double wind_mps = 0.0;              ///< over this water, its shelter taken off
    int wind_force = 0;                 ///< of the same, Beaufort
    double wind_head_mps = 0.0;         ///< mean component against the boat
    double current_mps = 0.0;           ///< used
    std::optional<PlanCurrent> current_estimate; ///< of it, where nobody gave it
    bool stopped = false;                        ///< wind or current stops the boat
    double open_wind_mps = 0.0;                  ///< the strongest met here, without shelter
    bool wind_known = true;                      ///< false: nobody gave one for these hours
    std::optional<double> gusts_mps;             ///< of the strongest, without shelter
    std::optional<PlanWaves> waves;              ///< lakes and the sea, under wind
    std::optional<PlanFlow> flow;                ///< of a river whose levels are given
    std::optional<WindRise> wind_rises;          ///< a ceiling is passed later on the day
    std::optional<double> snow_m = {};           ///< on foot: depth of the snow, if it is known
    double sinks_m = 0.0;                        ///< of it, at each step
    double ground_time_factor = 1.0;             ///< of the ground under foot, the dark left out

    /// Of the route; 0 for a ride of which nobody gave the length.
    [[nodiscard]] double length_m() const {
        return is_ride(travel) && to_m - from_m < 2.0 * no_length_m ? 0.0 : to_m - from_m;
    }
};

/// Whether a load's limit holds on its leg: on foot, where one is known.
[[nodiscard]] bool has_limit(const PlanLeg& leg, const MemberLoad& load);
/// Whether the load is over that limit at its heaviest, by as much as counts (loads/limits.h).
[[nodiscard]] bool over_limit(const PlanLeg& leg, const MemberLoad& load);

/// Something dated, with a place.
struct Event {
    EventKind kind = EventKind::rest;
    int day = 1;
    LegNumber leg = {};   ///< of the route
    double along_m = 0.0; ///< along the route
    sys_seconds at{};
    double lasts_s = 0.0;
    std::string place;   ///< name if it has one
    double litres = 0.0; ///< fill_water: by the whole party
};

struct MemberDay {
    std::string member;
    double energy_j = 0.0;
    double food_kg = 0.0;       ///< eaten by this member, without packaging
    double water_l = 0.0;       ///< drunk by this member, camp included
    double pack_start_kg = 0.0; ///< as packed in the morning, before breakfast, boats rolled up
    double pack_end_kg = 0.0;   ///< the same at the end of the day
    std::optional<double> set_off_kg; ///< as the first leg begins; empty on a day of rest
    double heaviest_kg = 0.0;         ///< heaviest pack or carry of the day on foot
    PlanLegNumber heaviest_leg = {};  ///< none: never on foot
};

struct PlanDay {
    int day = 1;
    Date date{};
    bool rest_day = false;
    std::string waiting_for = {}; ///< of a day of rest at the end: the connection
    std::string from, to;         ///< names of places, or "km 12.3" where nothing has a name
    geo::Position camp{};
    bool camp_located = true; ///< false: on a leg without a line, and `camp` is only near it
    double from_m = 0.0, to_m = 0.0;
    double walk_m = 0.0, portage_m = 0.0, paddle_m = 0.0;
    double on_foot_m = 0.0;
    double ride_m = 0.0;
    double led_m = 0.0;        ///< lined, waded or poled
    bool heights_known = true; ///< of all that is walked
    double ascent_m = 0.0, descent_m = 0.0;
    double moving_s = 0.0, changeover_s = 0.0, rest_s = 0.0;
    double ride_s = 0.0; ///< of `moving_s`, taken by others
    sys_seconds set_off{}, arrive{};
    std::optional<double> before_dusk_s; ///< from arriving; negative: after it; empty: no dusk
    std::optional<sys_seconds> rise; ///< to break camp by then; empty on day 1 and without travel
    sys_seconds arrive_early{}, arrive_late{}; ///< with the band of the legs' times
    geo::Daylight light;
    bool dry_camp = false;
    std::vector<MemberDay> members; ///< party order
    double food_kg = 0.0, fuel_kg = 0.0, water_l = 0.0;
};

/// The member who bears most on foot on a day; null on a day without any.
[[nodiscard]] const MemberDay* most_laden(const PlanDay& day);

struct PlanAppointment {
    std::string what, at;
    int day = 1;
    sys_seconds by{}, arrive{};
    double margin_s = 0.0;
    double spare_s = 0.0; ///< by - margin - arrive; negative if missed
    bool hard = false;
    std::vector<LeaveBy> leave_by;
};

struct ExitPoint {
    double along_m = 0.0;
    std::string forward, back;               ///< names of the exits
    std::optional<double> forward_s, back_s; ///< moving time and change-overs
    bool no_return = false; ///< the first point from which forward is shorter than back
};

/// What ends the time in which a party can still turn round.
enum class TurnLimit {
    none,        ///< nothing: there is no dusk
    dusk,        ///< at the place to which it goes back
    no_way_back, ///< current or wind: from there on there is no way back
    dark         ///< it is too late before the day has begun
};

/// Until when and where a party can turn round on one day and be back before dusk.
struct TurnRound {
    int day = 1;
    std::string back_to; ///< the last night's place, or an exit passed on this day
    double back_to_m = 0.0;
    bool exit = false;
    std::optional<sys_seconds> dusk; ///< there
    TurnLimit limit = TurnLimit::none;
    std::optional<sys_seconds> at; ///< turning round later is too late; empty: none, or dark
    double along_m = 0.0;          ///< where the plan is then; the day's end if it is there before
    LegNumber leg = {};            ///< of the route
    bool whole_day = false;        ///< from anywhere on the day's way, its end included
    double back_s = 0.0;           ///< time of the way back from there, rests included
};

/// How well things are shared out on the leg where the party carries most.
struct Sharing {
    double heaviest_ratio = 0.0; ///< pack over limit
    double lower_bound = 0.0;    ///< no sharing can do better
    std::string member;
    PlanLegNumber plan_leg = {};
};

/// Where one member bears most on foot.
struct HeaviestPack {
    std::string member;
    double pack_kg = 0.0;
    double limit_kg = 0.0; ///< there
    PlanLegNumber plan_leg = {};
};

struct Totals {
    double distance_m = 0.0;
    double walk_m = 0.0, portage_m = 0.0, paddle_m = 0.0;
    double on_foot_m = 0.0;
    double ride_m = 0.0;
    double led_m = 0.0;        ///< lined, waded or poled
    bool heights_known = true; ///< of all that is walked
    double ascent_m = 0.0, descent_m = 0.0;
    double moving_s = 0.0, changeover_s = 0.0, rest_s = 0.0;
    double elapsed_s = 0.0; ///< from first setting off to last arrival
    int days = 0;
    double food_kg = 0.0; ///< carried in all stages, packaging and reserve included
    double fuel_kg = 0.0; ///< without containers
    double energy_j = 0.0;
};

struct Plan {
    std::vector<LaidThings> left = {}; ///< what is laid down on the way, by where
    Suitability suitability = {};      ///< of boats and paddles of which the file says something
    Trip trip; ///< as read, its time zone filled in; `party` is the order of members everywhere
    std::vector<ModelUsed> models;
    std::vector<BandUsed> bands;
    std::vector<DefaultUsed> defaults;
    Converged converged;
    Totals totals;
    std::vector<PlanDay> days;
    std::vector<PlanLeg> legs;
    std::vector<Event> events;
    std::vector<PlanAppointment> appointments;
    std::vector<PlanConnection> connections = {}; ///< in the order of the trip file
    std::vector<PlanPermit> permits = {};         ///< the same
    std::vector<ExitPoint> exits;
    std::vector<TurnRound> turn_rounds; ///< day by day
    std::vector<PlanHazard> hazards;    ///< and notes, along the way
    std::vector<PackedItem> items;      ///< what is packed: kit, then boats
    std::vector<StartLoad> start_loads; ///< party order
    std::vector<Luggage> luggage;       ///< party order, then the party
    PlanVolumes volumes;
    std::vector<Stage> stages;
    std::vector<WaterStretch> water;
    std::vector<Litres> litres; ///< along the route
    CarrySummary carrying;
    Sharing sharing;
    std::vector<HeaviestPack> heaviest_packs; ///< party order, those who bear anything on foot
    Remedies remedies;                        ///< where packs are over their limits
    OtherWays other_ways;                     ///< the trip by its alternatives
    std::vector<FlowPlan> flows;              ///< the trip at each level of its rivers
    std::vector<DecisionCard> decisions;      ///< of what is paddled, where a river has levels
    std::vector<Caution> cautions;
    Verdict verdict; ///< of `cautions`, and what could not be judged
    Ledger ledger;

    /// Whether no caution is a stop.
    [[nodiscard]] bool can_be_carried_out() const;
};

} // namespace tumpline::planner

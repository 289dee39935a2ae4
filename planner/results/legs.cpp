#include "planner/results/legs.h"

#include "planner/conditions/releases.h"
#include "planner/defaults/wind_shy.h"
#include "planner/models/paddling.h"
#include "planner/models/walking_speed.h"
#include "planner/models/waves.h"
#include "planner/models/wind.h"
#include "planner/quantities/milligrams.h"
#include "planner/quantities/quantities.h"
#include "planner/results/bag_trim.h"
#include "planner/results/portage_choices.h"
#include "planner/results/time_bands.h"
#include "planner/solution/winds.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

Parts to_parts(const PartMasses& masses) {
    return {.kit_kg = mg_to_kg(masses[0]),
            .craft_kg = mg_to_kg(masses[1]),
            .food_kg = mg_to_kg(masses[2]),
            .fuel_kg = mg_to_kg(masses[3]),
            .water_kg = mg_to_kg(masses[4]),
            .waste_kg = mg_to_kg(masses[5])};
}

/// Fall per metre over the steepest 500 m of a river leg's part.
double steepest(const geo::Profile& profile, double from_m, double to_m) {
    constexpr double window_m = 500.0;
    const double width_m = std::min(window_m, to_m - from_m);
    if (width_m <= 0.0 || profile.heights_m.empty())
        return 0.0;
    double most = 0.0;
    const int steps = static_cast<int>((to_m - from_m - width_m) / 50.0) + 1;
    for (int k = 0; k < steps; ++k) {
        const double at_m = from_m + 50.0 * k;
        const double fall_m = *profile.height_at(at_m) - *profile.height_at(at_m + width_m);
        most = std::max(most, std::abs(fall_m) / width_m);
    }
    return most;
}

/// Adds a piece to the things of a load, those of one name together; two members' waste is "waste"
/// once.
void add_thing(std::vector<CarriedThing>& things,
               const Piece& piece,
               const std::vector<Member>& party) {
    const bool counted = piece.holds(Part::kit) || piece.holds(Part::craft);
    auto same = std::find_if(
        things.begin(), things.end(), [&](const auto& thing) { return thing.what == piece.name; });
    if (same == things.end())
        same = things.insert(things.end(), CarriedThing{piece.name});
    else if (counted)
        ++same->count;
    CarriedThing& thing = *same;
    thing.one_end = piece.end_of.has_value();
    if (counted && piece.whose) {
        const std::string& owner = party[*piece.whose].name;
        if (std::find(thing.owners.begin(), thing.owners.end(), owner) == thing.owners.end())
            thing.owners.push_back(owner);
    }
    if (!piece.lashed.empty())
        things.push_back(
            {fmt::format("{} lashed to {}", fmt::join(piece.lashed, " and "), piece.name)});
}

/// Fills a leg from its stretches [first, last).
class LegMaker {
  public:
    LegMaker(const Assembly& draft, const Winds& winds, std::size_t first, std::size_t last)
        : draft_(draft), winds_(winds), first_(first), last_(last),
          head_(draft.settled.stretches_met(draft.prepared).stretches[first]) {}

    PlanLeg make();

  private:
    void add_times(PlanLeg& leg) const;
    void add_loads(PlanLeg& leg) const;
    void add_carries(PlanLeg& leg) const;
    void add_craft(PlanLeg& leg) const;
    [[nodiscard]] double craft_load_kg(std::size_t craft, std::size_t stretch) const;
    [[nodiscard]] std::size_t heaviest_stretch(std::size_t craft) const;
    void add_water(PlanLeg& leg) const;
    void add_flow(PlanLeg& leg) const;
    void add_wind(PlanLeg& leg) const;
    void add_waves(PlanLeg& leg, const std::optional<double>& wind_from_deg) const;
    void add_wind_rise(PlanLeg& leg) const;

    const Assembly& draft_;
    const Winds& winds_;
    std::size_t first_;
    std::size_t last_;
    const Stretch& head_;
};

void LegMaker::add_times(PlanLeg& leg) const {
    for (std::size_t i = first_; i < last_; ++i) {
        const StretchTime& time = draft_.settled.timeline.stretches[i];
        const Stretch& stretch = draft_.settled.stretches_met(draft_.prepared).stretches[i];
        leg.moving_s += time.moving_s;
        leg.dark_s += time.dark_s;
        leg.changeover_s += time.change_s();
        leg.rest_s += time.rest_s + time.halt_s;
        leg.ascent_m += stretch.ascent_m;
        leg.descent_m += stretch.descent_m;
    }
    constexpr TimeBand as_given{.low = 1.0, .high = 1.0, .basis = {}};
    const TimeBand band = is_ride(leg.travel)  ? as_given
                          : led(leg.travel)    ? band_led(draft_, head_.leg.index())
                          : afloat(leg.travel) ? band_afloat(draft_)
                                               : band_on_foot(draft_);
    leg.moving_low_s = leg.moving_s * band.low;
    leg.moving_high_s = leg.moving_s * band.high;
    leg.snow_m = head_.snow_m;
    leg.sinks_m = head_.sinks_m;
    leg.ground_time_factor = head_.time_factor;
    leg.start = instant(draft_, leg.day, draft_.settled.timeline.stretches[first_].start_s);
    leg.end = instant(draft_, leg.day, draft_.settled.timeline.stretches[last_ - 1].end_s);
}

void LegMaker::add_loads(PlanLeg& leg) const {
    const Prepared& prepared = draft_.prepared;
    for (std::size_t m = 0; m < prepared.trip.party.size(); ++m) {
        MemberLoad load;
        load.member = prepared.trip.party[m].name;
        load.limit_kg = leg.travel == Travel::portage ? prepared.assumed.members[m].portage_limit_kg
                                                      : prepared.assumed.members[m].walk_limit_kg;
        load.pack_start_kg = draft_.settled.loads.stretches[first_].start_kg[m];
        load.pack_end_kg = draft_.settled.loads.stretches[last_ - 1].end_kg[m];
        const Loads& loads = draft_.settled.loads;
        if (!loads.laid.empty())
            load.laid_down_kg = mg_to_kg(
                loads.ledger.balance_mg(m, Account::laid_down, loads.stretch_step[first_]));
        load.worn_kg = draft_.settled.loads.stretches[first_].worn_kg[m];
        load.pack_max_kg = -1.0;
        for (std::size_t i = first_; i < last_; ++i) {
            const StretchLoads& here = draft_.settled.loads.stretches[i];
            load.energy_j += draft_.settled.spent.stretch_j[i][m];
            if (here.max_kg[m] > load.pack_max_kg) {
                load.pack_max_kg = here.max_kg[m];
                load.parts = to_parts(here.max_parts[m]);
            }
        }
        leg.loads.push_back(std::move(load));
    }
}

void LegMaker::add_carries(PlanLeg& leg) const {
    const PortagePlan& plan = *draft_.settled.loads.portages[first_];
    leg.choices = choices_by_clock(draft_, first_);
    leg.break_even_m = plan.break_even_m;
    leg.lengths = lengths_of(plan.relay.carries);
    for (std::size_t m = 0; m < leg.loads.size(); ++m) {
        int number = 0;
        for (const PortageLoad& one : plan.relay.loads) {
            if (one.pieces.empty() || (one.bearer != m && one.relay != m))
                continue;
            Carry carry;
            carry.on_cart = one.rolls();
            carry.carry = one.rolls() ? one.turn + 1 : ++number;
            carry.pack_kg = mg_to_kg(one.mass_mg);
            carry.share = one.bearer == one.relay ? 1.0 : 0.5;
            for (const std::size_t p : one.pieces)
                add_thing(carry.pieces, plan.pieces[p], draft_.prepared.trip.party);
            leg.loads[m].carries.push_back(std::move(carry));
        }
    }
}

/// All that its crew are in it, as a stretch begins.
double LegMaker::craft_load_kg(std::size_t craft, std::size_t stretch) const {
    const Prepared& prepared = draft_.prepared;
    const StretchLoads& load = draft_.settled.loads.stretches[stretch];
    double sum_kg = 0.0;
    for (const std::size_t m : prepared.assumed.craft[craft].crew)
        sum_kg += load.in_boat_kg(m, prepared.assumed.members[m].body_kg, head_.travel);
    return sum_kg;
}

/// Where on the leg a craft is laden most, the first of equals: loads grow between stretches, with
/// water, supplies and what got wet, and shrink on them.
std::size_t LegMaker::heaviest_stretch(std::size_t craft) const {
    std::size_t heaviest = first_;
    for (std::size_t i = first_ + 1; i < last_; ++i)
        if (craft_load_kg(craft, i) > craft_load_kg(craft, heaviest))
            heaviest = i;
    return heaviest;
}

void LegMaker::add_craft(PlanLeg& leg) const {
    const Prepared& prepared = draft_.prepared;
    for (std::size_t c = 0; c < prepared.assumed.craft.size(); ++c) {
        const AssumedCraft& craft = prepared.assumed.craft[c];
        CraftLoad one;
        one.craft = prepared.trip.craft[c].name;
        one.payload_kg = craft.payload_kg;
        const std::size_t heaviest = heaviest_stretch(c);
        const StretchLoads& load = draft_.settled.loads.stretches[heaviest];
        one.load_kg = craft_load_kg(c, heaviest);
        const TrimmedBags bags = trim_craft(draft_, c, heaviest);
        one.left = bags.left;
        one.right = bags.right;
        one.at_hand = bags.at_hand;
        one.fits_volume = bags.fits_volume;
        one.ends = bags.ends;
        const auto sum_kg = [](const std::vector<Stowed>& things) {
            double sum = 0.0;
            for (const Stowed& thing : things)
                sum += thing.mass_kg;
            return sum;
        };
        one.left_kg = sum_kg(one.left);
        one.right_kg = sum_kg(one.right);
        one.at_hand_kg = sum_kg(one.at_hand);
        if (prepared.trip.craft[c].waterplane_m2) {
            double goods_kg = 0.0;
            for (const std::size_t m : craft.crew)
                goods_kg += load.start_kg[m];
            constexpr double fresh_water_kg_m3 = 1000.0;
            one.draft_change_m =
                goods_kg / (fresh_water_kg_m3 * *prepared.trip.craft[c].waterplane_m2);
            if (prepared.trip.craft[c].freeboard_m)
                one.freeboard_m = *prepared.trip.craft[c].freeboard_m - *one.draft_change_m;
        }
        leg.craft.push_back(std::move(one));
    }
}

/// What the river carries at its hours; the current is the mean over the way.
void LegMaker::add_flow(PlanLeg& leg) const {
    const RouteLeg& route_leg = draft_.prepared.route.legs[head_.leg.index()];
    if (!route_leg.spec.flow)
        return;
    const RiverFlow& flow = *route_leg.spec.flow;
    PlanFlow& shown = leg.flow.emplace(PlanFlow{.gauge = flow.gauge,
                                                .now = flow.now,
                                                .asked = flow.asked,
                                                .states = {},
                                                .runnable = flow.runnable});
    const StretchTime& start = draft_.settled.timeline.stretches[first_];
    const StretchTime& end = draft_.settled.timeline.stretches[last_ - 1];
    if (flow.times.empty()) {
        if (const std::optional<FlowState> state = flow_state(flow, flow.now))
            shown.states.push_back(*state);
        return;
    }
    std::vector<double> hours{start.start_s};
    for (const double change_s : release_changes(route_leg))
        if (change_s > start.start_s && change_s < end.end_s)
            hours.push_back(change_s);
    for (const double hour_s : hours)
        if (const std::optional<FlowState> state = released_at(route_leg, hour_s))
            shown.states.push_back(*state);
    leg.current_mps = 0.0;
    for (std::size_t i = first_; i < last_; ++i)
        leg.current_mps += draft_.settled.afloat[i].met.current_mps.value_or(head_.current_mps) *
                           draft_.prepared.stretches.stretches[i].length_m() /
                           std::max(1e-9, leg.to_m - leg.from_m);
}

/// The strongest wind that the leg meets at its hours.
void LegMaker::add_wind(PlanLeg& leg) const {
    WindMet strongest = draft_.settled.afloat[first_].met;
    for (std::size_t i = first_; i < last_; ++i) {
        const WindMet& met = draft_.settled.afloat[i].met;
        const bool known = strongest.known && met.known;
        if (met.strongest_mps() > strongest.strongest_mps())
            strongest = met;
        strongest.known = known;
    }
    leg.open_wind_mps = strongest.blowing.wind_mps;
    leg.gusts_mps = strongest.gusts_mps;
    leg.wind_known = strongest.known;
    leg.wind_mps = leg.open_wind_mps * (1.0 - head_.shelter);
    leg.wind_force = beaufort(leg.wind_mps);
    const bool river =
        draft_.prepared.route.legs[head_.leg.index()].spec.on_water() == Water::river;
    if (river)
        return;
    add_waves(leg, strongest.blowing.from_deg);
    add_wind_rise(leg);
}

void LegMaker::add_waves(PlanLeg& leg, const std::optional<double>& wind_from_deg) const {
    if (leg.open_wind_mps <= 0.0)
        return;
    const LegFetch fetch = leg_fetch(draft_.prepared.route, head_.leg, wind_from_deg);
    const Waves waves = waves_of({.wind_mps = leg.open_wind_mps, .fetch_m = fetch.fetch_m});
    leg.waves = PlanWaves{.height_m = waves.height_m,
                          .period_s = waves.period_s,
                          .fetch_m = fetch.fetch_m,
                          .fetch_from = fetch.from,
                          .wind_mps = leg.open_wind_mps};
}

/// When, after the leg has begun, the wind there passes the lowest ceiling of the crafts.
void LegMaker::add_wind_rise(PlanLeg& leg) const {
    const Prepared& prepared = draft_.prepared;
    const std::vector<AssumedCraft>& craft = prepared.assumed.craft;
    const std::optional<std::size_t> shy = most_wind_shy(craft);
    if (!winds_.changes() || !shy)
        return;
    const double ceiling_mps = craft[*shy].wind_ceiling_mps;
    const TripLeg& spec = prepared.route.legs[head_.leg.index()].spec;
    const double open = spec.open_crossing.value_or(false) ? 1.0 : 1.0 - head_.shelter;
    const double start_s = draft_.settled.timeline.stretches[first_].start_s;
    for (const WindSpell& spell : winds_.spells(first_, leg.day)) {
        const double here_mps = spell.met.strongest_mps() * open;
        if (spell.from_s <= start_s || spell.from_s >= s_per_day || here_mps <= ceiling_mps)
            continue;
        leg.wind_rises = WindRise{.at = instant(draft_, leg.day, spell.from_s),
                                  .wind_mps = here_mps,
                                  .craft = prepared.trip.craft[*shy].name,
                                  .ceiling_mps = ceiling_mps};
        return;
    }
}

void LegMaker::add_water(PlanLeg& leg) const {
    const RouteLeg& route_leg = draft_.prepared.route.legs[head_.leg.index()];
    leg.current_mps = head_.current_mps;
    if (head_.estimate) {
        const auto& [bed, current] = *head_.estimate;
        leg.current_estimate = {.slow_mps = current.slow_mps,
                                .likely_mps = current.likely_mps,
                                .fast_mps = current.fast_mps,
                                .slope = bed.slope,
                                .depth_m = bed.depth_m,
                                .bed = std::string(bed.roughness.name),
                                .steep = current.jarrett,
                                .limited = current.limited};
    }
    add_flow(leg);
    add_wind(leg);
    for (std::size_t i = first_; i < last_; ++i) {
        const Paddle& paddled = draft_.settled.afloat[i].paddle;
        leg.wind_head_mps += paddled.head_wind_mps *
                             draft_.prepared.stretches.stretches[i].length_m() /
                             std::max(1e-9, leg.to_m - leg.from_m);
        leg.stopped = leg.stopped || paddled.stopped;
    }
    if (route_leg.spec.on_water() != Water::river || route_leg.profile.heights_m.empty())
        return;
    const double from_m = leg.from_m - route_leg.from_m;
    const double to_m = leg.to_m - route_leg.from_m;
    const double fall_m = *route_leg.profile.height_at(from_m) - *route_leg.profile.height_at(to_m);
    leg.gradient = to_m > from_m ? fall_m / (to_m - from_m) : 0.0;
    leg.steepest_500m = steepest(route_leg.profile, from_m, to_m);
}

PlanLeg LegMaker::make() {
    const RouteLeg& route_leg = draft_.prepared.route.legs[head_.leg.index()];
    PlanLeg leg;
    leg.leg = head_.leg;
    leg.day = draft_.settled.timeline.stretches[first_].day;
    leg.name = route_leg.name;
    leg.travel = route_leg.travel;
    leg.from_m = head_.from_m;
    leg.to_m = draft_.prepared.stretches.stretches[last_ - 1].to_m;
    add_times(leg);
    add_loads(leg);
    switch (leg.travel) {
    case Travel::portage:
        add_carries(leg);
        break;
    case Travel::paddle:
    case Travel::line:
    case Travel::wade:
    case Travel::pole:
        add_craft(leg);
        add_water(leg);
        break;
    case Travel::walk:
    case Travel::ride:
        break;
    }
    leg.on_foot_m = feet_on_ground(leg.travel) ? leg.lengths * (leg.to_m - leg.from_m) : 0.0;
    leg.heights_known = is_ride(leg.travel) || route_leg.climb_known();
    const double covered_m = feet_on_ground(leg.travel) ? leg.on_foot_m : leg.length_m();
    if (leg.moving_s > 0.0 && !leg.stopped && (covered_m > 0.0 || !is_ride(leg.travel)))
        leg.speed_mps = covered_m / leg.moving_s;
    return leg;
}

} // namespace

std::vector<PlanLeg> plan_legs(const Assembly& draft) {
    std::vector<PlanLeg> legs;
    const Prepared& prepared = draft.prepared;
    const Winds winds(prepared.route, prepared.stretches, prepared.assumed);
    const std::vector<PlanLegNumber>& index = draft.settled.loads.plan_leg;
    for (std::size_t first = 0; first < index.size();) {
        std::size_t last = first + 1;
        while (last < index.size() && index[last] == index[first])
            ++last;
        legs.push_back(LegMaker(draft, winds, first, last).make());
        first = last;
    }
    for (std::size_t k = 0; k < legs.size(); ++k) {
        const bool continues = k > 0 && legs[k - 1].leg == legs[k].leg;
        const bool goes_on = k + 1 < legs.size() && legs[k + 1].leg == legs[k].leg;
        if (continues)
            legs[k].part = legs[k - 1].part + 1;
        else if (goes_on)
            legs[k].part = 1;
    }
    return legs;
}

} // namespace tumpline::planner

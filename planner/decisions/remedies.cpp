#include "planner/decisions/remedies.h"

#include "planner/decisions/plan_budget.h"
#include "planner/journey/pace.h"
#include "planner/loads/assignment.h"
#include "planner/loads/limits.h"
#include "planner/make_plan.h"
#include "planner/quantities/milligrams.h"
#include "planner/results/assembly.h"
#include "planner/results/days.h"
#include "planner/trip/kit_names.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

bool over(const PlanLeg& leg, const MemberLoad& load) {
    return leg.travel == Travel::walk && over_limit(load.pack_max_kg, load.limit_kg);
}

/// Heaviest pack over its limit on any walk.
double heaviest_of_limit(const Plan& plan) {
    double ratio = 0.0;
    for (const PlanLeg& leg : plan.legs)
        if (leg.travel == Travel::walk)
            for (const MemberLoad& load : leg.loads)
                if (load.limit_kg > 0.0)
                    ratio = std::max(ratio, load.pack_max_kg / load.limit_kg);
    return ratio;
}

/// What a remedy does to the packs.
struct Mended {
    double heaviest_of_limit = 0.0; ///< on any walk
    bool within = true;             ///< no pack over its limit there
    double setting_off_kg = 0.0;    ///< all packs together on the first morning
};

/// The trip changed, its nights as planned. Its loads are all that is asked for.
Mended changed(const Assembly& draft, const Trip& trip, const Route& route) {
    const Prepared prepared = prepare(trip, route);
    SolveOptions options;
    options.nights = draft.settled.nights;
    options.record = false;
    const Solved settled = solve(prepared, options);
    Mended mended;
    for (std::size_t i = 0; i < prepared.stretches.stretches.size(); ++i) {
        if (prepared.stretches.stretches[i].travel != Travel::walk)
            continue;
        for (std::size_t m = 0; m < prepared.assumed.members.size(); ++m) {
            const double pack_kg = settled.loads.stretches[i].max_kg[m];
            const double limit_kg = prepared.assumed.members[m].walk_limit_kg;
            mended.within = mended.within && !over_limit(pack_kg, limit_kg);
            if (limit_kg > 0.0)
                mended.heaviest_of_limit = std::max(mended.heaviest_of_limit, pack_kg / limit_kg);
        }
    }
    const std::vector<double>& packs_kg = settled.loads.day_start_kg.front();
    mended.setting_off_kg = std::accumulate(packs_kg.begin(), packs_kg.end(), 0.0);
    return mended;
}

/// Plans that may still be made for one remedy.
class PlansLeft {
  public:
    explicit PlansLeft(int most) : left_(most) {}

    /// Whether there is one more, and that it is taken.
    bool take() {
        short_ = short_ || left_ == 0;
        return left_ > 0 && left_-- > 0;
    }

    /// Whether one was asked for in vain.
    [[nodiscard]] bool were_too_few() const { return short_; }

  private:
    int left_;
    bool short_ = false;
};

std::vector<Overloaded> overloaded_members(const Plan& plan) {
    std::vector<Overloaded> members;
    for (std::size_t m = 0; m < plan.trip.party.size(); ++m) {
        Overloaded one;
        one.member = plan.trip.party[m].name;
        for (std::size_t i = 0; i < plan.legs.size(); ++i) {
            const PlanLeg& leg = plan.legs[i];
            const MemberLoad& load = leg.loads[m];
            if (!over(leg, load))
                continue;
            if (one.days.empty() || one.days.back() != leg.day)
                one.days.push_back(leg.day);
            if (load.pack_max_kg > one.worst_kg) {
                one.worst_kg = load.pack_max_kg;
                one.limit_kg = load.limit_kg;
                one.plan_leg = PlanLegNumber::of_index(i);
            }
        }
        one.over_kg = one.worst_kg - one.limit_kg;
        if (!one.days.empty())
            members.push_back(std::move(one));
    }
    return members;
}

RaisedLimits raise_limits(const Assembly& draft, const Plan& plan) {
    RaisedLimits raised{heaviest_of_limit(plan), {}};
    for (std::size_t m = 0; m < draft.prepared.assumed.members.size(); ++m) {
        double limit_kg = draft.prepared.assumed.members[m].walk_limit_kg * raised.factor;
        if (limit_kg <= 0.0) // who was to carry nothing
            for (const PlanLeg& leg : plan.legs)
                if (leg.travel == Travel::walk)
                    limit_kg = std::max(limit_kg, leg.loads[m].pack_max_kg);
        raised.limits_kg.push_back(limit_kg);
    }
    return raised;
}

class ThingsToLeave {
  public:
    ThingsToLeave(const Assembly& draft, const Plan& plan, PlansLeft& plans)
        : draft_(draft), plan_(plan), plans_(plans) {}

    std::optional<LeftThings> run() {
        LeftThings remedy;
        remedy.mass_kg = least_mass_kg();
        const std::vector<std::size_t> things = carried_things();
        // Alone, the lightest that do come first: they are the easiest to do without.
        for (const std::size_t k : std::vector<std::size_t>(things.rbegin(), things.rend())) {
            if (mass_kg(k) < remedy.mass_kg || !try_without({k}))
                continue;
            remedy.things.push_back(name(k));
            if (remedy.things.size() == 1)
                remedy.heaviest_of_limit = last_ratio_;
            if (remedy.things.size() == most_named)
                break;
        }
        if (!remedy.things.empty())
            return remedy;
        remedy.together = true;
        std::vector<std::size_t> left;
        for (const std::size_t k : things) {
            left.push_back(k);
            const double gone_kg =
                std::accumulate(left.begin(), left.end(), 0.0, [&](double sum, std::size_t item) {
                    return sum + mass_kg(item);
                });
            if (gone_kg < remedy.mass_kg || !try_without(left))
                continue;
            for (const std::size_t item : left)
                remedy.things.push_back(name(item));
            remedy.heaviest_of_limit = last_ratio_;
            return remedy;
        }
        return std::nullopt;
    }

  private:
    static constexpr std::size_t most_named = 3;

    [[nodiscard]] double mass_kg(std::size_t k) const {
        return draft_.prepared.trip.kit[k].all_kg();
    }

    [[nodiscard]] std::string name(std::size_t k) const {
        return name_with_owner(draft_.prepared.trip.kit[k]);
    }

    /// What all packs together are over all limits together, on the worst leg; and at least what
    /// one pack is over a limit if things could not be shared.
    [[nodiscard]] double least_mass_kg() const {
        double least = 0.0;
        for (const PlanLeg& leg : plan_.legs) {
            if (leg.travel != Travel::walk)
                continue;
            double sum = 0.0;
            for (const MemberLoad& load : leg.loads)
                sum += load.pack_max_kg - load.limit_kg;
            least = std::max(least, sum);
        }
        return least;
    }

    /// Whether somebody could do without it: it is no safety gear, need not come, and no condition
    /// of this trip asks for it.
    [[nodiscard]] static bool can_be_left(const KitItem& item) {
        return !item.must && !item.is && item.when.empty() && !item.bring.value_or(false);
    }

    /// Kit in packs ashore that can be left, heaviest first.
    [[nodiscard]] std::vector<std::size_t> carried_things() const {
        const Trip& trip = draft_.prepared.trip;
        std::vector<std::size_t> things;
        for (std::size_t k = 0; k < trip.kit.size(); ++k)
            if (packed_ashore(trip, draft_.prepared.kit.brought, k) && can_be_left(trip.kit[k]))
                things.push_back(k);
        std::stable_sort(things.begin(), things.end(), [&](std::size_t a, std::size_t b) {
            return mass_kg(a) > mass_kg(b);
        });
        return things;
    }

    bool try_without(const std::vector<std::size_t>& things) {
        if (!plans_.take())
            return false;
        Trip trip = draft_.prepared.trip;
        for (const std::size_t k : things)
            trip.kit[k].bring = false;
        const Mended without = changed(draft_, trip, draft_.prepared.route);
        last_ratio_ = without.heaviest_of_limit;
        return without.within;
    }

    const Assembly& draft_;
    const Plan& plan_;
    PlansLeft& plans_;
    double last_ratio_ = 0.0;
};

bool is_supplied(const Route& route, const PlanDay& night) {
    return std::any_of(route.places.begin(), route.places.end(), [&](const RoutePlace& place) {
        return (place.kind == PlaceKind::resupply || place.kind == PlaceKind::cache) &&
               std::abs(place.along_m - night.to_m) < 1.0;
    });
}

/// The trip with food and fuel laid down where a day ends.
Mended supplied_at(const Assembly& draft, const PlanDay& night) {
    Trip trip = draft.prepared.trip;
    Route with = draft.prepared.route;
    const auto after = std::upper_bound(
        with.places.begin(), with.places.end(), night.to_m, [](double m, const RoutePlace& p) {
            return m < p.along_m;
        });
    const auto leg = std::find_if(with.legs.begin(), with.legs.end(), [&](const RouteLeg& l) {
        return night.to_m <= l.to_m;
    });
    TripPlace supply;
    supply.name = "supply at " + night.to;
    supply.kind = PlaceKind::cache;
    supply.at = night.camp;
    with.places.insert(
        after,
        {.name = supply.name,
         .kind = supply.kind,
         .at = night.camp,
         .along_m = night.to_m,
         .off_m = 0.0,
         .leg = LegNumber::of_index(static_cast<std::size_t>(leg - with.legs.begin())),
         .spec = trip.route.places.size()});
    trip.route.places.push_back(std::move(supply));
    return changed(draft, trip, with);
}

/// The latest night by which a supply would keep every pack within its limit; where none does, the
/// one that helps most.
std::optional<EarlierSupply>
supply_before(const Assembly& draft, const Plan& plan, PlansLeft& plans) {
    const int first_over = [&] {
        for (const PlanLeg& leg : plan.legs)
            for (const MemberLoad& load : leg.loads)
                if (over(leg, load))
                    return leg.day;
        return 1;
    }();
    double setting_off_kg = 0.0;
    for (const MemberDay& member : plan.days.front().members)
        setting_off_kg += member.pack_start_kg;
    std::optional<EarlierSupply> best;
    for (std::size_t d = plan.days.size(); d-- > 0;) {
        const PlanDay& day = plan.days[d];
        if (day.rest_day || day.day < first_over || d + 1 == plan.days.size())
            continue;
        if (is_supplied(draft.prepared.route, day) || !plans.take())
            continue;
        const Mended mended = supplied_at(draft, day);
        EarlierSupply remedy;
        remedy.enough = mended.within;
        remedy.heaviest_of_limit = mended.heaviest_of_limit;
        remedy.place = day.to;
        remedy.after_day = day.day;
        remedy.lighter_kg = setting_off_kg - mended.setting_off_kg;
        if (!best || remedy.heaviest_of_limit < best->heaviest_of_limit - 1e-6)
            best = remedy;
        if (remedy.enough)
            return remedy;
    }
    // A supply that moves nothing is none.
    return best && best->heaviest_of_limit < heaviest_of_limit(plan) - 1e-3 ? best : std::nullopt;
}

class Relayed {
  public:
    Relayed(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    RelayedWalks run() {
        RelayedWalks remedy;
        for (std::size_t i = 0; i < plan_.legs.size(); ++i) {
            const PlanLeg& leg = plan_.legs[i];
            if (leg.travel != Travel::walk)
                continue;
            const bool in_both = std::any_of(
                leg.loads.begin(), leg.loads.end(), [&](const auto& l) { return over(leg, l); });
            for (std::size_t m = 0; m < leg.loads.size(); ++m) {
                const MemberLoad& load = leg.loads[m];
                const double kg = in_both ? half_kg(leg, m) : load.pack_max_kg;
                remedy.enough = remedy.enough && !over_limit(kg, load.limit_kg);
                if (load.limit_kg > 0.0)
                    remedy.heaviest_of_limit =
                        std::max(remedy.heaviest_of_limit, kg / load.limit_kg);
            }
            if (!in_both)
                continue;
            remedy.plan_legs.push_back(PlanLegNumber::of_index(i));
            remedy.more_on_foot_m += 2.0 * (leg.to_m - leg.from_m);
            const double more_s = more_time_s(PlanLegNumber::of_index(i));
            remedy.more_s += more_s;
            note_dusk(leg.day, more_s, remedy);
        }
        return remedy;
    }

  private:
    /// The heavier of two loads, nothing being lighter than the member's heaviest single piece.
    [[nodiscard]] double half_kg(const PlanLeg& leg, std::size_t m) const {
        double piece_kg = 0.0;
        const Loads& loads = draft_.settled.loads;
        const Prepared& prepared = draft_.prepared;
        for (const TiedItems& tied : loads.tied)
            if (tied.items.empty() || loads.item_bearer[tied.items.front()] == m)
                piece_kg = std::max(piece_kg,
                                    mg_to_kg(tied.mass_mg) +
                                        (tied.holds_food ? leg.loads[m].parts.food_kg : 0.0));
        for (std::size_t c = 0; c < prepared.assumed.craft.size(); ++c)
            if (loads.craft_bearer[c] == m)
                piece_kg = std::max(piece_kg, prepared.assumed.craft[c].mass_kg);
        return std::max(piece_kg, leg.loads[m].pack_max_kg / 2.0);
    }

    /// Two loaded walks and the way back between them, at the slowest member's pace, against one.
    [[nodiscard]] double more_time_s(PlanLegNumber plan_leg) const {
        const Prepared& prepared = draft_.prepared;
        const Loads& loads = draft_.settled.loads;
        double more_s = 0.0;
        for (std::size_t s = 0; s < prepared.stretches.stretches.size(); ++s) {
            if (loads.plan_leg[s] != plan_leg)
                continue;
            const Stretch& stretch = draft_.settled.stretches_met(prepared).stretches[s];
            const StretchLoads& on = loads.stretches[s];
            double twice_s = 0.0;
            for (std::size_t m = 0; m < prepared.assumed.members.size(); ++m) {
                const AssumedMember member = member_on(prepared.assumed, s, m);
                const double worn_kg = on.worn_kg[m];
                const ChangingLoad half{on.start_kg[m] / 2.0 + worn_kg,
                                        on.end_kg[m] / 2.0 + worn_kg};
                twice_s = std::max(
                    twice_s,
                    2.0 * walk_s(stretch, member, prepared.assumed.models, half) +
                        walk_back_s(stretch, member, prepared.assumed.models, {worn_kg, worn_kg}));
            }
            more_s += twice_s - draft_.settled.timeline.stretches[s].moving_s;
        }
        return more_s;
    }

    /// Whether a day's arrival, so much later with all that came before, falls past dusk.
    void note_dusk(int day_number, double more_s, RelayedWalks& remedy) {
        later_s_ = day_number == later_day_ ? later_s_ + more_s : more_s;
        later_day_ = day_number;
        const auto day = std::find_if(plan_.days.begin(), plan_.days.end(), [&](const auto& one) {
            return one.day == day_number;
        });
        const std::optional<sys_seconds> dusk = dusk_of(*day);
        const std::chrono::seconds later{std::llround(later_s_)};
        if (dusk && day->arrive + later > *dusk &&
            (remedy.dark_days.empty() || remedy.dark_days.back() != day_number))
            remedy.dark_days.push_back(day_number);
    }

    const Assembly& draft_;
    const Plan& plan_;
    int later_day_ = 0;
    double later_s_ = 0.0;
};

} // namespace

Remedies remedies(const Assembly& draft, const Plan& plan) {
    Remedies result;
    result.overloaded = overloaded_members(plan);
    if (result.overloaded.empty())
        return result;
    result.raise = raise_limits(draft, plan);
    result.most_plans = plans_to_spend(draft.prepared, most_remedy_plans);
    PlansLeft to_leave(result.most_plans);
    result.leave = ThingsToLeave(draft, plan, to_leave).run();
    PlansLeft to_supply(result.most_plans);
    result.supply = supply_before(draft, plan, to_supply);
    result.all_tried = !to_leave.were_too_few() && !to_supply.were_too_few();
    result.relay = Relayed(draft, plan).run();
    return result;
}

} // namespace tumpline::planner

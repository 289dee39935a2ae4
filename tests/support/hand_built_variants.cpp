#include "tests/support/hand_built_variants.h"

#include <string>

namespace tumpline::test {

namespace {

using namespace planner;

/// Moves everything dated and placed by a number of days and metres.
struct Shift {
    int days;
    double along_m;
    std::size_t legs;
    std::size_t plan_legs;

    [[nodiscard]] sys_seconds operator()(sys_seconds at) const {
        return at + std::chrono::days{days};
    }
};

/// The number of the same leg `legs` legs later; of none none.
template <class Number> Number later(Number leg, std::size_t legs) {
    return leg.none() ? leg : Number::of_index(leg.index() + legs);
}

void append_days(Plan& plan, const Plan& once, const Shift& shift) {
    for (PlanDay day : once.days) {
        day.day += shift.days;
        day.date = Date(std::chrono::sys_days(day.date) + std::chrono::days{shift.days});
        day.from_m += shift.along_m;
        day.to_m += shift.along_m;
        for (sys_seconds* at : {&day.set_off, &day.arrive, &day.arrive_early, &day.arrive_late})
            *at = shift(*at);
        for (std::optional<sys_seconds>* at : {&day.light.sun.rise,
                                               &day.light.sun.set,
                                               &day.light.twilight.rise,
                                               &day.light.twilight.set})
            if (*at)
                *at = shift(**at);
        for (MemberDay& member : day.members)
            member.heaviest_leg = later(member.heaviest_leg, shift.plan_legs);
        plan.days.push_back(day);
    }
}

void append_legs(Plan& plan, const Plan& once, const Shift& shift) {
    for (PlanLeg leg : once.legs) {
        leg.leg = later(leg.leg, shift.legs);
        leg.day += shift.days;
        leg.from_m += shift.along_m;
        leg.to_m += shift.along_m;
        leg.start = shift(leg.start);
        leg.end = shift(leg.end);
        plan.legs.push_back(leg);
    }
    for (Event event : once.events) {
        event.day += shift.days;
        event.leg = later(event.leg, shift.legs);
        event.along_m += shift.along_m;
        event.at = shift(event.at);
        plan.events.push_back(event);
    }
    for (TurnRound turn : once.turn_rounds) {
        turn.day += shift.days;
        turn.leg = later(turn.leg, shift.legs);
        turn.back_to_m += shift.along_m;
        turn.along_m += shift.along_m;
        for (std::optional<sys_seconds>* at : {&turn.dusk, &turn.at})
            if (*at)
                *at = shift(**at);
        plan.turn_rounds.push_back(turn);
    }
    for (ExitPoint point : once.exits) {
        point.along_m += shift.along_m;
        plan.exits.push_back(point);
    }
}

} // namespace

Plan repeated(const Plan& once, int times) {
    Plan plan = once;
    for (int round = 1; round < times; ++round) {
        const Shift shift{.days = round * static_cast<int>(once.days.size()),
                          .along_m = round * once.days.back().to_m,
                          .legs = static_cast<std::size_t>(round) * once.legs.back().leg.printed(),
                          .plan_legs = static_cast<std::size_t>(round) * once.legs.size()};
        append_days(plan, once, shift);
        append_legs(plan, once, shift);
        plan.trip.route.legs.insert(
            plan.trip.route.legs.end(), once.trip.route.legs.begin(), once.trip.route.legs.end());
    }
    plan.totals.days = static_cast<int>(plan.days.size());
    plan.totals.distance_m *= times;
    for (Stage& stage : plan.stages)
        stage.last_day = plan.totals.days;
    return plan;
}

Plan with_hostile_names(Plan plan) {
    const std::string markup = hostile_mark;
    const std::string quotes =
        "\"quoted\" 'twice' & <b>bold</b> {{trip_name}} {{{style}}} </style>";
    const std::string right_to_left = "\u05E0\u05D7\u05DC \u0648\u0627\u062F\u064A \u202Eleft";
    const std::string unbroken(200, 'W');
    const std::string broken = "two\nlines\r\n\tand \x01 a \xFF byte";
    plan.trip.name = markup + " " + quotes;
    plan.trip.party.at(0).name = unbroken;
    plan.trip.party.at(1).name = right_to_left;
    plan.trip.contact.text = markup + "\n" + broken;
    for (PlanLeg& leg : plan.legs) {
        leg.name = leg.travel == Travel::walk ? unbroken : markup + right_to_left;
        for (std::size_t i = 0; i < leg.loads.size(); ++i) {
            leg.loads[i].member = plan.trip.party[i].name;
            for (Carry& carry : leg.loads[i].carries)
                carry.pieces = {{broken}, {quotes, 2, {unbroken}}, {unbroken}};
        }
        for (CraftLoad& craft : leg.craft)
            craft.craft = quotes;
        for (CarryChoice& choice : leg.choices)
            choice.heaviest_member = unbroken;
    }
    for (PlanDay& day : plan.days) {
        day.from = right_to_left;
        day.to = unbroken;
        for (std::size_t i = 0; i < day.members.size(); ++i)
            day.members[i].member = plan.trip.party[i].name;
    }
    for (KitItem& item : plan.trip.kit) {
        item.owner = item.owner.empty() ? "" : unbroken;
        item.name = markup + item.name;
    }
    for (Craft& craft : plan.trip.craft)
        craft.name = right_to_left + markup;
    for (PackedItem& item : plan.items) {
        item.item = item.part == Part::kit ? markup + item.item : right_to_left + markup;
        item.owner = item.owner.empty() ? "" : unbroken;
        item.why = item.why.empty() ? "" : unbroken + markup;
    }
    for (StartLoad& load : plan.start_loads)
        load.member = unbroken;
    for (HeaviestPack& pack : plan.heaviest_packs)
        pack.member = unbroken;
    for (Caution& caution : plan.cautions)
        caution.text += " " + markup + " " + unbroken;
    for (ExitPoint& point : plan.exits)
        point.forward = point.back = unbroken;
    for (PlanConnection& connection : plan.connections) {
        connection.what = broken;
        connection.place = unbroken;
    }
    for (PlanPermit& permit : plan.permits) {
        permit.where = unbroken;
        permit.note = markup;
    }
    for (PlanAppointment& appointment : plan.appointments) {
        appointment.what = broken;
        appointment.at = unbroken;
        for (LeaveBy& leave : appointment.leave_by)
            leave.place = leave.bound_at = unbroken;
    }
    for (Overloaded& one : plan.remedies.overloaded)
        one.member = unbroken;
    plan.remedies.leave->things = {markup, quotes};
    plan.remedies.supply->place = unbroken;
    for (OtherWay& way : plan.other_ways.ways)
        way.by = way.instead_of = {markup + unbroken};
    for (Stage& stage : plan.stages)
        stage.from = stage.to = unbroken;
    for (WaterStretch& stretch : plan.water) {
        stretch.from = stretch.to = unbroken;
        for (DryNight& night : stretch.dry_nights)
            night.place = markup;
    }
    plan.carrying.sentence = markup + unbroken;
    for (CarryWay& way : plan.carrying.ways)
        way.heaviest_member = unbroken;
    for (TurnRound& turn : plan.turn_rounds)
        turn.back_to = markup + unbroken;
    for (Event& event : plan.events)
        event.place = unbroken;
    for (DefaultUsed& value : plan.defaults)
        value.value = unbroken;
    for (TripLeg& leg : plan.trip.route.legs)
        leg.note = markup + unbroken;
    return plan;
}

Plan one_leg(Plan plan) {
    plan.legs.resize(1);
    plan.days.resize(1);
    plan.trip.party.resize(1);
    plan.trip.craft.clear();
    plan.legs.front().loads.resize(1);
    PlanDay& day = plan.days.front();
    day.members.resize(1);
    day.to = "Tarn head";
    day.to_m = plan.legs.front().to_m;
    day.paddle_m = 0.0;
    day.arrive = plan.legs.front().end;
    std::erase_if(plan.events, [&](const Event& event) { return event.along_m > day.to_m; });
    plan.appointments.clear();
    plan.connections.clear();
    plan.permits.clear();
    plan.exits.clear();
    plan.turn_rounds.clear();
    std::erase_if(plan.items, [](const PackedItem& item) {
        return item.part == Part::craft || item.bearer != std::size_t{0};
    });
    plan.start_loads.resize(1);
    plan.heaviest_packs.resize(1);
    plan.stages.clear();
    plan.water.clear();
    plan.litres.clear();
    plan.carrying = {};
    plan.sharing = {};
    plan.remedies = {};
    plan.other_ways = {};
    plan.cautions.clear();
    plan.totals.days = 1;
    plan.totals.distance_m = day.to_m;
    return plan;
}

} // namespace tumpline::test

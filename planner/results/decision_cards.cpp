#include "planner/results/decision_cards.h"

#include "planner/defaults/wind_shy.h"
#include "planner/results/days.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace tumpline::planner {

namespace {

/// The easiest of what somebody or a boat is said to take.
struct Bearable {
    RiverClass river_class = 0;
    std::string who;
};

std::optional<Bearable> bearable(const Trip& trip) {
    std::optional<Bearable> least;
    const auto take = [&](const std::optional<RiverClass>& most, const std::string& who) {
        if (most && (!least || *most < least->river_class))
            least = Bearable{*most, who};
    };
    for (const Member& member : trip.party)
        take(member.river_class, member.name);
    for (const Craft& craft : trip.craft)
        take(craft.river_class, craft.name);
    return least;
}

class CardMaker {
  public:
    CardMaker(const Assembly& draft, const Plan& plan, const PlanLeg& leg)
        : draft_(draft), plan_(plan), leg_(leg),
          spec_(draft.prepared.route.legs[leg.leg.index()].spec) {}

    DecisionCard make() {
        card_.leg = leg_.leg;
        card_.day = leg_.day;
        card_.name = leg_.name;
        card_.along_m = leg_.from_m;
        card_.at = place_at(leg_.from_m);
        levels();
        latest();
        wind();
        instead();
        return std::move(card_);
    }

  private:
    [[nodiscard]] std::string place_at(double along_m) const;
    void levels();
    void too_hard(const RiverFlow& flow);
    void latest();
    void keep(double spare_s, const std::string& what);
    void wind();
    void instead();

    const Assembly& draft_;
    const Plan& plan_;
    const PlanLeg& leg_;
    const TripLeg& spec_;
    DecisionCard card_;
};

std::string CardMaker::place_at(double along_m) const {
    constexpr double near_m = 100.0;
    for (const RoutePlace& place : draft_.prepared.route.places)
        if (!place.name.empty() && std::abs(place.along_m - along_m) <= near_m)
            return place.name;
    return fmt::format("km {:.1f}", along_m / 1000.0);
}

/// Between two levels the harder class holds: what is too hard begins above the last easy one.
void CardMaker::too_hard(const RiverFlow& flow) {
    const std::optional<Bearable> most = bearable(draft_.prepared.trip);
    if (!most)
        return;
    std::optional<GaugeReading> easy;
    for (const FlowLevel level : flow_levels) {
        const std::optional<FlowState> state = flow_state(flow, {.column = level, .reading = {}});
        if (!state || !state->river_class)
            continue;
        if (*state->river_class <= most->river_class) {
            easy = state->reading ? state->reading : easy;
            continue;
        }
        const std::string why = fmt::format("class {} is harder than {} takes (class {})",
                                            class_word(*state->river_class),
                                            most->who,
                                            class_word(most->river_class));
        if (!easy || !state->reading)
            card_.not_at = level;
        else if (!card_.above || easy->value < card_.above->value)
            card_.above = easy;
        else
            return;
        card_.above_why = why;
        return;
    }
}

void CardMaker::levels() {
    if (!spec_.flow)
        return;
    const RiverFlow& flow = *spec_.flow;
    card_.gauge = flow.gauge;
    if (flow.runnable) {
        card_.below = (*flow.runnable)[0];
        card_.above = (*flow.runnable)[1];
        card_.above_why = "it is said not to be runnable";
    }
    too_hard(flow);
    card_.reading_known = card_.below || card_.above || card_.not_at;
}

void CardMaker::keep(double spare_s, const std::string& what) {
    const geo::sys_seconds at =
        leg_.start + std::chrono::seconds{static_cast<std::int64_t>(spare_s)};
    if (!card_.latest || at < card_.latest->at)
        card_.latest = LatestStart{.at = at, .keeps = what, .passed = spare_s < 0.0};
}

/// As much later as the day's dusk and its appointments leave, at the plan's pace.
void CardMaker::latest() {
    const auto day = std::find_if(plan_.days.begin(), plan_.days.end(), [&](const PlanDay& one) {
        return one.day == leg_.day && !one.rest_day;
    });
    if (day != plan_.days.end() && day->before_dusk_s)
        keep(*day->before_dusk_s, "dusk");
    for (const PlanAppointment& meet : plan_.appointments)
        if (meet.day == leg_.day && meet.arrive >= leg_.end)
            keep(meet.spare_s, meet.what);
}

void CardMaker::wind() {
    const std::vector<AssumedCraft>& craft = draft_.prepared.assumed.craft;
    const std::optional<std::size_t> shy = most_wind_shy(craft);
    if (!shy)
        return;
    card_.wind_mps = craft[*shy].wind_ceiling_mps;
    card_.wind_craft = draft_.prepared.trip.craft[*shy].name;
}

void CardMaker::instead() {
    for (const RouteLeg& other : draft_.prepared.route.alternatives)
        if (other.spec.instead_of == leg_.name &&
            std::find(card_.instead.begin(), card_.instead.end(), other.name) ==
                card_.instead.end())
            card_.instead.push_back(other.name);
    card_.wait_at = card_.at;
    const ExitPoint* behind = nullptr;
    for (const ExitPoint& point : plan_.exits)
        if (point.along_m <= leg_.from_m + 1.0)
            behind = &point;
    if (behind != nullptr && behind->back_s) {
        card_.back_to = behind->back;
        card_.back_s = behind->back_s;
    }
}

} // namespace

std::vector<DecisionCard> decision_cards(const Assembly& draft, const Plan& plan) {
    std::vector<DecisionCard> cards;
    const bool levels = std::any_of(
        plan.legs.begin(), plan.legs.end(), [](const PlanLeg& leg) { return leg.flow; });
    if (!levels)
        return cards;
    for (const PlanLeg& leg : plan.legs)
        if (afloat(leg.travel))
            cards.push_back(CardMaker(draft, plan, leg).make());
    return cards;
}

} // namespace tumpline::planner

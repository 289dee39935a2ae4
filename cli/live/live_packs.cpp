#include "cli/live/live_view.h"
#include "cli/words/packing_words.h"
#include "cli/words/words.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::PackedItem;
using planner::Plan;
using planner::PlanLeg;

/// Of a leg of the route, where the trip file describes it.
std::optional<std::size_t> written_leg(const LivePlan& live, planner::LegNumber route_leg) {
    std::size_t seen = 0;
    const std::vector<planner::TripLeg>& legs = live.plan.trip.route.legs;
    for (std::size_t i = 0; i < legs.size(); ++i)
        if (legs[i].instead_of.empty() && planner::LegNumber::of_index(seen++) == route_leg)
            return i;
    return std::nullopt;
}

Json load_json(const PlanLeg& leg, const planner::MemberLoad& load, const Figures& shown) {
    const planner::Parts& mass = load.parts;
    Json parts = Json::array();
    for (const auto& [name, mass_kg] : {std::pair<std::string_view, double>{"kit", mass.kit_kg},
                                        {"boat", mass.craft_kg},
                                        {"food", mass.food_kg},
                                        {"fuel", mass.fuel_kg},
                                        {"water", mass.water_kg},
                                        {"waste", mass.waste_kg}})
        if (mass_kg > 0.0)
            parts.push_back({{"part", name}, {"kg", mass_kg}, {"text", shown.mass(mass_kg)}});
    return {{"member", load.member},
            {"kg", load.pack_max_kg},
            {"text", shown.mass(load.pack_max_kg)},
            {"limit_kg", has_limit(leg, load) ? load.limit_kg : 0.0},
            {"limit", has_limit(leg, load) ? shown.mass(load.limit_kg) : std::string()},
            {"over", over_limit(leg, load)},
            {"parts", std::move(parts)}};
}

Json craft_json(const planner::CraftLoad& load, const Figures& shown) {
    return {{"craft", load.craft},
            {"text",
             load.payload_kg > 0.0
                 ? fmt::format("{} of {}", shown.mass(load.load_kg), shown.mass(load.payload_kg))
                 : shown.mass(load.load_kg)},
            {"left", shown.mass(load.left_kg)},
            {"right", shown.mass(load.right_kg)}};
}

Json choices_json(const LivePlan& live, const PlanLeg& leg, const Figures& shown) {
    const std::optional<std::size_t> written = written_leg(live, leg.leg);
    const bool hands = std::any_of(leg.choices.begin(), leg.choices.end(), [](const auto& choice) {
        return choice.by != planner::CarryBy::hands;
    });
    return array_of(leg.choices, [&](const planner::CarryChoice& choice) {
        Json edits = Json::array();
        if (written) {
            const std::string at = fmt::format("/route/legs/{}", *written);
            const Json carries =
                choice.carries == 1.5 ? Json(1.5) : Json(static_cast<int>(choice.carries));
            edits.push_back(added(at + "/carries", carries));
            edits.push_back(added(at + "/boat_on_carry", choice.rolled ? "rolled" : "whole"));
            if (hands)
                edits.push_back(added(at + "/carry_by", std::string(planner::word(choice.by))));
        }
        return Json{{"words", carries_words(live.plan, choice.carries, choice.rolled, choice.by)},
                    {"walked", shown.portage(choice.walked_m)},
                    {"time", shown.duration(choice.moving_s + choice.changeover_s)},
                    {"heaviest",
                     fmt::format("{} {}", shown.mass(choice.heaviest_kg), choice.heaviest_member)},
                    {"of_limit", percent(choice.heaviest_ratio)},
                    {"over", !choice.within_limits},
                    {"chosen", choice.chosen},
                    {"edits", std::move(edits)}};
    });
}

/// Who or what bears the heavy pieces of a portage, apart from how often one goes; nothing where
/// there is but one way.
Json hands_json(const LivePlan& live, const PlanLeg& leg) {
    using planner::CarryBy;
    const std::optional<std::size_t> written = written_leg(live, leg.leg);
    const auto offered = [&](CarryBy by) {
        return std::any_of(leg.choices.begin(), leg.choices.end(), [&](const auto& choice) {
            return choice.by == by;
        });
    };
    if (!written || (!offered(CarryBy::two) && !offered(CarryBy::cart)))
        return Json::array();
    const std::optional<CarryBy> now = live.plan.trip.route.legs[*written].carry_by;
    Json hands = Json::array();
    const auto add = [&](std::string_view label, std::string_view by, bool chosen) {
        hands.push_back(
            {{"label", label},
             {"chosen", chosen},
             {"edits",
              Json::array({added(fmt::format("/route/legs/{}/carry_by", *written), by)})}});
    };
    add("Whichever is quickest", "auto", !now);
    for (const auto& [by, label] : {std::pair{CarryBy::hands, "Each piece on one back"},
                                    std::pair{CarryBy::two, "Heavy pieces by two"},
                                    std::pair{CarryBy::cart, "On the cart"}})
        if (offered(by))
            add(label, planner::word(by), now == by);
    return hands;
}

/// Something that may be done with a thing.
Json move_json(std::string_view to, const std::string& label, Json edit) {
    return {{"to", to}, {"label", label}, {"edits", Json::array({std::move(edit)})}};
}

Json moves_json(const Plan& plan, const PackedItem& item) {
    Json moves = Json::array();
    if (item.part != planner::Part::kit)
        return moves;
    const planner::KitItem& thing = plan.trip.kit.at(item.index);
    const std::string at = fmt::format("/kit/{}", item.index);
    if (!item.comes) {
        moves.push_back(move_json("along", "take along", added(at + "/bring", true)));
        return moves;
    }
    if (thing.owner.empty())
        for (std::size_t i = 0; i < plan.trip.party.size(); ++i)
            if (item.bearer != i)
                moves.push_back(move_json(fmt::format("member:{}", i),
                                          "give to " + plan.trip.party[i].name,
                                          added(at + "/stays_with", plan.trip.party[i].name)));
    if (item.stowage != planner::Stowage::none)
        for (const std::string_view side : {"left", "right"})
            if (word(item.stowage) != side)
                moves.push_back(move_json(
                    side, fmt::format("into the {} bag", side), added(at + "/bag", side)));
    if (!thing.must)
        moves.push_back(move_json("home", "leave at home", added(at + "/bring", false)));
    return moves;
}

} // namespace

Json live_packs(const LivePlan& live, const Figures& shown) {
    Json legs = Json::array();
    for (const PlanLeg& leg : live.plan.legs)
        legs.push_back(
            {{"leg", leg.leg},
             {"day", leg.day},
             {"name", leg.name},
             {"travel", planner::word(leg.travel)},
             {"from_m", leg.from_m},
             {"to_m", leg.to_m},
             {"title",
              fmt::format("{}, day {}, {}, {}",
                          leg.name,
                          leg.day,
                          shown.distance(leg.length_m()),
                          shown.duration(leg.moving_s))},
             {"loads",
              array_of(leg.loads, [&](const auto& load) { return load_json(leg, load, shown); })},
             {"craft",
              array_of(leg.craft, [&](const auto& load) { return craft_json(load, shown); })},
             {"choices", choices_json(live, leg, shown)},
             {"hands", hands_json(live, leg)}});
    return legs;
}

Json live_things(const LivePlan& live, const Figures& shown) {
    return array_of(live.plan.items, [&](const PackedItem& item) {
        std::string where(item.comes ? start_words(item) : "at home");
        if (item.comes && !afloat_words(item).empty())
            where += fmt::format(", afloat {}", afloat_words(item));
        return Json{
            {"id",
             fmt::format("{}/{}", item.part == planner::Part::kit ? "kit" : "craft", item.index)},
            {"name", thing_words(item)},
            {"mass", shown.mass(item.mass_kg)},
            {"comes", item.comes},
            {"bearer", item.bearer ? Json(*item.bearer) : Json(nullptr)},
            {"where", where},
            {"why", why_words(item, shown.units())},
            {"price", shown.carried(item.carry_kg_km)},
            {"moves", moves_json(live.plan, item)}};
    });
}

} // namespace tumpline::cli

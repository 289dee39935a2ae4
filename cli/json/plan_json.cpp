#include "cli/json/plan_json.h"

#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/leg_fields.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/quantities.h"

#include <fmt/chrono.h>

#include <cmath>
#include <optional>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Plan;

Json kcal(double energy_j) {
    return energy_j / planner::j_per_kcal;
}

/// A mass or a capacity of which 0 says that it was not given.
Json given_or_null(double value) {
    return value > 0.0 ? Json(value) : Json(nullptr);
}

/// Shows what belongs to one plan: its zone, its party.
class Writer {
  public:
    explicit Writer(const Plan& plan) : plan_(plan) {}

    [[nodiscard]] Json instant(geo::sys_seconds at) const {
        return geo::rfc3339(at, plan_.trip.time_zone);
    }

    [[nodiscard]] Json instant(const std::optional<geo::sys_seconds>& at) const {
        return at ? instant(*at) : Json(nullptr);
    }

    [[nodiscard]] Json models() const {
        return array_of(plan_.models, [](const planner::ModelUsed& model) {
            return Json{{"family", model.family}, {"name", model.name}, {"source", model.source}};
        });
    }

    [[nodiscard]] Json bands() const {
        return array_of(plan_.bands, [](const planner::BandUsed& band) {
            return Json{{"family", band.family},
                        {"low", band.low},
                        {"high", band.high},
                        {"basis", band.basis}};
        });
    }

    [[nodiscard]] Json defaults() const {
        return array_of(plan_.defaults, [](const planner::DefaultUsed& used) {
            return Json{{"key", used.key}, {"value", used.value}, {"source", used.source}};
        });
    }

    [[nodiscard]] Json converged() const {
        return {{"iterations", plan_.converged.rounds},
                {"largest_change_kg", plan_.converged.largest_change_kg},
                {"largest_change_s", plan_.converged.largest_change_s},
                {"settled", plan_.converged.settled}};
    }

    [[nodiscard]] Json totals() const {
        const planner::Totals& totals = plan_.totals;
        return {{"distance_m", totals.distance_m},
                {"walk_m", totals.walk_m},
                {"portage_m", totals.portage_m},
                {"paddle_m", totals.paddle_m},
                {"ride_m", totals.ride_m},
                {"led_m", totals.led_m},
                {"on_foot_m", totals.on_foot_m},
                {"ascent_m", known_or_null(totals.ascent_m, totals.heights_known)},
                {"descent_m", known_or_null(totals.descent_m, totals.heights_known)},
                {"moving_s", totals.moving_s},
                {"changeover_s", totals.changeover_s},
                {"rest_s", totals.rest_s},
                {"elapsed_s", totals.elapsed_s},
                {"days", totals.days},
                {"food_kg", totals.food_kg},
                {"fuel_kg", totals.fuel_kg},
                {"energy_kcal", kcal(totals.energy_j)}};
    }

    [[nodiscard]] Json day(const planner::PlanDay& day) const;
    [[nodiscard]] Json leg(const planner::PlanLeg& leg) const;
    [[nodiscard]] Json event(const planner::Event& event) const;
    [[nodiscard]] Json sharing() const;
    [[nodiscard]] Json heaviest_packs() const;
    [[nodiscard]] Json entry(const planner::Entry& entry) const;

  private:
    const Plan& plan_;
};

Json Writer::day(const planner::PlanDay& day) const {
    Json energy = Json::object(), start = Json::object(), end = Json::object();
    for (const planner::MemberDay& member : day.members) {
        energy[member.member] = kcal(member.energy_j);
        start[member.member] = member.pack_start_kg;
        end[member.member] = member.pack_end_kg;
    }
    return {{"day", day.day},
            {"date", planner::show_date(day.date)},
            {"rest_day", day.rest_day},
            {"waiting_for", name_or_null(day.waiting_for)},
            {"from", day.from},
            {"to", day.to},
            {"from_m", day.from_m},
            {"to_m", day.to_m},
            {"camp",
             day.camp_located ? Json{{"lat_deg", day.camp.lat_deg}, {"lon_deg", day.camp.lon_deg}}
                              : Json(nullptr)},
            {"dry_camp", day.dry_camp},
            {"distance_m", day.to_m - day.from_m},
            {"walk_m", day.walk_m},
            {"portage_m", day.portage_m},
            {"paddle_m", day.paddle_m},
            {"ride_m", day.ride_m},
            {"led_m", day.led_m},
            {"on_foot_m", day.on_foot_m},
            {"ascent_m", known_or_null(day.ascent_m, day.heights_known)},
            {"descent_m", known_or_null(day.descent_m, day.heights_known)},
            {"moving_s", day.moving_s},
            {"changeover_s", day.changeover_s},
            {"rest_s", day.rest_s},
            {"rise", instant(day.rise)},
            {"set_off", instant(day.set_off)},
            {"arrive", instant(day.arrive)},
            {"arrive_early", instant(day.arrive_early)},
            {"arrive_late", instant(day.arrive_late)},
            {"sun", word(day.light.sun.day)},
            {"sunrise", instant(day.light.sun.rise)},
            {"sunset", instant(day.light.sun.set)},
            {"twilight", word(day.light.twilight.day)},
            {"dawn", instant(day.light.twilight.rise)},
            {"dusk", instant(day.light.twilight.set)},
            {"before_dusk_s", or_null(day.before_dusk_s)},
            {"energy_kcal", energy},
            {"food_kg", day.food_kg},
            {"fuel_kg", day.fuel_kg},
            {"water_l", day.water_l},
            {"pack_start_kg", start},
            {"pack_end_kg", end},
            {"members", array_of(day.members, [](const planner::MemberDay& member) {
                 return Json{{"member", member.member},
                             {"energy_kcal", kcal(member.energy_j)},
                             {"food_kg", member.food_kg},
                             {"water_l", member.water_l},
                             {"pack_start_kg", member.pack_start_kg},
                             {"pack_end_kg", member.pack_end_kg},
                             {"set_off_kg", or_null(member.set_off_kg)},
                             {"heaviest_kg", member.heaviest_kg},
                             {"heaviest_leg", place_or_null(member.heaviest_leg)}};
             })}};
}

Json parts_json(const planner::Parts& parts) {
    return {{"kit", parts.kit_kg},
            {"craft", parts.craft_kg},
            {"food", parts.food_kg},
            {"fuel", parts.fuel_kg},
            {"water", parts.water_kg},
            {"waste", parts.waste_kg}};
}

Json carried_json(const planner::CarriedThing& thing) {
    return {{"what", thing.what},
            {"count", thing.count},
            {"owners", thing.owners},
            {"one_end", thing.one_end}};
}

Json load_json(const planner::PlanLeg& leg, const planner::MemberLoad& load) {
    const bool on_foot = planner::bears_packs(leg.travel);
    return {{"member", load.member},
            {"pack_start_kg", load.pack_start_kg},
            {"pack_end_kg", load.pack_end_kg},
            {"pack_max_kg", load.pack_max_kg},
            {"worn_kg", load.worn_kg},
            {"limit_kg", on_foot ? given_or_null(load.limit_kg) : Json(nullptr)},
            {"energy_kcal", kcal(load.energy_j)},
            {"laid_down_kg", load.laid_down_kg},
            {"parts", parts_json(load.parts)},
            {"carries", array_of(load.carries, [](const planner::Carry& carry) {
                 return Json{{"carry", carry.carry},
                             {"pack_kg", carry.pack_kg},
                             {"share", carry.share},
                             {"on_cart", carry.on_cart},
                             {"pieces", array_of(carry.pieces, carried_json)}};
             })}};
}

Json stowed_json(const std::vector<planner::Stowed>& stowed) {
    return array_of(stowed, [](const planner::Stowed& thing) {
        return Json{{"what", thing.what}, {"mass_kg", thing.mass_kg}};
    });
}

Json ends_json(const planner::CraftLoad& craft) {
    if (!craft.ends)
        return nullptr;
    return {{"bow_kg", craft.ends->bow_kg},
            {"stern_kg", craft.ends->stern_kg},
            {"bow", stowed_json(craft.ends->bow)},
            {"stern", stowed_json(craft.ends->stern)}};
}

Json craft_json(const planner::CraftLoad& craft) {
    return {{"craft", craft.craft},
            {"load_kg", craft.load_kg},
            {"payload_kg", given_or_null(craft.payload_kg)},
            {"left_kg", craft.left_kg},
            {"right_kg", craft.right_kg},
            {"at_hand_kg", craft.at_hand_kg},
            {"left", stowed_json(craft.left)},
            {"right", stowed_json(craft.right)},
            {"at_hand", stowed_json(craft.at_hand)},
            {"fits_volume", craft.fits_volume},
            {"draft_change_m", or_null(craft.draft_change_m)},
            {"freeboard_m", or_null(craft.freeboard_m)},
            {"ends", ends_json(craft)}};
}

Json choice_json(const planner::CarryChoice& choice) {
    return {{"carries", choice.carries},
            {"rolled", choice.rolled},
            {"lengths", choice.lengths},
            {"walked_m", choice.walked_m},
            {"moving_s", choice.moving_s},
            {"changeover_s", choice.changeover_s},
            {"heaviest_kg", choice.heaviest_kg},
            {"heaviest_member", choice.heaviest_member},
            {"heaviest_ratio", choice.heaviest_ratio},
            {"within_limits", choice.within_limits},
            {"chosen", choice.chosen},
            {"by", planner::word(choice.by)},
            {"on_cart_kg", choice.on_cart_kg}};
}

Json current_json(const planner::PlanCurrent& current) {
    return {{"slow_mps", current.slow_mps},
            {"likely_mps", current.likely_mps},
            {"fast_mps", current.fast_mps},
            {"slope", current.slope},
            {"depth_m", current.depth_m},
            {"bed", current.bed},
            {"steep", current.steep},
            {"limited", current.limited}};
}

Json Writer::leg(const planner::PlanLeg& leg) const {
    Json shown = Json::object();
    for (const LegField& field : leg_fields(plan_, leg))
        shown[std::string(field.key)] = field_json(field.value);
    shown["speed_kmh"] =
        leg.speed_mps ? Json(*leg.speed_mps / planner::mps_per_kmh) : Json(nullptr);
    shown["dark_s"] = leg.dark_s;
    shown["stopped"] = leg.stopped;
    shown["loads"] =
        array_of(leg.loads, [&](const planner::MemberLoad& load) { return load_json(leg, load); });
    if (leg.travel == planner::Travel::portage) {
        shown["choices"] = array_of(leg.choices, choice_json);
        shown["break_even_m"] = or_null(leg.break_even_m);
    }
    if (planner::on_foot(leg.travel)) {
        shown["snow_depth_m"] = or_null(leg.snow_m);
        shown["sinks_m"] = leg.sinks_m;
    }
    if (planner::afloat(leg.travel)) {
        shown["craft"] = array_of(leg.craft, craft_json);
        shown["gradient"] = leg.gradient;
        shown["steepest_500m"] = leg.steepest_500m;
        shown["wind_mps"] = leg.wind_mps;
        shown["wind_force"] = leg.wind_force;
        shown["wind_head_mps"] = leg.wind_head_mps;
        shown["gusts_mps"] = or_null(leg.gusts_mps);
        shown["wave_m"] = leg.waves ? Json(leg.waves->height_m) : Json(nullptr);
        shown["wave_period_s"] = leg.waves ? Json(leg.waves->period_s) : Json(nullptr);
        shown["fetch_m"] = leg.waves ? Json(leg.waves->fetch_m) : Json(nullptr);
        shown["fetch_from"] =
            leg.waves ? Json(planner::fetch_word(leg.waves->fetch_from)) : Json(nullptr);
        shown["off_water_by"] = leg.wind_rises ? Json(instant(leg.wind_rises->at)) : Json(nullptr);
        shown["current_mps"] = leg.current_mps;
        shown["flow"] = leg.flow ? flow_column_json(*leg.flow) : Json(nullptr);
        shown["river_level"] = leg.flow ? flow_json(*leg.flow) : Json(nullptr);
        shown["current_estimate"] =
            leg.current_estimate ? current_json(*leg.current_estimate) : Json(nullptr);
    }
    return shown;
}

Json Writer::event(const planner::Event& event) const {
    return {{"kind", word(event.kind)},
            {"day", event.day},
            {"leg", event.leg},
            {"along_m", event.along_m},
            {"at", instant(event.at)},
            {"lasts_s", event.lasts_s},
            {"place", name_or_null(event.place)},
            {"water_l",
             event.kind == planner::EventKind::fill_water ? Json(event.litres) : Json(nullptr)}};
}

Json Writer::sharing() const {
    const planner::Sharing& sharing = plan_.sharing;
    return {{"heaviest_ratio", sharing.heaviest_ratio},
            {"lower_bound", sharing.lower_bound},
            {"member", name_or_null(sharing.member)},
            {"plan_leg", place_or_null(sharing.plan_leg)},
            {"bearers", party_bearers_json(plan_)}};
}

Json Writer::heaviest_packs() const {
    return array_of(plan_.heaviest_packs, [](const planner::HeaviestPack& pack) {
        return Json{{"member", pack.member},
                    {"pack_kg", pack.pack_kg},
                    {"limit_kg", given_or_null(pack.limit_kg)},
                    {"plan_leg", place_or_null(pack.plan_leg)}};
    });
}

Json Writer::entry(const planner::Entry& entry) const {
    const bool has_item = entry.item != planner::Entry::no_item;
    const bool of_craft = entry.part == planner::Part::craft;
    Json item = nullptr;
    if (has_item && of_craft && entry.item < plan_.trip.craft.size())
        item = plan_.trip.craft[entry.item].name;
    else if (has_item && entry.part == planner::Part::kit && entry.item < plan_.trip.kit.size())
        item = plan_.trip.kit[entry.item].name;
    const bool in_party = entry.member < plan_.trip.party.size();
    return {{"day", entry.day},
            {"step", entry.step},
            {"plan_leg", place_or_null(entry.plan_leg)},
            {"along_m", entry.along_m},
            {"member", in_party ? Json(plan_.trip.party[entry.member].name) : Json(nullptr)},
            {"part", word(entry.part)},
            {"mass_mg", entry.mass_mg},
            {"from", word(entry.from)},
            {"to", word(entry.to)},
            {"item", item},
            {"why", entry.why}};
}

Json caution_json(const planner::Caution& caution) {
    return {{"level", word(caution.level)},
            {"code", caution.code},
            {"title", caution.title},
            {"subject", name_or_null(caution.subject)},
            {"day", or_null(caution.day)},
            {"leg", or_null(caution.leg)},
            {"text", caution.text},
            {"source", caution.source}};
}

Json heading(const Plan& plan, std::string_view version) {
    return {{"trip", plan.trip.name},
            {"version", version},
            {"file", plan.trip.file.string()},
            {"start", planner::show_date(plan.trip.start)},
            {"time_zone", plan.trip.time_zone},
            {"party",
             array_of(plan.trip.party, [](const planner::Member& member) { return member.name; })},
            {"can_be_carried_out", plan.can_be_carried_out()},
            {"verdict", verdict_json(plan)}};
}

} // namespace

Json plan_json_value(const Plan& plan, std::string_view version) {
    const Writer writer(plan);
    Json json = heading(plan, version);
    json["models"] = writer.models();
    json["bands"] = writer.bands();
    json["defaults"] = writer.defaults();
    json["converged"] = writer.converged();
    json["totals"] = writer.totals();
    json["days"] =
        array_of(plan.days, [&](const planner::PlanDay& day) { return writer.day(day); });
    json["legs"] =
        array_of(plan.legs, [&](const planner::PlanLeg& leg) { return writer.leg(leg); });
    json["events"] =
        array_of(plan.events, [&](const planner::Event& event) { return writer.event(event); });
    json["appointments"] = appointments_json(plan);
    json["connections"] = connections_json(plan);
    json["permits"] = permits_json(plan);
    json["exits"] = exits_json(plan);
    json["turn_round"] = turn_rounds_json(plan);
    json["hazards"] = hazards_json(plan);
    json["left"] = left_json(plan);
    json["suitability"] = suitability_json(plan);
    json["items"] = items_json(plan);
    json["start_loads"] = start_loads_json(plan);
    json["luggage"] = luggage_json(plan);
    json["volumes"] = volumes_json(plan);
    json["stays_home"] = stays_home_json(plan);
    json["comes"] = comes_json(plan);
    json["stages"] = stages_json(plan);
    json["water"] = water_json(plan);
    json["water_line"] = water_line_json(plan);
    json["carrying"] = carrying_json(plan);
    json["sharing"] = writer.sharing();
    json["heaviest_packs"] = writer.heaviest_packs();
    json["remedies"] = remedies_json(plan);
    json["other_ways"] = other_ways_json(plan);
    json["flows"] = flows_json(plan);
    json["decisions"] = decisions_json(plan);
    json["cautions"] = array_of(plan.cautions, caution_json);
    json["ledger"] = array_of(plan.ledger.entries,
                              [&](const planner::Entry& entry) { return writer.entry(entry); });
    return json;
}

std::string plan_json(const Plan& plan, std::string_view version) {
    return in_lines(plan_json_value(plan, version));
}

std::string pack_json(const Plan& plan, std::string_view version) {
    const Writer writer(plan);
    Json json = heading(plan, version);
    json["legs"] =
        array_of(plan.legs, [&](const planner::PlanLeg& leg) { return writer.leg(leg); });
    json["stages"] = stages_json(plan);
    json["carrying"] = carrying_json(plan);
    json["sharing"] = writer.sharing();
    json["heaviest_packs"] = writer.heaviest_packs();
    json["remedies"] = remedies_json(plan);
    json["items"] = items_json(plan);
    json["start_loads"] = start_loads_json(plan);
    json["luggage"] = luggage_json(plan);
    json["volumes"] = volumes_json(plan);
    json["stays_home"] = stays_home_json(plan);
    json["comes"] = comes_json(plan);
    json["cautions"] = array_of(plan.cautions, caution_json);
    return in_lines(json);
}

} // namespace tumpline::cli

#include "cli/book/book_parts.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/utm_grid.h"
#include "cli/words/left_words.h"
#include "cli/words/words.h"
#include "geo/ground/grid_reference.h"
#include "planner/cautions/land_groups.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::EventKind;
using planner::PlanDay;
using planner::PlanLeg;

Drawing wide_of_day(std::string id) {
    return {.width = wide_drawing, .text = page_text, .names = false, .id = std::move(id)};
}

Drawing narrow_of_day(std::string id) {
    return {.width = narrow_drawing, .text = page_text, .names = false, .id = std::move(id)};
}

std::string light_phrase(const PlanDay& day, const Figures& shown) {
    const auto at = [&](const std::optional<geo::sys_seconds>& instant) {
        return instant ? shown.clock_on(*instant, day.date) : std::string("unknown");
    };
    const geo::SunCrossings& sun = day.light.sun;
    const geo::SunCrossings& twilight = day.light.twilight;
    std::string reported;
    switch (sun.day) {
    case geo::SunDay::rises_and_sets:
        reported = fmt::format("Sunrise {}, sunset {}", at(sun.rise), at(sun.set));
        break;
    case geo::SunDay::rises_only:
        reported = fmt::format("Sunrise {}, no sunset before midnight", at(sun.rise));
        break;
    case geo::SunDay::sets_only:
        reported = fmt::format("Sunset {}, no sunrise on this day", at(sun.set));
        break;
    case geo::SunDay::always_above:
        return "The sun does not set.";
    case geo::SunDay::always_below:
        reported = "The sun does not rise";
        break;
    }
    switch (twilight.day) {
    case geo::SunDay::always_below:
        return reported + "; dark all day.";
    case geo::SunDay::always_above:
        return reported + "; twilight all night.";
    case geo::SunDay::rises_and_sets:
    case geo::SunDay::rises_only:
    case geo::SunDay::sets_only:
        break;
    }
    if (twilight.set)
        reported += fmt::format(", dusk ends {}", at(twilight.set));
    else
        reported += ", no dark before midnight";
    return reported + ". Level horizon: hills take some of it.";
}

std::vector<Fields> figures(const PlanDay& day, const Figures& shown) {
    std::vector<Fields> rows;
    rows.push_back(figure({"Set off",
                           shown.clock(day.set_off),
                           day.rise ? fmt::format("up at {}", shown.clock(*day.rise)) : ""}));
    rows.push_back(figure({"Arrive",
                           shown.clock_on(day.arrive, day.date),
                           fmt::format("between {} and {}",
                                       shown.clock_on(day.arrive_early, day.date),
                                       shown.clock_on(day.arrive_late, day.date))}));
    rows.push_back(figure(
        {"Distance", shown.distance(day.to_m - day.from_m), ways_phrase(ways_of(day), shown)}));
    rows.push_back(climb_figure(day, shown));
    rows.push_back(figure({"Moving",
                           shown.duration(day.moving_s),
                           fmt::format("transitions {}, rests {}",
                                       shown.duration(day.changeover_s),
                                       shown.duration(day.rest_s))}));
    if (day.on_foot_m > 0.0 && day.portage_m > 0.0)
        rows.push_back(figure(
            {"Walked", shown.distance(day.on_foot_m), "every pass of the portages counted"}));
    return rows;
}

std::string_view event_phrase(EventKind kind) {
    switch (kind) {
    case EventKind::set_off:
        return "set off";
    case EventKind::boots_to_boat:
        return "boots to boat";
    case EventKind::boat_to_boots:
        return "boat to boots";
    case EventKind::landing:
        return "landing";
    case EventKind::scout:
        return "scout from shore";
    case EventKind::rest:
        return "rest";
    case EventKind::halt:
        return "halt";
    case EventKind::fill_water:
        return "fill water";
    case EventKind::resupply:
        return "resupply";
    case EventKind::cache:
        return "cache";
    case EventKind::arrive:
        return "arrive";
    }
    return "";
}

std::vector<Fields> events(const BookSource& source, const PlanLeg& leg) {
    std::vector<Fields> rows;
    for (const planner::Event& event : source.plan.events) {
        // Setting off, arriving and the hourly rests are in the day's own figures.
        if (event.day != leg.day || event.leg != leg.leg || event.kind == EventKind::set_off ||
            event.kind == EventKind::arrive || event.kind == EventKind::rest)
            continue;
        Fields& row = rows.emplace_back();
        row.text("at",
                 source.shown.clock_on(
                     event.at, source.plan.days.at(static_cast<std::size_t>(leg.day - 1)).date))
            .text("what", event_phrase(event.kind))
            .text("place", event.place)
            .text("lasts", event.lasts_s > 0.0 ? source.shown.duration(event.lasts_s) : "")
            .text("litres", event.litres > 0.0 ? source.shown.volume(event.litres) : "");
    }
    return rows;
}

/// What the trip file tells of a leg: ground, class, current, wind.
std::string detail(const BookSource& source, const PlanLeg& leg) {
    const Figures& shown = source.shown;
    std::vector<std::string> words;
    if (planner::afloat(leg.travel)) {
        if (!leg.leg.none() && leg.leg.index() < source.route.legs.size()) {
            const planner::TripLeg& spec = source.route.legs[leg.leg.index()].spec;
            if (const auto word = planner::class_word(spec.river_class.value_or(0)); !word.empty())
                words.push_back(fmt::format("class {} as entered", word));
        }
        if (leg.gradient > 0.0)
            words.push_back(fmt::format("falls {}", shown.gradient(leg.gradient)));
        if (leg.steepest_500m > 0.0)
            words.push_back(fmt::format("steepest 500 m {}", shown.gradient(leg.steepest_500m)));
        if (leg.current_mps != 0.0)
            words.push_back(fmt::format("current {}{} as {}",
                                        shown.speed(std::abs(leg.current_mps)),
                                        leg.current_mps < 0.0 ? " against" : "",
                                        leg.current_estimate ? "estimated" : "used"));
        if (leg.wind_mps > 0.0 && !planner::led(leg.travel))
            words.push_back(
                fmt::format("wind {} (force {})", shown.speed(leg.wind_mps), leg.wind_force));
        if (leg.wind_head_mps != 0.0)
            words.push_back(fmt::format("{} {}",
                                        leg.wind_head_mps > 0.0 ? "headwind" : "tailwind",
                                        shown.speed(std::abs(leg.wind_head_mps))));
        if (leg.stopped)
            words.emplace_back("wind or current stops the boat");
    }
    return joined(words);
}

const char* pack_word(planner::Travel travel) {
    switch (travel) {
    case planner::Travel::walk:
        return "Packs";
    case planner::Travel::portage:
        return "Heaviest loads";
    case planner::Travel::paddle:
    case planner::Travel::line:
    case planner::Travel::wade:
    case planner::Travel::pole:
        return "Goods in the boats";
    case planner::Travel::ride:
        return "Luggage";
    }
    return "";
}

/// Each member's load on the leg: at its start, its end, and at its worst where that is neither.
std::vector<Fields> packs(const PlanLeg& leg, const Figures& shown) {
    std::vector<Fields> rows;
    for (const planner::MemberLoad& load : leg.loads) {
        const std::string start = shown.mass(load.pack_start_kg);
        const std::string end = shown.mass(load.pack_end_kg);
        const std::string worst = shown.mass(load.pack_max_kg);
        std::string text = start;
        if (end != start)
            text += fmt::format(" to {}", end);
        if (worst != start && worst != end)
            text += fmt::format(", worst {}", worst);
        rows.emplace_back().text("name", load.member).text("text", text);
    }
    return rows;
}

/// A fact of the layers that only explains: it stands in a line, not in a box.
bool is_aside(const planner::Caution& caution) {
    return caution.level == planner::Level::note && planner::is_land_fact(caution);
}

std::string land_fact_words(const planner::Caution& caution, planner::UnitSystem units) {
    return fmt::format("{} {}",
                       planner::land_fact_word(caution),
                       in_units({caution.figure, caution.figure_imperial}, units));
}

std::string leg_note(const BookSource& source, const PlanLeg& leg) {
    for (const planner::PlanHazard& one : source.plan.hazards)
        if (!one.place && one.leg == leg.leg)
            return one.note;
    return {};
}

/// Hazards and notes of places, where they come up along a leg of one day.
std::vector<Fields> places_along(const BookSource& source, const PlanLeg& leg) {
    std::vector<Fields> rows;
    for (const planner::PlanHazard& one : source.plan.hazards)
        if (one.place && one.leg == leg.leg && one.day == leg.day)
            rows.emplace_back()
                .truth("hazard", one.hazard)
                .text("at", source.shown.distance(one.along_m))
                .text("name", one.name)
                .text("note", one.note);
    return rows;
}

std::vector<Fields> legs(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const PlanLeg& leg : source.plan.legs) {
        if (leg.day != day.day)
            continue;
        const double length_m = leg.length_m();
        std::vector<Fields> happens = events(source, leg);
        const auto of_leg = [&](const planner::Caution& caution) {
            return caution.leg == leg.leg && caution.day.value_or(day.day) == day.day;
        };
        std::vector<Fields> cautions =
            caution_fields(source, source.plan.cautions, [&](const planner::Caution& caution) {
                return of_leg(caution) && !is_aside(caution);
            });
        std::vector<Fields> facts;
        for (const planner::Caution& caution : source.plan.cautions)
            if (of_leg(caution) && is_aside(caution))
                facts.emplace_back().text("fact", land_fact_words(caution, shown.units()));
        const bool carried = leg.travel == planner::Travel::portage;
        std::string note = leg_note(source, leg);
        std::vector<Fields> along = places_along(source, leg);
        Fields& row = rows.emplace_back();
        row.text("travel", word(leg.travel))
            .text("leg", fmt::format("{}", leg.leg))
            .text("name", leg.name)
            .text("part", leg.part > 0 ? std::to_string(leg.part) : "")
            .text("phrase", travel_phrase(leg.travel))
            .text("detail", detail(source, leg))
            .text("length", carried ? shown.portage(length_m) : shown.distance(length_m))
            .text("walked", leg.lengths > 1.0 ? shown.distance(leg.on_foot_m) : "")
            .text("ascent",
                  planner::is_ride(leg.travel) ? std::string()
                                               : shown.climb(leg.ascent_m, leg.heights_known))
            .text("descent",
                  leg.heights_known && !planner::is_ride(leg.travel) ? shown.height(leg.descent_m)
                                                                     : std::string())
            .text("start", shown.clock_on(leg.start, day.date))
            .text("end", shown.clock_on(leg.end, day.date))
            .text("moving", shown.duration(leg.moving_s))
            .text("band",
                  planner::is_ride(leg.travel) ? std::string("as given")
                                               : fmt::format("{} to {}",
                                                             shown.duration(leg.moving_low_s),
                                                             shown.duration(leg.moving_high_s)))
            .truth("beside",
                   !happens.empty() || !cautions.empty() || !facts.empty() || !note.empty() ||
                       !along.empty() || !leg.loads.empty())
            .text("pack_word", pack_word(leg.travel))
            .list("packs", packs(leg, shown))
            .list("events", std::move(happens))
            .list("leg_cautions", std::move(cautions))
            .list("facts", std::move(facts))
            .list("along", std::move(along))
            .text("leg_note", note);
    }
    return rows;
}

/// Hazards of the day, by name, for its head.
std::vector<Fields> hazards(const BookSource& source, const PlanDay& day) {
    std::vector<Fields> rows;
    for (const planner::PlanHazard& one : source.plan.hazards)
        if (one.hazard && one.day == day.day)
            rows.emplace_back().text("name", one.name);
    return rows;
}

/// What is to be left and to be fetched on the day.
std::vector<Fields> left_and_fetched(const BookSource& source, const PlanDay& day) {
    std::vector<Fields> rows;
    const auto add = [&](const planner::LaidThings& left, const char* what, double along_m) {
        std::vector<Fields> things;
        for (const planner::LaidThing& thing : left.things)
            things.emplace_back()
                .text("name", is_store(thing) ? laid_words(thing, source.shown) : thing.what)
                .text("count", thing.count > 1 ? std::to_string(thing.count) : "");
        rows.emplace_back()
            .text("do", what)
            .text("place", left.at)
            .text("along", source.shown.distance(along_m))
            .text("mass", source.shown.mass(left.mass_kg))
            .list("things", std::move(things));
    };
    for (const planner::LaidThings& left : source.plan.left) {
        if (left.day == day.day)
            add(left, "Leave", left.along_m);
        if (left.fetch_day == day.day)
            add(left, "Fetch", *left.fetch_along_m);
    }
    return rows;
}

std::vector<Fields> members(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const planner::MemberDay& member : day.members) {
        const bool on_foot =
            !member.heaviest_leg.none() && member.heaviest_leg.index() < source.plan.legs.size();
        rows.emplace_back()
            .text("name", member.member)
            .text("set_off", member.set_off_kg ? shown.mass(*member.set_off_kg) : "")
            .text("worst", on_foot ? shown.mass(member.heaviest_kg) : "none on foot")
            .text("worst_on",
                  on_foot ? fmt::format("leg {}", source.plan.legs[member.heaviest_leg.index()].leg)
                          : "")
            .text("food", shown.mass(member.food_kg))
            .text("energy", shown.energy(member.energy_j))
            .text("water", shown.volume(member.water_l));
    }
    return rows;
}

/// Where a map's middle lies, and which way up, the grid's and a compass's north are.
std::string map_foot_words(const RouteMap& map, const PlanDay& day, const Figures& shown) {
    const geo::Position middle = map.projection().centre();
    std::string words = map.foot_text(shown);
    std::string north = "Up is true north";
    if (const std::optional<geo::GridPlace> grid = geo::grid_place(middle);
        grid && grid->zone != 0) {
        words += fmt::format("Dotted: UTM zone {}, every {:.0f} km. Middle: MGRS {}. ",
                             grid->zone,
                             utm_step_m(map.ground_view().pixels_per_m) / 1000.0,
                             geo::mgrs_text(middle));
        north += fmt::format(", grid north {:.1f}° {}",
                             std::abs(grid->convergence_deg),
                             grid->convergence_deg < 0.0 ? "west" : "east");
    }
    if (const std::optional<double> declination = geo::declination_deg(middle, year_of(day.date)))
        north += fmt::format(", magnetic north {:.1f}° {}",
                             std::abs(*declination),
                             *declination < 0.0 ? "west" : "east");
    else
        north += ", magnetic north not known";
    return fmt::format("{}{}.", words, north);
}

std::vector<Fields> day_maps(const BookSource& source, const PlanDay& day) {
    std::vector<Fields> rows;
    const RouteMap* const map = source.maps.of_day(day.day);
    if (map == nullptr)
        return rows;
    std::vector<Fields> credits;
    for (const std::string& credit : source.maps.credits())
        credits.emplace_back().text("line", credit);
    Drawing wide = wide_of_day(fmt::format("map-w-{}", day.day));
    wide.names = true;
    Drawing narrow = narrow_of_day(fmt::format("map-n-{}", day.day));
    rows.emplace_back()
        .markup("map_wide", map->draw(wide, source.shown))
        .markup("map_narrow", map->draw(narrow, source.shown))
        .text("foot", map_foot_words(*map, day, source.shown))
        .list("credits", std::move(credits));
    return rows;
}

Fields day_fields(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    const auto id = [&](const char* what) { return fmt::format("{}-{}", what, day.day); };
    const Stretch stretch{day.from_m, day.to_m};
    Fields fields;
    fields.text("day", std::to_string(day.day))
        .text("of", std::to_string(source.plan.days.size()))
        .text("date", long_date(day.date))
        .truth("rest_day", day.rest_day)
        .text("still",
              day.waiting_for.empty() ? std::string("Rest day") : "Waiting for: " + day.waiting_for)
        .text("from", day.from)
        .text("to", day.to)
        .list("hazards", hazards(source, day))
        .list("left", left_and_fetched(source, day))
        .list("figures", day.rest_day ? std::vector<Fields>() : figures(day, shown))
        .list("day_cautions",
              caution_fields(source,
                             source.plan.cautions,
                             [&](const planner::Caution& caution) {
                                 return caution.day == day.day && !caution.leg;
                             }))
        .markup("clock_wide", day_drawing(source.plan, day, wide_of_day(id("clock-w")), shown))
        .markup("clock_narrow", day_drawing(source.plan, day, narrow_of_day(id("clock-n")), shown))
        .text("light", light_phrase(day, shown))
        .list("legs", legs(source, day))
        .list("portages", portage_fields(source, day))
        .list("craft", craft_fields(source, day))
        .list("members", members(source, day))
        .text("supplies",
              fmt::format("All together: food {}, fuel {}, water {}.{}",
                          shown.mass(day.food_kg),
                          shown.mass(day.fuel_kg),
                          shown.volume(day.water_l),
                          day.dry_camp
                              ? " No drinking water at the camp: its litres are carried there."
                              : ""))
        .list("meets", leave_fields(source, day))
        .list("exits", exit_fields(source, day))
        .list("no_return", no_return_fields(source, day))
        .list("turns", turn_fields(source, day));
    std::vector<Fields> moves;
    if (!day.rest_day && day.to_m > day.from_m)
        moves.emplace_back()
            .markup("profile_wide",
                    profile_drawing(source.plan,
                                    source.route,
                                    stretch,
                                    with_marks(wide_of_day(id("part-w"))),
                                    shown))
            .markup("profile_narrow",
                    profile_drawing(source.plan,
                                    source.route,
                                    stretch,
                                    with_marks(narrow_of_day(id("part-n"))),
                                    shown));
    fields.list("moves", std::move(moves)).list("maps", day_maps(source, day));
    return fields;
}

} // namespace

void add_days(Fields& fields, const BookSource& source) {
    std::vector<Fields> days;
    for (const PlanDay& day : source.plan.days)
        days.push_back(day_fields(source, day));
    fields.list("days", std::move(days));
}

} // namespace tumpline::cli

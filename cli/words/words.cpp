#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace tumpline::cli {

using planner::Account;
using planner::EventKind;
using planner::Level;
using planner::Part;

std::string_view word(Level level) {
    switch (level) {
    case Level::note:
        return "note";
    case Level::caution:
        return "caution";
    case Level::stop:
        return "stop";
    }
    return {};
}

std::string_view word(planner::LitresStep step) {
    switch (step) {
    case planner::LitresStep::filled:
        return "filled";
    case planner::LitresStep::way:
        return "way";
    case planner::LitresStep::camp:
        return "camp";
    case planner::LitresStep::left:
        return "left";
    case planner::LitresStep::fetched:
        return "fetched";
    }
    return {};
}

std::string_view word(planner::LeaveBound bound) {
    switch (bound) {
    case planner::LeaveBound::appointment:
        return "appointment";
    case planner::LeaveBound::dusk:
        return "dusk";
    case planner::LeaveBound::midnight:
        return "midnight";
    case planner::LeaveBound::night:
        return "night";
    case planner::LeaveBound::wind:
        return "wind";
    }
    return {};
}

std::string_view word(planner::TurnLimit limit) {
    switch (limit) {
    case planner::TurnLimit::none:
        return "none";
    case planner::TurnLimit::dusk:
        return "dusk";
    case planner::TurnLimit::no_way_back:
        return "no_return";
    case planner::TurnLimit::dark:
        return "dark";
    }
    return {};
}

std::string_view word(planner::Stowage stowage) {
    switch (stowage) {
    case planner::Stowage::none:
        return "";
    case planner::Stowage::left:
        return "left";
    case planner::Stowage::right:
        return "right";
    case planner::Stowage::at_hand:
        return "at_hand";
    }
    return {};
}

std::string_view word(EventKind kind) {
    switch (kind) {
    case EventKind::set_off:
        return "set_off";
    case EventKind::boots_to_boat:
        return "boots_to_boat";
    case EventKind::boat_to_boots:
        return "boat_to_boots";
    case EventKind::landing:
        return "landing";
    case EventKind::scout:
        return "scout";
    case EventKind::rest:
        return "rest";
    case EventKind::halt:
        return "halt";
    case EventKind::fill_water:
        return "fill_water";
    case EventKind::resupply:
        return "resupply";
    case EventKind::cache:
        return "cache";
    case EventKind::arrive:
        return "arrive";
    }
    return {};
}

std::string_view word(Part part) {
    switch (part) {
    case Part::kit:
        return "kit";
    case Part::craft:
        return "craft";
    case Part::food:
        return "food";
    case Part::fuel:
        return "fuel";
    case Part::water:
        return "water";
    case Part::waste:
        return "waste";
    }
    return {};
}

std::string_view word(Account account) {
    switch (account) {
    case Account::outside:
        return "outside";
    case Account::pack:
        return "pack";
    case Account::worn:
        return "worn";
    case Account::in_use:
        return "in_use";
    case Account::eaten:
        return "eaten";
    case Account::drunk:
        return "drunk";
    case Account::burnt:
        return "burnt";
    case Account::dried:
        return "dried";
    case Account::laid_down:
        return "laid_down";
    }
    return {};
}

std::string_view word(geo::HeightSource source) {
    switch (source) {
    case geo::HeightSource::raster:
        return "raster";
    case geo::HeightSource::track:
        return "track";
    case geo::HeightSource::none:
        return "none";
    }
    return {};
}

std::string_view word(geo::TrackKind kind) {
    switch (kind) {
    case geo::TrackKind::track:
        return "track";
    case geo::TrackKind::route:
        return "route";
    case geo::TrackKind::line:
        return "line";
    }
    return {};
}

std::string_view word(geo::HeightDatum datum) {
    switch (datum) {
    case geo::HeightDatum::none:
        return "none";
    case geo::HeightDatum::geoid:
        return "geoid";
    case geo::HeightDatum::corrected:
        return "corrected";
    case geo::HeightDatum::ellipsoid:
        return "ellipsoid";
    }
    return {};
}

std::string_view word(geo::SunDay day) {
    switch (day) {
    case geo::SunDay::rises_and_sets:
        return "rises_and_sets";
    case geo::SunDay::rises_only:
        return "rises_only";
    case geo::SunDay::sets_only:
        return "sets_only";
    case geo::SunDay::always_above:
        return "always_above";
    case geo::SunDay::always_below:
        return "always_below";
    }
    return {};
}

std::string_view travel_phrase(planner::Travel travel) {
    switch (travel) {
    case planner::Travel::walk:
        return "on foot";
    case planner::Travel::portage:
        return "portage";
    case planner::Travel::paddle:
        return "afloat";
    case planner::Travel::ride:
        return "ride";
    case planner::Travel::line:
        return "lined";
    case planner::Travel::wade:
        return "waded";
    case planner::Travel::pole:
        return "poled";
    }
    return "";
}

std::string_view place_word(planner::PlaceKind kind) {
    switch (kind) {
    case planner::PlaceKind::start:
        return "start";
    case planner::PlaceKind::finish:
        return "finish";
    case planner::PlaceKind::put_in:
        return "put-in";
    case planner::PlaceKind::take_out:
        return "take-out";
    case planner::PlaceKind::camp:
        return "camp";
    case planner::PlaceKind::water:
        return "drinking water";
    case planner::PlaceKind::resupply:
        return "resupply";
    case planner::PlaceKind::cache:
        return "cache";
    case planner::PlaceKind::exit:
        return "exit";
    case planner::PlaceKind::hazard:
        return "hazard";
    case planner::PlaceKind::ford:
        return "ford";
    case planner::PlaceKind::landing:
        return "landing";
    }
    return "";
}

geo::sys_seconds at_latest(geo::sys_seconds hour) {
    return std::chrono::floor<std::chrono::minutes>(hour);
}

const std::string& in_units(const BothTexts& text, planner::UnitSystem units) {
    const bool other = units == planner::UnitSystem::imperial && !text.imperial.empty();
    return other ? text.imperial : text.metric;
}

std::string climb_words(double height_m, bool heights_known, planner::UnitSystem units) {
    return heights_known ? planner::show_height(height_m, units) : std::string("unknown");
}

std::string percent(double share) {
    return fmt::format("{:.0f} %", 100.0 * share);
}

std::string leg_place(const planner::Plan& plan, planner::PlanLegNumber plan_leg) {
    if (plan_leg.none() || plan_leg.index() >= plan.legs.size())
        return {};
    const planner::PlanLeg& leg = plan.legs[plan_leg.index()];
    return fmt::format("day {}, leg {}: {}", leg.day, leg.leg, leg.name);
}

std::string_view carries_word(double carries) {
    if (carries <= 1.0)
        return "one";
    if (carries < 2.0)
        return "one and a half";
    if (carries < 3.0)
        return "two";
    return "three";
}

std::string_view by_words(planner::CarryBy by) {
    switch (by) {
    case planner::CarryBy::hands:
        return "";
    case planner::CarryBy::two:
        return ", by two";
    case planner::CarryBy::cart:
        return ", with cart";
    }
    return "";
}

std::string_view boats_word(const planner::Plan& plan, bool rolled) {
    if (rolled)
        return "rolled";
    const auto& craft = plan.trip.craft;
    const bool soft = std::any_of(craft.begin(), craft.end(), [](const planner::Craft& one) {
        return one.kind == planner::CraftKind::packraft ||
               one.kind == planner::CraftKind::inflatable;
    });
    const auto& legs = plan.legs;
    const bool can_roll = std::any_of(legs.begin(), legs.end(), [](const planner::PlanLeg& leg) {
        return std::any_of(leg.choices.begin(), leg.choices.end(), [](const auto& choice) {
            return choice.rolled;
        });
    });
    return soft || can_roll ? "inflated" : "whole";
}

std::string
carries_words(const planner::Plan& plan, double carries, bool rolled, planner::CarryBy by) {
    return fmt::format(
        "{}, boats {}{}", carries_phrase(carries), boats_word(plan, rolled), by_words(by));
}

std::string no_return_words(const planner::Plan& plan, const planner::TurnRound& turn) {
    const bool current = std::any_of(plan.legs.begin(), plan.legs.end(), [&](const auto& leg) {
        return leg.leg == turn.leg && leg.current_mps > 0.0;
    });
    return fmt::format("no return {}from here", current ? "upstream " : "");
}

std::string_view carries_phrase(double carries) {
    if (carries <= 1.0)
        return "one carry";
    if (carries < 2.0)
        return "one and a half carries";
    if (carries < 3.0)
        return "two carries";
    return "three carries";
}

} // namespace tumpline::cli

#pragma once

#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"

#include <string>

namespace tumpline::test {

/// Legs of the trip up a side stream: in on foot, lined, waded and poled up, paddled down, and out.
struct LedLegs {
    std::string line = R"("class": "III", "current": "-5.4 km/h")";
    std::string wade = R"("class": "I", "current": "-2.88 km/h", "depth": "knee")";
    std::string pole = R"("class": "I", "current": "-3.6 km/h")";
    std::string paddle = R"("class": "II", "current": "3.6 km/h")";
    std::string start = "2027-06-18";
    std::string crew = R"(["Ada"])";
    std::string water = "9 C";
    std::string set_off = "08:00";
};

/// One who walks 1 m/s with whatever load, sets off at 08:00 and never rests; one boat of class II.
inline planner::Trip led_trip(const LedLegs& legs = {}) {
    const auto leg = [](const std::string& head, const std::string& more) {
        return "{" + head + (more.empty() ? "" : ", " + more) + "},";
    };
    return planner::read_trip_text(
        R"({"tumpline": 1, "start": ")" + legs.start + R"(", "time_zone": "UTC", "route": {"legs": [
            {"name": "In", "length": "5 km", "ascent": "0 m", "descent": "0 m", "from": "Road", "to": "Mouth"},)" +
            leg(R"("name": "Rope", "travel": "line", "length": "3 km")", legs.line) +
            leg(R"("name": "Stones", "travel": "wade", "length": "1.2 km")", legs.wade) +
            leg(R"("name": "Flats", "travel": "pole", "length": "1.8 km", "to": "Lake camp")",
                legs.pole) +
            leg(R"("name": "Down", "travel": "paddle", "water": "river", "length": "6 km", "to": "Bar")",
                legs.paddle) +
            R"({"name": "Out", "length": "5 km", "ascent": "0 m", "descent": "0 m", "to": "End"}],
            "places": [{"name": "Road", "kind": "start", "at": [13.1, 61.5]},
                       {"name": "Mouth", "kind": "put-in", "at": [13.15, 61.5]},
                       {"name": "Lake camp", "kind": "camp"}, {"name": "Bar", "kind": "take-out"},
                       {"name": "End", "kind": "finish", "at": [13.1, 61.5]}]},
            "party": [{"name": "Ada", "body": "68 kg", "level_speed": "3.6 km/h"}],
            "craft": [{"name": "red boat", "mass": "3 kg", "payload": "140 kg", "class": "II",
                       "calm_speed": "4 km/h", "crew": )" +
            legs.crew + R"(}],
            "kit": [{"item": "paddle", "mass": "1 kg", "for": "Ada", "afloat": "used"},
                    {"item": "life jacket", "mass": "700 g", "for": "Ada", "afloat": "worn"},
                    {"item": "thigh straps", "mass": "450 g", "for": "Ada", "when": {"class": "III"}}],
            "weather": {"high": "16 C", "wind": "20 m/s", "water": ")" +
            legs.water + R"("},
            "changeovers": {"boots_to_boat": "40 min", "boat_to_boots": "30 min", "landing": "10 min",
                            "scout": "15 min"},
            "days": {"set_off": ")" +
            legs.set_off + R"(", "rest_per_hour": "0 min", "nights": ["Lake camp"]},
            "models": {"walking": "constant", "load_effect": "none"}})",
        "trip.json");
}

inline planner::Plan led_plan(const LedLegs& legs = {}) {
    const planner::Trip trip = led_trip(legs);
    return planner::make_plan(trip, planner::build_route(trip));
}

} // namespace tumpline::test

#include "cli/live/live_answers.h"

#include "cli/book/book_template.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/route_map.h"
#include "cli/json/plan_json.h"
#include "cli/live/line_difference.h"
#include "cli/live/live_ground.h"
#include "cli/live/live_view.h"
#include "cli/live/one_hand.h"
#include "cli/live/page_file.h"
#include "cli/words/figures.h"
#include "cli/words/json_values.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/trip/trip_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Edit;
using planner::JsonValue;

constexpr std::size_t most_edits = 500;

/// What is wrong with a request that is none; answered with 400.
struct BadRequest {
    std::string why;
};

/// The body of a request.
struct Body {
    std::vector<Edit> edits;
    std::vector<std::string> want; ///< parts of the answer; empty: plan and drawing
    std::string seen;
    std::string ground; ///< the id of the one that the page has
    bool narrow = false;
};

Reply replied(const Json& json, int status = 200) {
    return {.status = status,
            .body = json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n"};
}

Reply problems_reply(const geo::InputError& error, int status) {
    const Json problems = array_of(error.problems(), [](const geo::Problem& problem) {
        return Json{{"place", problem.place},
                    {"found", problem.found},
                    {"expected", problem.expected},
                    {"advice", problem.advice},
                    {"text", to_string(problem)}};
    });
    return replied({{"problems", problems}}, status);
}

std::string text_at(const JsonValue& object, std::string_view key) {
    const JsonValue* value = object.find(key);
    if (value == nullptr || value->kind != JsonValue::Kind::text)
        throw BadRequest{fmt::format("\"{}\" must be a text", key)};
    return value->text;
}

Edit edit_of(const JsonValue& json) {
    using Way = Edit::Way;
    const std::string name = text_at(json, "op");
    const std::array ways{std::pair{"add", Way::add},
                          std::pair{"replace", Way::replace},
                          std::pair{"remove", Way::remove}};
    const auto* const way = std::find_if(
        ways.begin(), ways.end(), [&](const auto& known) { return name == known.first; });
    if (way == ways.end())
        throw BadRequest{"\"op\" must be add, replace or remove"};
    const JsonValue* value = json.find("value");
    if (value == nullptr && way->second != Way::remove)
        throw BadRequest{"add and replace need a \"value\""};
    return {.way = way->second,
            .pointer = text_at(json, "path"),
            .value = value != nullptr ? planner::json_text(*value) : std::string()};
}

Body body_of(const std::string& text) {
    JsonValue json;
    try {
        json = planner::read_json(text, "the request");
    } catch (const geo::InputError& error) {
        throw BadRequest{to_string(error.problems().front())};
    }
    Body body;
    const JsonValue* edits = json.find("edits");
    if (edits == nullptr || edits->kind != JsonValue::Kind::list ||
        edits->items.size() > most_edits)
        throw BadRequest{fmt::format("\"edits\" must be a list of at most {}", most_edits)};
    for (const JsonValue& edit : edits->items)
        body.edits.push_back(edit_of(edit));
    if (const JsonValue* want = json.find("want"))
        for (const JsonValue& part : want->items)
            body.want.push_back(part.text);
    if (const JsonValue* narrow = json.find("narrow"))
        body.narrow = narrow->flag;
    if (json.find("seen") != nullptr)
        body.seen = text_at(json, "seen");
    if (json.find("ground") != nullptr)
        body.ground = text_at(json, "ground");
    return body;
}

bool wants(const Body& body, std::string_view part) {
    if (body.want.empty())
        return part != "view";
    return std::find(body.want.begin(), body.want.end(), part) != body.want.end();
}

/// What is told of the ground besides its markup.
Json ground_json(const LiveGround& ground, const RouteMap& map, const Figures& shown) {
    return {{"id", ground.id()},
            {"words", map.foot_text(shown)},
            {"credits", array_of(ground.credits(), [](const auto& credit) { return credit; })}};
}

Json drawings(const LivePlan& live, const Figures& shown, const Body& body, LiveGrounds& grounds) {
    const bool narrow = body.narrow;
    const auto drawn = [&](std::string id) {
        return Drawing{.width = narrow ? narrow_drawing : wide_drawing,
                       .text = narrow ? 11.0 : 12.0,
                       .names = !narrow,
                       .id = std::move(id)};
    };
    Json clocks = Json::array();
    for (const planner::PlanDay& day : live.plan.days) {
        const Drawing clock{.width = narrow_drawing,
                            .text = 11.0,
                            .names = false,
                            .id = fmt::format("clock-{}", day.day)};
        clocks.push_back(day_drawing(live.plan, day, clock, shown));
    }
    const std::shared_ptr<const LiveGround> ground = grounds.of(live, shown.units());
    RouteMap map(live.plan, *live.route);
    map.lay_ground_of(ground->map());
    Json under = ground_json(*ground, map, shown);
    if (ground->id() != body.ground)
        under["markup"] = ground->markup();
    const Stretch whole{.from_m = 0.0, .to_m = live.route->length_m};
    return {{"map", map.draw(drawn("map"), shown)},
            {"ground", std::move(under)},
            {"profile", profile_drawing(live.plan, *live.route, whole, drawn("profile"), shown)},
            {"clocks", std::move(clocks)}};
}

/// Answers, and turns what is wrong into its status.
template <typename Work> Reply answered(const Work& work) {
    try {
        return work();
    } catch (const BadRequest& bad) {
        return replied({{"error", bad.why}}, 400);
    } catch (const geo::InputError& error) {
        return problems_reply(error, 422);
    }
}

/// What plans are made and drawn from.
struct Maker {
    Maker(LiveTrip& of, std::optional<planner::UnitSystem> said) : trip(of), units(said) {}

    LiveTrip& trip;
    std::optional<planner::UnitSystem> units; ///< as the command line said
    LiveGrounds grounds;
    OneHand hand; // ends first
};

Reply plan_reply(Maker& maker, const std::string& request) {
    const Body body = body_of(request);
    const LivePlan live = maker.trip.planned(body.edits);
    const Figures shown(
        maker.units.value_or(live.plan.trip.units.value_or(planner::UnitSystem::metric)),
        live.plan.trip.time_zone,
        Blank::kept);
    Json json;
    json["seen"] = live.seen;
    if (wants(body, "view"))
        json["view"] = live_view(live, shown);
    if (wants(body, "drawing"))
        json["drawing"] = drawings(live, shown, body, maker.grounds);
    if (wants(body, "plan"))
        json["plan"] = plan_json_value(live.plan, version());
    return replied(json);
}

Reply difference_reply(const LiveTrip& trip, const std::string& request) {
    const Body body = body_of(request);
    const std::string now = trip.text();
    const std::string after = planner::edited_text(now, trip.file().string(), body.edits);
    return replied({{"seen", digest_of(now)},
                    {"lines", array_of(line_difference(now, after), [](const DifferentLine& line) {
                         return Json{{"sign", line.added ? "+" : "-"},
                                     {"line", line.line},
                                     {"text", line.text}};
                     })}});
}

Reply write_reply(LiveTrip& trip, const std::string& request) {
    const Body body = body_of(request);
    const bool written = trip.write(body.edits, body.seen);
    const std::string now = trip.text();
    return replied({{"written", written}, {"seen", digest_of(now)}, {"text", now}},
                   written ? 200 : 409);
}

Reply trip_reply(const LiveTrip& trip) {
    const std::string now = trip.text();
    return replied({{"file", trip.file().filename().string()},
                    {"text", now},
                    {"seen", digest_of(now)},
                    {"version", version()}});
}

std::string_view type_of(std::string_view name) {
    if (name.ends_with(".js"))
        return "text/javascript; charset=utf-8";
    return name.ends_with(".css") ? "text/css; charset=utf-8" : "text/html; charset=utf-8";
}

LiveRoute page_route(std::string path, std::string_view name) {
    return {
        .method = "GET", .path = std::move(path), .answer = [name](const std::string& /*none*/) {
            return Reply{.status = 200,
                         .type = std::string(type_of(name)),
                         .body = std::string(page_file(name))};
        }};
}

} // namespace

std::vector<LiveRoute>
live_routes(LiveTrip& trip, std::optional<planner::UnitSystem> units, std::function<void()> end) {
    std::vector<LiveRoute> routes{page_route("/", "live.html")};
    for (const std::string_view name : {"live.css",
                                        "live.js",
                                        "ask.js",
                                        "edits.js",
                                        "map.js",
                                        "days.js",
                                        "packs.js",
                                        "conditions.js",
                                        "verdict.js",
                                        "write.js",
                                        "made.js"})
        routes.push_back(page_route(fmt::format("/{}", name), name));
    routes.push_back({.method = "GET", .path = "/book.css", .answer = [](const std::string&) {
                          return Reply{.status = 200,
                                       .type = std::string(type_of("book.css")),
                                       .body = std::string(book_template("book.css"))};
                      }});
    routes.push_back({.method = "GET", .path = "/favicon.ico", .answer = [](const std::string&) {
                          return Reply{.status = 204, .type = "image/png", .body = {}};
                      }});
    const auto add = [&](const char* method, const char* path, auto work) {
        routes.push_back(
            {.method = method, .path = path, .answer = [work](const std::string& body) {
                 return answered([&] { return work(body); });
             }});
    };
    add("GET", "/api/trip", [&trip](const std::string&) { return trip_reply(trip); });
    const auto maker = std::make_shared<Maker>(trip, units);
    add("POST", "/api/plan", [maker](const std::string& body) {
        return maker->hand.done([&] { return plan_reply(*maker, body); });
    });
    add("POST", "/api/difference", [&trip](const std::string& body) {
        return difference_reply(trip, body);
    });
    add("POST", "/api/write", [maker](const std::string& body) {
        return maker->hand.done([&] { return write_reply(maker->trip, body); });
    });
    add("POST", "/api/end", [end = std::move(end)](const std::string&) {
        end();
        return replied({{"ended", true}});
    });
    return routes;
}

LiveEvents live_events(const LiveTrip& trip) {
    return {.path = "/api/events", .next = [&trip](std::string& seen) {
                std::string now;
                try {
                    now = digest_of(trip.text());
                } catch (const geo::InputError&) {
                    now = "unreadable"; // somebody may just be replacing it
                }
                if (now == seen)
                    return std::string();
                seen = now;
                return Json{{"seen", now}}.dump();
            }};
}

} // namespace tumpline::cli

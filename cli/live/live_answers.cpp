#include "cli/live/live_answers.h"

#include "cli/book/book_template.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/route_map.h"
#include "cli/json/plan_json.h"
#include "cli/live/line_difference.h"
#include "cli/live/live_beside.h"
#include "cli/live/live_ground.h"
#include "cli/live/live_maker.h"
#include "cli/live/live_request.h"
#include "cli/live/live_view.h"
#include "cli/live/page_file.h"
#include "cli/words/figures.h"
#include "cli/words/json_values.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/trip/trip_text.h"

#include <fmt/format.h>

#include <memory>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

/// What is told of the ground besides its markup.
Json ground_json(const LiveGround& ground, const RouteMap& map, const Figures& shown) {
    return {{"id", ground.id()},
            {"words", map.foot_text(shown)},
            {"credits", array_of(ground.credits(), [](const auto& credit) { return credit; })}};
}

/// A drawing with its digest, by which the page says that it has it; its markup only if it has not.
Json drawn_once(const std::string& markup, const LiveRequest& asked) {
    const std::string id = digest_of(markup);
    return {{"id", id}, {"markup", asked.has(id) ? Json(nullptr) : Json(markup)}};
}

Json drawings(const LivePlan& live,
              const Figures& shown,
              const LiveRequest& asked,
              LiveGrounds& grounds) {
    const bool narrow = asked.narrow;
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
        clocks.push_back(drawn_once(day_drawing(live.plan, day, clock, shown), asked));
    }
    const std::shared_ptr<const LiveGround> ground = grounds.of(live, shown.units());
    RouteMap map(live.plan, *live.route);
    map.lay_ground_of(ground->map());
    Json under = ground_json(*ground, map, shown);
    if (ground->id() != asked.ground)
        under["markup"] = ground->markup();
    const Stretch whole{.from_m = 0.0, .to_m = live.route->length_m};
    const std::string profile =
        profile_drawing(live.plan, *live.route, whole, drawn("profile"), shown);
    return {{"map", drawn_once(map.draw(drawn("map"), shown), asked)},
            {"ground", std::move(under)},
            {"profile", drawn_once(profile, asked)},
            {"clocks", std::move(clocks)}};
}

Reply plan_reply(LiveMaker& maker, const std::string& request) {
    const LiveRequest asked = live_request(request);
    const LivePlan live = maker.trip.planned(asked.edits);
    const Figures shown = maker.figures(live.plan);
    Json json;
    json["seen"] = live.seen;
    if (asked.wants("view"))
        json["view"] = live_view(live, shown);
    if (asked.wants("drawing"))
        json["drawing"] = drawings(live, shown, asked, maker.grounds);
    if (asked.wants("plan"))
        json["plan"] = plan_json_value(live.plan, version());
    return replied(json);
}

Reply difference_reply(const LiveTrip& trip, const std::string& request) {
    const LiveRequest asked = live_request(request);
    const std::string now = trip.text();
    const std::string after = planner::edited_text(now, trip.file().string(), asked.edits);
    return replied({{"seen", digest_of(now)},
                    {"lines", array_of(line_difference(now, after), [](const DifferentLine& line) {
                         return Json{{"sign", line.added ? "+" : "-"},
                                     {"line", line.line},
                                     {"text", line.text}};
                     })}});
}

Reply write_reply(LiveTrip& trip, const std::string& request) {
    const LiveRequest asked = live_request(request);
    const bool written = trip.write(asked.edits, asked.seen);
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
                         .body = std::string(page_file(name)),
                         .more = {}};
        }};
}

} // namespace

std::vector<LiveRoute>
live_routes(LiveTrip& trip, std::optional<planner::UnitSystem> units, std::function<void()> end) {
    std::vector<LiveRoute> routes{page_route("/", "live.html")};
    for (const std::string_view name : {"live.css",
                                        "live.js",
                                        "ask.js",
                                        "drawings.js",
                                        "edits.js",
                                        "map.js",
                                        "days.js",
                                        "packs.js",
                                        "conditions.js",
                                        "compare.js",
                                        "nights.js",
                                        "odds.js",
                                        "verdict.js",
                                        "write.js",
                                        "made.js"})
        routes.push_back(page_route(fmt::format("/{}", name), name));
    routes.push_back({.method = "GET", .path = "/book.css", .answer = [](const std::string&) {
                          return Reply{.status = 200,
                                       .type = std::string(type_of("book.css")),
                                       .body = std::string(book_template("book.css")),
                                       .more = {}};
                      }});
    routes.push_back({.method = "GET", .path = "/favicon.ico", .answer = [](const std::string&) {
                          return Reply{.status = 204, .type = "image/png", .body = {}, .more = {}};
                      }});
    const auto add = [&](const char* method, const char* path, auto work) {
        routes.push_back(
            {.method = method, .path = path, .answer = [work](const std::string& body) {
                 return answered([&] { return work(body); });
             }});
    };
    add("GET", "/api/trip", [&trip](const std::string&) { return trip_reply(trip); });
    const auto maker = std::make_shared<LiveMaker>(trip, units);
    add("POST", "/api/plan", [maker](const std::string& body) {
        return maker->hand.done([&] { return plan_reply(*maker, body); });
    });
    add("POST", "/api/odds", [maker](const std::string& body) { return odds_reply(*maker, body); });
    add("POST", "/api/nights", [maker](const std::string& body) {
        return nights_reply(*maker, body);
    });
    add("POST", "/api/compare", [maker](const std::string& body) {
        return maker->hand.done([&] { return compare_reply(*maker, body); });
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

#include "cli/live/live_trip.h"

#include "cli/files/whole_file.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/route/steep_ground.h"
#include "planner/trip/trip_file.h"
#include "planner/trip/trip_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <string_view>

namespace tumpline::cli {

namespace {

using planner::JsonValue;

constexpr std::size_t routes_kept = 8;

/// What of a leg does not change where it runs: of the current only which way it sets.
void without_loads(JsonValue& leg) {
    std::erase_if(leg.members, [](const JsonValue::Member& member) {
        return member.key == "carries" || member.key == "boat_on_carry" || member.key == "carry_by";
    });
    for (JsonValue::Member& member : leg.members)
        if (member.key == "current")
            member.value.text = member.value.text.starts_with('-') ? "against" : "with";
}

/// The part of a trip that its route is laid by, as one text.
std::string laid_by(const JsonValue& document) {
    JsonValue route = document.find("route") != nullptr ? *document.find("route") : JsonValue{};
    for (JsonValue::Member& member : route.members)
        if (member.key == "legs")
            for (JsonValue& leg : member.value.items)
                without_loads(leg);
    std::string text = planner::json_text(route);
    for (const std::string_view key : {"appointments", "map"}) // places met, layers of the ground
        if (const JsonValue* value = document.find(key))
            text += planner::json_text(*value);
    return text;
}

/// `route` with its legs as `trip` describes them now.
std::shared_ptr<const planner::Route> described(const std::shared_ptr<const planner::Route>& route,
                                                const planner::Trip& trip) {
    if (trip.route.legs.empty())
        return route;
    auto now = std::make_shared<planner::Route>(*route);
    std::size_t leg = 0;
    for (const planner::TripLeg& spec : trip.route.legs)
        if (spec.instead_of.empty() && leg < now->legs.size())
            now->legs[leg++].spec = spec;
    return now;
}

} // namespace

std::string digest_of(const std::string& text) {
    std::uint64_t digest = 14695981039346656037U;
    for (const char letter : text)
        digest = (digest ^ static_cast<unsigned char>(letter)) * 1099511628211U;
    return fmt::format("{:016x}", digest);
}

std::string LiveTrip::text() const {
    return planner::trip_file_text(file_);
}

std::string LiveTrip::edited(const std::vector<planner::Edit>& edits) const {
    return planner::edited_text(text(), file_.string(), edits);
}

std::shared_ptr<const planner::Route> LiveTrip::route_of(const planner::Trip& trip,
                                                         const std::string& laid) {
    const std::lock_guard lock(laying_);
    const auto found = std::find_if(
        laid_.begin(), laid_.end(), [&](const Laid& known) { return known.first == laid; });
    if (found != laid_.end()) {
        std::rotate(found, found + 1, laid_.end());
    } else {
        laid_.emplace_back(
            laid, std::make_shared<const planner::Route>(planner::build_routes(trip).route));
        if (laid_.size() > routes_kept)
            laid_.erase(laid_.begin());
    }
    return described(laid_.back().second, trip);
}

LivePlan LiveTrip::planned_from(const std::string& text, const std::vector<planner::Edit>& edits) {
    const planner::Trip trip = planner::edited_trip(text, file_, edits);
    JsonValue document = planner::read_json(text, file_.string());
    for (const planner::Edit& edit : edits)
        (void)planner::edit_at(document, edit); // fits: the trip was read with it
    std::string laid = laid_by(document);
    if (planner::speaks_of_snow(trip)) // then its route knows the steep ground
        laid += " under snow";
    std::shared_ptr<const planner::Route> route = route_of(trip, laid);
    planner::Plan plan = planner::make_plan(trip, *route);
    return {.plan = std::move(plan),
            .route = std::move(route),
            .document = std::move(document),
            .on_file = edits.empty() ? trip : planner::edited_trip(text, file_, {}),
            .seen = digest_of(text),
            .laid = std::move(laid)};
}

LivePlan LiveTrip::planned(const std::vector<planner::Edit>& edits) {
    return planned_from(text(), edits);
}

bool LiveTrip::write(const std::vector<planner::Edit>& edits, const std::string& seen) {
    const std::lock_guard lock(writing_);
    const std::string now = text();
    if (digest_of(now) != seen)
        return false;
    const std::string after = planner::edited_text(now, file_.string(), edits);
    (void)planned_from(after, {}); // what cannot be planned is not written
    if (digest_of(text()) != seen) // the plan took a while
        return false;
    write_whole({.file = file_, .inputs = {}, .overwrite = true}, after);
    return true;
}

} // namespace tumpline::cli

#include "cli/words/leg_fields.h"

#include "cli/words/words.h"
#include "geo/light/time_zone.h"

namespace tumpline::cli {

namespace {

FieldValue known(double figure, bool is_known) {
    return is_known ? FieldValue(figure) : FieldValue();
}

} // namespace

std::vector<LegField> leg_fields(const planner::Plan& plan, const planner::PlanLeg& leg) {
    const std::string& zone = plan.trip.time_zone;
    const auto time = [&](geo::sys_seconds at) {
        return zone.empty() ? FieldValue() : FieldValue(geo::rfc3339(at, zone));
    };
    return {{"leg", static_cast<std::int64_t>(leg.leg.printed())},
            {"part", leg.part == 0 ? FieldValue() : FieldValue(std::int64_t{leg.part})},
            {"day", std::int64_t{leg.day}},
            {"name", leg.name},
            {"travel", std::string(word(leg.travel))},
            {"from_m", leg.from_m},
            {"to_m", leg.to_m},
            {"distance_m", leg.length_m()},
            {"ascent_m", known(leg.ascent_m, leg.heights_known)},
            {"descent_m", known(leg.descent_m, leg.heights_known)},
            {"moving_s", leg.moving_s},
            {"moving_low_s", leg.moving_low_s},
            {"moving_high_s", leg.moving_high_s},
            {"changeover_s", leg.changeover_s},
            {"rest_s", leg.rest_s},
            {"start", time(leg.start)},
            {"end", time(leg.end)},
            {"lengths", leg.lengths},
            {"on_foot_m", leg.on_foot_m}};
}

std::vector<LegField> pack_fields(const planner::MemberLoad& load) {
    return {{"pack_start_kg", load.pack_start_kg},
            {"pack_end_kg", load.pack_end_kg},
            {"pack_max_kg", load.pack_max_kg}};
}

} // namespace tumpline::cli

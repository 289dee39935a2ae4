#include "planner/cautions/snow_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/models/avalanche.h"
#include "planner/models/terrain.h"
#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::size_t most_parts = 3; // named in one caution

/// A depth of snow.
UnitText depth_words(double depth_m) {
    return {fmt::format("{:.0f} cm", 100.0 * depth_m),
            fmt::format("{:.0f} in", 12.0 * depth_m / m_per_foot)};
}

class SnowWatch {
  public:
    SnowWatch(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run() {
        for (const PlanLeg& leg : plan_.legs) {
            if (!on_foot(leg.travel) || !walks_on_snow(draft_, leg))
                continue;
            list_.at(leg.day, leg.leg);
            sinking(leg);
            avalanches(leg);
        }
        return list_.take();
    }

  private:
    void sinking(const PlanLeg& leg);
    void avalanches(const PlanLeg& leg);
    /// What of the steep ground a leg passes on its day.
    [[nodiscard]] std::vector<SteepPart> parts_on(const PlanLeg& leg) const;
    [[nodiscard]] static UnitText where(const std::vector<SteepPart>& parts);
    [[nodiscard]] std::string night_there(const PlanLeg& leg,
                                          const std::vector<SteepPart>& parts) const;

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
};

void SnowWatch::sinking(const PlanLeg& leg) {
    const bool typed = draft_.prepared.route.legs[leg.leg.index()].spec.footprint_m.has_value();
    if (!leg.snow_m || leg.sinks_m <= 0.0 || typed)
        return;
    Caution& caution = list_.add(
        Level::note,
        "snow-sinking",
        format_both("{} of snow, taken as settled ({:.0f} kg/m3): each step sinks about {}{}, and "
                    "the way takes {:.1f} times as long as a dry path of the same slope. New snow "
                    "lets one sink deeper, a crust at dawn hardly at all; snowshoes and skis are "
                    "not counted.",
                    depth_words(*leg.snow_m),
                    settled_snow_kg_m3,
                    depth_words(leg.sinks_m),
                    leg.sinks_m > deepest_footprint_m
                        ? format_both(" (counted as {}: there one wades, and slower than this)",
                                      depth_words(deepest_footprint_m))
                        : UnitText(""),
                    leg.ground_time_factor),
        "ErdcSnow");
    set_figure(caution, depth_words(leg.sinks_m), leg.sinks_m);
}

std::vector<SteepPart> SnowWatch::parts_on(const PlanLeg& leg) const {
    std::vector<SteepPart> parts;
    if (!draft_.prepared.route.steep)
        return parts;
    for (SteepPart part : draft_.prepared.route.steep->parts) {
        part.from_m = std::max(part.from_m, leg.from_m);
        part.to_m = std::min(part.to_m, leg.to_m);
        if (part.leg == leg.leg && part.from_m < part.to_m)
            parts.push_back(part);
    }
    return parts;
}

UnitText SnowWatch::where(const std::vector<SteepPart>& parts) {
    UnitText all("");
    for (std::size_t i = 0; i < std::min(parts.size(), most_parts); ++i) {
        const SteepPart& part = parts[i];
        all = format_both(
            "{}{}from {} to {} of the route {} ({:.0f} degrees{})",
            all,
            i == 0 ? "" : ", ",
            in_both(show_distance, part.from_m),
            in_both(show_distance, part.to_m),
            part.on_line ? "on the line" : "above it",
            part.steepest_deg,
            part.on_line ? UnitText("")
                         : format_both(", from {} away", in_both(show_distance, part.nearest_m)));
    }
    if (parts.size() > most_parts)
        all = format_both("{} and at {} more places", all, parts.size() - most_parts);
    return all;
}

/// " The night at X lies there."
std::string SnowWatch::night_there(const PlanLeg& leg, const std::vector<SteepPart>& parts) const {
    const std::vector<DaySpan>& days = draft_.settled.timeline.days;
    for (std::size_t d = 0; d + 1 < days.size(); ++d) {
        const double at_m = draft_.prepared.stretches.boundaries[days[d].last].along_m;
        const bool there = std::any_of(parts.begin(), parts.end(), [&](const SteepPart& part) {
            return at_m >= part.from_m && at_m <= part.to_m;
        });
        if (days[d].day == leg.day && there)
            return fmt::format(" The night at {} lies there.", boundary_name(draft_, days[d].last));
    }
    return "";
}

void SnowWatch::avalanches(const PlanLeg& leg) {
    const std::vector<SteepPart> parts = parts_on(leg);
    if (parts.empty())
        return;
    const auto worst =
        std::max_element(parts.begin(), parts.end(), [](const SteepPart& a, const SteepPart& b) {
            return std::pair{a.on_line, a.steepest_deg} < std::pair{b.on_line, b.steepest_deg};
        });
    Caution& caution = list_.add(
        Level::caution,
        "avalanche-ground",
        format_both(
            "Avalanche ground: snow lies here, and the raster (cells of {:.0f} m, which hide "
            "what is steep for less) has ground of {:.0f} to {:.0f} degrees, where nearly all "
            "slab avalanches start, {}.{} Ground above counts where it is seen at {:.0f} degrees "
            "or more. Whether one can go there on the day is for the local avalanche warning "
            "service and people who know this snow to say: ask them, or go another way.",
            draft_.prepared.route.steep->cell_m,
            least_release_deg,
            most_release_deg,
            where(parts),
            night_there(leg, parts),
            least_reach_deg),
        "AvalancheOrgSlope");
    set_figure(caution, fmt::format("{:.0f} degrees", worst->steepest_deg), worst->steepest_deg);
}

} // namespace

bool walks_on_snow(const Assembly& draft, const PlanLeg& leg) {
    const RouteLeg& route_leg = draft.prepared.route.legs[leg.leg.index()];
    const std::optional<bool> lies =
        draft.prepared.assumed.forecast.snow_lies({route_leg, leg.day});
    return lies.value_or(false) || route_leg.spec.terrain == Terrain::snow;
}

std::vector<Caution> snow_cautions(const Assembly& draft, const Plan& plan) {
    return SnowWatch(draft, plan).run();
}

} // namespace tumpline::planner

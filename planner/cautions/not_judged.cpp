#include "planner/cautions/not_judged.h"

#include "planner/cautions/safety_gear_cautions.h"
#include "planner/cautions/snow_cautions.h"
#include "planner/conditions/lake_fetch.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/river_flow.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

/// Asks for one thing after another.
class MissingFacts {
  public:
    MissingFacts(const Assembly& draft, const Plan& plan)
        : draft_(draft), trip_(draft.prepared.trip), route_(draft.prepared.route), plan_(plan) {}

    std::vector<NotJudged> run() {
        weather();
        river();
        boats();
        gear();
        volumes();
        limits();
        heights();
        open_water();
        snow();
        return std::move(missing_);
    }

  private:
    template <typename Holds> [[nodiscard]] std::vector<LegNumber> legs_where(Holds holds) const {
        std::vector<LegNumber> legs;
        for (std::size_t i = 0; i < route_.legs.size(); ++i)
            if (holds(route_.legs[i]))
                legs.push_back(LegNumber::of_index(i));
        return legs;
    }

    template <typename Holds> void add_on_legs(NotJudged what, Holds holds) {
        what.legs = legs_where(holds);
        if (!what.legs.empty())
            missing_.push_back(std::move(what));
    }

    void add_of(std::string code,
                std::string_view what,
                const std::vector<std::string>& names,
                std::string key) {
        if (!names.empty())
            missing_.push_back({std::move(code),
                                fmt::format("{} of {}", what, listed(names)),
                                std::move(key),
                                {}});
    }

    static bool afloat(const RouteLeg& leg) { return planner::afloat(leg.travel); }

    static Water water(const RouteLeg& leg) { return leg.spec.on_water(); }

    static bool on_river(const RouteLeg& leg) { return afloat(leg) && water(leg) == Water::river; }

    void weather();
    void river();
    void flow_asked();
    void boats();
    void gear();
    void volumes();
    void limits();
    void heights();
    void open_water();
    void snow();

    const Assembly& draft_;
    const Trip& trip_;
    const Route& route_;
    const Plan& plan_;
    std::vector<NotJudged> missing_;
};

void MissingFacts::weather() {
    if (!trip_.weather.water_c)
        add_on_legs({"water-temperature", "water temperature", "/weather/water", {}}, afloat);
    if (!trip_.weather.wind_mps)
        add_on_legs({"wind", "wind", "/weather/wind", {}},
                    [](const RouteLeg& leg) { return leg.travel == Travel::paddle; });
}

void MissingFacts::river() {
    add_on_legs({"river-class", "class of the river", "/route/legs", {}}, [](const RouteLeg& leg) {
        return on_river(leg) && aboard(leg.travel) && !leg.spec.river_class;
    });
    if (trip_.flow_asked)
        flow_asked();
    const bool classed = std::any_of(route_.legs.begin(), route_.legs.end(), [](const auto& leg) {
        return leg.class_run().value_or(0) > 0;
    });
    if (!classed)
        return;
    std::vector<std::string> people, craft;
    for (const Member& member : trip_.party)
        if (!member.river_class)
            people.push_back(member.name);
    for (const Craft& one : trip_.craft)
        if (!one.river_class)
            craft.push_back(one.name);
    add_of("party-class", "river class", people, "/party");
    add_of("craft-class", "river class", craft, "/craft");
}

/// Rivers that give no such level, by their names.
void MissingFacts::flow_asked() {
    NotJudged what{"flow-level", {}, "/route/legs", {}};
    std::vector<std::string> names;
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        if (!on_river(leg) || (leg.spec.flow && leg.spec.flow->asked))
            continue;
        what.legs.push_back(LegNumber::of_index(i));
        names.push_back(leg.name);
    }
    what.title = fmt::format("the level \"{}\" of {}", word(*trip_.flow_asked), listed(names));
    if (!names.empty())
        missing_.push_back(std::move(what));
}

void MissingFacts::boats() {
    if (plan_.totals.paddle_m <= 0.0 || trip_.craft.empty())
        return;
    std::vector<std::string> names;
    for (const Craft& one : trip_.craft)
        if (!one.payload_kg)
            names.push_back(one.name);
    add_of("payload", "payload", names, "/craft");
    add_on_legs({"stability",
                 trip_.craft.size() == 1 ? "the boat's stability" : "the boats' stability",
                 "",
                 {}},
                afloat);
}

/// Asked for, and known in part only.
void MissingFacts::volumes() {
    for (const PackVolume& pack : plan_.volumes.packs)
        if (!pack.unknown.empty())
            add_of("volume", "volume in the pack", {pack.member}, "/kit");
    if (const auto& container = plan_.volumes.container; container && !container->unknown.empty())
        add_of("container-volume",
               "volume of what goes into",
               {container->name},
               container->unknown.front() == "food" ? "/food/volume" : "/kit");
}

void MissingFacts::gear() {
    const std::vector<std::string> gear = unlisted_safety_gear(draft_, plan_);
    if (!gear.empty())
        missing_.push_back({"safety-gear",
                            fmt::format("whether there is safety gear ({})", listed(gear)),
                            "/kit",
                            {}});
}

void MissingFacts::limits() {
    std::vector<std::string> names;
    for (const Member& member : trip_.party)
        if (!member.carry_limit_kg)
            names.push_back(member.name);
    const bool on_foot = plan_.totals.walk_m + plan_.totals.portage_m > 0.0;
    if (on_foot)
        add_of("carry-limit", "carry limit", names, "/party");
}

void MissingFacts::heights() {
    add_on_legs({"heights", "heights of the ground", "/route/elevation", {}},
                [](const RouteLeg& leg) { return !leg.climb_known() && on_foot(leg.travel); });
    add_on_legs({"river-heights", "fall of the river", "/route/elevation", {}},
                [](const RouteLeg& leg) { return leg.profile.heights_m.empty() && on_river(leg); });
}

void MissingFacts::open_water() {
    constexpr double any_side_deg = 0.0; // whether an outline holds the leg does not hang on it
    add_on_legs({"fetch", "fetch and waves", "", {}}, [&](const RouteLeg& leg) {
        const auto index = static_cast<std::size_t>(&leg - route_.legs.data());
        return afloat(leg) && water(leg) != Water::river &&
               leg_fetch(route_, LegNumber::of_index(index), any_side_deg).from ==
                   FetchFrom::length;
    });
    add_on_legs({"flow", "flow of the river on the day", "", {}}, [](const RouteLeg& leg) {
        const std::optional<RiverFlow>& flow = leg.spec.flow;
        return on_river(leg) && !(flow && (flow->now_given || flow->asked));
    });
    add_on_legs({"tides", "tides and tidal streams", "", {}},
                [](const RouteLeg& leg) { return afloat(leg) && water(leg) == Water::sea; });
}

/// On foot where snow lies.
void MissingFacts::snow() {
    const auto add = [&](NotJudged what, const auto& holds) {
        for (const PlanLeg& leg : plan_.legs)
            if (on_foot(leg.travel) && walks_on_snow(draft_, leg) && holds(leg) &&
                (what.legs.empty() || what.legs.back() != leg.leg))
                what.legs.push_back(leg.leg);
        if (!what.legs.empty())
            missing_.push_back(std::move(what));
    };
    add({"snow-depth", "depth of the snow", "/weather/snow_depth", {}}, [&](const PlanLeg& leg) {
        return !leg.snow_m && !route_.legs[leg.leg.index()].spec.footprint_m;
    });
    add({"avalanche-ground", "steep ground about the snow", "/route/elevation", {}},
        [&](const PlanLeg& leg) { return !route_.steep || !route_.steep->known[leg.leg.index()]; });
}

} // namespace

std::vector<NotJudged> not_judged(const Assembly& draft, const Plan& plan) {
    return MissingFacts(draft, plan).run();
}

} // namespace tumpline::planner

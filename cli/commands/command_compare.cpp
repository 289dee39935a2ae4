#include "cli/commands/command_compare.h"

#include "cli/commands/planning.h"
#include "cli/json/compare_json.h"
#include "cli/text/compare_text.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/decisions/compare.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace tumpline::cli {

namespace {

constexpr std::size_t most_trips = 8; // more nobody reads side by side

struct Refused {
    std::string found;
    std::string expected;
    std::string advice;
};

[[noreturn]] void refuse(Refused what) {
    throw geo::InputError({{.file = "tumpline compare",
                            .place = "",
                            .found = std::move(what.found),
                            .expected = std::move(what.expected),
                            .advice = std::move(what.advice)}});
}

void check_count(const CompareOptions& options) {
    const std::size_t trips = options.trips.size();
    if (trips > most_trips)
        refuse({fmt::format("{} trips", trips), fmt::format("at most {}", most_trips), ""});
    if (trips == 1 && options.settings.empty() && options.flows.empty())
        refuse({"one trip, no --set and no --flow",
                "two trips, or one and what is to be changed in it",
                "add --set POINTER=VALUE, like --set /days/hours=7, or --flow each"});
    if (trips > 1 && options.flows.size() > 1)
        refuse({fmt::format("{} trips and --flow each", trips),
                "one trip, or one level for all of them",
                "write --flow low, normal or high"});
}

bool gives(const planner::Trip& trip, planner::FlowLevel level) {
    return std::any_of(trip.route.legs.begin(), trip.route.legs.end(), [&](const auto& leg) {
        return leg.flow && leg.flow->column(level);
    });
}

/// One of the plans to be laid side by side.
struct Variant {
    TripOptions trip;
    std::string label; ///< what it is called on the page, besides its letter
};

std::vector<std::string> changes_of(const TripOptions& trip) {
    std::vector<std::string> changes;
    for (const planner::Setting& setting : trip.settings)
        changes.push_back(fmt::format("{}={}", setting.pointer, setting.value));
    if (trip.flow)
        changes.push_back(fmt::format("--flow {}", planner::word(*trip.flow)));
    return changes;
}

void add(std::vector<Variant>& variants, TripOptions trip) {
    std::string label = trip.trip.string();
    if (const std::vector<std::string> changes = changes_of(trip); !changes.empty())
        label += fmt::format(" with {}", fmt::join(changes, ", "));
    variants.push_back({std::move(trip), std::move(label)});
}

/// One trip at every level that one of its rivers gives.
std::vector<Variant> at_each_level(const CompareOptions& options) {
    TripOptions one{.trip = options.trips.front(), .settings = options.settings};
    const planner::Trip trip = read_trip(one);
    std::vector<Variant> variants;
    for (const planner::FlowLevel level : options.flows) {
        one.flow = level;
        if (gives(trip, level))
            add(variants, one);
    }
    if (variants.size() < 2)
        throw geo::InputError({{.file = one.trip.string(),
                                .place = "/route/legs",
                                .found = "no river with two levels",
                                .expected = "a leg whose \"flow\" has \"low\", \"normal\" or "
                                            "\"high\", two of them at least",
                                .advice = "give them, or leave --flow out"}});
    return variants;
}

std::vector<Variant> variants_of(const CompareOptions& options) {
    if (options.flows.size() > 1)
        return at_each_level(options);
    std::vector<Variant> variants;
    if (options.trips.size() == 1)
        add(variants, {.trip = options.trips.front(), .settings = {}});
    for (const std::filesystem::path& trip : options.trips) {
        TripOptions other{.trip = trip, .settings = options.settings};
        if (!options.flows.empty())
            other.flow = options.flows.front();
        add(variants, std::move(other));
    }
    return variants;
}

} // namespace

ExitCode compare(const CompareOptions& options, Console console) {
    check_count(options);
    constexpr planner::Choices none{.remedies = false, .other_ways = false, .flows = false};
    std::vector<planner::Plan> plans;
    std::vector<std::string> labels;
    for (const Variant& variant : variants_of(options)) {
        plans.push_back(planned(variant.trip, none, console));
        const std::optional<planner::FlowLevel> level = variant.trip.flow;
        const bool given = !level || gives(plans.back().trip, *level);
        labels.push_back(variant.label + (given ? "" : ", a level that none of its rivers gives"));
    }
    const planner::Comparison comparison = planner::compare(std::move(plans));
    switch (options.format) {
    case CompareFormat::text:
        console.out << compare_text(
            comparison,
            labels,
            reader_of({.trip = {}, .settings = {}, .units = options.units, .show = options.show},
                      comparison.plans.front().trip,
                      console));
        break;
    case CompareFormat::json:
        console.out << compare_json(comparison, labels, version());
        break;
    }
    const bool all =
        std::all_of(comparison.plans.begin(), comparison.plans.end(), [&](const auto& plan) {
            return exit_code(plan, options.strict) == ExitCode::done;
        });
    return all ? ExitCode::done : ExitCode::no_plan;
}

} // namespace tumpline::cli

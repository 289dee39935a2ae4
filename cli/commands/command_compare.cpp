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

void check_count(const CompareOptions& options) {
    const std::size_t trips = options.trips.size();
    if (trips > most_trips)
        throw geo::InputError({{.file = "tumpline compare",
                                .place = "",
                                .found = fmt::format("{} trips", trips),
                                .expected = fmt::format("at most {}", most_trips),
                                .advice = ""}});
    if (trips == 1 && options.settings.empty())
        throw geo::InputError({{.file = "tumpline compare",
                                .place = "",
                                .found = "one trip and no --set",
                                .expected = "two trips, or one and what is to be changed in it",
                                .advice = "add --set POINTER=VALUE, like --set /days/hours=7"}});
}

/// What each plan is called on the page, besides its letter.
std::vector<std::string> labels_of(const CompareOptions& options) {
    std::vector<std::string> labels;
    for (const std::filesystem::path& trip : options.trips)
        labels.push_back(trip.string());
    std::vector<std::string> changes;
    for (const planner::Setting& setting : options.settings)
        changes.push_back(fmt::format("{}={}", setting.pointer, setting.value));
    const std::string with = fmt::format("{}", fmt::join(changes, ", "));
    if (options.trips.size() == 1)
        return {labels.front(), fmt::format("{} with {}", labels.front(), with)};
    if (!with.empty())
        for (std::string& label : labels)
            label += fmt::format(" with {}", with);
    return labels;
}

} // namespace

ExitCode compare(const CompareOptions& options, Console console) {
    check_count(options);
    constexpr planner::Choices none{.remedies = false, .other_ways = false, .flows = false};
    std::vector<planner::Plan> plans;
    if (options.trips.size() == 1)
        plans.push_back(planned({.trip = options.trips.front(), .settings = {}}, none, console));
    for (const std::filesystem::path& trip : options.trips)
        plans.push_back(planned({.trip = trip, .settings = options.settings}, none, console));
    const planner::Comparison comparison = planner::compare(std::move(plans));
    const std::vector<std::string> labels = labels_of(options);
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

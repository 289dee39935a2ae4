// From settings to the finished plan and what is written of it. An input is text: the name of a
// sample trip, then lines "POINTER=VALUE" as `--set` takes them. Most of them plan, since the
// mutator deals in whole lines of tests/fuzz/edits.txt and numbers near theirs; how many is told
// at the end. A trip is refused with a problem, or its plan holds: figures are finite, packs no
// less than nothing, JSON can be read back.
#include "cli/export/export_csv.h"
#include "cli/export/export_gpx.h"
#include "cli/json/plan_json.h"
#include "geo/input_error.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/text_lines.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

using namespace tumpline;
using test::lines_of;

constexpr std::array<const char*, 6> samples{"saddle",
                                             "three-day-pass",
                                             "lake-chain",
                                             "desert-river",
                                             "fourteen-portages",
                                             "five-over-two-passes"};

std::string text_of(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in)
        std::abort(); // the sources are not where they were
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

const std::filesystem::path root = TUMPLINE_SOURCE_DIR;

/// How many inputs were planned, and how many refused.
struct Tally {
    long planned = 0;
    long refused = 0;

    Tally() = default;
    Tally(const Tally&) = delete;
    Tally& operator=(const Tally&) = delete;

    ~Tally() { std::fprintf(stderr, "whole plans: %ld planned, %ld refused\n", planned, refused); }
};

Tally& tally() {
    static Tally counts;
    return counts;
}

void need(bool holds) {
    if (!holds)
        std::abort();
}

void look_at(const planner::Plan& plan, const planner::Route& route) {
    need(!plan.days.empty() && !plan.legs.empty());
    for (const double figure : {plan.totals.distance_m,
                                plan.totals.moving_s,
                                plan.totals.elapsed_s,
                                plan.totals.food_kg,
                                plan.totals.fuel_kg,
                                plan.totals.energy_j})
        need(std::isfinite(figure) && figure >= 0.0);
    for (const planner::PlanLeg& leg : plan.legs)
        for (const planner::MemberLoad& load : leg.loads) {
            need(std::isfinite(load.energy_j) && load.pack_start_kg >= 0.0 &&
                 load.pack_end_kg >= 0.0 && load.pack_max_kg >= load.pack_start_kg - 1e-6);
            need(std::abs(load.parts.sum_kg() - load.pack_max_kg) < 1e-6);
        }
    const std::string json = cli::plan_json(plan, "fuzz.json");
    need(nlohmann::json::accept(json));
    need(!cli::export_gpx(plan, route).empty());
    need(cli::export_csv(plan).size() == cli::csv_table_names().size());
}

/// A number in a line made another: twice, half, a tenth more, none, next to none.
std::string other_number(const std::string& line, std::minstd_rand& draws) {
    std::vector<std::size_t> starts;
    for (std::size_t at = 0; at < line.size(); ++at)
        if (line[at] >= '0' && line[at] <= '9' &&
            (at == 0 || ((line[at - 1] < '0' || line[at - 1] > '9') && line[at - 1] != '.')))
            starts.push_back(at);
    if (starts.empty())
        return line;
    const std::size_t start = starts[draws() % starts.size()];
    std::size_t end = start;
    while (end < line.size() && ((line[end] >= '0' && line[end] <= '9') || line[end] == '.'))
        ++end;
    const double number = std::atof(line.substr(start, end - start).c_str());
    static constexpr std::array<double, 8> factors{0.5, 2.0, 1.1, 0.9, 0.0, 3.0, 0.1, 10.0};
    const double changed = number * factors[draws() % factors.size()] + double(draws() % 3);
    const bool whole = line.find('.', start) >= end;
    char shown[40];
    std::snprintf(shown, sizeof shown, whole ? "%.0f" : "%.3g", changed);
    return line.substr(0, start) + shown + line.substr(end);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::vector<std::string> trips = [] {
        std::vector<std::string> texts;
        for (const char* sample : samples)
            texts.push_back(text_of(root / "sample-routes" / sample / "trip.json"));
        return texts;
    }();
    const std::vector<std::string> lines =
        lines_of(std::string(reinterpret_cast<const char*>(data), size));
    if (lines.empty() || lines.size() > 40)
        return -1;
    const auto sample = std::find(samples.begin(), samples.end(), lines.front());
    if (sample == samples.end())
        return -1;
    std::vector<planner::Setting> settings;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const std::size_t equals = lines[i].find('=');
        if (equals == std::string::npos || lines[i].starts_with("/route/tracks") ||
            lines[i].starts_with("/route/elevation"))
            return -1; // other files are the matter of other targets
        settings.push_back({lines[i].substr(0, equals), lines[i].substr(equals + 1)});
    }
    try {
        const planner::Trip trip =
            planner::read_trip_text(trips[static_cast<std::size_t>(sample - samples.begin())],
                                    root / "sample-routes" / *sample / "trip.json",
                                    settings);
        const planner::Route route = planner::build_route(trip);
        look_at(planner::make_plan(trip, route), route);
        ++tally().planned;
    } catch (const geo::InputError& error) {
        need(!error.problems().empty());
        ++tally().refused;
    }
    return 0;
}

extern "C" std::size_t
LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned int seed) {
    static const std::vector<std::string> edits = lines_of(text_of(root / "tests/fuzz/edits.txt"));
    std::minstd_rand draws(seed);
    draws.discard(3);
    if (draws() % 25 == 0)
        return LLVMFuzzerMutate(data, size, most);
    std::vector<std::string> lines =
        lines_of(std::string(reinterpret_cast<const char*>(data), size));
    if (lines.empty())
        lines.emplace_back(samples[draws() % samples.size()]);
    const std::size_t at = lines.size() > 1 ? 1 + draws() % (lines.size() - 1) : 0;
    switch (draws() % 8) {
    case 0:
        lines.front() = samples[draws() % samples.size()];
        break;
    case 1:
        if (at > 0)
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
        break;
    case 2:
    case 3:
    case 4:
        if (at > 0)
            lines[at] = other_number(lines[at], draws);
        break;
    default:
        lines.push_back(edits[draws() % edits.size()]);
        break;
    }
    std::string text;
    for (const std::string& line : lines)
        text += line + "\n";
    const std::size_t length = std::min(text.size(), most);
    std::copy_n(text.begin(), length, data);
    return length;
}

#include "geo/lines/geodesic.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/solution/fixed_point.h"
#include "tests/support/random_trip.h"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace tumpline::planner {
namespace {

constexpr std::size_t people = 4;
constexpr std::size_t leg_count = 30;
constexpr int day_count = 14;

/// The leg's line, bending as ways do, and hills of its own.
RouteLeg leg_of(std::size_t number, Travel travel, double length_m) {
    constexpr double step_m = 25.0;
    const auto steps = static_cast<std::size_t>(length_m / step_m);
    std::vector<geo::Position> points;
    geo::Profile profile;
    geo::Position at{.lat_deg = 45.0 + 0.1 * static_cast<double>(number), .lon_deg = -40.0};
    for (std::size_t i = 0; i <= steps; ++i) {
        const auto turn = static_cast<double>(i);
        points.push_back(at);
        at = geo::destination(
            at, 30.0 * std::sin(0.05 * turn + static_cast<double>(number)), step_m);
        profile.heights_m.push_back(
            travel == Travel::paddle ? 300.0 : 600.0 + 150.0 * std::sin(0.02 * turn));
    }
    geo::Polyline line(std::move(points));
    profile.length_m = line.length_m();
    profile.step_m = profile.length_m / static_cast<double>(steps);
    profile.source = geo::HeightSource::raster;
    RouteLeg leg{.name = fmt::format("leg {}", number + 1),
                 .travel = travel,
                 .spec = {},
                 .line = std::move(line),
                 .from_m = 0.0,
                 .to_m = 0.0,
                 .profile = std::move(profile),
                 .turned_round = false};
    leg.spec.name = leg.name;
    leg.spec.travel = travel;
    if (travel == Travel::paddle)
        leg.spec.water = Water::lake;
    return leg;
}

/// An invented fortnight of thirty legs for four: a walk, a lake, a carry, a lake and so on, with
/// sixty things, two canoes, conditions, a resupply and dry camps.
test::RandomTrip fortnight() {
    test::RandomTrip made;
    Trip& trip = made.trip;
    Route& route = made.route;
    trip.file = "fortnight.json";
    trip.name = "A fortnight for four";
    trip.start = std::chrono::year(2027) / 6 / 5;
    trip.time_zone = "UTC";
    constexpr std::array ways{Travel::walk, Travel::paddle, Travel::portage, Travel::paddle};
    for (std::size_t i = 0; i < leg_count; ++i) {
        const Travel travel = ways[i % ways.size()];
        RouteLeg leg = leg_of(i, travel, travel == Travel::portage ? 900.0 : 7000.0);
        leg.from_m = route.length_m;
        leg.to_m = leg.from_m + leg.line.length_m();
        route.length_m = leg.to_m;
        trip.route.legs.push_back(leg.spec);
        route.legs.push_back(std::move(leg));
    }
    for (int night = 1; night < day_count; ++night) {
        TripPlace camp;
        camp.name = fmt::format("camp {}", night);
        camp.kind = night == 7 ? PlaceKind::resupply : PlaceKind::camp;
        camp.water = night % 5 != 0;
        const std::size_t leg = static_cast<std::size_t>(night) * leg_count / day_count;
        const double along_m = route.legs[leg].from_m;
        camp.at = route.at(along_m);
        trip.days.nights.push_back(camp.name);
        route.places.push_back({.name = camp.name,
                                .kind = camp.kind,
                                .at = *camp.at,
                                .along_m = along_m,
                                .off_m = 0.0,
                                .leg = LegNumber::of_index(leg),
                                .spec = trip.route.places.size()});
        trip.route.places.push_back(camp);
    }
    for (std::size_t i = 0; i < people; ++i) {
        Member member;
        member.name = fmt::format("member {}", i + 1);
        member.body_kg = 58.0 + 9.0 * static_cast<double>(i);
        trip.party.push_back(member);
    }
    for (std::size_t i = 0; i < 2; ++i) {
        Craft canoe;
        canoe.name = fmt::format("canoe {}", i + 1);
        canoe.kind = CraftKind::tandem_canoe;
        canoe.mass_kg = 24.0;
        canoe.crew = {trip.party[2 * i].name, trip.party[2 * i + 1].name};
        trip.craft.push_back(canoe);
    }
    for (std::size_t i = 0; i < 60; ++i) {
        KitItem item;
        item.name = fmt::format("thing {}", i + 1);
        item.mass_kg = 0.1 + 0.05 * static_cast<double>(i % 17);
        if (i % 3 != 0)
            item.owner = trip.party[i % people].name;
        if (i % 7 == 0)
            item.afloat = ItemUse::used;
        item.gets_wet = i % 11 == 0;
        if (i % 10 == 0)
            item.when.push_back({.river_class = 3,
                                 .rain = std::nullopt,
                                 .water_below_c = std::nullopt,
                                 .night_below_c = std::nullopt,
                                 .snow = std::nullopt,
                                 .open_crossing = std::nullopt});
        trip.kit.push_back(item);
    }
    trip.weather.wind_mps = 3.0;
    trip.weather.wind_from_deg = 270.0;
    return made;
}

/// The whole plan once the route is read: what a change of a setting costs.
void plan_again(benchmark::State& state) {
    const test::RandomTrip made = fortnight();
    Plan plan;
    for (auto _ : state) {
        plan = make_plan(made.trip, made.route);
        benchmark::DoNotOptimize(plan);
    }
    if (plan.days.size() != day_count || made.route.legs.size() != leg_count ||
        plan.legs.size() < leg_count || plan.trip.party.size() != people ||
        plan.ledger.entries.empty())
        state.SkipWithError("not the fortnight that was asked for");
    state.counters["days"] = static_cast<double>(plan.days.size());
    state.counters["legs"] = static_cast<double>(made.route.legs.size());
    state.counters["rounds"] = plan.converged.rounds;
}

BENCHMARK(plan_again)->Unit(benchmark::kMillisecond);

void settle_once(benchmark::State& state) {
    const test::RandomTrip random = fortnight();
    const Prepared prepared = prepare(random.trip, random.route);
    SolveOptions options;
    if (!random.trip.days.nights.empty())
        options.nights = listed_nights(prepared);
    const Solved first = solve(prepared, options);
    options.record = false;
    options.warm_start = &first.loads;
    options.nights = first.nights;
    int rounds = 0;
    for (auto _ : state) {
        const Solved settled = solve(prepared, options);
        rounds = settled.converged.rounds;
    }
    state.counters["rounds"] = rounds;
    state.counters["stretches"] = static_cast<double>(prepared.stretches.stretches.size());
}

BENCHMARK(settle_once)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace tumpline::planner

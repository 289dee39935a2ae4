#include "planner/decisions/odds.h"

#include "geo/input_error.h"
#include "planner/conditions/departures.h"
#include "planner/decisions/odds_table.h"
#include "planner/loads/limits.h"
#include "planner/make_plan.h"
#include "planner/results/days.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double a_gram_kg = 1e-3;

/// The share of draws for which something holds.
template <typename Holds> double chance(const std::vector<double>& values, const Holds& holds) {
    return static_cast<double>(std::count_if(values.begin(), values.end(), holds)) /
           static_cast<double>(values.size());
}

/// Counts what stands in the table.
class Counter {
  public:
    Counter(const Assembly& draft, const OddsColumns& columns, const OddsTable& table, Odds& odds)
        : draft_(draft), columns_(columns), table_(table), odds_(odds) {}

    void days();
    void appointments();
    void departures();
    void rivers();
    void legs();
    void stages();
    void water();
    void influences();
    void remarks();

  private:
    [[nodiscard]] std::vector<OddsDeparture> departures_from(sys_seconds first) const;
    [[nodiscard]] InstantQuantiles instants(const Quantiles& after_midnight_s, int day) const;
    void lead(OddsDay& one, std::size_t d) const;

    const Assembly& draft_;
    const OddsColumns& columns_;
    const OddsTable& table_;
    Odds& odds_;
};

InstantQuantiles Counter::instants(const Quantiles& after_midnight_s, int day) const {
    return {.q05 = instant(draft_, day, after_midnight_s.q05),
            .q10 = instant(draft_, day, after_midnight_s.q10),
            .q50 = instant(draft_, day, after_midnight_s.q50),
            .q90 = instant(draft_, day, after_midnight_s.q90),
            .q95 = instant(draft_, day, after_midnight_s.q95)};
}

/// Which assumption the arrival of a day depends on most; wind and form as they are on that day.
void Counter::lead(OddsDay& one, std::size_t d) const {
    const std::vector<double> arrive = ranks(table_.column(columns_.arrive + d));
    for (std::size_t a = 0; a < all_assumptions.size(); ++a) {
        const Assumption assumption = all_assumptions[a];
        const std::size_t column = assumption == Assumption::wind ? columns_.day_factor + 2 * d
                                   : assumption == Assumption::day_form
                                       ? columns_.day_factor + 2 * d + 1
                                       : columns_.factor + a;
        const double found = correlation(ranks(table_.column(column)), arrive);
        if (std::abs(found) > std::abs(one.leading_correlation)) {
            one.leading = assumption;
            one.leading_correlation = found;
        }
    }
}

void Counter::days() {
    for (std::size_t d = 0; d < columns_.days; ++d) {
        const PlanDay& planned = odds_.plan.days[d];
        if (planned.rest_day)
            continue;
        const std::vector<double>& arrive = table_.column(columns_.arrive + d);
        OddsDay one;
        one.day = planned.day;
        one.arrive = instants(quantiles(arrive), planned.day);
        if (planned.light.twilight.day == geo::SunDay::always_below) {
            one.after_dusk = 1.0;
        } else if (const std::optional<sys_seconds> dusk = dusk_of(planned)) {
            const sys_seconds midnight = instant(draft_, planned.day, 0.0);
            const auto dusk_s = static_cast<double>((*dusk - midnight).count());
            one.after_dusk = chance(arrive, [&](double at_s) { return at_s > dusk_s; });
        }
        one.held_up = chance(table_.column(columns_.held_up + d),
                             [](double held_up) { return held_up > 0.0; });
        lead(one, d);
        odds_.days.push_back(one);
    }
}

void Counter::appointments() {
    for (std::size_t a = 0; a < columns_.appointments; ++a) {
        const PlanAppointment& planned = odds_.plan.appointments[a];
        const std::vector<double>& later_s = table_.column(columns_.reached + a);
        const Quantiles later = quantiles(later_s);
        const auto at = [&](double delay_s) {
            return planned.arrive + std::chrono::seconds{std::llround(delay_s)};
        };
        const double spare_s = planned.spare_s + planned.margin_s; // until it is missed
        OddsAppointment one;
        one.appointment = a;
        one.arrive = {at(later.q05), at(later.q10), at(later.q50), at(later.q90), at(later.q95)};
        one.missed = chance(later_s, [&](double delay_s) { return delay_s > spare_s; });
        one.within_margin = chance(later_s, [&](double delay_s) {
            return delay_s > planned.spare_s && delay_s <= spare_s;
        });
        odds_.appointments.push_back(one);
    }
}

/// All departures from the end, of every connection, in order.
std::vector<OddsDeparture> Counter::departures_from(sys_seconds first) const {
    const std::vector<Connection>& connections = draft_.prepared.trip.connections;
    std::vector<OddsDeparture> all;
    for (std::size_t c = 0; c < connections.size(); ++c) {
        if (connections[c].to_start)
            continue;
        const std::optional<sys_seconds>& taken = odds_.plan.connections[c].taken;
        for (const sys_seconds at :
             planner::departures(connections[c].times,
                                 {first, first + 2 * std::chrono::days{longest_wait_days}},
                                 draft_.prepared.assumed.time_zone))
            all.push_back({.connection = c,
                           .at = at,
                           .chance = 0.0,
                           .planned = odds_.plan.connections[c].used && taken && at == *taken});
    }
    std::stable_sort(all.begin(), all.end(), [](const OddsDeparture& a, const OddsDeparture& b) {
        return a.at < b.at;
    });
    return all;
}

void Counter::departures() {
    const PlanConnection* home = nullptr;
    for (const PlanConnection& one : odds_.plan.connections)
        if (!one.to_start && (home == nullptr || one.used))
            home = &one;
    if (home == nullptr)
        return;
    std::size_t last = columns_.days - 1;
    while (odds_.plan.days[last].rest_day)
        --last;
    const int day = odds_.plan.days[last].day;
    const std::vector<double>& arrive = table_.column(columns_.arrive + last);
    std::vector<OddsDeparture> all =
        departures_from(instant(draft_, day, *std::min_element(arrive.begin(), arrive.end())));
    const double each = 1.0 / static_cast<double>(arrive.size());
    for (const double at_s : arrive) {
        const sys_seconds there = instant(draft_, day, at_s);
        const auto taken = std::find_if(
            all.begin(), all.end(), [&](const OddsDeparture& one) { return one.at >= there; });
        (taken == all.end() ? odds_.no_departure : taken->chance) += each;
    }
    for (const OddsDeparture& one : all)
        if (one.chance > 0.0 || one.planned)
            odds_.departures.push_back(one);
    if (home->used && home->taken)
        odds_.connection_missed =
            chance(arrive, [&](double at_s) { return instant(draft_, day, at_s) > *home->taken; });
}

void Counter::rivers() {
    for (std::size_t r = 0; r < columns_.rivers.size(); ++r) {
        const LegNumber leg = columns_.rivers[r];
        const TripLeg& spec = draft_.prepared.route.legs[leg.index()].spec;
        const auto share = [&](std::size_t column) {
            return chance(table_.column(column + r), [](double yes) { return yes > 0.0; });
        };
        OddsRiver one{.leg = leg,
                      .name = draft_.prepared.route.legs[leg.index()].name,
                      .plan_mps = spec.current_mps.value_or(0.0),
                      .current_mps = quantiles(table_.column(columns_.current + r))};
        if (spec.flow->runnable)
            one.not_runnable = share(columns_.not_run);
        if (spec.river_class)
            one.harder = share(columns_.harder);
        odds_.rivers.push_back(std::move(one));
    }
}

void Counter::legs() {
    for (std::size_t l = 0; l < columns_.legs; ++l) {
        const PlanLeg& leg = odds_.plan.legs[l];
        if (!bears_packs(leg.travel))
            continue;
        OddsLeg one;
        one.plan_leg = PlanLegNumber::of_index(l);
        for (std::size_t m = 0; m < columns_.members; ++m) {
            const std::vector<double>& start_kg =
                table_.column(columns_.pack + l * columns_.members + m);
            const double limit_kg = leg.loads[m].limit_kg;
            one.packs.push_back({.member = leg.loads[m].member,
                                 .plan_kg = leg.loads[m].pack_start_kg,
                                 .start_kg = quantiles(start_kg),
                                 .over_limit = chance(start_kg, [&](double kg) {
                                     return over_limit(kg, limit_kg);
                                 })});
        }
        odds_.legs.push_back(std::move(one));
    }
}

void Counter::stages() {
    const int lost_days = std::max(1, odds_.plan.trip.days.weather_days.value_or(0));
    for (std::size_t s = 0; s < columns_.stages; ++s) {
        const SupplyStage& planned = draft_.settled.provisions.stages[s];
        const std::vector<double>& left_kg = table_.column(columns_.food_left + s);
        const std::vector<double>& eaten_kg = table_.column(columns_.food + s);
        // A lost day eats as much above or below the plan's whole day as the draw eats in the
        // stage.
        const double lost_day = planned.food_mg > 0 ? static_cast<double>(planned.whole_day_mg) /
                                                          static_cast<double>(planned.food_mg)
                                                    : 0.0;
        OddsStage one;
        one.stage = s;
        one.left_kg = quantiles(left_kg);
        for (int lost = 0; lost <= lost_days; ++lost) {
            std::size_t empty = 0;
            for (std::size_t i = 0; i < left_kg.size(); ++i)
                if (left_kg[i] - lost * eaten_kg[i] * lost_day < -a_gram_kg)
                    ++empty;
            one.runs_out.push_back(static_cast<double>(empty) /
                                   static_cast<double>(left_kg.size()));
        }
        odds_.stages.push_back(std::move(one));
    }
}

void Counter::water() {
    const AssumedWater& assumed = draft_.prepared.assumed.water;
    if (assumed.assumed_everywhere)
        return;
    for (std::size_t r = 0; r < columns_.runs; ++r) {
        const double planned_l = draft_.settled.water.runs[r].need_l;
        const double filled_l =
            std::min(assumed.capacity_l, planned_l + draft_.settled.water.held_least_l);
        constexpr double a_millilitre_l = 1e-3;
        const std::vector<double>& need_l = table_.column(columns_.water + r);
        odds_.water.push_back(
            {.stretch = r,
             .needs_more = chance(need_l, [&](double l) { return l > filled_l + a_millilitre_l; }),
             .uses_reserve = chance(need_l, [&](double l) {
                 return l > filled_l - draft_.settled.water.held_least_l + a_millilitre_l;
             })});
    }
}

void Counter::influences() {
    const std::vector<double> time = ranks(table_.column(columns_.under_way));
    const std::vector<double> food = ranks(table_.column(columns_.eaten));
    const std::vector<double> water = ranks(table_.column(columns_.drunk));
    double time_sum = 0.0;
    double food_sum = 0.0;
    double water_sum = 0.0;
    for (std::size_t a = 0; a < all_assumptions.size(); ++a) {
        const std::vector<double> factor = ranks(table_.column(columns_.factor + a));
        Influence one;
        one.assumption = all_assumptions[a];
        one.spread = odds_.spread.of(all_assumptions[a]);
        one.time = correlation(factor, time);
        one.food = correlation(factor, food);
        one.water = correlation(factor, water);
        time_sum += one.time * one.time;
        food_sum += one.food * one.food;
        water_sum += one.water * one.water;
        odds_.influences.push_back(one);
    }
    const auto share = [](double found, double sum) {
        return sum > 0.0 ? found * found / sum : 0.0;
    };
    for (Influence& one : odds_.influences) {
        one.time_share = share(one.time, time_sum);
        one.food_share = share(one.food, food_sum);
        one.water_share = share(one.water, water_sum);
    }
}

void Counter::remarks() {
    odds_.remarks.emplace_back(
        "Every draw keeps the plan's nights: a party that is late here goes on in the dark, where "
        "a prudent one would stop and lose a day. Read a chance of arriving after dusk as one of "
        "having to stop short.");
    odds_.remarks.emplace_back(
        "What is not drawn is not in the odds: floods and cold, illness, a lost boat, a closed "
        "road. Ask the local authority and somebody who knows the river now.");
    const std::vector<Stretch>& stretches = draft_.prepared.stretches.stretches;
    const bool paddles = std::any_of(
        stretches.begin(), stretches.end(), [](const Stretch& one) { return one.afloat(); });
    if (paddles && draft_.prepared.assumed.weather.wind_mps <= 0.0)
        odds_.remarks.emplace_back("No wind is given (/weather/wind), so none is drawn: on open "
                                   "water these odds are too good.");
    if (!draft_.settled.converged.settled)
        odds_.remarks.emplace_back("The plan itself converged only by keeping the safer of two "
                                   "choices; some draws may choose the other.");
}

void refuse_too_many(const Trip& trip, const OddsColumns& columns, std::size_t draws) {
    constexpr std::size_t most_figures = 64'000'000; // of 8 bytes
    if (draws <= most_figures / columns.count)
        return;
    throw geo::InputError({{.file = trip.file.string(),
                            .place = "--draws",
                            .found = fmt::format("{}", draws),
                            .expected = fmt::format("at most {} for a trip of this size",
                                                    most_figures / columns.count),
                            .advice = ""}});
}

} // namespace

Odds odds_of(const Trip& trip, const Route& route, const OddsOptions& options) {
    return *watched_odds_of(trip, route, options, {}); // nobody stops it
}

std::optional<Odds> watched_odds_of(const Trip& trip,
                                    const Route& route,
                                    const OddsOptions& options,
                                    const DrawWatch& watch) {
    const Prepared prepared = prepare(trip, route);
    const Solved settled = settle_trip(prepared);
    const Assembly draft{prepared, settled};
    Odds odds;
    odds.plan = assemble_plan(prepared, settled);
    odds.options = options;
    odds.spread = assume_spread(trip.spread, pace_known(trip, prepared.assumed));
    const OddsColumns columns(draft, odds.plan.legs.size());
    refuse_too_many(trip, columns, options.draws);
    const std::optional<OddsTable> drawn = draw_all({.draft = draft,
                                                     .columns = columns,
                                                     .spread = odds.spread,
                                                     .seed = options.seed,
                                                     .draws = options.draws,
                                                     .threads = options.threads,
                                                     .watch = watch});
    if (!drawn)
        return std::nullopt;
    const OddsTable& table = *drawn;
    odds.under_way_s = quantiles(table.column(columns.under_way));
    Counter counter(draft, columns, table, odds);
    counter.days();
    counter.appointments();
    counter.departures();
    counter.rivers();
    counter.legs();
    counter.stages();
    counter.water();
    counter.influences();
    counter.remarks();
    return std::optional(std::move(odds));
}

} // namespace tumpline::planner

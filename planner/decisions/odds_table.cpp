#include "planner/decisions/odds_table.h"

#include "planner/decisions/drawn_flow.h"
#include "planner/defaults/wind_shy.h"
#include "planner/results/appointments.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <mutex>
#include <numeric>
#include <optional>
#include <thread>

namespace tumpline::planner {

namespace {

constexpr double kg_per_mg = 1e-6;

/// Draws stop where no pack changes by 50 g and no arrival by 5 s: far below what is drawn.
SolveOptions loose_options(const Solved& planned, const Assumed& assumed) {
    SolveOptions options;
    options.nights = planned.nights;
    options.record = false;
    options.close_kg = 0.05;
    options.close_s = 5.0;
    options.most_rounds = 20;
    options.assumed = &assumed;
    options.packed = &planned;
    options.warm_start = &planned.loads;
    return options;
}

/// The crossings on which the wind must stay below the crafts' ceilings, and the lowest of these.
struct Crossings {
    std::vector<bool> open; ///< per stretch
    std::optional<double> ceiling_mps;
};

Crossings open_crossings(const Prepared& prepared) {
    Crossings crossings;
    for (const Stretch& stretch : prepared.stretches.stretches)
        crossings.open.push_back(
            stretch.afloat() &&
            prepared.route.legs[stretch.leg.index()].spec.open_crossing.value_or(false));
    const std::vector<AssumedCraft>& craft = prepared.assumed.craft;
    if (const std::optional<std::size_t> shy = most_wind_shy(craft))
        crossings.ceiling_mps = craft[*shy].wind_ceiling_mps;
    return crossings;
}

/// Settles one draw after the other and writes down its figures.
class Drawer {
  public:
    Drawer(const Drawing& drawing, const Solved& planned, OddsTable& table)
        : in_(drawing), planned_(planned), table_(table), assumed_(drawing.draft.prepared.assumed),
          crossings_(open_crossings(drawing.draft.prepared)) {
        assumed_.models_used.clear();
        assumed_.defaults.clear();
        for (std::size_t d = 0; d < planned.timeline.days.size(); ++d)
            for (std::size_t i = planned.timeline.days[d].first; i < planned.timeline.days[d].last;
                 ++i)
                assumed_.departures.day_of.push_back(d);
        take_rivers();
    }

    void settle_draw(std::size_t index);

  private:
    /// A river whose level is drawn.
    struct River {
        FlowScale scale;
        double now;
        FlowState planned;
        RiverFlow flow;
    };

    void take_rivers();
    void draw_rivers(std::size_t index, const Draw& drawn);
    void note_factors(std::size_t index, const Draw& drawn);
    void note_days(std::size_t index, const Solved& settled);
    void note_packs(std::size_t index, const Solved& settled);
    void note_food(std::size_t index, const Solved& settled);
    void note_water(std::size_t index, const Solved& settled);

    const Drawing& in_;
    const Solved& planned_;
    OddsTable& table_;
    Assumed assumed_;
    Crossings crossings_;
    std::vector<River> rivers_;
    std::vector<std::optional<std::size_t>> river_of_; ///< per stretch, index into rivers_
};

void Drawer::take_rivers() {
    const Prepared& prepared = in_.draft.prepared;
    for (const LegNumber leg : in_.columns.rivers) {
        const RiverFlow& flow = *prepared.route.legs[leg.index()].spec.flow;
        const FlowScale scale(flow);
        const double now = scale.now().value();
        rivers_.push_back({scale, now, scale.at(now), flow});
    }
    for (const Stretch& stretch : prepared.stretches.stretches) {
        const auto& legs = in_.columns.rivers;
        const auto found = std::find(legs.begin(), legs.end(), stretch.leg);
        river_of_.push_back(found == legs.end()
                                ? std::nullopt
                                : std::optional(static_cast<std::size_t>(found - legs.begin())));
    }
}

/// All rivers are high together, as one rain makes them.
void Drawer::draw_rivers(std::size_t index, const Draw& drawn) {
    if (rivers_.empty())
        return;
    const double shift = flow_shift(std::log(drawn.current) / usual_current_spread);
    std::vector<double> factors;
    for (std::size_t r = 0; r < rivers_.size(); ++r) {
        const River& river = rivers_[r];
        const FlowState state = river.scale.at(river.now + shift);
        factors.push_back(
            river.planned.current_mps != 0.0 ? state.current_mps / river.planned.current_mps : 1.0);
        const bool runs = is_runnable(river.flow, state).value_or(true);
        const bool harder = state.river_class && river.planned.river_class &&
                            *state.river_class > *river.planned.river_class;
        table_.at(in_.columns.current + r, index) = state.current_mps;
        table_.at(in_.columns.not_run + r, index) = runs ? 0.0 : 1.0;
        table_.at(in_.columns.harder + r, index) = harder ? 1.0 : 0.0;
    }
    std::vector<double>& currents = assumed_.departures.current_of;
    currents.assign(river_of_.size(), drawn.current);
    for (std::size_t i = 0; i < river_of_.size(); ++i)
        if (river_of_[i])
            currents[i] = factors[*river_of_[i]];
}

void Drawer::settle_draw(std::size_t index) {
    Normals normals(seed_of(in_.seed, index));
    const Draw drawn =
        draw(normals, in_.spread, {.days = in_.columns.days, .members = in_.columns.members});
    apply(drawn, in_.draft.prepared.assumed, assumed_);
    draw_rivers(index, drawn);
    const Solved settled = solve(in_.draft.prepared, loose_options(planned_, assumed_));
    note_factors(index, drawn);
    note_days(index, settled);
    note_packs(index, settled);
    note_food(index, settled);
    note_water(index, settled);
}

void Drawer::note_factors(std::size_t index, const Draw& drawn) {
    for (std::size_t a = 0; a < all_assumptions.size(); ++a)
        table_.at(in_.columns.factor + a, index) = factor_of(drawn, all_assumptions[a]);
    for (std::size_t d = 0; d < in_.columns.days; ++d) {
        table_.at(in_.columns.day_factor + 2 * d, index) = factor_of(drawn, Assumption::wind, d);
        table_.at(in_.columns.day_factor + 2 * d + 1, index) =
            factor_of(drawn, Assumption::day_form, d);
    }
}

void Drawer::note_days(std::size_t index, const Solved& settled) {
    const Timeline& timeline = settled.timeline;
    double under_way_s = 0.0;
    for (std::size_t d = 0; d < in_.columns.days; ++d) {
        table_.at(in_.columns.arrive + d, index) = timeline.arrive_s[d];
        bool held_up = false;
        for (std::size_t i = timeline.days[d].first; i < timeline.days[d].last; ++i) {
            under_way_s += timeline.stretches[i].end_s - timeline.stretches[i].start_s;
            held_up = held_up || settled.afloat[i].paddle.stopped ||
                      (crossings_.open[i] && crossings_.ceiling_mps &&
                       settled.afloat[i].met.strongest_mps() > *crossings_.ceiling_mps);
        }
        table_.at(in_.columns.held_up + d, index) = held_up ? 1.0 : 0.0;
    }
    table_.at(in_.columns.under_way, index) = under_way_s;
    for (std::size_t a = 0; a < in_.columns.appointments; ++a) {
        const std::size_t boundary =
            appointment_boundary(in_.draft, in_.draft.prepared.trip.appointments[a]);
        table_.at(in_.columns.reached + a, index) =
            boundary == 0 ? 0.0
                          : timeline.stretches[boundary - 1].end_s -
                                planned_.timeline.stretches[boundary - 1].end_s;
    }
}

void Drawer::note_packs(std::size_t index, const Solved& settled) {
    const std::vector<PlanLegNumber>& plan_leg = planned_.loads.plan_leg;
    for (std::size_t i = 0; i < plan_leg.size(); ++i) {
        if (i > 0 && plan_leg[i] == plan_leg[i - 1])
            continue;
        for (std::size_t m = 0; m < in_.columns.members; ++m)
            table_.at(in_.columns.pack + plan_leg[i].index() * in_.columns.members + m, index) =
                settled.loads.stretches[i].start_kg[m];
    }
}

void Drawer::note_food(std::size_t index, const Solved& settled) {
    const auto kg = [](std::int64_t mass_mg) { return static_cast<double>(mass_mg) * kg_per_mg; };
    double left_kg = 0.0;
    double eaten_kg = 0.0;
    std::int64_t reserve_before_mg = 0;
    for (std::size_t s = 0; s < in_.columns.stages; ++s) {
        const SupplyStage& packed = planned_.provisions.stages[s];
        // A stage is packed with its food and with what its reserve exceeds the one before by.
        const double had_kg =
            left_kg +
            kg(packed.food_mg + std::max<std::int64_t>(0, packed.reserve_mg - reserve_before_mg));
        reserve_before_mg = std::max(reserve_before_mg, packed.reserve_mg);
        const double stage_kg = kg(settled.provisions.stages[s].food_mg);
        table_.at(in_.columns.food + s, index) = stage_kg;
        table_.at(in_.columns.food_left + s, index) = had_kg - stage_kg;
        left_kg = std::max(0.0, had_kg - stage_kg);
        eaten_kg += stage_kg;
    }
    table_.at(in_.columns.eaten, index) = eaten_kg;
}

void Drawer::note_water(std::size_t index, const Solved& settled) {
    for (std::size_t r = 0; r < in_.columns.runs && r < settled.water.runs.size(); ++r)
        table_.at(in_.columns.water + r, index) = settled.water.runs[r].need_l;
    table_.at(in_.columns.drunk, index) =
        std::accumulate(settled.water.drunk_l.begin(), settled.water.drunk_l.end(), 0.0);
}

} // namespace

OddsColumns::OddsColumns(const Assembly& draft, std::size_t plan_legs)
    : days(draft.settled.timeline.days.size()), members(draft.prepared.assumed.members.size()),
      legs(plan_legs), stages(draft.settled.provisions.stages.size()),
      runs(draft.settled.water.runs.size()), appointments(draft.prepared.trip.appointments.size()),
      count(0) {
    for (std::size_t leg = 0; leg < draft.prepared.route.legs.size(); ++leg) {
        const TripLeg& spec = draft.prepared.route.legs[leg].spec;
        if (spec.flow && FlowScale(*spec.flow).now())
            rivers.push_back(LegNumber::of_index(leg));
    }
    const auto take = [&](std::size_t columns) {
        const std::size_t first = count;
        count += columns;
        return first;
    };
    arrive = take(days);
    held_up = take(days);
    factor = take(all_assumptions.size());
    day_factor = take(2 * days);
    pack = take(legs * members);
    food = take(stages);
    food_left = take(stages);
    water = take(runs);
    reached = take(appointments);
    under_way = take(1);
    eaten = take(1);
    drunk = take(1);
    current = take(rivers.size());
    not_run = take(rivers.size());
    harder = take(rivers.size());
}

std::optional<OddsTable> draw_all(const Drawing& drawing) {
    OddsTable table(drawing.draws, drawing.columns.count);
    Solved planned = drawing.draft.settled;
    planned.loads.ledger = {}; // every draw starts from a copy of these loads
    std::atomic<std::size_t> next = 0;
    std::size_t done = 0;
    bool stopped = false;
    std::exception_ptr fault;
    std::mutex telling;
    const auto tell = [&] {
        const std::scoped_lock lock(telling);
        if (!stopped && drawing.watch && !drawing.watch(++done)) {
            stopped = true;
            next = drawing.draws;
        }
    };
    const auto work = [&] {
        try {
            Drawer drawer(drawing, planned, table);
            for (std::size_t index = next++; index < drawing.draws; index = next++) {
                drawer.settle_draw(index);
                tell();
            }
        } catch (...) {
            const std::scoped_lock lock(telling);
            fault = std::current_exception();
            next = drawing.draws;
        }
    };
    {
        std::vector<std::jthread> others;
        for (std::size_t t = 1; t < std::min(drawing.threads, drawing.draws); ++t)
            others.emplace_back(work);
        work();
    }
    if (fault)
        std::rethrow_exception(fault);
    if (stopped)
        return std::nullopt;
    return table;
}

} // namespace tumpline::planner

#include "planner/results/supplies.h"

#include "planner/conditions/calendar.h"
#include "planner/quantities/milligrams.h"
#include "planner/solution/night_costs.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <numeric>

namespace tumpline::planner {

namespace {

/// What one stage gives to one day.
struct DayShare {
    int day;
    std::int64_t food_mg;
};

/// What is eaten out of one stage.
struct StageFood {
    std::array<std::vector<std::int64_t>, 3> mg; ///< by meal and member
    std::array<double, 3> rations{};
    std::vector<DayShare> days;
};

/// Goes through the days' meals and puts each to the stage that gives it.
class StageAccounts {
  public:
    explicit StageAccounts(const Assembly& draft)
        : draft_(draft), members_(draft.prepared.assumed.members.size()),
          stages_(draft.settled.provisions.stages.size()) {
        for (StageFood& stage : stages_)
            stage.mg.fill(std::vector<std::int64_t>(members_, 0));
        for (std::size_t d = 0; d < draft.settled.timeline.days.size(); ++d)
            add_day(d);
    }

    [[nodiscard]] const std::vector<StageFood>& stages() const { return stages_; }

  private:
    struct Ration {
        std::size_t stage;
        Meal meal;
    };

    void add_day(std::size_t d);

    void add(const Ration& ration, std::size_t member, std::int64_t mass_mg) {
        StageFood& stage = stages_[ration.stage];
        stage.mg[static_cast<std::size_t>(ration.meal)][member] += mass_mg;
        stage.days.back().food_mg += mass_mg;
    }

    const Assembly& draft_;
    std::size_t members_;
    std::vector<StageFood> stages_;
};

void StageAccounts::add_day(std::size_t d) {
    const Provisions& provisions = draft_.settled.provisions;
    const DaySpan& day = draft_.settled.timeline.days[d];
    const std::size_t morning = provisions.day_stage_morning[d];
    const std::size_t evening = provisions.day_stage_evening[d];
    for (std::size_t s = morning; s <= evening; ++s)
        stages_[s].days.push_back({day.day, 0});
    std::vector<double> trail_mg(stages_.size(), 0.0);
    double day_trail_mg = 0.0;
    for (std::size_t m = 0; m < members_; ++m) {
        const auto& [breakfast_mg, whole_mg, dinner_mg] = provisions.eaten[d][m];
        add({morning, Meal::breakfast}, m, breakfast_mg);
        add({evening, Meal::dinner}, m, dinner_mg);
        const auto take = [&](std::size_t stage, std::int64_t part_mg) {
            add({stage, Meal::trail}, m, part_mg);
            trail_mg[stage] += static_cast<double>(part_mg);
            day_trail_mg += static_cast<double>(part_mg);
        };
        take(evening,
             deal_trail(
                 whole_mg, day, draft_.settled.timeline, [&](std::size_t i, std::int64_t part_mg) {
                     take(provisions.stretch_stage[i], part_mg);
                 }));
    }
    const MealMasses& first = provisions.eaten[d].front();
    if (first[0] > 0)
        stages_[morning].rations[0] += 1.0;
    if (first[2] > 0)
        stages_[evening].rations[2] += 1.0;
    for (std::size_t s = morning; s <= evening && day_trail_mg > 0.0; ++s)
        stages_[s].rations[1] += trail_mg[s] / day_trail_mg;
}

void add_meals(Stage& stage, const StageFood& food) {
    stage.member_food_kg.assign(food.mg.front().size(), 0.0);
    for (const Meal meal : {Meal::breakfast, Meal::trail, Meal::dinner}) {
        const auto k = static_cast<std::size_t>(meal);
        StageMeal one{.meal = meal, .rations = food.rations.at(k), .food_kg = {}};
        for (std::size_t m = 0; m < food.mg.at(k).size(); ++m) {
            one.food_kg.push_back(mg_to_kg(food.mg.at(k)[m]));
            stage.member_food_kg[m] += one.food_kg.back();
        }
        stage.meals.push_back(std::move(one));
    }
}

/// A stage of which some days are lost after its first one.
class Losing {
  public:
    Losing(const Stage& stage, const SupplyStage& supply, const StageFood& food)
        : stage_(stage), supply_(supply), food_(food), eaten_kg_(mg_to_kg(supply.food_mg)),
          day_kg_(mg_to_kg(supply.whole_day_mg)) {
        const double bare = stage.food_kg > 0.0 ? 1.0 - stage.packaging_kg / stage.food_kg : 1.0;
        there_kg_ = eaten_kg_ + mg_to_kg(supply.reserve_mg) - mg_to_kg(supply.lacks_mg) * bare;
    }

    [[nodiscard]] LostDays of(int lost) const {
        const std::int64_t burnt_mg = supply_.burnt_mg + lost * supply_.whole_day_fuel_mg;
        return {.days = lost,
                .food_short_kg = std::max(0.0, eaten_kg_ + lost * day_kg_ - there_kg_),
                .fuel_short_kg = std::max(0.0, mg_to_kg(burnt_mg - supply_.fuel_mg)),
                .ends_day = stage_.last_day + lost,
                .food_ends_day = food_ends(lost)};
    }

    /// The last day with all its food.
    [[nodiscard]] std::optional<int> food_ends(int lost) const {
        constexpr double a_gram_kg = 1e-3;
        std::optional<int> last;
        double sum_kg = 0.0;
        const auto eat = [&](int day, double kg) {
            sum_kg += kg;
            if (sum_kg <= there_kg_ + a_gram_kg)
                last = day;
        };
        for (std::size_t d = 0; d < food_.days.size(); ++d) {
            const int day = food_.days[d].day + (d > 0 ? lost : 0);
            eat(day, mg_to_kg(food_.days[d].food_mg));
            for (int k = 1; d == 0 && k <= lost; ++k)
                eat(day + k, day_kg_);
        }
        return last;
    }

  private:
    const Stage& stage_;
    const SupplyStage& supply_;
    const StageFood& food_;
    double eaten_kg_;
    double day_kg_;
    double there_kg_ = 0.0;
};

/// When a place of supply is closed around the day on which it is reached.
class Openings {
  public:
    Openings(const Prepared& prepared, std::size_t boundary)
        : prepared_(prepared), boundary_(boundary) {}

    [[nodiscard]] bool closed(int day) const {
        return supply_closed(prepared_, boundary_, date_of(prepared_.assumed, day));
    }

    /// Days from `day` to the next on which it is open, by steps of 1 or -1 and not before day 1.
    [[nodiscard]] std::optional<int> open_after(int day, int step) const {
        constexpr int furthest = 31;
        for (int away = 1; away <= furthest && day + step * away >= 1; ++away)
            if (!closed(day + step * away))
                return away;
        return {};
    }

  private:
    const Prepared& prepared_;
    std::size_t boundary_;
};

constexpr double hair_l = 1e-9; // rounding

/// Night by night, until the vessels are too small.
void add_dry_nights(WaterStretch& stretch, const Assembly& draft, const WaterCarry::Run& run) {
    const WaterCarry& water = draft.settled.water;
    const double room_l = stretch.capacity_l - draft.prepared.assumed.water.reserve_l;
    double need_l = stretch.way_l + stretch.laid_l;
    bool fits = need_l <= room_l + hair_l; // else it is not the nights
    for (const std::size_t d : run.dry_days) {
        const DaySpan& day = draft.settled.timeline.days[d];
        DryNight night{.day = day.day,
                       .place = boundary_name(draft, day.last),
                       .litres = water.camp_l[d][1] + water.camp_l[d + 1][0],
                       .too_much = false};
        need_l += night.litres;
        night.too_much = fits && need_l > room_l + hair_l;
        fits = need_l <= room_l + hair_l;
        stretch.dry_nights.push_back(std::move(night));
    }
}

} // namespace

std::vector<Stage> plan_stages(const Assembly& draft) {
    const Prepared& prepared = draft.prepared;
    const std::vector<SupplyStage>& stages = draft.settled.provisions.stages;
    const StageAccounts books(draft);
    const double packaging = prepared.assumed.food.packaging;
    const int in_hand = prepared.trip.days.weather_days.value_or(0);
    std::vector<Stage> result;
    double held_kg = 0.0;
    for (std::size_t s = 0; s < stages.size(); ++s) {
        const SupplyStage& from = stages[s];
        const std::size_t to = s + 1 < stages.size() ? stages[s + 1].boundary
                                                     : prepared.stretches.boundaries.size() - 1;
        Stage stage;
        stage.from = boundary_name(draft, from.boundary);
        stage.to = boundary_name(draft, to);
        stage.first_day = from.first_day;
        stage.last_day = from.last_day;
        stage.reserve_kg = mg_to_kg(from.reserve_mg) * (1.0 + packaging);
        // The reserve of the stage before is still in the packs: only what it lacks is added.
        const double reserve_kg = std::max(0.0, stage.reserve_kg - held_kg);
        stage.reserve_put_in_kg = reserve_kg / (1.0 + packaging);
        stage.food_kg = mg_to_kg(from.packed_mg()) * (1.0 + packaging) + reserve_kg;
        stage.for_later_kg = mg_to_kg(from.for_later_mg) * (1.0 + packaging);
        stage.fetched_kg = mg_to_kg(from.fetched_mg) * (1.0 + packaging);
        held_kg = std::max(held_kg, stage.reserve_kg);
        stage.packaging_kg = stage.food_kg * packaging / (1.0 + packaging);
        stage.declared_kg =
            s > 0 ? prepared.stretches.boundaries[from.boundary].food_kg : std::nullopt;
        stage.declared_short_kg = mg_to_kg(from.lacks_mg);
        stage.fuel_kg = mg_to_kg(from.fuel_packed_mg());
        stage.fuel_for_later_kg = mg_to_kg(from.fuel_for_later_mg);
        stage.fuel_fetched_kg = mg_to_kg(from.fuel_fetched_mg);
        stage.containers = from.containers;
        stage.containers_kg = from.containers * prepared.assumed.fuel.container_kg;
        stage.bearer_share = draft.settled.loads.stage_share[s];
        stage.reached = date_of(draft, from.first_day);
        add_meals(stage, books.stages()[s]);
        const Losing losing(stage, from, books.stages()[s]);
        stage.food_ends_day = losing.food_ends(0);
        for (int lost = 1; lost <= std::max(2, in_hand + 1); ++lost)
            stage.lost_days.push_back(losing.of(lost));
        stage.lost_day_short_kg = stage.lost_days.front().food_short_kg;
        if (s > 0) {
            const Openings openings(prepared, from.boundary);
            stage.closed = openings.closed(from.first_day);
            for (int day = stages[s - 1].first_day; day <= from.last_day + in_hand; ++day)
                if (openings.closed(day))
                    stage.closed_dates.push_back(date_of(draft, day));
            if (stage.closed) {
                stage.open_later_days = openings.open_after(from.first_day, 1);
                stage.open_earlier_days = openings.open_after(from.first_day, -1);
            }
        }
        result.push_back(std::move(stage));
    }
    return result;
}

std::vector<WaterStretch> plan_water(const Assembly& draft) {
    std::vector<WaterStretch> result;
    const AssumedWater& water = draft.prepared.assumed.water;
    const std::size_t members = draft.prepared.assumed.members.size();
    for (const WaterCarry::Run& run : draft.settled.water.runs) {
        WaterStretch stretch;
        stretch.from = boundary_name(draft, run.from_boundary);
        stretch.to = boundary_name(draft, run.to_boundary);
        stretch.from_m = draft.prepared.stretches.boundaries[run.from_boundary].along_m;
        stretch.to_m = draft.prepared.stretches.boundaries[run.to_boundary].along_m;
        stretch.first_day = run.first_day;
        stretch.last_day = run.last_day;
        stretch.hours = run.hours;
        stretch.nights = run.dry_nights;
        stretch.camps_l = run.camps_l;
        stretch.laid_l = run.laid_l;
        stretch.way_l = run.need_l - run.camps_l - run.laid_l;
        stretch.fill_l.assign(members, run.need_l + water.reserve_l);
        stretch.capacity_l = water.capacity_l;
        stretch.over_capacity = run.need_l + water.reserve_l > water.capacity_l + hair_l;
        add_dry_nights(stretch, draft, run);
        result.push_back(std::move(stretch));
    }
    return result;
}

std::vector<Litres> plan_litres(const Assembly& draft) {
    const WaterCarry& water = draft.settled.water;
    const std::vector<Boundary>& boundaries = draft.prepared.stretches.boundaries;
    std::vector<Litres> line;
    double each_l = 0.0;
    const auto add = [&](const Litres& point) {
        const std::size_t n = line.size();
        if (n >= 2 && line[n - 2].each_l == line[n - 1].each_l &&
            line[n - 1].each_l == point.each_l && line[n - 1].day == point.day)
            line.back() = point; // nothing changes in between
        else
            line.push_back(point);
    };
    for (std::size_t d = 0; d < draft.settled.timeline.days.size(); ++d) {
        const DaySpan& day = draft.settled.timeline.days[d];
        const auto in_camp = [&](std::size_t boundary, bool morning) {
            if (!water.camp_from_pack[d][morning ? 0 : 1])
                return;
            each_l -= water.camp_l[d][morning ? 0 : 1];
            add({boundaries[boundary].along_m, day.day, each_l, LitresStep::camp});
        };
        in_camp(day.first, true);
        for (std::size_t i = day.first; i < day.last; ++i) {
            if (water.fill_l[i] > 0.0) {
                add({boundaries[i].along_m, day.day, each_l, LitresStep::way});
                each_l += water.fill_l[i];
                add({boundaries[i].along_m, day.day, each_l, LitresStep::filled});
            }
            if (water.left_l[i] > 0.0) {
                each_l -= water.left_l[i];
                add({boundaries[i].along_m, day.day, each_l, LitresStep::left});
            }
            each_l -= water.drunk_l[i];
            add({boundaries[i + 1].along_m, day.day, each_l, LitresStep::way});
            if (water.back_l[i + 1] > 0.0) {
                each_l += water.back_l[i + 1];
                add({boundaries[i + 1].along_m, day.day, each_l, LitresStep::fetched});
            }
        }
        in_camp(day.last, false);
    }
    return line;
}

Sharing plan_sharing(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    Sharing sharing;
    sharing.lower_bound = draft.settled.loads.shared.lower_bound;
    for (std::size_t k = 0; k < legs.size(); ++k) {
        if (legs[k].travel != Travel::walk)
            continue;
        for (const MemberLoad& load : legs[k].loads) {
            const double ratio = load.pack_max_kg / load.limit_kg;
            if (ratio > sharing.heaviest_ratio) {
                sharing.heaviest_ratio = ratio;
                sharing.member = load.member;
                sharing.plan_leg = PlanLegNumber::of_index(k);
            }
        }
    }
    return sharing;
}

} // namespace tumpline::planner

#include "planner/loads/consumables.h"

#include "planner/loads/assignment.h"
#include "planner/quantities/milligrams.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

/// What a whole party eats of one meal.
std::int64_t meal_mg(const std::vector<MealMasses>& eaten, Meal meal) {
    std::int64_t sum_mg = 0;
    for (const MealMasses& masses : eaten)
        sum_mg += masses[static_cast<std::size_t>(meal)];
    return sum_mg;
}

} // namespace

Consumables::Consumables(const LoadInputs& inputs, const Loads& loads, Booking& booking)
    : in_(inputs), loads_(loads), booking_(booking), members_(inputs.assumed.members.size()),
      food_(members_), reserve_mg_(members_, 0), laid_(inputs, loads, booking, food_),
      fuel_(inputs, loads, booking), water_(inputs, loads, booking) {}

/// Food, its packaging and fuel of a stage, to their bearers.
void Consumables::bring_stage(std::size_t index) {
    const SupplyStage& stage = in_.provisions.stages[index];
    const std::vector<double>& share = loads_.stage_share[index];
    const double packaging = in_.assumed.food.packaging;
    const auto deal = [&](std::int64_t mass_mg, auto&& give) {
        std::int64_t left_mg = mass_mg;
        double left_share = 1.0;
        for (std::size_t m = 0; m < members_; ++m) {
            const bool last = m + 1 == members_ || left_share <= 0.0;
            const std::int64_t part_mg =
                last ? left_mg
                     : std::min(left_mg,
                                whole_mg(static_cast<double>(left_mg) * share[m] / left_share));
            give(m, part_mg);
            left_mg -= part_mg;
            left_share -= share[m];
        }
    };
    const std::string why =
        index == 0
            ? std::string("packed at home")
            : fmt::format("supply at {}", boundary_name(in_.route, in_.stretches, stage.boundary));
    deal(stage.packed_mg(), [&](std::size_t m, std::int64_t mg) {
        const std::int64_t wrapper_mg = whole_mg(static_cast<double>(mg) * packaging);
        food_.planned_mg[m] += mg;
        food_.wrapper_mg[m] += wrapper_mg;
        booking_.book({m, Part::food, mg + wrapper_mg, Account::outside, Account::pack}, why);
    });
    std::int64_t held_mg = 0;
    for (const std::int64_t mg : reserve_mg_)
        held_mg += mg;
    const std::int64_t wanted_mg =
        whole_mg(static_cast<double>(stage.reserve_mg) * (1.0 + packaging));
    deal(std::max<std::int64_t>(0, wanted_mg - held_mg), [&](std::size_t m, std::int64_t mg) {
        reserve_mg_[m] += mg;
        booking_.book({m, Part::food, mg, Account::outside, Account::pack}, why);
    });
    const std::int64_t fuel_mg =
        stage.fuel_packed_mg() + stage.containers * kg_to_mg(in_.assumed.fuel.container_kg);
    fuel_.bring(stage);
    booking_.book({fuel_bearer(loads_), Part::fuel, fuel_mg, Account::outside, Account::pack}, why);
}

/// What is left behind where a new supply is taken: waste (not at a cache) and the old fuel.
void Consumables::hand_in(std::size_t stage) {
    const std::size_t boundary = in_.provisions.stages[stage].boundary;
    const std::vector<std::size_t>& places = in_.stretches.boundaries[boundary].places;
    const bool takes_waste = std::any_of(places.begin(), places.end(), [&](std::size_t place) {
        return in_.route.places[place].kind == PlaceKind::resupply;
    });
    const std::string why =
        fmt::format("left at {}", boundary_name(in_.route, in_.stretches, boundary));
    for (std::size_t m = 0; m < members_; ++m) {
        if (takes_waste)
            booking_.book({m,
                           Part::waste,
                           booking_.held_mg(m, Account::pack, Part::waste),
                           Account::pack,
                           Account::outside},
                          why);
        booking_.book({m,
                       Part::fuel,
                       booking_.held_mg(m, Account::pack, Part::fuel) -
                           (m == fuel_bearer(loads_) ? fuel_.kept_mg(boundary) : 0),
                       Account::pack,
                       Account::outside},
                      why);
    }
}

void Consumables::supplies_up_to(std::size_t boundary) {
    while (stage_ + 1 < in_.provisions.stages.size() &&
           in_.provisions.stages[stage_ + 1].boundary <= boundary) {
        ++stage_;
        hand_in(stage_);
        bring_stage(stage_);
    }
}

/// Food leaves the packs in proportion to what each bears; its wrapping stays as waste.
void Consumables::eat(std::int64_t mass_mg, const Eating& eating) {
    constexpr std::int64_t a_gram_mg = 1000;
    const std::string_view why = eating.meal == Meal::breakfast ? "breakfast"
                                 : eating.meal == Meal::trail   ? "trail food"
                                                                : "dinner";
    std::int64_t borne_mg = 0;
    for (const std::int64_t mg : food_.planned_mg)
        borne_mg += mg;
    std::int64_t left_mg = std::min(mass_mg, borne_mg);
    if (!laid_.asked().empty() && mass_mg - left_mg > a_gram_mg)
        short_.push_back({.day = eating.day,
                          .stretch = eating.stretch,
                          .meal = eating.meal,
                          .needs_mg = mass_mg,
                          .lacks_mg = mass_mg - left_mg});
    for (std::size_t m = 0; m < members_ && borne_mg > 0; ++m) {
        const std::int64_t mine_mg = food_.planned_mg[m];
        if (mine_mg == 0)
            continue;
        const std::int64_t part_mg =
            std::min(mine_mg,
                     whole_mg(static_cast<double>(left_mg) *
                              (static_cast<double>(mine_mg) / static_cast<double>(borne_mg))));
        const std::int64_t wrapper_mg =
            part_mg == mine_mg
                ? food_.wrapper_mg[m]
                : whole_mg(static_cast<double>(food_.wrapper_mg[m]) *
                           (static_cast<double>(part_mg) / static_cast<double>(mine_mg)));
        booking_.book({m, Part::food, part_mg, Account::pack, Account::eaten}, why);
        booking_.book({m, Part::food, wrapper_mg, Account::pack, Account::outside}, "unwrapped");
        booking_.book({m, Part::waste, wrapper_mg, Account::outside, Account::pack},
                      "wrapping kept");
        food_.planned_mg[m] -= part_mg;
        food_.wrapper_mg[m] -= wrapper_mg;
        left_mg -= part_mg;
        borne_mg -= mine_mg;
    }
}

void Consumables::burn(std::int64_t mass_mg, const Eating& eating) {
    const std::int64_t held_mg = booking_.held_mg(fuel_bearer(loads_), Account::pack, Part::fuel);
    booking_.book(
        {fuel_bearer(loads_),
         Part::fuel,
         std::min(fuel_.burn(mass_mg, {eating.day, eating.stretch, eating.meal}), held_mg),
         Account::pack,
         Account::burnt},
        eating.meal == Meal::breakfast ? "breakfast cooked" : "dinner cooked");
}

void Consumables::drink(double litres, bool from_pack, std::string_view why) {
    for (std::size_t m = 0; m < members_; ++m) {
        // What was filled at once is drunk in parts, each in whole milligrams: their sum may be one
        // more than was filled.
        const std::int64_t wanted_mg = kg_to_mg(litres);
        const std::int64_t mass_mg =
            from_pack ? std::min(wanted_mg, booking_.held_mg(m, Account::pack, Part::water))
                      : wanted_mg;
        booking_.book(
            {m, Part::water, mass_mg, from_pack ? Account::pack : Account::outside, Account::drunk},
            why);
    }
}

void Consumables::fill(std::size_t boundary) {
    const double litres = in_.water.fill_l[boundary];
    if (litres <= 0.0)
        return;
    const std::string why =
        boundary == 0
            ? std::string("filled before setting off")
            : fmt::format("filled at {}", boundary_name(in_.route, in_.stretches, boundary));
    for (std::size_t m = 0; m < members_; ++m)
        booking_.book({m, Part::water, kg_to_mg(litres), Account::outside, Account::pack}, why);
}

void Consumables::breakfast(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    const Eating eating{
        day.day, std::min(day.first, in_.stretches.stretches.size() - 1), Meal::breakfast};
    eat(meal_mg(in_.provisions.eaten[d], Meal::breakfast), eating);
    burn(in_.provisions.burnt_mg[d][0], eating);
    drink(in_.water.camp_l[d][0], in_.water.camp_from_pack[d][0], "drunk in camp");
}

void Consumables::dinner(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    std::int64_t dinner_mg = meal_mg(in_.provisions.eaten[d], Meal::dinner);
    if (day.first == day.last) // on a day of rest trail food is eaten in camp
        dinner_mg += meal_mg(in_.provisions.eaten[d], Meal::trail);
    const Eating eating{day.day, day.last > 0 ? day.last - 1 : 0, Meal::dinner};
    eat(dinner_mg, eating);
    burn(in_.provisions.burnt_mg[d][1], eating);
    drink(in_.water.camp_l[d][1], in_.water.camp_from_pack[d][1], "drunk in camp");
}

void Consumables::on_the_way(std::size_t stretch) {
    eat(trail_food_mg(stretch), {in_.timeline.stretches[stretch].day, stretch, Meal::trail});
    drink(in_.water.drunk_l[stretch], true, "drunk on the way");
    drink(in_.water.scooped_l[stretch], false, "drunk where it was found");
}

/// The party's trail food on a stretch.
std::int64_t Consumables::trail_food_mg(std::size_t stretch) const {
    const StretchTime& time = in_.timeline.stretches[stretch];
    double day_moving_s = 0.0;
    const DaySpan& day =
        *std::find_if(in_.timeline.days.begin(), in_.timeline.days.end(), [&](const DaySpan& span) {
            return stretch >= span.first && stretch < span.last;
        });
    for (std::size_t k = day.first; k < day.last; ++k)
        day_moving_s += in_.timeline.stretches[k].moving_s;
    const auto d = static_cast<std::size_t>(&day - in_.timeline.days.data());
    std::int64_t trail_mg = 0;
    for (const MealMasses& masses : in_.provisions.eaten[d]) {
        const std::int64_t day_mg = masses[static_cast<std::size_t>(Meal::trail)];
        // The same split as the provisions': by moving time, the last stretch takes what is left.
        std::int64_t before_mg = 0;
        for (std::size_t k = day.first; k < stretch; ++k)
            before_mg += day_moving_s > 0.0
                             ? whole_mg(static_cast<double>(day_mg) *
                                        in_.timeline.stretches[k].moving_s / day_moving_s)
                             : 0;
        trail_mg += stretch + 1 == day.last ? day_mg - before_mg
                    : day_moving_s > 0.0
                        ? whole_mg(static_cast<double>(day_mg) * time.moving_s / day_moving_s)
                        : 0;
    }
    return trail_mg;
}

} // namespace tumpline::planner

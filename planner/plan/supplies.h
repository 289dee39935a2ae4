#pragma once

#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Food, fuel and water of a plan: what to put in where, and what becomes of it when days are lost.
namespace tumpline::planner {

/// The rations of one kind of meal that a stage is given.
struct StageMeal {
    Meal meal = Meal::breakfast;
    double rations = 0.0; ///< of each member; trail food of a day that a supply cuts counts in part
    std::vector<double> food_kg; ///< all of them, per member in party order, without packaging
};

/// What becomes of a stage that takes some days more than planned, each of them eating and burning
/// what its days do on the average; they are lost after its first day.
struct LostDays {
    int days = 1;
    double food_short_kg = 0.0;       ///< without packaging
    double fuel_short_kg = 0.0;       ///< without containers
    int ends_day = 1;                 ///< day of the trip on which the stage then ends
    std::optional<int> food_ends_day; ///< the last day with all its food; empty: not even the first
};

/// From one supply of food and fuel to the next.
struct Stage {
    std::string from, to;
    int first_day = 1, last_day = 1;
    double food_kg = 0.0;               ///< to be put in, packaging included
    double packaging_kg = 0.0;          ///< of that
    std::vector<StageMeal> meals;       ///< breakfast, trail, dinner
    std::vector<double> member_food_kg; ///< their sum for each member, without packaging
    double for_later_kg = 0.0;          ///< of the food: laid down, and eaten in a later stage
    double fetched_kg = 0.0;            ///< eaten in it, and laid down in an earlier one
    double fuel_for_later_kg = 0.0;     ///< of the fuel: laid down, and burnt in a later stage
    double fuel_fetched_kg = 0.0;       ///< burnt in it, and laid down in an earlier one
    double reserve_kg = 0.0;            ///< of the food, carried to the end of the stage
    double reserve_put_in_kg = 0.0;    ///< of that, without packaging: the rest is left from before
    std::optional<double> declared_kg; ///< the trip file's `food` of the place, packaging included
    double declared_short_kg = 0.0;    ///< what it lacks of what the stage needs
    std::optional<int> food_ends_day;  ///< last day with all its food; empty: not even the first
    double fuel_kg = 0.0;
    int containers = 0;
    double containers_kg = 0.0;       ///< empty
    std::vector<double> bearer_share; ///< party order, sums to 1
    Date reached{};                   ///< date on which it is put in
    bool closed = false;              ///< the place is closed on the day it is reached
    std::vector<Date> closed_dates;   ///< from the start of the stage before to the end of this one
    std::optional<int> open_later_days, open_earlier_days; ///< where closed: to the next open date
    double lost_day_short_kg = 0.0;  ///< food short if the stage takes one day more
    std::vector<LostDays> lost_days; ///< one, two ... as many as are in hand and one more
};

/// A night without water within a stretch.
struct DryNight {
    int day = 1; ///< the night after it
    std::string place;
    double litres = 0.0;   ///< of each member, evening and morning
    bool too_much = false; ///< the first that makes the vessels too small
};

/// From one dependable source of water to the next.
struct WaterStretch {
    std::string from, to;
    double from_m = 0.0, to_m = 0.0;
    int first_day = 1, last_day = 1;
    double hours = 0.0;
    int nights = 0; ///< dry camps within
    std::vector<DryNight> dry_nights;
    double way_l = 0.0;         ///< drunk on the way, per member
    double camps_l = 0.0;       ///< at the dry camps, per member
    double laid_l = 0.0;        ///< laid down on the way, per member
    std::vector<double> fill_l; ///< per member in party order, reserve included
    double capacity_l = 0.0;    ///< per member
    bool over_capacity = false;
};

enum class LitresStep { filled, way, camp, left, fetched };

/// What each member's vessels hold at one point, the reserve included; between two points it falls
/// evenly. A fill is two points at one place.
struct Litres {
    double along_m = 0.0;
    int day = 1;
    double each_l = 0.0;
    LitresStep after = LitresStep::filled; ///< what changed it last
};

} // namespace tumpline::planner

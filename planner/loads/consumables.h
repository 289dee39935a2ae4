#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/laid_food.h"
#include "planner/loads/laid_fuel.h"
#include "planner/loads/laid_water.h"
#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// Food, fuel and water in the packs: books how they come and go. `loads` says who bears what;
/// inputs, loads and booking must outlive it.
class Consumables {
  public:
    Consumables(const LoadInputs& inputs, const Loads& loads, Booking& booking);

    /// What is packed at home.
    void start() { bring_stage(0); }

    /// Every supply up to a boundary: what is left there, what is taken.
    void supplies_up_to(std::size_t boundary);

    /// Food and fuel that are left at a boundary; and all that is fetched there.
    void lay_down(std::size_t boundary) {
        laid_.lay_down(boundary);
        fuel_.lay_down(boundary);
    }

    void fetch(std::size_t boundary) {
        laid_.fetch(boundary);
        fuel_.fetch(boundary);
        water_.fetch(boundary);
    }

    /// Water that is left there, once the vessels are filled.
    void lay_down_water(std::size_t boundary) { water_.lay_down(boundary); }

    /// Vessels are filled before the stretch that begins there.
    void fill(std::size_t boundary);
    /// What is eaten, burnt and drunk in camp, by index of the day.
    void breakfast(std::size_t d);
    void dinner(std::size_t d);
    /// What is eaten and drunk on a stretch.
    void on_the_way(std::size_t stretch);

    /// What was to be laid down.
    [[nodiscard]] const std::vector<StoreLaid>& food_laid() const { return laid_.asked(); }

    [[nodiscard]] const std::vector<StoreLaid>& fuel_laid() const { return fuel_.asked(); }

    /// Meals that lacked fuel because it lay elsewhere.
    [[nodiscard]] const std::vector<StoreShort>& fuel_short() const { return fuel_.lacked(); }

    /// Meals that lacked food because it lay elsewhere.
    [[nodiscard]] const std::vector<StoreShort>& food_short() const { return short_; }

  private:
    void bring_stage(std::size_t index);
    void hand_in(std::size_t stage);

    /// A meal, and on which stretch, before or after which it is eaten.
    struct Eating {
        int day;
        std::size_t stretch;
        Meal meal;
    };

    void eat(std::int64_t mass_mg, const Eating& eating);
    void burn(std::int64_t mass_mg, const Eating& eating);
    void drink(double litres, bool from_pack, std::string_view why);
    [[nodiscard]] std::int64_t trail_food_mg(std::size_t stretch) const;

    const LoadInputs& in_;
    const Loads& loads_;
    Booking& booking_;
    std::size_t members_;
    FoodInPacks food_;                     ///< to be eaten
    std::vector<std::int64_t> reserve_mg_; ///< held for delay, packaging included
    std::size_t stage_ = 0;
    LaidFood laid_;
    LaidFuel fuel_;
    LaidWater water_;
    std::vector<StoreShort> short_;
};

} // namespace tumpline::planner

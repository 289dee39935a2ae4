#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tumpline::planner {

/// What each bearer has of the food to be eaten: without packaging, and the packaging of it.
struct FoodInPacks {
    std::vector<std::int64_t> planned_mg;
    std::vector<std::int64_t> wrapper_mg;

    explicit FoodInPacks(std::size_t members) : planned_mg(members, 0), wrapper_mg(members, 0) {}

    [[nodiscard]] std::int64_t all_mg() const;
};

/// Food on the way between packs and the places where it lies. Of each bearer goes the same share
/// of what is to be eaten, as far as there is any, and comes back to the same; the reserve stays in
/// the packs. `loads` says what is left where; inputs, loads, booking and packs must outlive it.
class LaidFood {
  public:
    LaidFood(const LoadInputs& inputs, const Loads& loads, Booking& booking, FoodInPacks& packs);

    void lay_down(std::size_t boundary);
    void fetch(std::size_t boundary);

    /// What was to be laid down so far, and what there was.
    [[nodiscard]] const std::vector<StoreLaid>& asked() const { return asked_; }

  private:
    const LoadInputs& in_;
    const Loads& loads_;
    Booking& booking_;
    FoodInPacks& packs_;
    std::vector<FoodInPacks> lying_; ///< per entry of Trip::leaves
    std::vector<StoreLaid> asked_;
};

} // namespace tumpline::planner

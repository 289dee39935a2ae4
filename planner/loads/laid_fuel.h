#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tumpline::planner {

/// Fuel on the way between its bearer and the places where it lies. What is to be burnt by plan may
/// be laid down; reserve and containers stay in the pack. `loads` says who bears it and what is
/// left where; inputs, loads and booking must outlive it.
class LaidFuel {
  public:
    LaidFuel(const LoadInputs& inputs, const Loads& loads, Booking& booking);

    /// The fuel of a stage is in the pack.
    void bring(const SupplyStage& stage);
    /// Whatever of the bearer's fuel is not of the stage before: fetched at this very boundary.
    [[nodiscard]] std::int64_t kept_mg(std::size_t boundary) const;

    void lay_down(std::size_t boundary);
    void fetch(std::size_t boundary);

    struct Burning {
        int day;
        std::size_t stretch; ///< before it (breakfast) or after it (dinner)
        Meal meal;
    };

    /// What there is to be burnt for a meal, up to its need; what is lacking is noted if some lies
    /// elsewhere.
    [[nodiscard]] std::int64_t burn(std::int64_t need_mg, const Burning& burning);

    [[nodiscard]] const std::vector<StoreLaid>& asked() const { return asked_; }

    [[nodiscard]] const std::vector<StoreShort>& lacked() const { return short_; }

  private:
    const LoadInputs& in_;
    const Loads& loads_;
    Booking& booking_;
    bool ever_;                   ///< some entry lays fuel down
    std::int64_t planned_mg_ = 0; ///< to be burnt, in the pack
    std::int64_t fetched_mg_ = 0; ///< at `fetched_at_`
    std::size_t fetched_at_ = 0;
    std::vector<std::int64_t> lying_mg_; ///< per entry of Trip::leaves
    std::vector<StoreLaid> asked_;
    std::vector<StoreShort> short_;
};

} // namespace tumpline::planner

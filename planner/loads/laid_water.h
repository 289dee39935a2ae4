#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tumpline::planner {

/// Drinking water on the way between the vessels and the places where it lies: everybody lays down
/// and fetches the same. The vessels are filled for it (carry_water). Inputs, loads and booking
/// must outlive it.
class LaidWater {
  public:
    LaidWater(const LoadInputs& inputs, const Loads& loads, Booking& booking);

    /// Once the vessels are filled there.
    void lay_down(std::size_t boundary);
    void fetch(std::size_t boundary);

  private:
    const LoadInputs& in_;
    const Loads& loads_;
    Booking& booking_;
    std::vector<std::vector<std::int64_t>> lying_mg_; ///< per entry of Trip::leaves and member
};

} // namespace tumpline::planner

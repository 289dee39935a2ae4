#include "planner/loads/laid_water.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

LaidWater::LaidWater(const LoadInputs& inputs, const Loads& loads, Booking& booking)
    : in_(inputs), loads_(loads), booking_(booking),
      lying_mg_(inputs.trip.leaves.size(),
                std::vector<std::int64_t>(inputs.assumed.members.size(), 0)) {}

void LaidWater::lay_down(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const Leave& leave = in_.trip.leaves[l];
        if (loads_.laid[l].left_at != boundary || !leave.water_l)
            continue;
        const std::size_t members = lying_mg_[l].size();
        const std::int64_t each_mg = kg_to_mg(*leave.water_l / static_cast<double>(members));
        for (std::size_t m = 0; m < members; ++m) {
            std::int64_t& lying_mg = lying_mg_[l][m];
            lying_mg = std::min(each_mg, booking_.held_mg(m, Account::pack, Part::water));
            booking_.book(
                {m, Part::water, lying_mg, Account::pack, Account::laid_down, Entry::no_item, l},
                "left at " + leave.at);
        }
    }
}

void LaidWater::fetch(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        if (loads_.laid[l].fetched_at != boundary)
            continue;
        for (std::size_t m = 0; m < lying_mg_[l].size(); ++m)
            if (const std::int64_t mass_mg = std::exchange(lying_mg_[l][m], 0); mass_mg > 0)
                booking_.book(
                    {m, Part::water, mass_mg, Account::laid_down, Account::pack, Entry::no_item, l},
                    "fetched at " + in_.trip.leaves[l].at);
    }
}

} // namespace tumpline::planner

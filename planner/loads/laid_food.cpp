#include "planner/loads/laid_food.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <numeric>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

/// A share of a mass in whole milligrams, never more than it.
std::int64_t share_mg(std::int64_t mass_mg, double share) {
    return std::clamp<std::int64_t>(whole_mg(static_cast<double>(mass_mg) * share), 0, mass_mg);
}

} // namespace

std::int64_t FoodInPacks::all_mg() const {
    return std::accumulate(planned_mg.begin(), planned_mg.end(), std::int64_t{0}) +
           std::accumulate(wrapper_mg.begin(), wrapper_mg.end(), std::int64_t{0});
}

LaidFood::LaidFood(const LoadInputs& inputs,
                   const Loads& loads,
                   Booking& booking,
                   FoodInPacks& packs)
    : in_(inputs), loads_(loads), booking_(booking), packs_(packs),
      lying_(inputs.trip.leaves.size(), FoodInPacks(inputs.assumed.members.size())) {}

void LaidFood::lay_down(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const Leave& leave = in_.trip.leaves[l];
        if (loads_.laid[l].left_at != boundary || !leave.food_kg)
            continue;
        const std::int64_t wanted_mg = kg_to_mg(*leave.food_kg);
        std::int64_t carried_mg = packs_.all_mg();
        asked_.push_back({.leave = l, .wanted_mg = wanted_mg, .carried_mg = carried_mg});
        std::int64_t left_mg = std::min(wanted_mg, carried_mg);
        for (std::size_t m = 0; m < packs_.planned_mg.size() && carried_mg > 0; ++m) {
            std::int64_t& planned_mg = packs_.planned_mg[m];
            std::int64_t& wrapper_mg = packs_.wrapper_mg[m];
            const std::int64_t mine_mg = planned_mg + wrapper_mg;
            // The last who has any takes what rounding has left over.
            const std::int64_t mass_mg =
                mine_mg == carried_mg
                    ? std::min(left_mg, mine_mg)
                    : share_mg(mine_mg,
                               static_cast<double>(left_mg) / static_cast<double>(carried_mg));
            const std::int64_t wrapping_mg =
                mine_mg == 0 ? 0
                             : std::max(share_mg(wrapper_mg,
                                                 static_cast<double>(mass_mg) /
                                                     static_cast<double>(mine_mg)),
                                        mass_mg - planned_mg);
            booking_.book(
                {m, Part::food, mass_mg, Account::pack, Account::laid_down, Entry::no_item, l},
                "left at " + leave.at);
            lying_[l].planned_mg[m] = mass_mg - wrapping_mg;
            lying_[l].wrapper_mg[m] = wrapping_mg;
            planned_mg -= mass_mg - wrapping_mg;
            wrapper_mg -= wrapping_mg;
            left_mg -= mass_mg;
            carried_mg -= mine_mg;
        }
    }
}

void LaidFood::fetch(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        if (loads_.laid[l].fetched_at != boundary || lying_[l].all_mg() == 0)
            continue;
        for (std::size_t m = 0; m < packs_.planned_mg.size(); ++m) {
            const std::int64_t planned_mg = std::exchange(lying_[l].planned_mg[m], 0);
            const std::int64_t wrapper_mg = std::exchange(lying_[l].wrapper_mg[m], 0);
            booking_.book({m,
                           Part::food,
                           planned_mg + wrapper_mg,
                           Account::laid_down,
                           Account::pack,
                           Entry::no_item,
                           l},
                          "fetched at " + in_.trip.leaves[l].at);
            packs_.planned_mg[m] += planned_mg;
            packs_.wrapper_mg[m] += wrapper_mg;
        }
    }
}

} // namespace tumpline::planner

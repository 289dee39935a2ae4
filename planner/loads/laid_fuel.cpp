#include "planner/loads/laid_fuel.h"

#include "planner/loads/assignment.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

LaidFuel::LaidFuel(const LoadInputs& inputs, const Loads& loads, Booking& booking)
    : in_(inputs), loads_(loads), booking_(booking),
      ever_(std::any_of(inputs.trip.leaves.begin(),
                        inputs.trip.leaves.end(),
                        [](const Leave& leave) { return leave.fuel_kg.has_value(); })),
      lying_mg_(inputs.trip.leaves.size(), 0) {}

void LaidFuel::bring(const SupplyStage& stage) {
    planned_mg_ =
        kept_mg(stage.boundary) + stage.burnt_mg + stage.fuel_for_later_mg - stage.fuel_fetched_mg;
}

std::int64_t LaidFuel::kept_mg(std::size_t boundary) const {
    return fetched_at_ == boundary ? fetched_mg_ : 0;
}

void LaidFuel::lay_down(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const Leave& leave = in_.trip.leaves[l];
        if (loads_.laid[l].left_at != boundary || !leave.fuel_kg)
            continue;
        const std::int64_t wanted_mg = kg_to_mg(*leave.fuel_kg);
        const std::int64_t carried_mg = std::max<std::int64_t>(0, planned_mg_);
        asked_.push_back({.leave = l, .wanted_mg = wanted_mg, .carried_mg = carried_mg});
        lying_mg_[l] = std::min(wanted_mg, carried_mg);
        planned_mg_ -= lying_mg_[l];
        booking_.book({fuel_bearer(loads_),
                       Part::fuel,
                       lying_mg_[l],
                       Account::pack,
                       Account::laid_down,
                       Entry::no_item,
                       l},
                      "left at " + leave.at);
    }
}

void LaidFuel::fetch(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        if (loads_.laid[l].fetched_at != boundary || lying_mg_[l] == 0)
            continue;
        const std::int64_t mass_mg = std::exchange(lying_mg_[l], 0);
        planned_mg_ += mass_mg;
        fetched_mg_ = kept_mg(boundary) + mass_mg;
        fetched_at_ = boundary;
        booking_.book({fuel_bearer(loads_),
                       Part::fuel,
                       mass_mg,
                       Account::laid_down,
                       Account::pack,
                       Entry::no_item,
                       l},
                      "fetched at " + in_.trip.leaves[l].at);
    }
}

std::int64_t LaidFuel::burn(std::int64_t need_mg, const Burning& burning) {
    constexpr std::int64_t a_gram_mg = 1000;
    if (!ever_)
        return need_mg;
    const std::int64_t burnt_mg = std::clamp<std::int64_t>(planned_mg_, 0, need_mg);
    planned_mg_ -= burnt_mg;
    if (!asked_.empty() && need_mg - burnt_mg > a_gram_mg)
        short_.push_back({.day = burning.day,
                          .stretch = burning.stretch,
                          .meal = burning.meal,
                          .needs_mg = need_mg,
                          .lacks_mg = need_mg - burnt_mg});
    return burnt_mg;
}

} // namespace tumpline::planner

#include "planner/cautions/ride_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <chrono>

namespace tumpline::planner {

namespace {

constexpr double sleep_s = 8.0 * 3600.0; // common practice, no source

} // namespace

std::vector<Caution> ride_cautions(const Plan& plan) {
    CautionList list;
    for (std::size_t d = 0; d + 1 < plan.days.size(); ++d) {
        const PlanDay& day = plan.days[d];
        const double night_s =
            std::chrono::duration<double>(plan.days[d + 1].set_off - day.arrive).count();
        if (day.ride_s <= 0.0 || night_s >= sleep_s)
            continue;
        list.at(day.day, {});
        if (night_s < 0.0)
            list.add(Level::stop,
                     "no-night",
                     fmt::format("With {} of riding this day ends {} after the next one sets off. "
                                 "Set out earlier, or let the ride stand on a day of its own.",
                                 show_duration(day.ride_s),
                                 show_duration(-night_s)),
                     "docs/rides.md");
        else
            list.add(Level::caution,
                     "no-night",
                     fmt::format("With {} of riding {} are left between arriving and setting off "
                                 "on the next day.",
                                 show_duration(day.ride_s),
                                 show_duration(night_s)),
                     "common practice, no source");
    }
    return list.take();
}

} // namespace tumpline::planner

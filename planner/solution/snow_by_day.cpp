#include "planner/solution/snow_by_day.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

SnowByDay::SnowByDay(const Route& route,
                     const Stretches& prepared,
                     const Assumed& assumed,
                     std::shared_ptr<const Stretches> given)
    : route_(route), prepared_(prepared), assumed_(assumed), met_(std::move(given)) {
    if (met_)
        return;
    for (const RouteLeg& leg : route.legs)
        changes_.push_back(on_foot(leg.travel) && assumed.forecast.snow_changes_by_day(leg));
    if (std::none_of(changes_.begin(), changes_.end(), [](bool changes) { return changes; }))
        return;
    own_ = std::make_shared<Stretches>(prepared);
    met_ = own_;
    day_of_.assign(prepared.stretches.size(), 1);
}

void SnowByDay::meet(const std::vector<DaySpan>& days) {
    if (!own_)
        return;
    for (const DaySpan& day : days)
        for (std::size_t i = day.first; i < day.last; ++i) {
            const std::size_t leg = own_->stretches[i].leg.index();
            if (!changes_[leg] || day_of_[i] == day.day)
                continue;
            lay_snow(own_->stretches[i], {route_.legs[leg], day.day}, assumed_);
            day_of_[i] = day.day;
        }
}

} // namespace tumpline::planner

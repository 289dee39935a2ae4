#include "cli/live/live_ground.h"

#include "geo/ground/elevation.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <utility>

namespace tumpline::cli {

LiveGround::LiveGround(const LivePlan& live, planner::UnitSystem units) : route_(live.route) {
    bare_.trip = live.plan.trip;
    const planner::Trip& trip = bare_.trip;
    std::optional<geo::Elevation> elevation;
    if (!trip.route.elevation.empty())
        elevation.emplace(trip.route.elevation, std::filesystem::absolute(trip.file).parent_path());
    maps_ = std::make_unique<BookMaps>(bare_, *route_, elevation ? &*elevation : nullptr, units);
    markup_ = maps_->defs();
    id_ = digest_of(markup_);
}

std::shared_ptr<const LiveGround> LiveGrounds::of(const LivePlan& live, planner::UnitSystem units) {
    constexpr std::size_t grounds_kept = 4;
    std::string from = live.laid + (units == planner::UnitSystem::metric ? " m" : " ft");
    const std::lock_guard lock(drawing_);
    const auto found = std::find_if(
        drawn_.begin(), drawn_.end(), [&](const Drawn& drawn) { return drawn.from == from; });
    if (found != drawn_.end()) {
        std::rotate(found, found + 1, drawn_.end());
        return drawn_.back().ground;
    }
    drawn_.push_back({std::move(from), std::make_shared<const LiveGround>(live, units)});
    if (drawn_.size() > grounds_kept)
        drawn_.erase(drawn_.begin());
    return drawn_.back().ground;
}

} // namespace tumpline::cli

#pragma once

#include "cli/book/book_maps.h"
#include "cli/live/live_trip.h"
#include "planner/quantities/quantities.h"

#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace tumpline::cli {

/// The ground under the map, as the book draws it; of the route alone, whatever the plan says.
class LiveGround {
  public:
    /// Throws: geo::InputError if a raster of the trip cannot be read.
    LiveGround(const LivePlan& live, planner::UnitSystem units);
    LiveGround(const LiveGround&) = delete;
    LiveGround& operator=(const LiveGround&) = delete;

    [[nodiscard]] const RouteMap& map() const { return maps_->whole(); }

    /// What the map uses, for a <defs>; empty where nothing is known of the ground.
    [[nodiscard]] const std::string& markup() const { return markup_; }

    /// Tells one ground from another.
    [[nodiscard]] const std::string& id() const { return id_; }

    /// Whose data it shows, one each.
    [[nodiscard]] const std::vector<std::string>& credits() const { return maps_->credits(); }

  private:
    planner::Plan bare_; ///< of the trip alone: without days there are no maps of days
    std::shared_ptr<const planner::Route> route_;
    std::unique_ptr<BookMaps> maps_;
    std::string markup_;
    std::string id_;
};

/// Those that were drawn, the last few.
class LiveGrounds {
  public:
    [[nodiscard]] std::shared_ptr<const LiveGround> of(const LivePlan& live,
                                                       planner::UnitSystem units);

  private:
    struct Drawn {
        std::string from;
        std::shared_ptr<const LiveGround> ground;
    };

    std::mutex drawing_;
    std::vector<Drawn> drawn_; ///< the newest last
};

} // namespace tumpline::cli

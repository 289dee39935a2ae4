#pragma once

#include "planner/conditions/calendar.h"
#include "planner/defaults/defaults.h"
#include "planner/journey/pace.h"
#include "planner/journey/segments.h"
#include "planner/route/route.h"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

/// The wind on the water by place and hour, and what it does to the crafts; the releases of dams
/// upstream likewise.
namespace tumpline::planner {

/// A wind over open water, before any shelter, as it is met.
struct WindMet {
    Blowing blowing;
    std::optional<double> gusts_mps = {};
    bool known = true;                      ///< false: nobody gave one, and it is taken as calm
    std::optional<double> current_mps = {}; ///< of the river, where it changes by the hour

    /// What ceilings are held against: the gusts where they are given.
    [[nodiscard]] double strongest_mps() const {
        return std::max(blowing.wind_mps, gusts_mps.value_or(0.0));
    }
};

/// The same for some hours of a day, seconds after its midnight.
struct WindSpell {
    double from_s;
    double to_s;
    WindMet met;
};

class Winds {
  public:
    /// All three must outlive it.
    Winds(const Route& route, const Stretches& stretches, const Assumed& assumed);

    /// Whether the weather changes with place or hour, or a river by the hour.
    [[nodiscard]] bool changes() const { return !assumed_.forecast.even() || releases_; }

    /// On a stretch afloat, one spell after the other from the day's midnight on. Where the weather
    /// does not change there is one.
    [[nodiscard]] std::vector<WindSpell> spells(std::size_t stretch, int day) const;

    [[nodiscard]] WindMet at(std::size_t stretch, const DayTime& when) const;

    /// What that does to a craft on each course, worked out once: no load changes it.
    [[nodiscard]] const WindAlong&
    along(std::size_t stretch, HullKind kind, const Blowing& blowing) const;

  private:
    struct Known {
        HullKind kind;
        Blowing blowing;
        WindAlong along;
    };

    [[nodiscard]] WindMet met(const Weather& weather, std::size_t stretch) const;
    /// The river of a stretch at an hour, if a dam changes it.
    [[nodiscard]] std::optional<double> current_mps(std::size_t stretch,
                                                    double after_midnight_s) const;
    /// Adds `spell` in parts that end where a release begins or ends.
    void add_parts(const WindSpell& spell, std::size_t stretch, std::vector<WindSpell>& to) const;

    const Route& route_;
    const Stretches& stretches_;
    const Assumed& assumed_;
    bool releases_ = false;
    mutable std::vector<std::vector<std::unique_ptr<Known>>> known_; ///< per stretch
};

} // namespace tumpline::planner

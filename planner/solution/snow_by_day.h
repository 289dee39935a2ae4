#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"
#include "planner/route/route.h"

#include <memory>
#include <vector>

namespace tumpline::planner {

/// The stretches under the snow of the days on which they are walked. Where the snow is the same on
/// every day they are those that were prepared, not copied.
class SnowByDay {
  public:
    /// `given` are the stretches of a plan with the same nights, or null. All must outlive it.
    SnowByDay(const Route& route,
              const Stretches& prepared,
              const Assumed& assumed,
              std::shared_ptr<const Stretches> given);

    /// Always the same object.
    [[nodiscard]] const Stretches& stretches() const { return met_ ? *met_ : prepared_; }

    /// Lays the snow of these days.
    void meet(const std::vector<DaySpan>& days);

    /// What is not as prepared; null where the snow does not change.
    [[nodiscard]] std::shared_ptr<const Stretches> shared() const { return met_; }

  private:
    const Route& route_;
    const Stretches& prepared_;
    const Assumed& assumed_;
    std::vector<bool> changes_;      ///< per leg
    std::shared_ptr<Stretches> own_; ///< what may be changed
    std::shared_ptr<const Stretches> met_;
    std::vector<int> day_of_; ///< per stretch, whose snow lies
};

} // namespace tumpline::planner

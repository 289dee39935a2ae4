#pragma once

#include "planner/journey/schedule.h"
#include "planner/loads/loads.h"
#include "planner/solution/winds.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// How a stretch afloat fares, worst craft first.
struct Afloat {
    std::size_t slowest = 0; ///< craft
    Paddle paddle{};
    WindMet met = {}; ///< the strongest wind of its hours
};

/// How long each stretch takes under given loads, and what wind and current do to it by the
/// hour.
class MovingTimes {
  public:
    /// All three must outlive it.
    MovingTimes(const Route& route, const Stretches& stretches, const Assumed& assumed);

    /// Moving time by day of every stretch under the loads of the round before; afloat in the
    /// wind of the hour at which it was reached then, which `afloat` notes.
    [[nodiscard]] std::vector<double>
    of_all(const Loads& loads, const Timeline& reached, std::vector<Afloat>& afloat) const;

    /// The weather of each hour on the stretches afloat, once their days are known; nothing
    /// where it does not change.
    void set_spells(const Loads& loads, Timeline& timeline);

    /// Of each stretch afloat the wind that it met by the clock: on the whole, and at its
    /// strongest.
    void note_winds_met(const Timeline& timeline, std::vector<Afloat>& afloat) const;

  private:
    /// How a stretch afloat would fare in one spell of the weather.
    struct InSpell {
        WindSpell spell;
        Afloat afloat;
    };

    [[nodiscard]] Conditions conditions_met(std::size_t i, const WindMet& met) const;
    [[nodiscard]] double
    of(std::size_t i, const Loads& loads, const WindMet& met, Afloat& afloat) const;
    [[nodiscard]] static std::optional<Afloat> met_by(const StretchTime& time,
                                                      const std::vector<InSpell>& spells);

    const std::vector<Stretch>& stretches_;
    const Assumed& assumed_;
    Winds winds_;
    std::vector<std::vector<InSpell>> in_spells_; ///< per stretch, where the weather changes
};

} // namespace tumpline::planner

#pragma once

#include "planner/defaults/defaults.h"
#include "planner/defaults/uncertainty_defaults.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <random>
#include <vector>

/// Seeded draws of what one does not know. A draw depends on the seed and its own number alone, so
/// that neither the threads nor the number of draws change it.
namespace tumpline::planner {

/// Told after each draw how many are done, by one thread at a time; answers whether to go on.
using DrawWatch = std::function<bool(std::size_t done)>;

/// The value below which a share `p` of a standard normal distribution lies, 0 < p < 1.
/// Source: [Wichura1988], PPND16: about 16 digits.
[[nodiscard]] double normal_quantile(double p);

/// A number to seed a generator with, for each draw another.
/// Source: [Vigna2015], splitmix64: the output of step `index` + 1 from the state `seed`.
[[nodiscard]] std::uint64_t seed_of(std::uint64_t seed, std::uint64_t index);

/// Standard normal numbers: `std::mt19937_64`, whose numbers the C++ standard fixes, and the
/// quantile above, since the library's own distributions differ from machine to machine.
class Normals {
  public:
    explicit Normals(std::uint64_t seed) : engine_(seed) {}

    [[nodiscard]] double next();

  private:
    std::mt19937_64 engine_;
};

/// For how many days and members to draw.
struct DrawSize {
    std::size_t days;
    std::size_t members;
};

/// What one draw is off by: factors.
struct Draw {
    double pace_on_foot;
    double pace_afloat;
    double current;
    double changeovers;
    double drinking;
    double eating;
    std::vector<double> wind;              ///< per day
    std::vector<std::vector<double>> form; ///< per day, per member
};

/// Everything that a draw needs, in a fixed order whatever the spread is.
[[nodiscard]] Draw draw(Normals& normals, const AssumedSpread& spread, const DrawSize& size);

/// What a draw makes of the figures of a whole trip, 1 for nothing: the mean over the days for
/// those that are drawn day by day; day form is that of the slowest member.
[[nodiscard]] double factor_of(const Draw& drawn, Assumption assumption);
/// The same for one day.
[[nodiscard]] double factor_of(const Draw& drawn, Assumption assumption, std::size_t day);

/// Puts a draw in place of what `base` assumes; `assumed` must be a copy of it, or of a draw of it.
/// Afloat the day's form is the mean of the party's: the paddlers of a boat share the work.
void apply(const Draw& drawn, const Assumed& base, Assumed& assumed);

} // namespace tumpline::planner

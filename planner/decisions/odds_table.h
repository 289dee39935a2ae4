#pragma once

#include "planner/decisions/draws.h"
#include "planner/results/assembly.h"

#include <cstddef>
#include <optional>
#include <vector>

/// The figures of every draw, before anything is counted.
namespace tumpline::planner {

/// Where the figures of a draw stand in its row.
struct OddsColumns {
    OddsColumns(const Assembly& draft, std::size_t plan_legs);

    std::size_t days, members, legs, stages, runs, appointments;
    std::vector<LegNumber> rivers; ///< whose level is drawn
    std::size_t arrive;            ///< per day: seconds after midnight
    std::size_t held_up;           ///< per day: 1 or 0
    std::size_t factor;            ///< per assumption
    std::size_t day_factor;        ///< per day, wind and form
    std::size_t pack;              ///< per plan leg, per member
    std::size_t food;              ///< per stage: kg eaten
    std::size_t food_left; ///< per stage: kg left of what was packed, negative if too little
    std::size_t water;     ///< per run: litres per person, without reserve
    std::size_t reached;   ///< per appointment: seconds later than planned
    std::size_t under_way; ///< seconds
    std::size_t eaten;     ///< kg
    std::size_t drunk;     ///< litres per person from the vessels
    std::size_t current;   ///< per river: m/s
    std::size_t not_run;   ///< per river: 1 where it lies outside its runnable range, else 0
    std::size_t harder;    ///< per river: 1 where its class is harder than planned, else 0
    std::size_t count;
};

/// Columns of figures, one row per draw.
class OddsTable {
  public:
    OddsTable(std::size_t draws, std::size_t columns)
        : columns_(columns, std::vector<double>(draws)) {}

    [[nodiscard]] double& at(std::size_t column, std::size_t draw) {
        return columns_[column][draw];
    }

    [[nodiscard]] const std::vector<double>& column(std::size_t column) const {
        return columns_[column];
    }

  private:
    std::vector<std::vector<double>> columns_;
};

/// What is drawn from where.
struct Drawing {
    const Assembly& draft;
    const OddsColumns& columns;
    const AssumedSpread& spread;
    std::uint64_t seed;
    std::size_t draws;
    std::size_t threads;
    DrawWatch watch = {}; ///< empty: nobody watches
};

/// Settles every draw. Threads take draws as they come, each writes its own rows. Empty if the
/// watch stopped it.
[[nodiscard]] std::optional<OddsTable> draw_all(const Drawing& drawing);

} // namespace tumpline::planner

#pragma once

#include <fmt/format.h>

#include <cassert>
#include <concepts>
#include <cstddef>

namespace tumpline::planner {

struct RouteLeg;
struct PlanLeg;

/// The number of a leg as people count, from 1; none where nothing is set. Legs of the route and
/// legs of the plan (which nights divide) are counted apart, and neither is a number to reckon
/// with.
template <class Counted> class NumberOf {
  public:
    constexpr NumberOf() = default;

    /// One that stands in the source: an index, which is a std::size_t, does not become one.
    template <std::same_as<int> Figure>
    constexpr NumberOf(Figure number) : number_(static_cast<std::size_t>(number)) {}

    /// Of what stands at `index`, counted from 0.
    [[nodiscard]] static constexpr NumberOf of_index(std::size_t index) {
        NumberOf number;
        number.number_ = index + 1;
        return number;
    }

    /// Where it stands, counted from 0. Not of none.
    [[nodiscard]] constexpr std::size_t index() const {
        assert(number_ > 0);
        return number_ - 1;
    }

    /// As it is printed; 0 of none.
    [[nodiscard]] constexpr std::size_t printed() const { return number_; }

    [[nodiscard]] constexpr bool none() const { return number_ == 0; }

    friend constexpr bool operator==(NumberOf, NumberOf) = default;

    friend constexpr bool operator<(NumberOf a, NumberOf b) { return a.number_ < b.number_; }

  private:
    std::size_t number_ = 0;
};

using LegNumber = NumberOf<RouteLeg>;    ///< of Route::legs
using PlanLegNumber = NumberOf<PlanLeg>; ///< of Plan::legs

} // namespace tumpline::planner

template <class Counted>
struct fmt::formatter<tumpline::planner::NumberOf<Counted>> : fmt::formatter<std::size_t> {
    template <class Context>
    auto format(tumpline::planner::NumberOf<Counted> number, Context& context) const {
        return fmt::formatter<std::size_t>::format(number.printed(), context);
    }
};

#pragma once

#include "planner/solution/fixed_point.h"
#include "planner/solution/night_search.h"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

/// Nights chosen by the planner. The programme needs moving times, these depend on the loads, and
/// the loads on the nights: it is asked again at the loads of its own answer until that stays.
namespace tumpline::planner {

/// One choice of nights at its own loads.
struct NightsSettled {
    std::vector<std::size_t> nights; ///< boundaries
    Solved settled;
    std::vector<DayCost> days; ///< of travel, in order
    NightLimits broken = 0;    ///< at its own loads

    [[nodiscard]] double cost() const;
};

/// The fixed point of given nights (boundaries, ascending), what they cost and break there.
[[nodiscard]] NightsSettled settled_at(const Prepared& prepared,
                                       const std::vector<std::size_t>& nights);

struct NightsChosen {
    NightsSettled best;
    std::vector<NightsSettled> next; ///< the next cheapest that keep the limits, cheapest first
    int asked = 0;                   ///< times that the programme was asked
    bool flipped = false;            ///< two answers led to each other; the earlier stops stand
    std::size_t places = 0;          ///< where one may sleep
    bool camps = true;               ///< these are camps; else ends of legs
    /// Empty if every limit is kept; else the smallest sets of limits without which there are
    /// nights, `best` giving up the first.
    std::vector<NightLimits> needs_without;
};

/// Told again and again how many days the search has weighed; answers whether to go on.
using NightsWatch = std::function<bool(std::size_t weighed)>;

/// Thrown out of the search as soon as its watch answers no.
struct NightsLeft {};

/// The best nights and up to `others` more. `best` is at its fixed point the cheapest: asked at its
/// loads, the programme answers it again, unless `flipped` says otherwise.
/// Throws: NightsLeft.
[[nodiscard]] NightsChosen
choose_nights(const Prepared& prepared, std::size_t others, const NightsWatch& watch = {});

/// What a limit says, as one would name it: "the 8 h of days.hours_limit".
[[nodiscard]] std::string limit_text(const Trip& trip, NightLimit limit);

/// The best at its loads, with what the choice has to say beside the plan: that it flipped, or that
/// no nights keep every limit and why.
[[nodiscard]] Solved as_chosen(const Prepared& prepared, const NightsChosen& chosen);

} // namespace tumpline::planner

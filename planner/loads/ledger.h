#pragma once

#include "planner/quantities/leg_number.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Part of a load.
enum class Part { kit, craft, food, fuel, water, waste };

using PartMasses = std::array<std::int64_t, 6>; ///< by Part

/// Where mass can be. `pack`, `worn`, `in_use` and `laid_down` hold things; the others take
/// what leaves the party, or give what comes to it.
enum class Account {
    outside, ///< home, shop, spring, cache: where things come from and go to
    pack,    ///< a member's, on foot on the back and afloat in the craft
    worn,    ///< on a member's body
    in_use,  ///< paddle in hand, boat on the water
    eaten,
    drunk,
    burnt,
    dried,    ///< water gone from wet things
    laid_down ///< at a place, to be fetched; one for each of Trip::leaves
};

/// One dated, placed movement of mass. `member` is whose account it is on both sides; a handing
/// over is two entries through `outside` with the same `why`.
struct Entry {
    int day = 1;
    std::size_t step = 0;        ///< order of booking within the trip
    PlanLegNumber plan_leg = {}; ///< none: in camp
    double along_m = 0.0;
    std::size_t member = 0; ///< index into the party
    Part part = Part::kit;
    std::int64_t mass_mg = 0; ///< positive
    Account from = Account::outside;
    Account to = Account::pack;
    std::size_t item = no_item;  ///< index into Trip::kit or Trip::craft, by part
    std::string why;             ///< a few words: "breakfast", "filled at Shelf spring"
    std::size_t leave = no_item; ///< index into Trip::leaves: whose `laid_down` it is

    static constexpr std::size_t no_item = static_cast<std::size_t>(-1);
};

/// The one list of masses. Every weight in every output is a sum over it.
struct Ledger {
    std::vector<Entry> entries; ///< by step

    /// What a member's account holds of a part before booking `step`.
    [[nodiscard]] std::int64_t
    balance_mg(std::size_t member, Account account, Part part, std::size_t step) const;
    /// The same over all parts.
    [[nodiscard]] std::int64_t
    balance_mg(std::size_t member, Account account, std::size_t step) const;
    /// What lies at the place of one of Trip::leaves before booking `step`.
    [[nodiscard]] std::int64_t laid_down_mg(std::size_t leave, std::size_t step) const;
};

} // namespace tumpline::planner

#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/kit_masses.h"
#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// Where a thing is that is packed, worn or used.
[[nodiscard]] Account account_of(ItemUse use);

/// Things of the kit and boats: books how they move between packs, bodies, hands and the places
/// where they are left, and the water that clings to them. `loads` says who bears what and what is
/// left where; inputs, loads and booking must outlive it.
class ThingBooking {
  public:
    ThingBooking(const LoadInputs& inputs, const Loads& loads, Booking& booking);

    /// What is packed at home.
    void start();
    /// Moves everything whose place differs between foot and boat.
    void change_state(bool afloat);
    /// What is left at a boundary stays with whoever had it, in the account of its place.
    void lay_down(std::size_t boundary);
    /// What lies at a boundary goes to whoever bears or uses it as the party is now.
    void fetch(std::size_t boundary);
    /// After a stretch afloat: what is with the party.
    void get_wet();
    /// A night without rain dries the boats and the things, wherever they lie.
    void dry();

    /// The packs as they are on foot, boats rolled up, whatever the things are doing now.
    [[nodiscard]] std::vector<double> packed_ashore_kg() const;

    [[nodiscard]] const std::vector<bool>& items_here() const { return item_here_; }

    [[nodiscard]] const std::vector<bool>& craft_here() const { return craft_here_; }

    [[nodiscard]] const std::vector<bool>& items_wet() const { return item_wet_; }

    [[nodiscard]] const std::vector<bool>& craft_wet() const { return wet_; }

    /// With the water that clings to it.
    [[nodiscard]] std::int64_t craft_mg(std::size_t craft) const {
        return planner::craft_mg(in_.assumed.craft[craft], wetness(wet_[craft]));
    }

  private:
    /// With the water that clings to it.
    [[nodiscard]] std::int64_t mass_mg(std::size_t item) const {
        return item_mg(in_.trip, in_.assumed, item, wetness(item_wet_[item]));
    }

    /// Where a thing is on foot or afloat: in the pack it is with whoever bears its piece.
    struct Holding {
        std::size_t member;
        Account account;
    };

    /// Where a thing lies until it is fetched: in whose account, by which of Trip::leaves.
    struct Lying {
        std::size_t member;
        std::size_t leave;
    };

    [[nodiscard]] Holding held(std::size_t item, bool afloat) const;
    [[nodiscard]] Holding held_craft(std::size_t craft, bool afloat) const;
    void wet_item(std::size_t item, bool wet);

    const LoadInputs& in_;
    const Loads& loads_;
    Booking& booking_;
    std::vector<bool> wet_;        ///< per craft
    std::vector<bool> item_wet_;   ///< per kit item
    std::vector<bool> item_here_;  ///< per kit item: it comes, and lies nowhere
    std::vector<bool> craft_here_; ///< per craft
    std::vector<std::optional<Lying>> item_lies_;
    std::vector<std::optional<Lying>> craft_lies_;
    bool afloat_now_ = false;
};

} // namespace tumpline::planner

#pragma once

#include "planner/loads/ledger.h"
#include "planner/quantities/leg_number.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// When and where masses move.
struct BookingPlace {
    int day = 1;
    PlanLegNumber plan_leg = {}; ///< none: in camp
    double along_m = 0.0;
};

/// One movement to book.
struct Movement {
    std::size_t member;
    Part part;
    std::int64_t mass_mg;
    Account from;
    Account to;
    std::size_t item = Entry::no_item;
    std::size_t leave = Entry::no_item;
};

/// Books movements one after the other and knows what every account holds now. Entries are kept
/// only when recording; the balances are the same either way.
class Booking {
  public:
    Booking(std::size_t members, bool record) : balances_(members), record_(record) {}

    void set_place(const BookingPlace& place) { place_ = place; }

    void book(const Movement& movement, std::string_view why);

    [[nodiscard]] std::int64_t held_mg(std::size_t member, Account account, Part part) const;
    [[nodiscard]] std::int64_t held_mg(std::size_t member, Account account) const;

    [[nodiscard]] std::size_t next_step() const { return step_; }

    [[nodiscard]] Ledger take_ledger() { return std::move(ledger_); }

  private:
    using Balance = std::array<std::array<std::int64_t, 6>, 9>; ///< by account and part

    std::vector<Balance> balances_;
    BookingPlace place_;
    std::size_t step_ = 0;
    bool record_;
    Ledger ledger_;
};

} // namespace tumpline::planner

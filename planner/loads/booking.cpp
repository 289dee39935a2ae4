#include "planner/loads/booking.h"

#include <cassert>
#include <numeric>
#include <string>

namespace tumpline::planner {

void Booking::book(const Movement& movement, std::string_view why) {
    if (movement.mass_mg == 0)
        return;
    assert(movement.mass_mg > 0);
    Balance& balance = balances_[movement.member];
    const auto part = static_cast<std::size_t>(movement.part);
    balance[static_cast<std::size_t>(movement.from)][part] -= movement.mass_mg;
    balance[static_cast<std::size_t>(movement.to)][part] += movement.mass_mg;
    if (record_)
        ledger_.entries.push_back({.day = place_.day,
                                   .step = step_,
                                   .plan_leg = place_.plan_leg,
                                   .along_m = place_.along_m,
                                   .member = movement.member,
                                   .part = movement.part,
                                   .mass_mg = movement.mass_mg,
                                   .from = movement.from,
                                   .to = movement.to,
                                   .item = movement.item,
                                   .why = std::string(why),
                                   .leave = movement.leave});
    ++step_;
}

std::int64_t Booking::held_mg(std::size_t member, Account account, Part part) const {
    return balances_[member][static_cast<std::size_t>(account)][static_cast<std::size_t>(part)];
}

std::int64_t Booking::held_mg(std::size_t member, Account account) const {
    const auto& parts = balances_[member][static_cast<std::size_t>(account)];
    return std::accumulate(parts.begin(), parts.end(), std::int64_t{0});
}

} // namespace tumpline::planner

#include "planner/loads/ledger.h"

namespace tumpline::planner {

namespace {

/// What one entry adds to an account of its member.
std::int64_t effect_mg(const Entry& entry, Account account) {
    std::int64_t effect = 0;
    if (entry.to == account)
        effect += entry.mass_mg;
    if (entry.from == account)
        effect -= entry.mass_mg;
    return effect;
}

} // namespace

std::int64_t
Ledger::balance_mg(std::size_t member, Account account, Part part, std::size_t step) const {
    std::int64_t sum = 0;
    for (const Entry& entry : entries) {
        if (entry.step >= step)
            break;
        if (entry.member == member && entry.part == part)
            sum += effect_mg(entry, account);
    }
    return sum;
}

std::int64_t Ledger::balance_mg(std::size_t member, Account account, std::size_t step) const {
    std::int64_t sum = 0;
    for (const Entry& entry : entries) {
        if (entry.step >= step)
            break;
        if (entry.member == member)
            sum += effect_mg(entry, account);
    }
    return sum;
}

std::int64_t Ledger::laid_down_mg(std::size_t leave, std::size_t step) const {
    std::int64_t sum = 0;
    for (const Entry& entry : entries) {
        if (entry.step >= step)
            break;
        if (entry.leave == leave)
            sum += effect_mg(entry, Account::laid_down);
    }
    return sum;
}

} // namespace tumpline::planner

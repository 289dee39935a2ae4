#include "cli/drawing/load_band.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace tumpline::cli {

namespace {

/// What an entry of the ledger changes in its member's pack.
double change_kg(const planner::Entry& entry) {
    const double mass_kg = static_cast<double>(entry.mass_mg) * 1e-6;
    double change = 0.0;
    if (entry.to == planner::Account::pack)
        change += mass_kg;
    if (entry.from == planner::Account::pack)
        change -= mass_kg;
    return change;
}

/// Entries of each leg of the plan that change a pack on the way, by distance along.
std::map<planner::PlanLegNumber, std::vector<const planner::Entry*>>
entries_by_leg(const planner::Plan& plan) {
    std::map<planner::PlanLegNumber, std::vector<const planner::Entry*>> by_leg;
    for (const planner::Entry& entry : plan.ledger.entries) {
        if (entry.plan_leg.none() || entry.plan_leg.index() >= plan.legs.size() ||
            entry.member >= plan.trip.party.size())
            continue;
        const planner::PlanLeg& leg = plan.legs[entry.plan_leg.index()];
        // What is booked at the ends (change-overs) is in the leg's own first and last loads.
        if (entry.along_m > leg.from_m && entry.along_m < leg.to_m)
            by_leg[entry.plan_leg].push_back(&entry);
    }
    for (auto& [leg, entries] : by_leg)
        std::stable_sort(entries.begin(), entries.end(), [](const auto* a, const auto* b) {
            return a->along_m < b->along_m;
        });
    return by_leg;
}

BandPoint loads_at(double along_m, const planner::PlanLeg& leg, std::size_t members, bool at_end) {
    BandPoint point{along_m, std::vector<double>(members, 0.0)};
    if (planner::is_ride(leg.travel))
        return point;
    for (std::size_t i = 0; i < std::min(members, leg.loads.size()); ++i)
        point.member_kg[i] = at_end ? leg.loads[i].pack_end_kg : leg.loads[i].pack_start_kg;
    return point;
}

} // namespace

double BandPoint::sum_kg() const {
    return std::accumulate(member_kg.begin(), member_kg.end(), 0.0);
}

std::vector<BandLeg> load_band(const planner::Plan& plan) {
    const auto by_leg = entries_by_leg(plan);
    const std::size_t members = plan.trip.party.size();
    std::vector<BandLeg> band;
    band.reserve(plan.legs.size());
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const planner::PlanLeg& leg = plan.legs[i];
        const auto number = planner::PlanLegNumber::of_index(i);
        BandLeg piece{number, leg.travel, {loads_at(leg.from_m, leg, members, false)}};
        const auto found = by_leg.find(number);
        if (found != by_leg.end() && !planner::is_ride(leg.travel)) {
            for (const planner::Entry* entry : found->second) {
                BandPoint before = piece.points.back();
                before.along_m = entry->along_m;
                BandPoint after = before;
                double& load_kg = after.member_kg[entry->member];
                load_kg = std::max(0.0, load_kg + change_kg(*entry));
                piece.points.push_back(std::move(before));
                piece.points.push_back(std::move(after));
            }
        }
        piece.points.push_back(loads_at(leg.to_m, leg, members, true));
        band.push_back(std::move(piece));
    }
    return band;
}

double heaviest_kg(const std::vector<BandLeg>& band) {
    double heaviest = 0.0;
    for (const BandLeg& leg : band)
        for (const BandPoint& point : leg.points)
            heaviest = std::max(heaviest, point.sum_kg());
    return heaviest;
}

} // namespace tumpline::cli

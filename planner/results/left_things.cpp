#include "planner/results/left_things.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

/// What was laid down of each thing by one entry; a thing that weighs nothing is not in it.
using Masses = std::map<std::pair<Part, std::size_t>, std::int64_t>;

Masses laid_mg(const Ledger& ledger, std::size_t leave) {
    Masses masses;
    for (const Entry& entry : ledger.entries)
        if (entry.leave == leave && entry.to == Account::laid_down)
            masses[{entry.part, entry.item}] += entry.mass_mg;
    return masses;
}

LaidThings left_at(const Assembly& draft, std::size_t l) {
    const Prepared& prepared = draft.prepared;
    const Loads& loads = draft.settled.loads;
    const LaidDown& laid = loads.laid[l];
    LaidThings left;
    left.leave = l;
    left.at = prepared.trip.leaves[l].at;
    left.day = draft.settled.timeline.stretches[*laid.left_at].day;
    left.leg = prepared.stretches.stretches[*laid.left_at].leg;
    left.along_m = prepared.stretches.boundaries[*laid.left_at].along_m;
    if (laid.fetched_at) {
        left.fetch_day = draft.settled.timeline.stretches[*laid.fetched_at - 1].day;
        left.fetch_leg = prepared.stretches.stretches[*laid.fetched_at - 1].leg;
        left.fetch_along_m = prepared.stretches.boundaries[*laid.fetched_at].along_m;
    }
    Masses masses = laid_mg(loads.ledger, l);
    std::map<std::pair<Part, std::string_view>, std::size_t> rows;
    const auto add = [&](Part part, std::size_t index, const std::string& what, int count) {
        const double mass_kg = mg_to_kg(masses[{part, index}]);
        left.mass_kg += mass_kg;
        // Two paddles of two people are two paddles.
        const auto [row, first] = rows.try_emplace({part, what}, left.things.size());
        if (first) {
            left.things.push_back(
                {.part = part, .index = index, .what = what, .count = count, .mass_kg = mass_kg});
            return;
        }
        left.things[row->second].count += count;
        left.things[row->second].mass_kg += mass_kg;
    };
    if (prepared.trip.leaves[l].food_kg)
        add(Part::food, Entry::no_item, "food", 1);
    if (prepared.trip.leaves[l].fuel_kg)
        add(Part::fuel, Entry::no_item, "fuel", 1);
    if (prepared.trip.leaves[l].water_l)
        add(Part::water, Entry::no_item, "water", 1);
    for (const std::size_t c : laid.craft)
        add(Part::craft, c, prepared.trip.craft[c].name, 1);
    for (const std::size_t k : laid.kit)
        add(Part::kit, k, prepared.trip.kit[k].name, prepared.trip.kit[k].count);
    return left;
}

} // namespace

std::vector<LaidThings> plan_left(const Assembly& draft) {
    std::vector<LaidThings> all;
    const std::vector<LaidDown>& laid = draft.settled.loads.laid;
    for (std::size_t l = 0; l < laid.size(); ++l)
        if (laid[l].left_at && (!laid[l].kit.empty() || !laid[l].craft.empty() ||
                                leaves_stores(draft.prepared.trip.leaves[l])))
            all.push_back(left_at(draft, l));
    std::stable_sort(all.begin(), all.end(), [](const LaidThings& a, const LaidThings& b) {
        return a.along_m < b.along_m;
    });
    return all;
}

} // namespace tumpline::planner

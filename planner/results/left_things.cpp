#include "planner/results/left_things.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cstdint>

namespace tumpline::planner {

namespace {

/// What was laid down of a thing; 0 for what weighs nothing.
double laid_kg(const Ledger& ledger, const ThingRef& thing, std::size_t leave) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : ledger.entries)
        if (entry.leave == leave && entry.part == thing.part && entry.item == thing.index &&
            entry.to == Account::laid_down)
            sum_mg += entry.mass_mg;
    return mg_to_kg(sum_mg);
}

LaidThings left_at(const Assembly& draft, std::size_t l) {
    const Prepared& prepared = draft.prepared;
    const Loads& loads = draft.settled.loads;
    const LaidDown& laid = loads.laid[l];
    LaidThings left;
    left.leave = l;
    left.at = prepared.trip.leaves[l].at;
    left.day = draft.settled.timeline.stretches[*laid.left_at].day;
    left.leg = prepared.stretches.stretches[*laid.left_at].leg + 1;
    left.along_m = prepared.stretches.boundaries[*laid.left_at].along_m;
    if (laid.fetched_at) {
        left.fetch_day = draft.settled.timeline.stretches[*laid.fetched_at - 1].day;
        left.fetch_leg = prepared.stretches.stretches[*laid.fetched_at - 1].leg + 1;
        left.fetch_along_m = prepared.stretches.boundaries[*laid.fetched_at].along_m;
    }
    // Two paddles of two people are two paddles.
    const auto add = [&](Part part, std::size_t index, const std::string& what, int count) {
        const double mass_kg = laid_kg(loads.ledger, {part, index}, l);
        left.mass_kg += mass_kg;
        const auto same =
            std::find_if(left.things.begin(), left.things.end(), [&](const LaidThing& other) {
                return other.part == part && other.what == what;
            });
        if (same == left.things.end())
            left.things.push_back(
                {.part = part, .index = index, .what = what, .count = count, .mass_kg = mass_kg});
        else {
            same->count += count;
            same->mass_kg += mass_kg;
        }
    };
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
        if (laid[l].left_at && (!laid[l].kit.empty() || !laid[l].craft.empty()))
            all.push_back(left_at(draft, l));
    std::stable_sort(all.begin(), all.end(), [](const LaidThings& a, const LaidThings& b) {
        return a.along_m < b.along_m;
    });
    return all;
}

} // namespace tumpline::planner

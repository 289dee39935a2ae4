#include "planner/results/bag_trim.h"

#include "planner/loads/minimax_sharing.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double mg_per_g = 1e3;
constexpr double level_mg = 1.0 * mg_per_g;   // a gram apart is level
constexpr double proven_mg = 10.0 * mg_per_g; // more level than this nobody can pack

/// No way to divide the items is more level: the heaviest cannot be outweighed by more than all
/// others weigh, and where all masses are multiples of some grams, so is the difference of two
/// sums of them, of twice as many from one way to the next.
double least_apart_mg(const std::vector<BagItem>& items) {
    std::int64_t total_mg = 0;
    std::int64_t heaviest_mg = 0;
    std::int64_t step_mg = 0;
    for (const BagItem& item : items) {
        const std::int64_t mass_mg = kg_to_mg(item.mass_kg);
        total_mg += mass_mg;
        heaviest_mg = std::max(heaviest_mg, mass_mg);
        step_mg = std::gcd(step_mg, mass_mg);
    }
    const std::int64_t odd_mg = step_mg == 0 ? 0 : total_mg % (2 * step_mg);
    return static_cast<double>(std::max(2 * heaviest_mg - total_mg, odd_mg));
}

struct Packed {
    std::string what;
    double mass_kg;
    double volume_l;
    bool at_hand;
};

void add_to(std::vector<Packed>& things, Packed thing) {
    if (thing.mass_kg <= 0.0)
        return;
    const auto same = std::find_if(things.begin(), things.end(), [&](const Packed& other) {
        return other.what == thing.what && other.at_hand == thing.at_hand;
    });
    if (same == things.end()) {
        things.push_back(std::move(thing));
    } else {
        same->mass_kg += thing.mass_kg;
        same->volume_l += thing.volume_l;
    }
}

/// A craft's goods in pieces; food and water of each crew member in bags of at most 2 kg.
std::vector<Packed> goods_of(const Assembly& draft, std::size_t craft, std::size_t stretch) {
    const Prepared& prepared = draft.prepared;
    const Loads& loads = draft.settled.loads;
    const std::vector<std::size_t>& crew = prepared.assumed.craft[craft].crew;
    std::vector<Packed> things;
    for (std::size_t k = 0; k < prepared.trip.kit.size(); ++k) {
        const KitItem& item = prepared.trip.kit[k];
        const bool ours = std::find(crew.begin(), crew.end(), loads.item_bearer[k]) != crew.end();
        if (!ours || !prepared.kit.brought[k] || item.afloat != ItemUse::packed)
            continue;
        const std::vector<std::size_t>& wet = loads.stretches[stretch].wet_items;
        const bool is_wet = std::find(wet.begin(), wet.end(), k) != wet.end();
        add_to(things,
               {item.piece.empty() ? item.name : item.piece,
                item.mass_kg * item.count + (is_wet ? prepared.assumed.item_wet_kg[k] : 0.0),
                item.volume_l.value_or(0.0) * item.count,
                item.at_hand});
    }
    const auto add_bags = [&](const char* what, double mass_kg, bool at_hand) {
        constexpr double bag_kg = 2.0;
        const int bags = static_cast<int>(std::ceil(mass_kg / bag_kg));
        for (int b = 0; b < bags; ++b)
            things.push_back({what, mass_kg / bags, 0.0, at_hand});
    };
    for (const std::size_t m : crew) {
        const PartMasses& parts = loads.stretches[stretch].max_parts[m];
        const auto kg = [&](Part part) { return mg_to_kg(parts[static_cast<std::size_t>(part)]); };
        add_bags("food", kg(Part::food), false);
        add_bags("fuel", kg(Part::fuel), false);
        add_bags("water", kg(Part::water), true);
        add_bags("waste", kg(Part::waste), false);
    }
    return things;
}

} // namespace

Levelled level_bags(const std::vector<BagItem>& items, const BagVolumes& volumes) {
    // The two bags' masses differ by twice what the heavier one has over a half of everything.
    const auto bag = [](double volume_l) {
        return Bearer{.own_mg = 0.0, .limit_mg = 1.0, .room = volume_l > 0.0 ? volume_l : HUGE_VAL};
    };
    std::vector<SharedThing> things;
    things.reserve(items.size());
    double total_mg = 0.0;
    for (const BagItem& item : items) {
        things.push_back(
            {.mass_mg = item.mass_kg * mg_per_kg, .may_bear = {}, .takes = item.volume_l});
        total_mg += things.back().mass_mg;
    }
    const double least_mg = least_apart_mg(items);
    const auto apart_mg = [&](const SharedOut& shared) {
        return 2.0 * shared.heaviest_ratio - total_mg;
    };
    ShareBudget budget;
    constexpr double rounding_mg = 1e-3;
    budget.close = (std::max(least_mg, level_mg) + rounding_mg) / 2.0;
    SharedOut shared = share_out({bag(volumes.left_l), bag(volumes.right_l)}, things, 0.0, budget);
    Levelled level{{}, !shared.bearer.empty() || items.empty(), shared.proven};
    if (!level.fits_volume) // level by mass alone
        shared = share_out({bag(0.0), bag(0.0)}, things, 0.0, budget);
    else
        level.proven = level.proven || apart_mg(shared) <= least_mg + proven_mg;
    for (const std::size_t side : shared.bearer)
        level.right.push_back(side == 1);
    return level;
}

TrimmedBags trim_craft(const Assembly& draft, std::size_t craft, std::size_t stretch) {
    const std::vector<double>& bags_l = draft.prepared.trip.craft[craft].bags_l;
    std::vector<Packed> stowed;
    TrimmedBags bags;
    for (Packed& thing : goods_of(draft, craft, stretch)) {
        if (thing.at_hand)
            bags.at_hand.push_back({thing.what, thing.mass_kg});
        else
            stowed.push_back(std::move(thing));
    }
    std::vector<BagItem> items;
    items.reserve(stowed.size());
    for (const Packed& thing : stowed)
        items.push_back({thing.mass_kg, thing.volume_l});
    BagVolumes volumes{0.0, 0.0};
    if (!bags_l.empty())
        volumes = {bags_l.front(), bags_l.back()};
    const Levelled level = level_bags(items, volumes);
    bags.fits_volume = level.fits_volume;
    for (std::size_t k = 0; k < stowed.size(); ++k)
        (level.right[k] ? bags.right : bags.left).push_back({stowed[k].what, stowed[k].mass_kg});
    return bags;
}

} // namespace tumpline::planner

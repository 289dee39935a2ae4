#include "planner/results/bag_trim.h"

#include "planner/quantities/milligrams.h"
#include "planner/results/bag_sums.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace tumpline::planner {

namespace {

/// Depth first over the items, heaviest first; the lighter bag is tried first.
class BagSearch {
  public:
    BagSearch(const std::vector<BagItem>& items, const BagVolumes& volumes)
        : items_(items), volumes_(volumes), order_(items.size()), now_(items.size(), false),
          rest_(items.size() + 1, 0.0) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return items_[a].mass_kg > items_[b].mass_kg;
        });
        for (std::size_t k = order_.size(); k-- > 0;)
            rest_[k] = rest_[k + 1] + items_[order_[k]].mass_kg;
    }

    Levelled run() {
        if (search(few_nodes))
            return {best_.empty() ? fallback() : best_, found_, true};
        if (const std::optional<std::vector<bool>> right = level_by_sums(items_, volumes_))
            return {*right, true, true};
        const bool proven = search(many_nodes);
        return {best_.empty() ? fallback() : best_, found_, proven};
    }

  private:
    // They bound the time, the same on every machine: few where the sums would take less time than
    // the search, many where there are too many sums.
    static constexpr long few_nodes = 4'000;
    static constexpr long many_nodes = 100'000;
    static constexpr double level_kg = 1e-3; // a gram apart is level

    struct Filled {
        double left_kg = 0.0, right_kg = 0.0, left_l = 0.0, right_l = 0.0;
    };

    [[nodiscard]] static bool fits(double used_l, double volume_l) {
        return volume_l <= 0.0 || used_l <= volume_l + 1e-9;
    }

    /// From the start; whether it came to an end within `most` nodes.
    bool search(long most) {
        nodes_ = 0;
        most_nodes_ = most;
        descend(0, {});
        return nodes_ < most;
    }

    void descend(std::size_t depth, const Filled& filled) {
        const double apart_kg = std::abs(filled.left_kg - filled.right_kg);
        // What is left cannot close a larger gap than itself.
        if (apart_kg - rest_[depth] >= best_apart_kg_ - 1e-9 || best_apart_kg_ <= level_kg ||
            ++nodes_ >= most_nodes_)
            return;
        if (depth == order_.size()) {
            best_apart_kg_ = apart_kg;
            best_ = now_;
            found_ = true;
            return;
        }
        const std::size_t item = order_[depth];
        const bool right_first = filled.right_kg < filled.left_kg;
        for (const bool right : {right_first, !right_first}) {
            if (depth == 0 && right != right_first && volumes_.left_l == volumes_.right_l)
                continue; // the mirror image is as level, and fits as well
            Filled more = filled;
            (right ? more.right_kg : more.left_kg) += items_[item].mass_kg;
            (right ? more.right_l : more.left_l) += items_[item].volume_l;
            if (!fits(more.left_l, volumes_.left_l) || !fits(more.right_l, volumes_.right_l))
                continue;
            now_[item] = right;
            descend(depth + 1, more);
        }
    }

    /// Nothing fits: level by mass alone.
    std::vector<bool> fallback() const {
        std::vector<bool> right(items_.size(), false);
        double left_kg = 0.0;
        double right_kg = 0.0;
        for (const std::size_t item : order_) {
            right[item] = right_kg < left_kg;
            (right[item] ? right_kg : left_kg) += items_[item].mass_kg;
        }
        return right;
    }

    const std::vector<BagItem>& items_;
    BagVolumes volumes_;
    std::vector<std::size_t> order_;
    std::vector<bool> now_;
    std::vector<double> rest_; ///< mass of the items from a depth on
    std::vector<bool> best_;
    double best_apart_kg_ = HUGE_VAL;
    bool found_ = false;
    long nodes_ = 0;
    long most_nodes_ = 0;
};

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
    return BagSearch(items, volumes).run();
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

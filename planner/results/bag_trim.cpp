#include "planner/results/bag_trim.h"

#include "planner/loads/kit_masses.h"
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

/// Ways that are looked at for bags within a gram; then those that nobody can pack more level do.
constexpr long fine_nodes = 2'000;

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

/// Kept out of the bags to drink from, by each; common practice, no source.
constexpr double bottle_kg = 1.0;

struct Packed {
    std::string what;
    double mass_kg = 0.0;
    double volume_l = 0.0;
    bool at_hand = false;
    std::optional<BagSide> bag = {};
    std::vector<std::size_t> kit{}; ///< indices into Trip::kit
};

/// The bags in which an item may lie, the left one first.
std::vector<std::size_t> allowed_bags(const BagItem& item) {
    if (!item.bag)
        return {};
    return {*item.bag == BagSide::left ? std::size_t{0} : std::size_t{1}};
}

/// The goods of a craft as a stretch begins, piece by piece.
class Goods {
  public:
    Goods(const Assembly& draft, std::size_t craft, std::size_t stretch)
        : prepared_(draft.prepared), loads_(draft.settled.loads),
          on_(draft.settled.loads.stretches[stretch]),
          crew_(draft.prepared.assumed.craft[craft].crew) {
        for (const TiedItems& tied : loads_.tied)
            add_tied(tied);
        for (const std::size_t m : crew_) {
            const bool loose = prepared_.trip.food.piece.empty();
            if (loose)
                add_bags("food", {kg(m, Part::food), food_l_per_kg(), false});
            add_bags("fuel", {kg(m, Part::fuel), 0.0, false});
            add_water(kg(m, Part::water));
            add_bags("waste", {kg(m, Part::waste), 0.0, false});
        }
    }

    [[nodiscard]] std::vector<Packed> take() { return std::move(things_); }

  private:
    struct Bulk {
        double mass_kg;
        double l_per_kg;
        bool at_hand;
    };

    void add(Packed thing) {
        if (thing.mass_kg > 0.0)
            things_.push_back(std::move(thing));
    }

    /// In bags of at most 2 kg.
    void add_bags(const char* what, const Bulk& bulk) {
        constexpr double bag_kg = 2.0;
        const int bags = static_cast<int>(std::ceil(bulk.mass_kg / bag_kg));
        for (int b = 0; b < bags; ++b)
            add({what, bulk.mass_kg / bags, bulk.mass_kg / bags * bulk.l_per_kg, bulk.at_hand, {}});
    }

    void add_water(double mass_kg) {
        double at_hand_kg = 0.0;
        switch (prepared_.assumed.water.stow) {
        case WaterStow::bottle_at_hand:
            at_hand_kg = std::min(bottle_kg, mass_kg);
            break;
        case WaterStow::at_hand:
            at_hand_kg = mass_kg;
            break;
        case WaterStow::bags:
            break;
        }
        add_bags("water", {at_hand_kg, 1.0, true});
        add_bags("water", {mass_kg - at_hand_kg, 1.0, false});
    }

    /// A piece with all that is in it; what must be at hand is taken out.
    void add_tied(const TiedItems& tied) {
        Packed stowed{.what = tied.name};
        Packed at_hand{.what = tied.name, .at_hand = true};
        for (const std::size_t k : tied.items) {
            const KitItem& item = prepared_.trip.kit[k];
            if (!is_ours(loads_.item_bearer[k]) || item.afloat != ItemUse::packed)
                continue;
            const bool wet =
                std::find(on_.wet_items.begin(), on_.wet_items.end(), k) != on_.wet_items.end();
            Packed& to = item.at_hand ? at_hand : stowed;
            to.mass_kg += mg_to_kg(item_mg(prepared_.trip, prepared_.assumed, k, wetness(wet)));
            to.volume_l += item.volume_l.value_or(0.0) * item.count;
            if (item.bag)
                to.bag = item.bag;
            to.kit.push_back(k);
        }
        if (tied.holds_food)
            for (const std::size_t m : crew_) {
                stowed.mass_kg += kg(m, Part::food);
                stowed.volume_l += kg(m, Part::food) * food_l_per_kg();
            }
        add(std::move(stowed));
        add(std::move(at_hand));
    }

    [[nodiscard]] bool is_ours(std::size_t member) const {
        return std::find(crew_.begin(), crew_.end(), member) != crew_.end();
    }

    [[nodiscard]] double kg(std::size_t member, Part part) const {
        return mg_to_kg(on_.max_parts[member][static_cast<std::size_t>(part)]);
    }

    [[nodiscard]] double food_l_per_kg() const {
        return prepared_.trip.food.volume_l_per_kg.value_or(0.0);
    }

    const Prepared& prepared_;
    const Loads& loads_;
    const StretchLoads& on_;
    const std::vector<std::size_t>& crew_;
    std::vector<Packed> things_;
};

/// Things of one name in one bag are shown as one.
void put_into(std::vector<Stowed>& bag, const Packed& thing) {
    const auto same = std::find_if(
        bag.begin(), bag.end(), [&](const Stowed& other) { return other.what == thing.what; });
    if (same == bag.end())
        bag.push_back({thing.what, thing.mass_kg, thing.kit});
    else {
        same->mass_kg += thing.mass_kg;
        same->kit.insert(same->kit.end(), thing.kit.begin(), thing.kit.end());
    }
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
        things.push_back({.mass_mg = item.mass_kg * mg_per_kg,
                          .may_bear = allowed_bags(item),
                          .takes = item.volume_l});
        total_mg += things.back().mass_mg;
    }
    const double least_mg = least_apart_mg(items);
    const auto apart_mg = [&](const SharedOut& shared) {
        return 2.0 * shared.heaviest_ratio - total_mg;
    };
    ShareBudget budget;
    constexpr double rounding_mg = 1e-3;
    budget.close = (std::max(least_mg, level_mg) + rounding_mg) / 2.0;
    budget.enough = (least_mg + proven_mg) / 2.0;
    budget.fine_nodes = fine_nodes;
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
    for (Packed& thing : Goods(draft, craft, stretch).take()) {
        if (thing.at_hand)
            put_into(bags.at_hand, thing);
        else
            stowed.push_back(std::move(thing));
    }
    std::vector<BagItem> items;
    items.reserve(stowed.size());
    for (const Packed& thing : stowed)
        items.push_back({thing.mass_kg, thing.volume_l, thing.bag});
    BagVolumes volumes{0.0, 0.0};
    if (!bags_l.empty())
        volumes = {bags_l.front(), bags_l.back()};
    const Levelled level = level_bags(items, volumes);
    bags.fits_volume = level.fits_volume;
    for (std::size_t k = 0; k < stowed.size(); ++k)
        put_into(level.right[k] ? bags.right : bags.left, stowed[k]);
    return bags;
}

} // namespace tumpline::planner

#include "planner/results/bag_trim.h"

#include "planner/loads/kit_masses.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double mg_per_g = 1e3;
constexpr double level_mg = 10.0 * mg_per_g; // more level than this nobody can pack

/// Things put into a bag before the best that was found has to do. The same on every machine.
constexpr long most_steps = 5'000;

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
    std::optional<BoatEnd> lies = {};
    std::vector<std::size_t> kit{}; ///< indices into Trip::kit
};

/// Every way of laying items into two bags, the most promising first: the heaviest item first, into
/// the lighter bag, then into the other. What cannot become more level than the best is left out.
class BagSearch {
  public:
    BagSearch(const std::vector<BagItem>& items, const BagVolumes& volumes)
        : items_(items), order_(items.size()), steps_(items.size() + 1),
          most_(std::max(most_steps, static_cast<long>(items.size()) + 2)) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return items_[a].mass_kg > items_[b].mass_kg;
        });
        for (const BagItem& item : items) {
            total_mg_ += item.mass_kg * mg_per_kg;
            any_bag_ = any_bag_ && !item.bag;
        }
        const auto room_l = [](double volume_l) { return volume_l > 0.0 ? volume_l : HUGE_VAL; };
        steps_.front().room_l = {room_l(volumes.left_l), room_l(volumes.right_l)};
    }

    /// Until no way is left or the bags are `enough_mg` apart.
    void run(double enough_mg) {
        enough_mg_ = enough_mg;
        std::size_t depth = 0;
        bool goes_on = comes_to(depth);
        while (taken_ < most_ && !is_enough()) {
            if (goes_on && put_next(depth)) {
                goes_on = comes_to(++depth);
            } else if (depth == 0) {
                ended_ = true;
                return;
            } else {
                --depth;
                goes_on = true;
            }
        }
    }

    /// Per item whether it lies in the right bag; empty if the volumes bar every way that was seen.
    [[nodiscard]] const std::vector<bool>& right() const { return best_; }

    [[nodiscard]] double apart_mg() const { return 2.0 * best_mg_ - total_mg_; }

    /// Whether it came to its end, or as close as was asked for.
    [[nodiscard]] bool complete() const { return ended_ || is_enough(); }

  private:
    /// The bags before an item is laid into one of them: left, right.
    struct Step {
        std::array<double, 2> mass_mg{0.0, 0.0};
        std::array<double, 2> room_l{0.0, 0.0};
        double heavier_mg = 0.0; ///< what one of them weighs at least
        int tried = 0;
        std::size_t bag = 0; ///< the last that was tried
    };

    [[nodiscard]] bool is_enough() const { return apart_mg() <= enough_mg_; }

    /// Whether anything is to be tried from here; keeps the answer if everything is laid.
    bool comes_to(std::size_t depth) {
        Step& step = steps_[depth];
        step.tried = 0;
        if (step.heavier_mg >= best_mg_ || is_enough() || ++taken_ >= most_)
            return false;
        if (depth < order_.size())
            return true;
        best_mg_ = step.heavier_mg;
        best_.resize(items_.size());
        for (std::size_t k = 0; k < order_.size(); ++k)
            best_[order_[k]] = steps_[k].bag == 1;
        return false;
    }

    /// Lays an item into the next bag, if that could help.
    bool put_next(std::size_t depth) {
        constexpr double rounding_l = 1e-9;
        Step& step = steps_[depth];
        const BagItem& item = items_[order_[depth]];
        const double item_mg = item.mass_kg * mg_per_kg;
        while (step.tried < 2) {
            const bool alike = any_bag_ && step.tried == 1 && step.mass_mg[0] == step.mass_mg[1] &&
                               step.room_l[0] == step.room_l[1];
            step.bag = step.tried == 0 ? (step.mass_mg[1] < step.mass_mg[0] ? 1 : 0) : 1 - step.bag;
            ++step.tried;
            const double laden_mg = step.mass_mg[step.bag] + item_mg;
            if (laden_mg >= best_mg_ || alike)
                return false; // the other is heavier still, or the same with the names exchanged
            if (item.volume_l > step.room_l[step.bag] + rounding_l ||
                (item.bag && step.bag != (*item.bag == BagSide::left ? 0U : 1U)))
                continue;
            Step& next = steps_[depth + 1];
            next.mass_mg = step.mass_mg;
            next.room_l = step.room_l;
            next.mass_mg[step.bag] = laden_mg;
            next.room_l[step.bag] -= item.volume_l;
            next.heavier_mg = std::max(step.heavier_mg, laden_mg);
            return true;
        }
        return false;
    }

    const std::vector<BagItem>& items_;
    std::vector<std::size_t> order_;
    std::vector<Step> steps_; ///< per depth
    long most_;
    double enough_mg_ = 0.0;
    double total_mg_ = 0.0;
    bool any_bag_ = true; ///< everything may lie in either
    bool ended_ = false;
    long taken_ = 0;
    double best_mg_ = std::numeric_limits<double>::infinity(); ///< of the heavier bag
    std::vector<bool> best_;
};

/// The goods of a craft as a stretch begins, piece by piece.
class Goods {
  public:
    Goods(const Assembly& draft, std::size_t craft, std::size_t stretch)
        : prepared_(draft.prepared), loads_(draft.settled.loads),
          on_(draft.settled.loads.stretches[stretch]), stretch_(stretch),
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
            if (!is_ours(loads_.item_bearer[k]) || item.afloat != ItemUse::packed ||
                !with_party(loads_.laid, {Part::kit, k}, stretch_))
                continue;
            const bool wet =
                std::find(on_.wet_items.begin(), on_.wet_items.end(), k) != on_.wet_items.end();
            Packed& to = item.at_hand ? at_hand : stowed;
            to.mass_kg += mg_to_kg(item_mg(prepared_.trip, prepared_.assumed, k, wetness(wet)));
            to.volume_l += item.volume_l.value_or(0.0) * item.count;
            if (item.bag)
                to.bag = item.bag;
            if (item.lies)
                to.lies = item.lies;
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
    std::size_t stretch_;
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

/// To what lies at the ends of a boat.
void put_at_end(std::optional<EndsLoad>& ends, const Packed& thing) {
    if (!thing.lies)
        return;
    if (!ends)
        ends.emplace();
    (*thing.lies == BoatEnd::bow ? ends->bow_kg : ends->stern_kg) += thing.mass_kg;
    put_into(*thing.lies == BoatEnd::bow ? ends->bow : ends->stern, thing);
}

} // namespace

Levelled level_bags(const std::vector<BagItem>& items, const BagVolumes& volumes) {
    const double enough_mg = least_apart_mg(items) + level_mg;
    BagSearch search(items, volumes);
    search.run(enough_mg);
    if (items.empty() || !search.right().empty())
        return {search.right(), true, search.complete()};
    BagSearch by_mass(items, {0.0, 0.0});
    by_mass.run(enough_mg);
    return {by_mass.right(), false, search.complete()};
}

TrimmedBags trim_craft(const Assembly& draft, std::size_t craft, std::size_t stretch) {
    const std::vector<double>& bags_l = draft.prepared.trip.craft[craft].bags_l;
    std::vector<Packed> stowed;
    TrimmedBags bags;
    for (Packed& thing : Goods(draft, craft, stretch).take()) {
        put_at_end(bags.ends, thing);
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

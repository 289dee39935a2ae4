#include "planner/results/volumes.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace tumpline::planner {

namespace {

/// Something in a pack.
struct Filling {
    std::string name;
    double volume_l;
    bool needed = false; ///< food and water: not left out for want of room
};

struct Contents {
    std::vector<Filling> known;
    std::vector<std::string> unknown;

    void add(const std::string& name, std::optional<double> volume_l, bool needed = false) {
        if (volume_l)
            known.push_back({name, *volume_l, needed});
        else
            unknown.push_back(name);
    }

    [[nodiscard]] double sum_l() const {
        double sum = 0.0;
        for (const Filling& one : known)
            sum += one.volume_l;
        return sum;
    }
};

/// All of a count.
std::optional<double> volume_of(const KitItem& item) {
    return item.volume_l ? std::optional(*item.volume_l * item.count) : std::nullopt;
}

std::optional<double> food_l(const Trip& trip, double food_kg) {
    const std::optional<double> l_per_kg = trip.food.volume_l_per_kg;
    return l_per_kg ? std::optional(*l_per_kg * food_kg) : std::nullopt;
}

Contents contents_on(const Assembly& draft, std::size_t member, std::size_t stretch) {
    const Trip& trip = draft.prepared.trip;
    const Loads& loads = draft.settled.loads;
    const PartMasses& parts = loads.stretches[stretch].max_parts[member];
    const auto kg = [&](Part part) { return mg_to_kg(parts[static_cast<std::size_t>(part)]); };
    Contents contents;
    for (std::size_t k = 0; k < trip.kit.size(); ++k)
        if (draft.prepared.kit.brought[k] && loads.item_bearer[k] == member &&
            trip.kit[k].ashore == ItemUse::packed &&
            with_party(loads.laid, {Part::kit, k}, stretch))
            contents.add(trip.kit[k].name, volume_of(trip.kit[k]));
    for (std::size_t c = 0; c < trip.craft.size() && kg(Part::craft) > 0.0; ++c)
        if (loads.craft_bearer[c] == member && with_party(loads.laid, {Part::craft, c}, stretch))
            contents.add(trip.craft[c].name, trip.craft[c].rolled_l);
    if (kg(Part::food) > 0.0)
        contents.add("food", food_l(trip, kg(Part::food)), true);
    if (kg(Part::fuel) > 0.0)
        contents.add("fuel", std::nullopt);
    if (kg(Part::water) > 0.0)
        contents.add("water", kg(Part::water), true);
    return contents;
}

/// The fewest things whose taking out lets the rest go in: the largest first.
std::vector<std::string> too_much(std::vector<Filling> things, double over_l) {
    std::stable_sort(things.begin(), things.end(), [](const Filling& a, const Filling& b) {
        return a.volume_l > b.volume_l;
    });
    std::vector<std::string> names;
    // The smallest that is enough alone, else the largest and what is then still too much.
    while (over_l > 0.0 && !things.empty()) {
        auto taken = things.begin();
        for (auto one = things.begin(); one != things.end(); ++one)
            if (one->volume_l >= over_l)
                taken = one;
        names.push_back(taken->name);
        over_l -= taken->volume_l;
        things.erase(taken);
    }
    return names;
}

PackVolume pack_of(const Assembly& draft, std::size_t member, double holds_l) {
    PackVolume pack;
    pack.member = draft.prepared.trip.party[member].name;
    pack.holds_l = holds_l;
    pack.needs_l = -1.0;
    Contents fullest;
    for (std::size_t i = 0; i < draft.prepared.stretches.stretches.size(); ++i) {
        if (draft.prepared.stretches.stretches[i].travel != Travel::walk)
            continue;
        Contents here = contents_on(draft, member, i);
        if (here.sum_l() <= pack.needs_l)
            continue;
        pack.needs_l = here.sum_l();
        pack.day = draft.settled.timeline.stretches[i].day;
        pack.plan_leg = draft.settled.loads.plan_leg[i];
        fullest = std::move(here);
    }
    pack.needs_l = std::max(0.0, pack.needs_l);
    pack.unknown = std::move(fullest.unknown);
    std::erase_if(fullest.known, [](const Filling& one) { return one.needed; });
    pack.left_out = too_much(std::move(fullest.known), pack.needs_l - pack.holds_l);
    return pack;
}

/// The party's food in the packs when setting off and after each day, packaging included.
std::vector<double> food_each_night_kg(const Assembly& draft, std::size_t days) {
    const Ledger& ledger = draft.settled.loads.ledger;
    std::vector<double> food_kg;
    std::int64_t now_mg = 0;
    std::size_t entry = 0;
    const auto book_until = [&](const auto& goes_on) {
        for (; entry < ledger.entries.size() && goes_on(ledger.entries[entry]); ++entry) {
            const Entry& one = ledger.entries[entry];
            if (one.part == Part::food)
                now_mg += (one.to == Account::pack ? one.mass_mg : 0) -
                          (one.from == Account::pack ? one.mass_mg : 0);
        }
        food_kg.push_back(mg_to_kg(now_mg));
    };
    book_until([](const Entry& one) { return one.why == "packed at home"; });
    for (std::size_t d = 1; d <= days; ++d)
        book_until([&](const Entry& one) { return static_cast<std::size_t>(one.day) <= d; });
    return food_kg;
}

std::optional<ContainerVolume> container_of(const Assembly& draft,
                                            const std::vector<PlanDay>& days) {
    const Trip& trip = draft.prepared.trip;
    if (!trip.food.container_l)
        return std::nullopt;
    ContainerVolume container;
    container.name = trip.food.piece.empty() ? "food container" : trip.food.piece;
    container.holds_l = *trip.food.container_l;
    double things_l = 0.0;
    if (!trip.food.volume_l_per_kg)
        container.unknown.emplace_back("food");
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        // The container itself lies in nothing.
        if (!draft.prepared.kit.brought[k] || trip.food.piece.empty() ||
            trip.kit[k].piece != trip.food.piece || trip.kit[k].name == trip.food.piece)
            continue;
        const std::optional<double> volume_l = volume_of(trip.kit[k]);
        things_l += volume_l.value_or(0.0);
        if (!volume_l)
            container.unknown.push_back(trip.kit[k].name);
    }
    const std::vector<double> food_kg = food_each_night_kg(draft, days.size());
    for (std::size_t n = 0; n < days.size(); ++n) {
        const double needs_l = things_l + food_l(trip, food_kg[n]).value_or(0.0);
        container.nights.push_back({.day = static_cast<int>(n),
                                    .place = n == 0 ? days[0].from : days[n - 1].to,
                                    .food_kg = food_kg[n],
                                    .needs_l = needs_l,
                                    .fits = needs_l <= container.holds_l + 1e-9});
    }
    for (auto night = container.nights.rbegin(); night != container.nights.rend() && night->fits;
         ++night)
        container.fits_from_day = night->day;
    return container;
}

} // namespace

PlanVolumes plan_volumes(const Assembly& draft, const std::vector<PlanDay>& days) {
    PlanVolumes volumes;
    const std::vector<Member>& party = draft.prepared.trip.party;
    for (std::size_t m = 0; m < party.size(); ++m)
        if (party[m].pack_volume_l)
            volumes.packs.push_back(pack_of(draft, m, *party[m].pack_volume_l));
    volumes.container = container_of(draft, days);
    return volumes;
}

} // namespace tumpline::planner

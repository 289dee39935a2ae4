#include "planner/loads/thing_booking.h"

#include "planner/quantities/milligrams.h"

#include <array>
#include <string>
#include <string_view>

namespace tumpline::planner {

Account account_of(ItemUse use) {
    switch (use) {
    case ItemUse::packed:
        return Account::pack;
    case ItemUse::worn:
        return Account::worn;
    case ItemUse::used:
        return Account::in_use;
    }
    return Account::pack;
}

ThingBooking::ThingBooking(const LoadInputs& inputs, const Loads& loads, Booking& booking)
    : in_(inputs), loads_(loads), booking_(booking), wet_(inputs.assumed.craft.size(), false),
      item_wet_(inputs.trip.kit.size(), false), item_here_(inputs.brought),
      craft_here_(inputs.assumed.craft.size(), true), item_lies_(inputs.trip.kit.size()),
      craft_lies_(inputs.assumed.craft.size()) {}

ThingBooking::Holding ThingBooking::held(std::size_t item, bool afloat) const {
    if (item_lies_[item])
        return {item_lies_[item]->member, Account::laid_down};
    const KitItem& thing = in_.trip.kit[item];
    const ItemUse use = afloat ? thing.afloat : thing.ashore;
    return {use == ItemUse::packed ? loads_.item_bearer[item] : loads_.item_user[item],
            account_of(use)};
}

ThingBooking::Holding ThingBooking::held_craft(std::size_t craft, bool afloat) const {
    if (craft_lies_[craft])
        return {craft_lies_[craft]->member, Account::laid_down};
    return {loads_.craft_bearer[craft], afloat ? Account::in_use : Account::pack};
}

void ThingBooking::start() {
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!in_.brought[k])
            continue;
        const Holding to = held(k, false);
        booking_.book({to.member, Part::kit, mass_mg(k), Account::outside, to.account, k},
                      "packed at home");
    }
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        booking_.book(
            {loads_.craft_bearer[c], Part::craft, craft_mg(c), Account::outside, Account::pack, c},
            "packed at home");
}

void ThingBooking::change_state(bool afloat) {
    if (afloat == afloat_now_)
        return;
    afloat_now_ = afloat;
    const std::string_view why = afloat ? "boots to boat" : "boat to boots";
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!item_here_[k])
            continue;
        const Holding from = held(k, !afloat);
        const Holding to = held(k, afloat);
        if (from.member != to.member) { // out of another's pack
            booking_.book({from.member, Part::kit, mass_mg(k), from.account, Account::outside, k},
                          why);
            booking_.book({to.member, Part::kit, mass_mg(k), Account::outside, to.account, k}, why);
        } else if (from.account != to.account) {
            booking_.book({to.member, Part::kit, mass_mg(k), from.account, to.account, k}, why);
        }
    }
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        if (craft_here_[c])
            booking_.book({loads_.craft_bearer[c],
                           Part::craft,
                           craft_mg(c),
                           held_craft(c, !afloat).account,
                           held_craft(c, afloat).account,
                           c},
                          why);
}

void ThingBooking::lay_down(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const LaidDown& laid = loads_.laid[l];
        if (laid.left_at != boundary)
            continue;
        const std::string why = "left at " + in_.trip.leaves[l].at;
        const auto leave = [&](Part part, std::size_t index, Holding from, std::int64_t mg) {
            booking_.book({from.member, part, mg, from.account, Account::laid_down, index, l}, why);
            return Lying{from.member, l};
        };
        for (const std::size_t k : laid.kit) {
            item_lies_[k] = leave(Part::kit, k, held(k, afloat_now_), mass_mg(k));
            item_here_[k] = false;
        }
        for (const std::size_t c : laid.craft) {
            craft_lies_[c] = leave(Part::craft, c, held_craft(c, afloat_now_), craft_mg(c));
            craft_here_[c] = false;
        }
    }
}

void ThingBooking::fetch(std::size_t boundary) {
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const LaidDown& laid = loads_.laid[l];
        if (laid.fetched_at != boundary)
            continue;
        const std::string why = "fetched at " + in_.trip.leaves[l].at;
        const auto take = [&](Part part, std::size_t index, std::array<Holding, 2> way, auto mg) {
            const auto& [from, to] = way;
            const bool same = from.member == to.member;
            const Account first = same ? to.account : Account::outside;
            booking_.book({from.member, part, mg, Account::laid_down, first, index, l}, why);
            if (!same) // into another's pack
                booking_.book({to.member, part, mg, Account::outside, to.account, index}, why);
        };
        for (const std::size_t k : laid.kit) {
            const Holding from = held(k, afloat_now_);
            item_lies_[k].reset();
            item_here_[k] = true;
            take(Part::kit, k, {from, held(k, afloat_now_)}, mass_mg(k));
        }
        for (const std::size_t c : laid.craft) {
            const Holding from = held_craft(c, afloat_now_);
            craft_lies_[c].reset();
            craft_here_[c] = true;
            take(Part::craft, c, {from, held_craft(c, afloat_now_)}, craft_mg(c));
        }
    }
}

/// Water comes to a thing, or has dried off it, wherever it is.
void ThingBooking::wet_item(std::size_t item, bool wet) {
    const std::int64_t water_mg = item_water_mg(in_.assumed, item);
    if (!in_.brought[item] || water_mg == 0 || item_wet_[item] == wet)
        return;
    item_wet_[item] = wet;
    const Holding now = held(item, afloat_now_);
    booking_.book({now.member,
                   Part::kit,
                   water_mg,
                   wet ? Account::outside : now.account,
                   wet ? now.account : Account::dried,
                   item,
                   item_lies_[item] ? item_lies_[item]->leave : Entry::no_item},
                  wet ? "wet from the water" : "dried over night");
}

void ThingBooking::get_wet() {
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k)
        if (item_here_[k])
            wet_item(k, true);
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (wet_[c] || !craft_here_[c])
            continue;
        wet_[c] = true;
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       craft_water_mg(in_.assumed.craft[c]),
                       Account::outside,
                       afloat_now_ ? Account::in_use : Account::pack,
                       c},
                      "wet from the water");
    }
}

void ThingBooking::dry() {
    if (in_.assumed.weather.rain)
        return;
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k)
        wet_item(k, false);
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (!wet_[c])
            continue;
        wet_[c] = false;
        const Holding now = held_craft(c, afloat_now_);
        booking_.book({now.member,
                       Part::craft,
                       craft_water_mg(in_.assumed.craft[c]),
                       now.account,
                       Account::dried,
                       c,
                       craft_lies_[c] ? craft_lies_[c]->leave : Entry::no_item},
                      "dried over night");
    }
}

std::vector<double> ThingBooking::packed_ashore_kg() const {
    std::vector<std::int64_t> sum_mg(in_.assumed.members.size());
    for (std::size_t m = 0; m < sum_mg.size(); ++m)
        sum_mg[m] =
            booking_.held_mg(m, Account::pack) + booking_.held_mg(m, Account::in_use, Part::craft);
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!item_here_[k])
            continue;
        const Holding now = held(k, afloat_now_);
        const Holding ashore = held(k, false);
        if (now.account == Account::pack)
            sum_mg[now.member] -= mass_mg(k);
        if (ashore.account == Account::pack)
            sum_mg[ashore.member] += mass_mg(k);
    }
    std::vector<double> packed_kg;
    packed_kg.reserve(in_.assumed.members.size());
    for (const std::int64_t mg : sum_mg)
        packed_kg.push_back(mg_to_kg(mg));
    return packed_kg;
}

} // namespace tumpline::planner

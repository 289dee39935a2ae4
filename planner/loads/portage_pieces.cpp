#include "planner/loads/portage_pieces.h"

#include "planner/quantities/milligrams.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr std::int64_t food_bag_mg = 2'000'000;

ItemUse use_of(const KitItem& item, BoatState boats) {
    return boats == BoatState::whole ? item.afloat : item.ashore;
}

/// With the water that clings to it.
std::int64_t item_mg(const PieceSource& source, std::size_t item) {
    const KitItem& thing = source.trip.kit[item];
    return kg_to_mg(thing.mass_kg) * thing.count +
           (source.item_wet[item] ? kg_to_mg(source.assumed.item_wet_kg[item]) : 0);
}

/// The craft that an item in use is lashed to: the owner's, else the first.
std::size_t craft_of(const Assumed& assumed, std::size_t member) {
    for (std::size_t c = 0; c < assumed.craft.size(); ++c) {
        const std::vector<std::size_t>& crew = assumed.craft[c].crew;
        if (std::find(crew.begin(), crew.end(), member) != crew.end())
            return c;
    }
    return 0;
}

/// Adds to the piece of that name and owner, or makes it.
void add(std::vector<Piece>& pieces, Piece piece) {
    if (piece.mass_mg <= 0)
        return;
    const auto same = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& other) {
        return other.name == piece.name && other.part == piece.part && other.owner == piece.owner;
    });
    if (same != pieces.end())
        same->mass_mg += piece.mass_mg;
    else
        pieces.push_back(std::move(piece));
}

void add_food(std::vector<Piece>& pieces, const PieceSource& source, const Booking& booking) {
    for (std::size_t m = 0; m < source.trip.party.size(); ++m) {
        const std::int64_t mass_mg = booking.held_mg(m, Account::pack, Part::food);
        if (!source.trip.food.piece.empty()) {
            add(pieces, {source.trip.food.piece, m, Part::food, mass_mg, false});
            continue;
        }
        const std::int64_t bags = (mass_mg + food_bag_mg - 1) / food_bag_mg;
        std::int64_t left_mg = mass_mg;
        for (std::int64_t b = 0; b < bags; ++b) {
            const std::int64_t bag_mg = left_mg / (bags - b);
            pieces.push_back({bags == 1 ? std::string("food") : fmt::format("food bag {}", b + 1),
                              m,
                              Part::food,
                              bag_mg,
                              false});
            left_mg -= bag_mg;
        }
    }
}

} // namespace

std::vector<Piece> pieces_of(const PieceSource& source, const Booking& booking, BoatState boats) {
    std::vector<Piece> pieces;
    std::vector<std::int64_t> lashed_mg(source.assumed.craft.size(), 0);
    for (std::size_t k = 0; k < source.trip.kit.size(); ++k) {
        if (!source.brought[k])
            continue;
        const KitItem& item = source.trip.kit[k];
        const std::size_t bearer = source.item_bearer[k];
        const ItemUse use = use_of(item, boats);
        if (use == ItemUse::packed)
            add(pieces,
                {item.piece.empty() ? item.name : item.piece,
                 bearer,
                 Part::kit,
                 item_mg(source, k),
                 false});
        else if (use == ItemUse::used && boats == BoatState::whole && !lashed_mg.empty())
            lashed_mg[craft_of(source.assumed, bearer)] += item_mg(source, k);
    }
    for (std::size_t c = 0; c < source.assumed.craft.size(); ++c) {
        const AssumedCraft& craft = source.assumed.craft[c];
        const std::int64_t mass_mg =
            kg_to_mg(craft.mass_kg) + (source.wet[c] ? kg_to_mg(craft.wet_kg) : 0);
        const bool whole = boats == BoatState::whole || !craft.rolls_up;
        pieces.push_back(
            {source.trip.craft[c].name, source.craft_bearer[c], Part::craft, mass_mg, whole});
        add(pieces,
            {fmt::format("lashed to {}", source.trip.craft[c].name),
             source.craft_bearer[c],
             Part::kit,
             lashed_mg[c],
             false});
    }
    add_food(pieces, source, booking);
    for (std::size_t m = 0; m < source.trip.party.size(); ++m) {
        add(pieces, {"fuel", m, Part::fuel, booking.held_mg(m, Account::pack, Part::fuel), false});
        add(pieces,
            {"water", m, Part::water, booking.held_mg(m, Account::pack, Part::water), false});
        add(pieces,
            {"waste", m, Part::waste, booking.held_mg(m, Account::pack, Part::waste), false});
    }
    return pieces;
}

std::vector<double> worn_with(const PieceSource& source, BoatState boats) {
    std::vector<double> worn_kg(source.trip.party.size(), 0.0);
    for (std::size_t k = 0; k < source.trip.kit.size(); ++k) {
        const KitItem& item = source.trip.kit[k];
        const ItemUse use = use_of(item, boats);
        const bool in_hand = use == ItemUse::used && boats != BoatState::whole;
        if (source.brought[k] && (use == ItemUse::worn || in_hand))
            worn_kg[source.item_bearer[k]] += mg_to_kg(item_mg(source, k));
    }
    return worn_kg;
}

} // namespace tumpline::planner

#include "planner/loads/portage_pieces.h"

#include "planner/loads/kit_masses.h"
#include "planner/quantities/milligrams.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::int64_t food_bag_mg = 2'000'000;

/// Where nobody came by water people are as they are on foot, also under a whole boat.
ItemUse use_of(const PieceSource& source, std::size_t item, BoatState boats) {
    const KitItem& thing = source.trip.kit[item];
    return boats == BoatState::whole && source.after_water ? thing.afloat : thing.ashore;
}

std::int64_t item_mg(const PieceSource& source, std::size_t item) {
    return item_mg(source.trip, source.assumed, item, wetness(source.item_wet[item]));
}

/// Used in a boat that is carried whole, and lashed to it.
bool is_lashed(const PieceSource& source, std::size_t item, BoatState boats) {
    const bool any_boat = std::find(source.craft_here.begin(), source.craft_here.end(), true) !=
                          source.craft_here.end();
    return boats == BoatState::whole && source.after_water && any_boat &&
           use_of(source, item, boats) == ItemUse::used;
}

/// The craft, of those that are here, that an item in use is lashed to: that of whoever uses it,
/// else the first.
std::size_t craft_of(const PieceSource& source, std::size_t member) {
    const std::vector<AssumedCraft>& craft = source.assumed.craft;
    for (std::size_t c = 0; c < craft.size(); ++c)
        if (source.craft_here[c] &&
            std::find(craft[c].crew.begin(), craft[c].crew.end(), member) != craft[c].crew.end())
            return c;
    const auto first = std::find(source.craft_here.begin(), source.craft_here.end(), true);
    return static_cast<std::size_t>(first - source.craft_here.begin());
}

void add(std::vector<Piece>& pieces, Piece piece) {
    if (piece.mass_mg > 0)
        pieces.push_back(std::move(piece));
}

/// The food of everybody, whoever has it in the pack.
std::int64_t all_food_mg(const PieceSource& source, const Booking& booking) {
    std::int64_t sum_mg = 0;
    for (std::size_t m = 0; m < source.trip.party.size(); ++m)
        sum_mg += booking.held_mg(m, Account::pack, Part::food);
    return sum_mg;
}

void add_kit(std::vector<Piece>& pieces,
             const PieceSource& source,
             const Booking& booking,
             BoatState boats) {
    for (const TiedItems& tied : source.loads.tied) {
        Piece piece{.name = tied.name, .owner = 0};
        for (const std::size_t k : tied.items) {
            if (!source.items_here[k])
                continue;
            piece.owner = source.loads.item_bearer[k];
            const KitItem& thing = source.trip.kit[k];
            if (use_of(source, k, boats) == ItemUse::packed)
                piece.add(Part::kit, item_mg(source, k));
            piece.bearers = std::max(piece.bearers, thing.borne_by.value_or(1));
            piece.cart_payload_kg += thing.cart_payload_kg.value_or(0.0) * thing.count;
        }
        if (tied.holds_food) {
            const std::vector<double>& share = source.loads.stage_share.front();
            piece.owner = static_cast<std::size_t>(std::max_element(share.begin(), share.end()) -
                                                   share.begin());
            piece.add(Part::food, all_food_mg(source, booking));
        }
        piece.whose = tied.holder;
        add(pieces, std::move(piece));
    }
}

void add_boats(std::vector<Piece>& pieces, const PieceSource& source, BoatState boats) {
    std::vector<std::size_t> piece_of(source.assumed.craft.size());
    for (std::size_t c = 0; c < source.assumed.craft.size(); ++c) {
        if (!source.craft_here[c])
            continue;
        const AssumedCraft& craft = source.assumed.craft[c];
        Piece boat{.name = source.trip.craft[c].name, .owner = source.loads.craft_bearer[c]};
        boat.boat = boats == BoatState::whole || !craft.rolls_up;
        boat.bearers = boat.boat ? source.trip.craft[c].borne_by.value_or(1) : 1;
        boat.add(Part::craft, craft_mg(craft, wetness(source.wet[c])));
        piece_of[c] = pieces.size();
        pieces.push_back(std::move(boat));
    }
    for (std::size_t k = 0; k < source.trip.kit.size(); ++k) {
        if (!source.items_here[k] || !is_lashed(source, k, boats))
            continue;
        Piece& boat = pieces[piece_of[craft_of(source, source.loads.item_user[k])]];
        boat.add(Part::kit, item_mg(source, k));
        boat.lashed.push_back(source.trip.kit[k].name);
    }
}

/// Of one member, in bags of at most 2 kg.
void add_food(std::vector<Piece>& pieces, std::size_t member, std::int64_t mass_mg) {
    const std::int64_t bags = (mass_mg + food_bag_mg - 1) / food_bag_mg;
    std::int64_t left_mg = mass_mg;
    for (std::int64_t b = 0; b < bags; ++b) {
        const std::int64_t bag_mg = left_mg / (bags - b);
        Piece bag{.name = bags == 1 ? std::string("food") : fmt::format("food bag {}", b + 1),
                  .owner = member};
        bag.add(Part::food, bag_mg);
        pieces.push_back(std::move(bag));
        left_mg -= bag_mg;
    }
}

} // namespace

std::vector<Piece> pieces_of(const PieceSource& source, const Booking& booking, BoatState boats) {
    constexpr std::size_t others_each = 8; // a few bags of food, fuel, water, waste
    std::vector<Piece> pieces;
    pieces.reserve(source.loads.tied.size() + source.assumed.craft.size() +
                   others_each * source.trip.party.size());
    add_kit(pieces, source, booking, boats);
    add_boats(pieces, source, boats);
    if (source.trip.food.piece.empty())
        for (std::size_t m = 0; m < source.trip.party.size(); ++m)
            add_food(pieces, m, booking.held_mg(m, Account::pack, Part::food));
    for (std::size_t m = 0; m < source.trip.party.size(); ++m)
        for (const auto& [name, part] : {std::pair{"fuel", Part::fuel},
                                         std::pair{"water", Part::water},
                                         std::pair{"waste", Part::waste}}) {
            Piece piece{.name = name, .owner = m};
            piece.add(part, booking.held_mg(m, Account::pack, part));
            add(pieces, std::move(piece));
        }
    return pieces;
}

std::vector<double> worn_with(const PieceSource& source, BoatState boats) {
    std::vector<double> worn_kg(source.trip.party.size(), 0.0);
    for (std::size_t k = 0; k < source.trip.kit.size(); ++k)
        if (source.items_here[k] && use_of(source, k, boats) != ItemUse::packed &&
            !is_lashed(source, k, boats))
            worn_kg[source.loads.item_user[k]] += mg_to_kg(item_mg(source, k));
    return worn_kg;
}

} // namespace tumpline::planner

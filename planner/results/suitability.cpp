#include "planner/results/suitability.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

// Of the trade; common practice, no source.
constexpr RiverClass rapids_class = 3;   ///< from which boats and paddles for rapids are meant
constexpr RiverClass waves_class = 2;    ///< from which waves come into an open boat
constexpr double between_boats_kg = 3.0; ///< of one seat: 2 kg for flat water, 4 kg for rapids
constexpr int pieces_that_go_in = 4;
constexpr int pieces_that_stick_out = 2;

/// A leg's water as boats and paddles meet it.
struct MetWater {
    Water water;
    std::optional<RiverClass> river_class;
    bool open_crossing;
    bool rain;

    [[nodiscard]] bool from(RiverClass least) const { return river_class.value_or(0) >= least; }

    [[nodiscard]] bool flat() const {
        return water == Water::river ? river_class && *river_class < waves_class
                                     : !from(waves_class);
    }

    [[nodiscard]] bool class_open() const { return water == Water::river && !river_class; }
};

/// The hardest river that a boat is made for; 0 where a class is not said.
RiverClass hardest_river(const Craft& craft) {
    RiverClass hardest = 0;
    for (const SuitedWater& suited : craft.suits) {
        if (suited.water != Water::river)
            continue;
        if (suited.hardest == 0)
            return 0;
        hardest = std::max(hardest, suited.hardest);
    }
    return hardest;
}

SuitRemark judged_water(const Craft& craft, const MetWater& met) {
    if (craft.suits.empty())
        return {Suits::not_known, SuitReason::suits_not_given};
    if (std::none_of(craft.suits.begin(), craft.suits.end(), [&](const SuitedWater& suited) {
            return suited.water == met.water;
        }))
        return {Suits::no, SuitReason::water_not_named};
    const RiverClass hardest = met.water == Water::river ? hardest_river(craft) : 0;
    if (hardest > 0 && met.class_open())
        return {Suits::not_known, SuitReason::class_not_given};
    if (hardest > 0 && *met.river_class > hardest)
        return {Suits::no, SuitReason::class_over};
    return {Suits::yes, SuitReason::water_named};
}

std::vector<SuitRemark> judged_boat(const Craft& craft, HullKind kind, const MetWater& met) {
    std::vector<SuitRemark> remarks{judged_water(craft, met)};
    const bool waves = met.from(waves_class) || met.open_crossing || met.water == Water::sea;
    if (craft.deck == Deck::open && waves)
        remarks.push_back({Suits::with_care, SuitReason::open_deck});
    if (craft.deck == Deck::spray_deck && !waves && met.flat() && !met.rain)
        remarks.push_back({Suits::yes, SuitReason::deck_idle});
    if (craft.thigh_straps == false && met.from(rapids_class))
        remarks.push_back({Suits::with_care, SuitReason::no_straps});
    if (kind != HullKind::packraft && kind != HullKind::inflatable)
        return remarks;
    const bool one_seat = craft.crew.size() < 2;
    if (one_seat && met.from(rapids_class) && craft.mass_kg < between_boats_kg)
        remarks.push_back({Suits::with_care, SuitReason::light_boat});
    if (one_seat && met.flat() && craft.mass_kg > between_boats_kg)
        remarks.push_back({Suits::yes, SuitReason::heavy_boat});
    if (!craft.thigh_straps && met.from(rapids_class))
        remarks.push_back({Suits::with_care, SuitReason::straps});
    return remarks;
}

SuitRemark judged_paddle(const PaddleSpec& paddle, const MetWater& met) {
    if (!paddle.stroke)
        return {Suits::not_known, SuitReason::stroke_open};
    if (met.class_open())
        return {Suits::not_known, SuitReason::class_not_given};
    if (*paddle.stroke == Stroke::low && met.from(rapids_class))
        return {Suits::with_care, SuitReason::low_stroke};
    if (*paddle.stroke == Stroke::high && met.flat())
        return {Suits::with_care, SuitReason::high_stroke};
    return {Suits::yes, SuitReason::stroke_fits};
}

bool says_something(const Craft& craft) {
    return craft.deck || !craft.suits.empty() || craft.thigh_straps;
}

/// "paddle (Ada)"; of the party's things the name.
std::string with_owner(const KitItem& item) {
    return item.owner.empty() ? item.name : fmt::format("{} ({})", item.name, item.owner);
}

class Judging {
  public:
    explicit Judging(const Assembly& draft)
        : prepared_(draft.prepared), loads_(draft.settled.loads) {}

    Suitability run();

  private:
    void leg(LegNumber leg);
    void paddle_in_pack(std::size_t item);
    [[nodiscard]] bool goes_along(const ThingRef& thing, LegNumber leg) const;
    [[nodiscard]] bool walked_with(std::size_t item) const;

    const Prepared& prepared_;
    const Loads& loads_;
    Suitability result_;
};

/// Whether it is with the party anywhere on a leg.
bool Judging::goes_along(const ThingRef& thing, LegNumber leg) const {
    const std::vector<Stretch>& stretches = prepared_.stretches.stretches;
    for (std::size_t i = 0; i < stretches.size(); ++i)
        if (stretches[i].leg == leg && with_party(loads_.laid, thing, i))
            return true;
    return false;
}

bool Judging::walked_with(std::size_t item) const {
    const std::vector<Stretch>& stretches = prepared_.stretches.stretches;
    for (std::size_t i = 0; i < stretches.size(); ++i)
        if (stretches[i].on_foot() && with_party(loads_.laid, {Part::kit, item}, i))
            return true;
    return false;
}

void Judging::leg(LegNumber leg) {
    const Trip& trip = prepared_.trip;
    const RouteLeg& route_leg = prepared_.route.legs[leg.index()];
    const TripLeg& spec = route_leg.spec;
    const MetWater met{.water = spec.on_water(),
                       .river_class = spec.river_class,
                       .open_crossing = spec.open_crossing.value_or(false),
                       .rain = prepared_.assumed.weather.rain};
    LegSuitability row;
    row.leg = leg;
    row.leg_name = route_leg.name;
    row.water = met.water;
    row.river_class = met.river_class;
    for (std::size_t c = 0; c < trip.craft.size(); ++c) {
        const Craft& craft = trip.craft[c];
        if (!says_something(craft) || !goes_along({Part::craft, c}, leg))
            continue;
        row.part = Part::craft;
        row.index = c;
        row.what = craft.name;
        row.mass_kg = craft.mass_kg;
        row.hardest = hardest_river(craft);
        row.remarks = judged_boat(craft, prepared_.assumed.craft[c].kind, met);
        result_.legs.push_back(row);
    }
    row.hardest = 0;
    if (route_leg.travel != Travel::paddle)
        return;
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const KitItem& item = trip.kit[k];
        if (!item.paddle || !prepared_.kit.brought[k] || !goes_along({Part::kit, k}, leg))
            continue;
        row.part = Part::kit;
        row.index = k;
        row.what = with_owner(item);
        row.mass_kg = item.mass_kg;
        row.remarks = {judged_paddle(*item.paddle, met)};
        result_.legs.push_back(row);
    }
}

void Judging::paddle_in_pack(std::size_t item) {
    const Trip& trip = prepared_.trip;
    const KitItem& thing = trip.kit[item];
    const Member& bearer = trip.party[loads_.item_bearer[item]];
    PaddleInPack row;
    row.item = item;
    row.what = with_owner(thing);
    row.bearer = bearer.name;
    row.paddle = *thing.paddle;
    row.pack_length_m = bearer.pack_length_m;
    std::optional<double> packed_m = thing.paddle->packed_length_m;
    if (!packed_m && thing.paddle->pieces == 1)
        packed_m = thing.paddle->length_m;
    if (packed_m && bearer.pack_length_m) {
        row.by = PackedBy::lengths;
        row.sticks_out_m = std::max(0.0, *packed_m - *bearer.pack_length_m);
        row.packed = row.sticks_out_m > 0.0 ? PackedPaddle::sticks_out : PackedPaddle::goes_in;
    } else if (thing.paddle->pieces && *thing.paddle->pieces >= pieces_that_go_in) {
        row.by = PackedBy::pieces;
        row.packed = PackedPaddle::goes_in;
    } else if (thing.paddle->pieces && *thing.paddle->pieces <= pieces_that_stick_out) {
        row.by = PackedBy::pieces;
        row.packed = PackedPaddle::sticks_out;
    }
    result_.paddles.push_back(std::move(row));
}

Suitability Judging::run() {
    const Trip& trip = prepared_.trip;
    std::set<LegNumber> paddled;
    for (const Stretch& stretch : prepared_.stretches.stretches)
        if (aboard(stretch.travel)) // a boat that is led from outside is not run
            paddled.insert(stretch.leg);
    for (const LegNumber one : paddled)
        leg(one);
    for (std::size_t k = 0; k < trip.kit.size(); ++k)
        if (trip.kit[k].paddle && prepared_.kit.brought[k] &&
            trip.kit[k].ashore == ItemUse::packed && walked_with(k))
            paddle_in_pack(k);
    return std::move(result_);
}

} // namespace

Suitability plan_suitability(const Assembly& draft) {
    const Trip& trip = draft.prepared.trip;
    const bool asked = std::any_of(trip.craft.begin(), trip.craft.end(), says_something) ||
                       std::any_of(trip.kit.begin(), trip.kit.end(), [](const KitItem& item) {
                           return item.paddle.has_value();
                       });
    return asked ? Judging(draft).run() : Suitability{};
}

} // namespace tumpline::planner

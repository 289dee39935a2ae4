#include "planner/loads/load_book.h"

#include "planner/loads/assignment.h"
#include "planner/loads/booking.h"
#include "planner/loads/consumables.h"
#include "planner/loads/portage.h"
#include "planner/loads/portage_pieces.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <string_view>

namespace tumpline::planner {

namespace {

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

/// Walks through the trip and books what happens, in the order in which it happens.
class LoadSimulation {
  public:
    explicit LoadSimulation(const LoadInputs& in)
        : in_(in), members_(in.assumed.members.size()), booking_(members_, in.record),
          afloat_(afloat_before(in.stretches, in.boats)), wet_(in.assumed.craft.size(), false),
          item_wet_(in.trip.kit.size(), false), ashore_off_mg_(members_, 0),
          stores_(in, loads_, booking_) {}

    Loads run();

  private:
    void number_plan_legs();
    void start();
    void morning(std::size_t d);
    void evening(std::size_t d);
    void travel(std::size_t i);
    void change_state(bool afloat);
    void get_wet();
    void dry();
    void plan_carry(std::size_t i);
    void note_start(std::size_t i);
    void note_end(std::size_t i);
    [[nodiscard]] PartMasses pack_parts(std::size_t member) const;
    [[nodiscard]] double packed_ashore_kg(std::size_t member) const;

    /// With the water that clings to it.
    [[nodiscard]] std::int64_t mass_mg(std::size_t item) const {
        return item_mg(in_.trip.kit[item]) +
               (item_wet_[item] ? kg_to_mg(in_.assumed.item_wet_kg[item]) : 0);
    }

    [[nodiscard]] Account item_account(std::size_t item) const {
        const KitItem& thing = in_.trip.kit[item];
        return account_of(afloat_now_ ? thing.afloat : thing.ashore);
    }

    void wet_item(std::size_t item, bool wet);

    [[nodiscard]] std::int64_t craft_mg(std::size_t craft) const {
        return kg_to_mg(in_.assumed.craft[craft].mass_kg) +
               (wet_[craft] ? kg_to_mg(in_.assumed.craft[craft].wet_kg) : 0);
    }

    const LoadInputs& in_;
    std::size_t members_;
    Booking booking_;
    std::vector<bool> afloat_;   ///< per boundary, as the changes of the timeline have it
    std::vector<bool> wet_;      ///< per craft
    std::vector<bool> item_wet_; ///< per kit item
    std::vector<std::int64_t> ashore_off_mg_; ///< worn or in hand ashore: not in the pack
    bool afloat_now_ = false;
    Loads loads_;
    Consumables stores_;
};

void LoadSimulation::number_plan_legs() {
    std::size_t index = 0;
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i) {
        if (i > 0 && (in_.stretches.stretches[i].leg != in_.stretches.stretches[i - 1].leg ||
                      in_.timeline.stretches[i].day != in_.timeline.stretches[i - 1].day))
            ++index;
        loads_.plan_leg.push_back(index);
    }
}

void LoadSimulation::start() {
    booking_.set_place({1, 0, 0.0});
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!in_.brought[k])
            continue;
        const Account to = account_of(in_.trip.kit[k].ashore);
        booking_.book({loads_.item_bearer[k], Part::kit, mass_mg(k), Account::outside, to, k},
                      "packed at home");
        if (to != Account::pack)
            ashore_off_mg_[loads_.item_bearer[k]] += mass_mg(k);
    }
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        booking_.book(
            {loads_.craft_bearer[c], Part::craft, craft_mg(c), Account::outside, Account::pack, c},
            "packed at home");
    stores_.start();
}

/// Moves everything whose place differs between foot and boat.
void LoadSimulation::change_state(bool afloat) {
    if (afloat == afloat_now_)
        return;
    afloat_now_ = afloat;
    const std::string_view why = afloat ? "boots to boat" : "boat to boots";
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!in_.brought[k])
            continue;
        const KitItem& item = in_.trip.kit[k];
        const Account ashore = account_of(item.ashore);
        const Account on_water = account_of(item.afloat);
        if (ashore != on_water)
            booking_.book({loads_.item_bearer[k],
                           Part::kit,
                           mass_mg(k),
                           afloat ? ashore : on_water,
                           afloat ? on_water : ashore,
                           k},
                          why);
    }
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       craft_mg(c),
                       afloat ? Account::pack : Account::in_use,
                       afloat ? Account::in_use : Account::pack,
                       c},
                      why);
}

/// Water comes to a thing, or has dried off it, wherever it is. What is worn or in hand ashore
/// stays outside the pack with its water.
void LoadSimulation::wet_item(std::size_t item, bool wet) {
    const std::int64_t water_mg = kg_to_mg(in_.assumed.item_wet_kg[item]);
    if (!in_.brought[item] || water_mg == 0 || item_wet_[item] == wet)
        return;
    item_wet_[item] = wet;
    const std::size_t bearer = loads_.item_bearer[item];
    const Account place = item_account(item);
    booking_.book({bearer,
                   Part::kit,
                   water_mg,
                   wet ? Account::outside : place,
                   wet ? place : Account::dried,
                   item},
                  wet ? "wet from the water" : "dried over night");
    if (in_.trip.kit[item].ashore != ItemUse::packed)
        ashore_off_mg_[bearer] += wet ? water_mg : -water_mg;
}

void LoadSimulation::get_wet() {
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k)
        wet_item(k, true);
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (wet_[c])
            continue;
        wet_[c] = true;
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       kg_to_mg(in_.assumed.craft[c].wet_kg),
                       Account::outside,
                       afloat_now_ ? Account::in_use : Account::pack,
                       c},
                      "wet from the water");
    }
}

/// A night without rain dries the boats and the things.
void LoadSimulation::dry() {
    if (in_.assumed.weather.rain)
        return;
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k)
        wet_item(k, false);
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (!wet_[c])
            continue;
        wet_[c] = false;
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       kg_to_mg(in_.assumed.craft[c].wet_kg),
                       afloat_now_ ? Account::in_use : Account::pack,
                       Account::dried,
                       c},
                      "dried over night");
    }
}

double LoadSimulation::packed_ashore_kg(std::size_t member) const {
    return mg_to_kg(booking_.held_mg(member, Account::pack) +
                    booking_.held_mg(member, Account::worn) +
                    booking_.held_mg(member, Account::in_use) - ashore_off_mg_[member]);
}

void LoadSimulation::morning(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.first].along_m});
    std::vector<double> packed_kg;
    for (std::size_t m = 0; m < members_; ++m)
        packed_kg.push_back(packed_ashore_kg(m));
    loads_.day_start_kg.push_back(std::move(packed_kg));
    if (d > 0)
        dry();
    stores_.breakfast(d);
}

void LoadSimulation::evening(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.last].along_m});
    if (day.last < in_.stretches.stretches.size())
        stores_.supplies_up_to(day.last);
    stores_.dinner(d);
    std::vector<double> packed_kg;
    for (std::size_t m = 0; m < members_; ++m)
        packed_kg.push_back(packed_ashore_kg(m));
    loads_.day_end_kg.push_back(std::move(packed_kg));
}

PartMasses LoadSimulation::pack_parts(std::size_t member) const {
    PartMasses parts{};
    for (std::size_t p = 0; p < parts.size(); ++p)
        parts[p] = booking_.held_mg(member, Account::pack, static_cast<Part>(p));
    return parts;
}

void LoadSimulation::plan_carry(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    const bool after_water =
        i > 0 && in_.stretches.stretches[i - 1].travel != Travel::walk &&
        (in_.stretches.stretches[i - 1].travel == Travel::paddle || afloat_[i]);
    const bool to_water = i + 1 < in_.stretches.stretches.size() &&
                          in_.stretches.stretches[i + 1].travel == Travel::paddle;
    const AssumedTimes& times = in_.assumed.times;
    const bool all_roll = std::all_of(in_.assumed.craft.begin(),
                                      in_.assumed.craft.end(),
                                      [](const AssumedCraft& craft) { return craft.rolls_up; });
    const PieceSource source{in_.trip,
                             in_.assumed,
                             in_.brought,
                             loads_.item_bearer,
                             loads_.craft_bearer,
                             wet_,
                             item_wet_};
    PortageInputs inputs{.leg = in_.route.legs[stretch.leg].spec,
                         .stretch = stretch,
                         .index = i,
                         .assumed = in_.assumed,
                         .party = in_.trip.party,
                         .rolled_pieces = pieces_of(source, booking_, BoatState::rolled),
                         .whole_pieces = pieces_of(source, booking_, BoatState::whole),
                         .rolled_worn_kg = {},
                         .whole_worn_kg = {},
                         .may_roll = all_roll,
                         .may_whole = after_water || !all_roll,
                         .rolled_change_s = (after_water ? times.boat_to_boots_s : 0.0) +
                                            (to_water ? times.boots_to_boat_s : 0.0),
                         .whole_change_s = after_water ? times.landing_s * (to_water ? 2.0 : 1.0)
                                                       : (to_water ? times.landing_s : 0.0),
                         .every_way = in_.record,
                         .pinned = in_.pins.empty() ? std::nullopt : in_.pins[i]};
    inputs.rolled_worn_kg = worn_with(source, BoatState::rolled);
    inputs.whole_worn_kg = worn_with(source, after_water ? BoatState::whole : BoatState::rolled);
    loads_.portages[i] = plan_portage(inputs);
}

void LoadSimulation::note_start(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    StretchLoads& noted = loads_.stretches[i];
    loads_.stretch_step[i] = booking_.next_step();
    for (std::size_t k = 0; in_.record && k < item_wet_.size(); ++k)
        if (item_wet_[k])
            noted.wet_items.push_back(k);
    for (std::size_t m = 0; m < members_; ++m) {
        noted.worn_kg.push_back(mg_to_kg(booking_.held_mg(m, Account::worn) +
                                         booking_.held_mg(m, Account::in_use, Part::kit)));
        noted.max_parts.push_back(pack_parts(m));
        noted.start_kg.push_back(mg_to_kg(booking_.held_mg(m, Account::pack)));
    }
    if (stretch.travel == Travel::portage) {
        plan_carry(i);
        const PortagePlan& plan = *loads_.portages[i];
        noted.worn_kg = plan.worn_kg; // what is lashed to a boat is in a load, not in hand
        for (std::size_t m = 0; m < members_; ++m) {
            std::int64_t heaviest_mg = 0;
            PartMasses parts{};
            for (const PortageLoad& load : plan.relay.loads) {
                if ((load.bearer != m && load.relay != m) || load.mass_mg <= heaviest_mg)
                    continue;
                heaviest_mg = load.mass_mg;
                parts = {};
                for (const std::size_t p : load.pieces)
                    parts[static_cast<std::size_t>(plan.pieces[p].part)] += plan.pieces[p].mass_mg;
            }
            noted.start_kg[m] = mg_to_kg(heaviest_mg);
            noted.max_parts[m] = parts;
        }
    }
    noted.max_kg = noted.start_kg;
    if (stretch.travel == Travel::paddle) {
        for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
            double all_up_kg = mg_to_kg(craft_mg(c));
            for (const std::size_t m : in_.assumed.craft[c].crew)
                all_up_kg += in_.assumed.members[m].body_kg + noted.start_kg[m] + noted.worn_kg[m];
            noted.all_up_kg.push_back(all_up_kg);
        }
    }
}

void LoadSimulation::note_end(std::size_t i) {
    StretchLoads& noted = loads_.stretches[i];
    if (in_.stretches.stretches[i].travel == Travel::portage) {
        noted.end_kg = noted.start_kg; // eaten and drunk after the last load is set down
        return;
    }
    for (std::size_t m = 0; m < members_; ++m)
        noted.end_kg.push_back(mg_to_kg(booking_.held_mg(m, Account::pack)));
    // Afloat the craft is driven at its mean load: what is eaten and drunk on the way counts half.
    for (std::size_t c = 0; c < noted.all_up_kg.size(); ++c)
        for (const std::size_t m : in_.assumed.craft[c].crew)
            noted.all_up_kg[c] -= 0.5 * (noted.start_kg[m] - noted.end_kg[m]);
}

void LoadSimulation::travel(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    const StretchTime& time = in_.timeline.stretches[i];
    booking_.set_place({time.day, loads_.plan_leg[i] + 1, stretch.from_m});
    if (i > 0)
        stores_.supplies_up_to(i);
    stores_.fill(i);
    change_state(
        stretch.travel == Travel::paddle ||
        (stretch.travel == Travel::portage && afloat_[i] && in_.boats[i] == BoatState::whole));
    note_start(i);
    booking_.set_place({time.day, loads_.plan_leg[i] + 1, stretch.to_m});
    stores_.on_the_way(i);
    note_end(i);
    if (stretch.travel == Travel::paddle)
        get_wet();
    if (!afloat_[i + 1])
        change_state(false);
}

Loads LoadSimulation::run() {
    const std::size_t count = in_.stretches.stretches.size();
    loads_.stretches.resize(count);
    loads_.portages.resize(count);
    loads_.stretch_step.resize(count);
    number_plan_legs();
    share_things(in_, loads_);
    start();
    for (std::size_t d = 0; d < in_.timeline.days.size(); ++d) {
        morning(d);
        for (std::size_t i = in_.timeline.days[d].first; i < in_.timeline.days[d].last; ++i)
            travel(i);
        evening(d);
    }
    loads_.craft_wet = wet_;
    loads_.ledger = booking_.take_ledger();
    return std::move(loads_);
}

} // namespace

Loads book_loads(const LoadInputs& inputs) {
    return LoadSimulation(inputs).run();
}

} // namespace tumpline::planner

#include "planner/loads.h"

#include "planner/booking.h"
#include "planner/pieces.h"
#include "planner/portage.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace tumpline::planner {

namespace {

constexpr double mg_per_kg = 1e6;

std::int64_t rounded(double mg) {
    return std::llround(mg);
}

std::int64_t to_mg(double kg) {
    return rounded(kg * mg_per_kg);
}

double to_kg(std::int64_t mg) {
    return static_cast<double>(mg) / mg_per_kg;
}

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
class Booker {
  public:
    explicit Booker(const LoadInputs& in)
        : in_(in), members_(in.assumed.members.size()), booking_(members_, in.record),
          afloat_(afloat_before(in.stretches, in.boats)), planned_mg_(members_, 0),
          wrapper_mg_(members_, 0), reserve_mg_(members_, 0), wet_(in.assumed.craft.size(), false),
          ashore_off_mg_(members_, 0) {}

    Loads run();

  private:
    void number_plan_legs();
    void share_things();
    void start();
    void bring_stage(std::size_t index);
    void hand_in(std::size_t stage);
    void morning(std::size_t d);
    void evening(std::size_t d);
    void travel(std::size_t i);
    void eat(std::int64_t mass_mg, std::string_view why);
    void burn(std::int64_t mass_mg, std::string_view why);
    void drink(double litres, bool from_pack, std::string_view why);
    void fill(std::size_t boundary);
    void change_state(bool afloat);
    void get_wet();
    void dry();
    void supplies_up_to(std::size_t boundary);
    void plan_carry(std::size_t i);
    void note_start(std::size_t i);
    void note_end(std::size_t i);
    [[nodiscard]] std::string boundary_name(std::size_t boundary) const;
    [[nodiscard]] PartMasses pack_parts(std::size_t member) const;
    [[nodiscard]] double packed_ashore_kg(std::size_t member) const;

    [[nodiscard]] std::int64_t item_mg(std::size_t item) const {
        return to_mg(in_.trip.kit[item].mass_kg) * in_.trip.kit[item].count;
    }

    [[nodiscard]] std::int64_t craft_mg(std::size_t craft) const {
        return to_mg(in_.assumed.craft[craft].mass_kg) +
               (wet_[craft] ? to_mg(in_.assumed.craft[craft].wet_kg) : 0);
    }

    const LoadInputs& in_;
    std::size_t members_;
    Booking booking_;
    std::vector<bool> afloat_;             ///< per boundary, as the changes of the timeline have it
    std::vector<std::int64_t> planned_mg_; ///< food to be eaten, per bearer
    std::vector<std::int64_t> wrapper_mg_; ///< packaging of that food
    std::vector<std::int64_t> reserve_mg_; ///< held for delay, packaging included
    std::vector<bool> wet_;
    std::vector<std::int64_t> ashore_off_mg_; ///< worn or in hand ashore: not in the pack
    std::size_t stage_ = 0;
    std::size_t fuel_bearer_ = 0;
    bool afloat_now_ = false;
    Loads loads_;
};

void Booker::number_plan_legs() {
    std::size_t index = 0;
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i) {
        if (i > 0 && (in_.stretches.stretches[i].leg != in_.stretches.stretches[i - 1].leg ||
                      in_.timeline.stretches[i].day != in_.timeline.stretches[i - 1].day))
            ++index;
        loads_.plan_leg.push_back(index);
    }
}

/// Who bears the party's things, the boats and the fuel; how the food is split, stage by stage.
void Booker::share_things() {
    if (in_.shared) {
        loads_.shared = in_.shared->shared;
        loads_.item_bearer = in_.shared->item_bearer;
        loads_.craft_bearer = in_.shared->craft_bearer;
        loads_.stage_share = in_.shared->stage_share;
        fuel_bearer_ = loads_.shared.bearer.back();
        return;
    }
    const Trip& trip = in_.trip;
    std::vector<Bearer> bearers;
    for (const AssumedMember& member : in_.assumed.members)
        bearers.push_back({in_.water.fill_l.front(), member.walk_limit_kg});
    std::vector<SharedThing> things;
    std::vector<std::vector<std::size_t>> items_of_thing;
    loads_.item_bearer.assign(trip.kit.size(), 0);
    const auto member_named = [&](const std::string& name) {
        const auto at = std::find_if(
            trip.party.begin(), trip.party.end(), [&](const Member& m) { return m.name == name; });
        return static_cast<std::size_t>(at - trip.party.begin());
    };
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const KitItem& item = trip.kit[k];
        const std::string& holder = item.owner.empty() ? item.bearer : item.owner;
        if (!holder.empty()) {
            loads_.item_bearer[k] = std::min(member_named(holder), members_ - 1);
            if (in_.brought[k] && item.ashore == ItemUse::packed)
                bearers[loads_.item_bearer[k]].own_kg += to_kg(item_mg(k));
            continue;
        }
        if (!in_.brought[k])
            continue;
        // Party items of one piece stay together.
        const auto same =
            std::find_if(items_of_thing.begin(), items_of_thing.end(), [&](const auto& i) {
                return !item.piece.empty() && trip.kit[i.front()].piece == item.piece;
            });
        if (same != items_of_thing.end()) {
            things[static_cast<std::size_t>(same - items_of_thing.begin())].mass_kg +=
                to_kg(item_mg(k));
            same->push_back(k);
        } else {
            things.push_back({to_kg(item_mg(k)), {}});
            items_of_thing.push_back({k});
        }
    }
    const std::size_t first_craft = things.size();
    for (const AssumedCraft& craft : in_.assumed.craft)
        things.push_back({craft.mass_kg, craft.crew});
    const SupplyStage& first = in_.provisions.stages.front();
    const double container_kg = first.containers * in_.assumed.fuel.container_kg;
    things.push_back({to_kg(first.fuel_mg) + container_kg, {}});
    const double packaging = 1.0 + in_.assumed.food.packaging;
    const auto pool_kg = [&](const SupplyStage& stage) {
        return to_kg(stage.food_mg + stage.reserve_mg) * packaging;
    };
    loads_.shared = share_out(bearers, things, pool_kg(first));
    for (std::size_t t = 0; t < items_of_thing.size(); ++t)
        for (const std::size_t k : items_of_thing[t])
            loads_.item_bearer[k] = loads_.shared.bearer[t];
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        loads_.craft_bearer.push_back(loads_.shared.bearer[first_craft + c]);
    fuel_bearer_ = loads_.shared.bearer.back();
    for (std::size_t t = 0; t < things.size(); ++t)
        bearers[loads_.shared.bearer[t]].own_kg += things[t].mass_kg;
    for (const SupplyStage& stage : in_.provisions.stages)
        loads_.stage_share.push_back(level_out(bearers, pool_kg(stage)));
}

void Booker::start() {
    booking_.set_place({1, 0, 0.0});
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        if (!in_.brought[k])
            continue;
        const Account to = account_of(in_.trip.kit[k].ashore);
        booking_.book({loads_.item_bearer[k], Part::kit, item_mg(k), Account::outside, to, k},
                      "packed at home");
        if (to != Account::pack)
            ashore_off_mg_[loads_.item_bearer[k]] += item_mg(k);
    }
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c)
        booking_.book(
            {loads_.craft_bearer[c], Part::craft, craft_mg(c), Account::outside, Account::pack, c},
            "packed at home");
    bring_stage(0);
}

/// Food, its packaging and fuel of a stage, to their bearers.
void Booker::bring_stage(std::size_t index) {
    const SupplyStage& stage = in_.provisions.stages[index];
    const std::vector<double>& share = loads_.stage_share[index];
    const double packaging = in_.assumed.food.packaging;
    const auto deal = [&](std::int64_t mass_mg, auto&& give) {
        std::int64_t left_mg = mass_mg;
        double left_share = 1.0;
        for (std::size_t m = 0; m < members_; ++m) {
            const bool last = m + 1 == members_ || left_share <= 0.0;
            const std::int64_t part_mg =
                last ? left_mg
                     : std::min(left_mg,
                                rounded(static_cast<double>(left_mg) * share[m] / left_share));
            give(m, part_mg);
            left_mg -= part_mg;
            left_share -= share[m];
        }
    };
    const std::string why = index == 0 ? std::string("packed at home")
                                       : fmt::format("supply at {}", boundary_name(stage.boundary));
    deal(stage.food_mg, [&](std::size_t m, std::int64_t mg) {
        const std::int64_t wrapper_mg = rounded(static_cast<double>(mg) * packaging);
        planned_mg_[m] += mg;
        wrapper_mg_[m] += wrapper_mg;
        booking_.book({m, Part::food, mg + wrapper_mg, Account::outside, Account::pack}, why);
    });
    std::int64_t held_mg = 0;
    for (const std::int64_t mg : reserve_mg_)
        held_mg += mg;
    const std::int64_t wanted_mg =
        rounded(static_cast<double>(stage.reserve_mg) * (1.0 + packaging));
    deal(std::max<std::int64_t>(0, wanted_mg - held_mg), [&](std::size_t m, std::int64_t mg) {
        reserve_mg_[m] += mg;
        booking_.book({m, Part::food, mg, Account::outside, Account::pack}, why);
    });
    const std::int64_t fuel_mg =
        stage.fuel_mg + stage.containers * to_mg(in_.assumed.fuel.container_kg);
    booking_.book({fuel_bearer_, Part::fuel, fuel_mg, Account::outside, Account::pack}, why);
}

/// What is left behind where a new supply is taken: waste (not at a cache) and the old fuel.
void Booker::hand_in(std::size_t stage) {
    const std::size_t boundary = in_.provisions.stages[stage].boundary;
    const std::vector<std::size_t>& places = in_.stretches.boundaries[boundary].places;
    const bool takes_waste = std::any_of(places.begin(), places.end(), [&](std::size_t place) {
        return in_.route.places[place].kind == PlaceKind::resupply;
    });
    const std::string why = fmt::format("left at {}", boundary_name(boundary));
    for (std::size_t m = 0; m < members_; ++m) {
        if (takes_waste)
            booking_.book({m,
                           Part::waste,
                           booking_.held_mg(m, Account::pack, Part::waste),
                           Account::pack,
                           Account::outside},
                          why);
        booking_.book({m,
                       Part::fuel,
                       booking_.held_mg(m, Account::pack, Part::fuel),
                       Account::pack,
                       Account::outside},
                      why);
    }
}

void Booker::supplies_up_to(std::size_t boundary) {
    while (stage_ + 1 < in_.provisions.stages.size() &&
           in_.provisions.stages[stage_ + 1].boundary <= boundary) {
        ++stage_;
        hand_in(stage_);
        bring_stage(stage_);
    }
}

/// Food leaves the packs in proportion to what each bears; its wrapping stays as waste.
void Booker::eat(std::int64_t mass_mg, std::string_view why) {
    std::int64_t borne_mg = 0;
    for (const std::int64_t mg : planned_mg_)
        borne_mg += mg;
    std::int64_t left_mg = std::min(mass_mg, borne_mg);
    for (std::size_t m = 0; m < members_ && borne_mg > 0; ++m) {
        const std::int64_t mine_mg = planned_mg_[m];
        if (mine_mg == 0)
            continue;
        const std::int64_t part_mg =
            std::min(mine_mg,
                     rounded(static_cast<double>(left_mg) *
                             (static_cast<double>(mine_mg) / static_cast<double>(borne_mg))));
        const std::int64_t wrapper_mg =
            part_mg == mine_mg
                ? wrapper_mg_[m]
                : rounded(static_cast<double>(wrapper_mg_[m]) *
                          (static_cast<double>(part_mg) / static_cast<double>(mine_mg)));
        booking_.book({m, Part::food, part_mg, Account::pack, Account::eaten}, why);
        booking_.book({m, Part::food, wrapper_mg, Account::pack, Account::outside}, "unwrapped");
        booking_.book({m, Part::waste, wrapper_mg, Account::outside, Account::pack},
                      "wrapping kept");
        planned_mg_[m] -= part_mg;
        wrapper_mg_[m] -= wrapper_mg;
        left_mg -= part_mg;
        borne_mg -= mine_mg;
    }
}

void Booker::burn(std::int64_t mass_mg, std::string_view why) {
    const std::int64_t held_mg = booking_.held_mg(fuel_bearer_, Account::pack, Part::fuel);
    booking_.book(
        {fuel_bearer_, Part::fuel, std::min(mass_mg, held_mg), Account::pack, Account::burnt}, why);
}

void Booker::drink(double litres, bool from_pack, std::string_view why) {
    for (std::size_t m = 0; m < members_; ++m)
        booking_.book({m,
                       Part::water,
                       to_mg(litres),
                       from_pack ? Account::pack : Account::outside,
                       Account::drunk},
                      why);
}

void Booker::fill(std::size_t boundary) {
    const double litres = in_.water.fill_l[boundary];
    if (litres <= 0.0)
        return;
    const std::string why = boundary == 0 ? std::string("filled before setting off")
                                          : fmt::format("filled at {}", boundary_name(boundary));
    for (std::size_t m = 0; m < members_; ++m)
        booking_.book({m, Part::water, to_mg(litres), Account::outside, Account::pack}, why);
}

/// Moves everything whose place differs between foot and boat.
void Booker::change_state(bool afloat) {
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
                           item_mg(k),
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

void Booker::get_wet() {
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (wet_[c])
            continue;
        wet_[c] = true;
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       to_mg(in_.assumed.craft[c].wet_kg),
                       Account::outside,
                       afloat_now_ ? Account::in_use : Account::pack,
                       c},
                      "wet from the water");
    }
}

/// A night without rain dries the boats.
void Booker::dry() {
    if (in_.assumed.weather.rain)
        return;
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        if (!wet_[c])
            continue;
        wet_[c] = false;
        booking_.book({loads_.craft_bearer[c],
                       Part::craft,
                       to_mg(in_.assumed.craft[c].wet_kg),
                       afloat_now_ ? Account::in_use : Account::pack,
                       Account::dried,
                       c},
                      "dried over night");
    }
}

double Booker::packed_ashore_kg(std::size_t member) const {
    return to_kg(booking_.held_mg(member, Account::pack) + booking_.held_mg(member, Account::worn) +
                 booking_.held_mg(member, Account::in_use) - ashore_off_mg_[member]);
}

void Booker::morning(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.first].along_m});
    std::vector<double> packed_kg;
    for (std::size_t m = 0; m < members_; ++m)
        packed_kg.push_back(packed_ashore_kg(m));
    loads_.day_start_kg.push_back(std::move(packed_kg));
    if (d > 0)
        dry();
    std::int64_t breakfast_mg = 0;
    for (const MealMasses& masses : in_.provisions.eaten[d])
        breakfast_mg += masses[static_cast<std::size_t>(Meal::breakfast)];
    eat(breakfast_mg, "breakfast");
    burn(in_.provisions.burnt_mg[d][0], "breakfast cooked");
    drink(in_.water.camp_l[d][0], in_.water.camp_from_pack[d][0], "drunk in camp");
}

void Booker::evening(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.last].along_m});
    if (day.last < in_.stretches.stretches.size())
        supplies_up_to(day.last);
    const std::vector<MealMasses>& eaten = in_.provisions.eaten[d];
    std::int64_t dinner_mg = 0;
    for (const MealMasses& masses : eaten) {
        dinner_mg += masses[static_cast<std::size_t>(Meal::dinner)];
        if (day.first == day.last)
            dinner_mg += masses[static_cast<std::size_t>(Meal::trail)];
    }
    eat(dinner_mg, "dinner");
    burn(in_.provisions.burnt_mg[d][1], "dinner cooked");
    drink(in_.water.camp_l[d][1], in_.water.camp_from_pack[d][1], "drunk in camp");
    std::vector<double> packed_kg;
    for (std::size_t m = 0; m < members_; ++m)
        packed_kg.push_back(packed_ashore_kg(m));
    loads_.day_end_kg.push_back(std::move(packed_kg));
}

PartMasses Booker::pack_parts(std::size_t member) const {
    PartMasses parts{};
    for (std::size_t p = 0; p < parts.size(); ++p)
        parts[p] = booking_.held_mg(member, Account::pack, static_cast<Part>(p));
    return parts;
}

void Booker::plan_carry(std::size_t i) {
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
    const PieceSource source{
        in_.trip, in_.assumed, in_.brought, loads_.item_bearer, loads_.craft_bearer, wet_};
    PortageInputs inputs{.leg = in_.route.legs[stretch.leg].asked,
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

void Booker::note_start(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    StretchLoads& noted = loads_.stretches[i];
    loads_.stretch_step[i] = booking_.next_step();
    for (std::size_t m = 0; m < members_; ++m) {
        noted.worn_kg.push_back(to_kg(booking_.held_mg(m, Account::worn) +
                                      booking_.held_mg(m, Account::in_use, Part::kit)));
        noted.max_parts.push_back(pack_parts(m));
        noted.start_kg.push_back(to_kg(booking_.held_mg(m, Account::pack)));
    }
    if (stretch.travel == Travel::portage) {
        plan_carry(i);
        const PortagePlan& plan = *loads_.portages[i];
        for (std::size_t m = 0; m < members_; ++m) {
            std::int64_t heaviest_mg = 0;
            PartMasses parts{};
            for (const OneLoad& load : plan.relay.loads) {
                if ((load.bearer != m && load.relay != m) || load.mass_mg <= heaviest_mg)
                    continue;
                heaviest_mg = load.mass_mg;
                parts = {};
                for (const std::size_t p : load.pieces)
                    parts[static_cast<std::size_t>(plan.pieces[p].part)] += plan.pieces[p].mass_mg;
            }
            noted.start_kg[m] = to_kg(heaviest_mg);
            noted.max_parts[m] = parts;
        }
    }
    noted.max_kg = noted.start_kg;
    if (stretch.travel == Travel::paddle) {
        for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
            double all_up_kg = to_kg(craft_mg(c));
            for (const std::size_t m : in_.assumed.craft[c].crew)
                all_up_kg += in_.assumed.members[m].body_kg + noted.start_kg[m] + noted.worn_kg[m];
            noted.all_up_kg.push_back(all_up_kg);
        }
    }
}

void Booker::note_end(std::size_t i) {
    StretchLoads& noted = loads_.stretches[i];
    if (in_.stretches.stretches[i].travel == Travel::portage) {
        noted.end_kg = noted.start_kg; // eaten and drunk after the last load is set down
        return;
    }
    for (std::size_t m = 0; m < members_; ++m)
        noted.end_kg.push_back(to_kg(booking_.held_mg(m, Account::pack)));
    // Afloat the craft is driven at its mean load: what is eaten and drunk on the way counts half.
    for (std::size_t c = 0; c < noted.all_up_kg.size(); ++c)
        for (const std::size_t m : in_.assumed.craft[c].crew)
            noted.all_up_kg[c] -= 0.5 * (noted.start_kg[m] - noted.end_kg[m]);
}

void Booker::travel(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    const StretchTime& time = in_.timeline.stretches[i];
    booking_.set_place({time.day, loads_.plan_leg[i] + 1, stretch.from_m});
    if (i > 0)
        supplies_up_to(i);
    fill(i);
    change_state(
        stretch.travel == Travel::paddle ||
        (stretch.travel == Travel::portage && afloat_[i] && in_.boats[i] == BoatState::whole));
    note_start(i);
    booking_.set_place({time.day, loads_.plan_leg[i] + 1, stretch.to_m});
    double day_moving_s = 0.0;
    const DaySpan& day =
        *std::find_if(in_.timeline.days.begin(), in_.timeline.days.end(), [&](const DaySpan& span) {
            return i >= span.first && i < span.last;
        });
    for (std::size_t k = day.first; k < day.last; ++k)
        day_moving_s += in_.timeline.stretches[k].moving_s;
    const auto d = static_cast<std::size_t>(&day - in_.timeline.days.data());
    std::int64_t trail_mg = 0;
    for (const MealMasses& masses : in_.provisions.eaten[d]) {
        const std::int64_t whole_mg = masses[static_cast<std::size_t>(Meal::trail)];
        // The same split as the provisions': by moving time, the last stretch takes what is left.
        std::int64_t before_mg = 0;
        for (std::size_t k = day.first; k < i; ++k)
            before_mg += day_moving_s > 0.0
                             ? rounded(static_cast<double>(whole_mg) *
                                       in_.timeline.stretches[k].moving_s / day_moving_s)
                             : 0;
        trail_mg += i + 1 == day.last ? whole_mg - before_mg
                    : day_moving_s > 0.0
                        ? rounded(static_cast<double>(whole_mg) * time.moving_s / day_moving_s)
                        : 0;
    }
    eat(trail_mg, "trail food");
    drink(in_.water.drunk_l[i], true, "drunk on the way");
    drink(in_.water.scooped_l[i], false, "drunk where it was found");
    note_end(i);
    if (stretch.travel == Travel::paddle)
        get_wet();
    if (!afloat_[i + 1])
        change_state(false);
}

std::string Booker::boundary_name(std::size_t boundary) const {
    const Boundary& at = in_.stretches.boundaries[boundary];
    if (!at.places.empty())
        return in_.route.places[at.places.front()].name;
    return fmt::format("km {:.1f}", at.along_m / 1000.0);
}

Loads Booker::run() {
    const std::size_t count = in_.stretches.stretches.size();
    loads_.stretches.resize(count);
    loads_.portages.resize(count);
    loads_.stretch_step.resize(count);
    number_plan_legs();
    share_things();
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
    return Booker(inputs).run();
}

} // namespace tumpline::planner

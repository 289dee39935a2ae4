#include "planner/loads/load_book.h"

#include "planner/loads/assignment.h"
#include "planner/loads/booking.h"
#include "planner/loads/consumables.h"
#include "planner/loads/portage.h"
#include "planner/loads/portage_pieces.h"
#include "planner/loads/thing_booking.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

/// Walks through the trip and books what happens, in the order in which it happens.
class LoadSimulation {
  public:
    explicit LoadSimulation(const LoadInputs& in)
        : in_(in), members_(in.assumed.members.size()), booking_(members_, in.record),
          afloat_(afloat_before(in.stretches, in.boats)), things_(in, loads_, booking_),
          stores_(in, loads_, booking_) {}

    Loads run();

  private:
    void number_plan_legs();
    void start();
    void morning(std::size_t d);
    void evening(std::size_t d);
    void travel(std::size_t i);
    void plan_carry(std::size_t i);
    void note_start(std::size_t i);
    void note_end(std::size_t i);
    [[nodiscard]] PartMasses pack_parts(std::size_t member) const;

    const LoadInputs& in_;
    std::size_t members_;
    Booking booking_;
    std::vector<bool> afloat_; ///< per boundary, as the changes of the timeline have it
    Loads loads_;
    ThingBooking things_;
    Consumables stores_;
};

void LoadSimulation::number_plan_legs() {
    std::size_t index = 0;
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i) {
        if (i > 0 && (in_.stretches.stretches[i].leg != in_.stretches.stretches[i - 1].leg ||
                      in_.timeline.stretches[i].day != in_.timeline.stretches[i - 1].day))
            ++index;
        loads_.plan_leg.push_back(PlanLegNumber::of_index(index));
    }
}

void LoadSimulation::start() {
    booking_.set_place({1, 0, 0.0});
    things_.start();
    stores_.start();
}

void LoadSimulation::morning(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.first].along_m});
    if (in_.record || d == 0)
        loads_.day_start_kg.push_back(things_.packed_ashore_kg());
    if (d > 0)
        things_.dry();
    stores_.breakfast(d);
}

void LoadSimulation::evening(std::size_t d) {
    const DaySpan& day = in_.timeline.days[d];
    booking_.set_place({day.day, 0, in_.stretches.boundaries[day.last].along_m});
    if (day.last < in_.stretches.stretches.size())
        stores_.supplies_up_to(day.last);
    stores_.dinner(d);
    if (in_.record)
        loads_.day_end_kg.push_back(things_.packed_ashore_kg());
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
        i > 0 && (in_.stretches.stretches[i - 1].afloat() ||
                  (in_.stretches.stretches[i - 1].travel == Travel::portage && afloat_[i]));
    const bool to_water =
        i + 1 < in_.stretches.stretches.size() && in_.stretches.stretches[i + 1].afloat();
    const AssumedTimes& times = in_.assumed.times;
    bool all_roll = true;
    bool any_boat = in_.assumed.craft.empty(); // who has none at all never had one to leave
    for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
        any_boat = any_boat || things_.craft_here()[c];
        all_roll = all_roll && (!things_.craft_here()[c] || in_.assumed.craft[c].rolls_up);
    }
    const PieceSource source{.trip = in_.trip,
                             .assumed = in_.assumed,
                             .items_here = things_.items_here(),
                             .craft_here = things_.craft_here(),
                             .loads = loads_,
                             .wet = things_.craft_wet(),
                             .item_wet = things_.items_wet(),
                             .after_water = after_water};
    PortageInputs inputs{.leg = in_.route.legs[stretch.leg.index()].spec,
                         .stretch = stretch,
                         .index = i,
                         .assumed = in_.assumed,
                         .party = in_.trip.party,
                         .rolled_pieces = {},
                         .whole_pieces = {},
                         .rolled_worn_kg = {},
                         .whole_worn_kg = {},
                         .may_roll = all_roll,
                         .may_whole = any_boat && (after_water || !all_roll),
                         .rolled_change_s = (after_water ? times.boat_to_boots_s : 0.0) +
                                            (to_water ? times.boots_to_boat_s : 0.0),
                         .whole_change_s = after_water ? times.landing_s * (to_water ? 2.0 : 1.0)
                                                       : (to_water ? times.landing_s : 0.0),
                         .every_way = in_.record,
                         .pinned = in_.pins.empty() ? std::nullopt : in_.pins[i]};
    if (in_.carried && in_.carried->portages[i])
        inputs.kept = &*in_.carried->portages[i];
    if (inputs.may_roll) {
        inputs.rolled_pieces = pieces_of(source, booking_, BoatState::rolled);
        inputs.rolled_worn_kg = worn_with(source, BoatState::rolled);
    }
    if (inputs.may_whole) {
        inputs.whole_pieces = pieces_of(source, booking_, BoatState::whole);
        inputs.whole_worn_kg = worn_with(source, BoatState::whole);
    }
    loads_.portages[i] = plan_portage(std::move(inputs));
}

void LoadSimulation::note_start(std::size_t i) {
    const Stretch& stretch = in_.stretches.stretches[i];
    StretchLoads& noted = loads_.stretches[i];
    loads_.stretch_step[i] = booking_.next_step();
    for (std::size_t k = 0; in_.record && k < things_.items_wet().size(); ++k)
        if (things_.items_wet()[k])
            noted.wet_items.push_back(k);
    noted.worn_kg.reserve(members_);
    noted.max_parts.reserve(members_);
    noted.start_kg.reserve(members_);
    for (std::size_t m = 0; m < members_; ++m) {
        noted.worn_kg.push_back(mg_to_kg(booking_.held_mg(m, Account::worn) +
                                         booking_.held_mg(m, Account::in_use, Part::kit)));
        noted.in_hand_kg.push_back(mg_to_kg(booking_.held_mg(m, Account::in_use, Part::kit)));
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
                if (load.rolls() || (load.bearer != m && load.relay != m) ||
                    load.mass_mg <= heaviest_mg)
                    continue;
                heaviest_mg = load.mass_mg;
                parts = {};
                for (const std::size_t piece : load.pieces)
                    for (std::size_t p = 0; p < parts.size(); ++p)
                        parts[p] += plan.pieces[piece].parts[p];
            }
            noted.start_kg[m] = mg_to_kg(heaviest_mg);
            noted.max_parts[m] = parts;
        }
    }
    noted.max_kg = noted.start_kg;
    if (stretch.afloat()) {
        for (std::size_t c = 0; c < in_.assumed.craft.size(); ++c) {
            double all_up_kg = mg_to_kg(things_.craft_mg(c));
            for (const std::size_t m : in_.assumed.craft[c].crew)
                all_up_kg += noted.in_boat_kg(m, in_.assumed.members[m].body_kg, stretch.travel);
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
    booking_.set_place({time.day, loads_.plan_leg[i], stretch.from_m});
    if (i > 0)
        stores_.supplies_up_to(i);
    things_.lay_down(i);
    stores_.lay_down(i);
    stores_.fill(i);
    stores_.lay_down_water(i);
    things_.change_state(stretch.afloat() || (stretch.travel == Travel::portage && afloat_[i] &&
                                              in_.boats[i] == BoatState::whole));
    note_start(i);
    booking_.set_place({time.day, loads_.plan_leg[i], stretch.to_m});
    stores_.on_the_way(i);
    note_end(i);
    if (stretch.afloat())
        things_.get_wet();
    if (!afloat_[i + 1])
        things_.change_state(false);
    things_.fetch(i + 1);
    stores_.fetch(i + 1);
}

Loads LoadSimulation::run() {
    const std::size_t count = in_.stretches.stretches.size();
    loads_.stretches.resize(count);
    loads_.portages.resize(count);
    loads_.stretch_step.resize(count);
    number_plan_legs();
    share_things(in_, loads_);
    if (!in_.trip.leaves.empty())
        loads_.laid =
            laid_down({in_.trip, in_.route, in_.stretches, in_.timeline.days, in_.brought});
    start();
    for (std::size_t d = 0; d < in_.timeline.days.size(); ++d) {
        morning(d);
        for (std::size_t i = in_.timeline.days[d].first; i < in_.timeline.days[d].last; ++i)
            travel(i);
        evening(d);
    }
    loads_.craft_wet = things_.craft_wet();
    loads_.food_laid = stores_.food_laid();
    loads_.food_short = stores_.food_short();
    loads_.fuel_laid = stores_.fuel_laid();
    loads_.fuel_short = stores_.fuel_short();
    loads_.ledger = booking_.take_ledger();
    return std::move(loads_);
}

} // namespace

Loads book_loads(const LoadInputs& inputs) {
    return LoadSimulation(inputs).run();
}

} // namespace tumpline::planner

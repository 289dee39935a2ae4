#include "planner/solution/fixed_point.h"

#include "geo/input_error.h"
#include "planner/loads/burdens.h"
#include "planner/loads/load_book.h"
#include "planner/quantities/milligrams.h"
#include "planner/solution/snow_by_day.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr int patience = 12;   // rounds after which flipping choices are pinned to the safer one
constexpr int fine_rounds = 6; // after which it is enough that what is printed no longer moves
constexpr double longest_stretch_m = 1000.0; // how finely days may be cut by hours

bool all_roll_up(const Assumed& assumed) {
    return std::all_of(assumed.craft.begin(), assumed.craft.end(), [](const AssumedCraft& craft) {
        return craft.rolls_up;
    });
}

/// Loads before anything is known.
Loads first_loads(const Prepared& prepared, FirstGuess guess) {
    const std::size_t count = prepared.stretches.stretches.size();
    const std::size_t members = prepared.assumed.members.size();
    Loads loads;
    for (std::size_t i = 0; i < count; ++i) {
        StretchLoads load;
        for (const AssumedMember& member : prepared.assumed.members)
            load.start_kg.push_back(guess == FirstGuess::empty_packs ? 0.0 : member.walk_limit_kg);
        load.end_kg = load.start_kg;
        load.max_kg = load.start_kg;
        load.worn_kg.assign(members, 0.0);
        load.max_parts.assign(members, {});
        for (const AssumedCraft& craft : prepared.assumed.craft)
            load.all_up_kg.push_back(craft.reference_kg);
        loads.stretches.push_back(std::move(load));
        std::optional<PortagePlan> portage;
        if (prepared.stretches.stretches[i].travel == Travel::portage) {
            portage.emplace();
            portage->boats = all_roll_up(prepared.assumed) ? BoatState::rolled : BoatState::whole;
            portage->relay.carries = 1.0;
            for (std::size_t m = 0; m < members; ++m) {
                const double kg = loads.stretches[i].start_kg[m];
                portage->member_s.push_back(walk_s(prepared.stretches.stretches[i],
                                                   prepared.assumed.members[m],
                                                   prepared.assumed.models,
                                                   {kg, kg}));
            }
            portage->moving_s =
                *std::max_element(portage->member_s.begin(), portage->member_s.end());
        }
        loads.portages.push_back(std::move(portage));
    }
    return loads;
}

/// When it is dark, worked out once for each day and place.
class DarkHours {
  public:
    explicit DarkHours(const Prepared& prepared, const Assumed& assumed)
        : prepared_(prepared), assumed_(assumed) {}

    const Darkness& of(int day, std::size_t boundary) {
        const auto known = known_.find({day, boundary});
        if (known != known_.end())
            return known->second;
        const double along_m = prepared_.stretches.boundaries[boundary].along_m;
        return known_
            .emplace(std::pair{day, boundary},
                     darkness_on(assumed_, day, prepared_.route.at(along_m)))
            .first->second;
    }

    std::vector<Darkness> of(const std::vector<DaySpan>& days) {
        std::vector<Darkness> all;
        all.reserve(days.size());
        for (const DaySpan& day : days)
            all.push_back(of(day.day, day.last));
        return all;
    }

  private:
    const Prepared& prepared_;
    const Assumed& assumed_;
    std::map<std::pair<int, std::size_t>, Darkness> known_;
};

std::vector<BoatState> boat_states(const Prepared& prepared, const Loads& loads) {
    std::vector<BoatState> boats(prepared.stretches.stretches.size(), BoatState::none);
    for (std::size_t i = 0; i < boats.size(); ++i)
        if (loads.portages[i])
            boats[i] = loads.portages[i]->boats;
    return boats;
}

double largest_change_kg(const Loads& before, const Loads& after) {
    double largest = 0.0;
    for (std::size_t i = 0; i < after.stretches.size(); ++i) {
        const StretchLoads& a = before.stretches[i];
        const StretchLoads& b = after.stretches[i];
        for (std::size_t m = 0; m < b.start_kg.size(); ++m)
            largest = std::max({largest,
                                std::abs(a.start_kg[m] - b.start_kg[m]),
                                std::abs(a.end_kg[m] - b.end_kg[m]),
                                std::abs(a.worn_kg[m] - b.worn_kg[m])});
    }
    return largest;
}

double largest_change_s(const Timeline& before, const Timeline& after) {
    if (before.stretches.size() != after.stretches.size())
        return HUGE_VAL;
    double largest = 0.0;
    for (std::size_t i = 0; i < after.stretches.size(); ++i)
        largest = std::max(largest,
                           before.stretches[i].day != after.stretches[i].day
                               ? HUGE_VAL
                               : std::abs(before.stretches[i].end_s - after.stretches[i].end_s));
    return largest;
}

/// Of two sets of nights the one that sleeps earlier at the first difference.
std::vector<std::size_t> safer(const std::vector<std::size_t>& a,
                               const std::vector<std::size_t>& b) {
    return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end()) ? a : b;
}

PinnedCarry pinned_as(const PortagePlan& portage) {
    return {portage.boats, portage.relay.carries, portage.relay.by};
}

/// Pins each portage whose choice has just flipped to the one with more lengths.
void pin_flips(std::vector<std::optional<PinnedCarry>>& pins,
               const Loads& before,
               const Loads& after) {
    for (std::size_t i = 0; i < after.portages.size(); ++i) {
        if (!after.portages[i] || !before.portages[i])
            continue;
        const PinnedCarry was = pinned_as(*before.portages[i]);
        const PinnedCarry is = pinned_as(*after.portages[i]);
        if (was.boats != is.boats || was.carries != is.carries || was.by != is.by)
            pins[i] = was.carries > is.carries ? was : is;
    }
}

/// The days of a trip by hours that are planned at most, as many as other keys of days allow.
constexpr std::size_t most_days_by_hours = 400;

[[noreturn]] void refuse_endless(const Prepared& prepared) {
    throw geo::InputError(
        {{.file = prepared.trip.file.string(),
          .place = "/route",
          .found = fmt::format("{:.0f} km that take more than {} days by the hours of a day",
                               prepared.route.length_m / 1000.0,
                               most_days_by_hours),
          .expected = fmt::format("a trip of at most {} days", most_days_by_hours),
          .advice = "look for a wrong point in the tracks, add supplies on the way, or plan the "
                    "trip in parts"}});
}

/// Who bears what, without what it makes of the stretches.
Loads only_shared(Loads loads) {
    loads.stretches.clear();
    loads.portages.clear();
    return loads;
}

/// Draws of a plan that keep its nights have the snow of its days.
std::shared_ptr<const Stretches> snow_of_draw(const SolveOptions& options) {
    return options.packed && options.nights == options.packed->nights ? options.packed->on_snow
                                                                      : nullptr;
}

/// The rounds of one loop.
class Rounds {
  public:
    Rounds(const Prepared& prepared, const SolveOptions& options)
        : prepared_(prepared), options_(options),
          assumed_(options.assumed ? *options.assumed : prepared.assumed),
          count_(prepared.stretches.stretches.size()),
          snow_(prepared.route, prepared.stretches, assumed_, snow_of_draw(options)),
          moving_(prepared.route, snow_.stretches(), assumed_), dark_(prepared, assumed_),
          start_(options.warm_start), pins_(count_) {
        if (!start_)
            loads_ = first_loads(prepared, options.guess);
    }

    Solved run();

  private:
    [[nodiscard]] const Loads& before() const { return start_ ? *start_ : loads_; }

    void set_days(int round, const std::vector<double>& moving_s);
    void wait_at_end(int round);

    struct Caches {
        StoreCaches stores = {};
        std::vector<WaterCache> water = {};
    };

    [[nodiscard]] Caches caches() const;
    void spend_and_provide();
    [[nodiscard]] Loads book(int round, bool record) const;
    [[nodiscard]] bool is_close(int round, const Loads& next);
    void pin(const Loads& next);

    const Prepared& prepared_;
    const SolveOptions& options_;
    const Assumed& assumed_;
    std::size_t count_;
    SnowByDay snow_;
    MovingTimes moving_;
    DarkHours dark_;
    const Loads* start_; ///< loads of a like trip in place of a round before the first; not copied
    Loads loads_;        ///< of the round before
    std::vector<BoatState> boats_;
    std::vector<std::optional<PinnedCarry>> pins_;
    std::optional<Loads> kept_shares_; ///< who bears what, once that has flipped too often
    Timeline before_;
    Solved now_;
};

void Rounds::set_days(int round, const std::vector<double>& moving_s) {
    const std::vector<int>& rest_days = prepared_.trip.days.rest_days_after;
    const auto dark_all_day = [&](int day, std::size_t boundary) {
        return dark_.of(day, boundary).all_day();
    };
    std::vector<std::size_t> nights =
        options_.nights ? *options_.nights
                        : nights_by_hours(prepared_.route,
                                          snow_.stretches(),
                                          moving_s,
                                          {assumed_.times.hours_s, rest_days, dark_all_day});
    if (!options_.nights && nights.size() >= most_days_by_hours)
        refuse_endless(prepared_);
    if (round > patience && nights != now_.nights) {
        nights = safer(nights, now_.nights);
        now_.converged.settled = false;
    }
    now_.nights = std::move(nights);
    now_.timeline.days = days_at(now_.nights, count_, rest_days);
    snow_.meet(now_.timeline.days);
    now_.timeline.stretches.assign(count_, {});
    for (std::size_t i = 0; i < count_; ++i)
        now_.timeline.stretches[i].by_day_s = moving_s[i];
    set_changes(now_.timeline.stretches, snow_.stretches(), now_.timeline.days, boats_, assumed_);
    now_.darkness = options_.packed && options_.packed->nights == now_.nights
                        ? options_.packed->darkness
                        : dark_.of(now_.timeline.days);
    moving_.set_spells(before(), now_.timeline);
    run_clock(now_.timeline, snow_.stretches(), now_.darkness, assumed_);
    wait_at_end(round);
    moving_.note_winds_met(now_.timeline, now_.afloat);
}

/// Waits for the connection at the end; draws of a plan wait as it does. Where a departure is made
/// in one round and missed in the next the later one is kept: it needs more.
void Rounds::wait_at_end(int round) {
    std::optional<Waiting> waiting = options_.packed
                                         ? options_.packed->waiting
                                         : waiting_at_end(prepared_.trip, assumed_, now_.timeline);
    const auto later = [](const Waiting& a, const Waiting& b) {
        return std::pair{a.days, a.until_s} > std::pair{b.days, b.until_s};
    };
    if (round > patience && waiting && now_.waiting && later(*now_.waiting, *waiting)) {
        waiting = now_.waiting;
        now_.converged.settled = false;
    }
    now_.waiting = waiting;
    if (!waiting)
        return;
    add_waiting(now_.timeline, *waiting, assumed_);
    while (now_.darkness.size() < now_.timeline.days.size())
        now_.darkness.push_back(dark_.of(now_.timeline.days[now_.darkness.size()].day, count_));
}

/// What is laid down and fetched, where the days of this round have it.
Rounds::Caches Rounds::caches() const {
    const Trip& trip = prepared_.trip;
    Caches caches;
    if (std::none_of(trip.leaves.begin(), trip.leaves.end(), [](const Leave& leave) {
            return leaves_stores(leave);
        }))
        return caches;
    const std::vector<LaidDown> laid = laid_down(
        {trip, prepared_.route, prepared_.stretches, now_.timeline.days, prepared_.kit.brought});
    const auto members = static_cast<double>(assumed_.members.size());
    for (std::size_t l = 0; l < laid.size(); ++l) {
        const Leave& leave = trip.leaves[l];
        if (!laid[l].left_at)
            continue;
        const std::size_t left_at = *laid[l].left_at;
        if (leave.water_l)
            caches.water.push_back({left_at, laid[l].fetched_at, *leave.water_l / members});
        if (!laid[l].fetched_at)
            continue;
        if (leave.food_kg)
            caches.stores.food.push_back({left_at, *laid[l].fetched_at, kg_to_mg(*leave.food_kg)});
        if (leave.fuel_kg)
            caches.stores.fuel.push_back({left_at, *laid[l].fetched_at, kg_to_mg(*leave.fuel_kg)});
    }
    return caches;
}

void Rounds::spend_and_provide() {
    now_.spent = spend(prepared_.route,
                       snow_.stretches(),
                       assumed_,
                       now_.timeline,
                       burdens_of(snow_.stretches(), before()));
    const Caches laid = caches();
    now_.provisions =
        provide(assumed_, snow_.stretches(), now_.timeline, now_.spent.day_j, laid.stores);
    if (options_.packed)
        keep_packed(now_.provisions, options_.packed->provisions);
    now_.water = carry_water(assumed_, snow_.stretches(), now_.timeline, laid.water);
}

/// After some rounds what is carried over a portage stays in its loads: those made anew of masses
/// that differ by grams may be quite other ones, as good, and no round would be like the last.
Loads Rounds::book(int round, bool record) const {
    const Loads* const shares = options_.packed ? &options_.packed->loads
                                : kept_shares_  ? &*kept_shares_
                                                : nullptr;
    return book_loads({prepared_.trip,
                       prepared_.route,
                       assumed_,
                       snow_.stretches(),
                       now_.timeline,
                       now_.provisions,
                       now_.water,
                       prepared_.kit.brought,
                       boats_,
                       pins_,
                       record,
                       shares,
                       round > patience ? &before() : nullptr});
}

/// Whether a round has moved nothing any more.
bool Rounds::is_close(int round, const Loads& next) {
    Converged& converged = now_.converged;
    converged.rounds = round;
    converged.largest_change_kg = largest_change_kg(before(), next);
    converged.largest_change_s = largest_change_s(before_, now_.timeline);
    const auto below = [&](double kg, double s) {
        return converged.largest_change_kg < kg && converged.largest_change_s < s;
    };
    return boats_ == boat_states(prepared_, next) &&
           (below(options_.close_kg, options_.close_s) ||
            (round > fine_rounds && below(options_.shown_kg, options_.shown_s)));
}

/// Keeps what has just flipped: of carries the one with more lengths, of the sharing out the last.
void Rounds::pin(const Loads& next) {
    pin_flips(pins_, before(), next);
    if (!kept_shares_ && next.item_bearer != before().item_bearer) {
        kept_shares_ = only_shared(next);
        now_.converged.settled = false;
    }
}

Solved Rounds::run() {
    bool done = false;
    for (int round = 1; !done; ++round) {
        now_.afloat.assign(count_, {});
        const std::vector<double> moving_s = moving_.of_all(before(), before_, now_.afloat);
        boats_ = boat_states(prepared_, before());
        set_days(round, moving_s);
        spend_and_provide();
        Loads next = book(round, false);
        const bool close = is_close(round, next);
        done = close || round >= options_.most_rounds;
        if (done && options_.record)
            next = book(round, true); // the same loads, with all that is told of them
        else if (round > patience)
            pin(next);
        now_.converged.settled = now_.converged.settled && (close || !done);
        loads_ = std::move(next);
        start_ = nullptr;
        before_ = now_.timeline;
    }
    now_.loads = std::move(loads_);
    now_.on_snow = snow_.shared();
    return std::move(now_);
}

} // namespace

Prepared prepare(const Trip& trip, const Route& route) {
    Assumed assumed = assume(trip);
    const bool by_hours = !trip.days.nights_auto && trip.days.nights.empty();
    Stretches stretches = make_stretches(trip, route, assumed, by_hours ? longest_stretch_m : 0.0);
    KitChoice kit = choose_kit(trip, route, assumed);
    return {trip, route, std::move(assumed), std::move(stretches), std::move(kit)};
}

Solved solve(const Prepared& prepared, const SolveOptions& options) {
    return Rounds(prepared, options).run();
}

std::vector<std::size_t> listed_nights(const Prepared& prepared) {
    std::vector<std::size_t> nights;
    std::vector<geo::Problem> problems;
    const Trip& trip = prepared.trip;
    std::size_t least = 0;
    for (std::size_t n = 0; n < trip.days.nights.size(); ++n) {
        const std::string& name = trip.days.nights[n];
        std::size_t found = 0;
        for (const RoutePlace& place : prepared.route.places) {
            const std::size_t boundary = prepared.stretches.boundary_at(place.along_m);
            if (place.name == name && boundary > least && found == 0)
                found = boundary;
        }
        if (found == 0 || found >= prepared.stretches.stretches.size()) {
            problems.push_back(
                {trip.file.string(),
                 fmt::format("/days/nights/{}", n),
                 fmt::format("\"{}\"", name),
                 n == 0 ? std::string("a place along the route, after its start and before its end")
                        : fmt::format("a place on the route beyond \"{}\" and before its end",
                                      trip.days.nights[n - 1]),
                 "list the nights in the order in which the route reaches them"});
            continue;
        }
        nights.push_back(found);
        least = found;
    }
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
    return nights;
}

} // namespace tumpline::planner

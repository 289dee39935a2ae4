#include "planner/solution/nights.h"

#include "planner/quantities/quantities.h"
#include "planner/solution/night_costs.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <bit>
#include <optional>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::array all_limits{NightLimit::most_hours,
                                NightLimit::dusk,
                                NightLimit::camp_closed,
                                NightLimit::camp_full,
                                NightLimit::water,
                                NightLimit::supply_closed,
                                NightLimit::appointment,
                                NightLimit::most_days};
constexpr std::size_t most_askings = 24;

using Nights = std::vector<std::size_t>;

/// Whether `a` is the one that stops earlier at the first difference.
bool stops_earlier(const Nights& a, const Nights& b) {
    const auto [in_a, in_b] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
    return in_a != a.end() && (in_b == b.end() || *in_a < *in_b);
}

/// Limits that the trip sets at all.
NightLimits limits_in_force(const Prepared& prepared) {
    const Trip& trip = prepared.trip;
    NightLimits limits = prepared.assumed.water.assumed_everywhere ? 0U : bit(NightLimit::water);
    if (trip.days.hours_limit)
        limits |= bit(NightLimit::most_hours);
    if (trip.days.dusk_is_limit.value_or(false))
        limits |= bit(NightLimit::dusk);
    if (trip.days.most_days)
        limits |= bit(NightLimit::most_days);
    for (const TripPlace& place : trip.route.places) {
        if (!place.closed.empty() || !place.closed_weekdays.empty())
            limits |= bit(NightLimit::camp_closed) | bit(NightLimit::supply_closed);
        if (place.holds)
            limits |= bit(NightLimit::camp_full);
    }
    for (const Appointment& one : trip.appointments)
        if (one.hard)
            limits |= bit(NightLimit::appointment);
    return limits;
}

/// Asks the programme at one set of loads after the other.
class Chooser {
  public:
    Chooser(const Prepared& prepared, const NightsWatch& watch)
        : prepared_(prepared), watch_(watch), stops_(night_stops(prepared)) {}

    NightsChosen run(std::size_t others);

  private:
    /// Leaves the search if nobody waits for it.
    void go_on();
    [[nodiscard]] NightsSettled settled(const Nights& nights);
    [[nodiscard]] NightProgramme programme(NightDays& days, NightLimits waived);
    [[nodiscard]] std::optional<Nights> answer(const Solved& loads, NightLimits waived);
    [[nodiscard]] std::optional<NightsSettled> repeat(Solved loads, NightLimits waived);
    [[nodiscard]] std::vector<NightLimits> needs_without(const Solved& loads);
    void add_others(NightsChosen& chosen, std::size_t others, NightLimits waived);

    /// Nights that break limits at their own loads.
    struct Barred {
        Nights nights;
        NightLimits broken;
    };

    [[nodiscard]] bool is_barred(const Nights& nights, NightLimits waived) const {
        return std::any_of(barred_.begin(), barred_.end(), [&](const Barred& one) {
            return (one.broken & ~waived) != 0 && one.nights == nights;
        });
    }

    const Prepared& prepared_;
    const NightsWatch& watch_;
    NightStops stops_;
    std::vector<Barred> barred_;
    std::size_t weighed_ = 0; ///< days
    int asked_ = 0;
    bool flipped_ = false;
};

void Chooser::go_on() {
    ++weighed_;
    if (watch_ && !watch_(weighed_))
        throw NightsLeft{};
}

NightsSettled Chooser::settled(const Nights& nights) {
    go_on();
    return settled_at(prepared_, nights);
}

NightProgramme Chooser::programme(NightDays& days, NightLimits waived) {
    return {.stops = stops_.boundaries.size(),
            .room_l = days.room_l(),
            .day =
                [this, &days](const NightSpan& span) {
                    go_on();
                    return days(span);
                },
            .least = [&days](std::size_t from, std::size_t to) { return days.least(from, to); },
            .waived = waived};
}

/// The cheapest nights at these loads that are not known to break a limit at their own.
std::optional<Nights> Chooser::answer(const Solved& loads, NightLimits waived) {
    ++asked_;
    NightDays days(prepared_, stops_, loads);
    for (const NightChoice& choice : best_nights(programme(days, waived), barred_.size() + 1)) {
        Nights nights = stops_.nights(choice.stops);
        if (!is_barred(nights, waived))
            return nights;
    }
    return {};
}

/// Until the programme answers what it was asked at the loads of.
std::optional<NightsSettled> Chooser::repeat(Solved loads, NightLimits waived) {
    std::vector<NightsSettled> seen;
    flipped_ = false;
    for (std::size_t round = 0; round < most_askings; ++round) {
        const std::optional<Nights> nights = answer(loads, waived);
        if (!nights)
            return {};
        const auto before = std::find_if(
            seen.begin(), seen.end(), [&](const auto& one) { return one.nights == nights; });
        if (before != seen.end()) {
            flipped_ = before + 1 != seen.end();
            return std::move(
                *std::min_element(before, seen.end(), [](const auto& a, const auto& b) {
                    return stops_earlier(a.nights, b.nights);
                }));
        }
        NightsSettled next = settled(*nights);
        if ((next.broken & ~waived) != 0) {
            barred_.push_back({*nights, next.broken}); // ask again at the same loads
            continue;
        }
        loads = next.settled;
        seen.push_back(std::move(next));
    }
    if (seen.empty())
        return {};
    flipped_ = true;
    return std::move(seen.back());
}

/// The smallest sets of limits without which there are nights: found at these loads, and kept if
/// one of the cheapest nights keeps the other limits at its own.
std::vector<NightLimits> Chooser::needs_without(const Solved& loads) {
    constexpr std::size_t tried = 6;
    NightDays days(prepared_, stops_, loads);
    std::vector<NightLimits> sets;
    const NightLimits in_force = limits_in_force(prepared_);
    const auto keeps_the_others = [&](NightLimits waived) {
        const std::vector<NightChoice> choices = best_nights(programme(days, waived), tried);
        return std::any_of(choices.begin(), choices.end(), [&](const NightChoice& choice) {
            return (settled(stops_.nights(choice.stops)).broken & ~waived) == 0;
        });
    };
    for (int size = 1; sets.empty() && size < std::popcount(in_force); ++size)
        for (NightLimits waived = 0; waived <= in_force; ++waived)
            if (std::popcount(waived) == size && (waived & ~in_force) == 0 &&
                keeps_the_others(waived))
                sets.push_back(waived);
    if (sets.empty())
        sets.push_back(in_force);
    return sets;
}

void Chooser::add_others(NightsChosen& chosen, std::size_t others, NightLimits waived) {
    NightDays days(prepared_, stops_, chosen.best.settled);
    std::size_t done = 0;
    for (std::size_t how_many = others + 1 + barred_.size(); chosen.next.size() < others;
         how_many += others) {
        const std::vector<NightChoice> choices = best_nights(programme(days, waived), how_many);
        for (; done < choices.size() && chosen.next.size() < others; ++done) {
            const Nights nights = stops_.nights(choices[done].stops);
            if (nights == chosen.best.nights || is_barred(nights, waived))
                continue;
            NightsSettled one = settled(nights);
            if ((one.broken & ~waived) == 0)
                chosen.next.push_back(std::move(one));
        }
        if (choices.size() < how_many || done > most_askings)
            break; // there are no more, or too many break a limit at their own loads
    }
    std::stable_sort(chosen.next.begin(), chosen.next.end(), [](const auto& a, const auto& b) {
        return a.cost() < b.cost();
    });
}

NightsChosen Chooser::run(std::size_t others) {
    NightsChosen chosen;
    chosen.places = stops_.boundaries.size() - 2;
    chosen.camps = stops_.camps;
    const Solved by_hours = solve(prepared_, {.nights = {}, .record = false});
    std::optional<NightsSettled> best = repeat(by_hours, 0);
    NightLimits waived = 0;
    if (!best) {
        // Perhaps only at the loads of nights by hours: ask again at those of the nearest plan.
        std::vector<NightLimits> sets = needs_without(by_hours);
        const std::optional<NightsSettled> nearest = repeat(by_hours, sets.front());
        const Solved& loads = nearest ? nearest->settled : by_hours;
        best = repeat(loads, 0);
        if (!best) {
            sets = needs_without(loads);
            waived = sets.front();
            best = repeat(loads, waived);
            chosen.needs_without = std::move(sets);
        }
    }
    if (!best) // one day without nights is always an answer, if only to show what it breaks
        best = settled({});
    chosen.best = std::move(*best);
    chosen.flipped = flipped_;
    if (others > 0)
        add_others(chosen, others, waived);
    chosen.asked = asked_;
    return chosen;
}

std::string set_text(const Trip& trip, NightLimits set) {
    std::vector<std::string> texts;
    for (const NightLimit limit : all_limits)
        if ((set & bit(limit)) != 0)
            texts.push_back(limit_text(trip, limit));
    return fmt::format("{}", fmt::join(texts, " and "));
}

} // namespace

double NightsSettled::cost() const {
    double sum = 0.0;
    for (const DayCost& day : days)
        sum += day.sum();
    return sum;
}

NightsSettled settled_at(const Prepared& prepared, const Nights& nights) {
    NightsSettled result{nights, solve(prepared, {.nights = nights}), {}, 0};
    NightStops stops{{0}, true};
    stops.boundaries.insert(stops.boundaries.end(), nights.begin(), nights.end());
    stops.boundaries.push_back(prepared.stretches.boundaries.size() - 1);
    NightDays days(prepared, stops, result.settled);
    double since_source_l = 0.0;
    for (std::size_t d = 0; d <= nights.size(); ++d) {
        const NightDay day = days({d, d + 1, static_cast<int>(d) + 1});
        result.days.push_back(day.cost);
        result.broken |= day.broken;
        since_source_l += day.to_source_l;
        if (since_source_l > days.room_l() + 1e-9)
            result.broken |= bit(NightLimit::water);
        if (day.source)
            since_source_l = day.after_source_l;
    }
    return result;
}

NightsChosen choose_nights(const Prepared& prepared, std::size_t others, const NightsWatch& watch) {
    return Chooser(prepared, watch).run(others);
}

std::string limit_text(const Trip& trip, NightLimit limit) {
    switch (limit) {
    case NightLimit::most_hours:
        return fmt::format("the limit of {} of moving a day",
                           show_duration(trip.days.hours_limit.value_or(0.0) * 3600.0));
    case NightLimit::dusk:
        return "arriving before dusk";
    case NightLimit::camp_closed:
        return "the dates on which camps are closed";
    case NightLimit::camp_full:
        return "the number of people that camps hold";
    case NightLimit::water:
        return "what the vessels for water hold";
    case NightLimit::supply_closed:
        return "the dates on which a resupply is closed";
    case NightLimit::appointment:
        return "a hard appointment";
    case NightLimit::most_days:
        return trip.days.most_days == 1
                   ? std::string("the limit of one day")
                   : fmt::format("the limit of {} days", trip.days.most_days.value_or(0));
    }
    return {};
}

Solved as_chosen(const Prepared& prepared, const NightsChosen& chosen) {
    Solved settled = chosen.best.settled;
    settled.converged.settled = settled.converged.settled && !chosen.flipped;
    if (chosen.needs_without.empty())
        return settled;
    std::vector<std::string> sets;
    for (const NightLimits set : chosen.needs_without)
        sets.push_back(set_text(prepared.trip, set));
    const bool choice = sets.size() > 1;
    settled.cautions.push_back(
        {Level::stop,
         "no-feasible-nights",
         {},
         {},
         fmt::format("No nights at the {} {} keep every limit. There are some without {}{}. The "
                     "plan shown gives up {}.",
                     chosen.places,
                     chosen.camps ? "camps" : "ends of legs",
                     fmt::join(sets, ", or without "),
                     choice ? "" : " alone",
                     choice ? "the first" : "that"),
         "docs/nights.md"});
    return settled;
}

} // namespace tumpline::planner

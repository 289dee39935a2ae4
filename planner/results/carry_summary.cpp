#include "planner/results/carry_summary.h"

#include "planner/results/portage_choices.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cctype>

namespace tumpline::planner {

namespace {

constexpr std::size_t most_spans_told = 4;

/// A portage of the plan, in order.
struct Portage {
    std::size_t stretch;
    int day;
    const PortagePlan* plan;
    std::vector<CarryChoice> choices;
};

std::vector<Portage> portages_of(const Assembly& draft) {
    std::vector<Portage> all;
    for (std::size_t i = 0; i < draft.prepared.stretches.stretches.size(); ++i)
        if (const std::optional<PortagePlan>& plan = draft.settled.loads.portages[i])
            all.push_back(
                {i, draft.settled.timeline.stretches[i].day, &*plan, choices_by_clock(draft, i)});
    return all;
}

std::vector<CarrySpan> spans_of(const Assembly& draft, const std::vector<Portage>& portages) {
    std::vector<CarrySpan> spans;
    for (const Portage& one : portages) {
        const bool rolled = one.plan->boats == BoatState::rolled;
        const PlanLegNumber plan_leg = draft.settled.loads.plan_leg[one.stretch];
        if (spans.empty() || spans.back().carries != one.plan->relay.carries ||
            spans.back().rolled != rolled || spans.back().by != one.plan->relay.by)
            spans.push_back({one.plan->relay.carries,
                             rolled,
                             one.day,
                             one.day,
                             plan_leg,
                             {},
                             0,
                             one.plan->relay.by});
        spans.back().last_day = one.day;
        spans.back().last_plan_leg = plan_leg;
        ++spans.back().portages;
    }
    return spans;
}

/// Who takes a craft over a portage, and how: one, two who relay it or have it between them, or
/// whoever pulls the cart with it.
struct Takers {
    std::vector<std::string> names;
    CarryBy by = CarryBy::hands;
};

Takers takers(const Assembly& draft, const PortagePlan& plan, const std::string& craft) {
    Takers who;
    std::vector<std::string>& names = who.names;
    for (const PortageLoad& load : plan.relay.loads) {
        const bool holds =
            std::any_of(load.pieces.begin(), load.pieces.end(), [&](std::size_t piece) {
                return plan.pieces[piece].holds(Part::craft) && plan.pieces[piece].name == craft;
            });
        if (!holds)
            continue;
        names.push_back(draft.prepared.trip.party[load.bearer].name);
        if (load.relay != load.bearer)
            names.push_back(draft.prepared.trip.party[load.relay].name);
        if (load.rolls())
            who.by = CarryBy::cart;
        else if (names.size() == 2 && load.relay == load.bearer)
            who.by = CarryBy::two;
    }
    return who;
}

std::vector<BoatSpan> boats_of(const Assembly& draft, const std::vector<Portage>& portages) {
    std::vector<BoatSpan> spans;
    for (const Craft& craft : draft.prepared.trip.craft) {
        const std::size_t first = spans.size();
        for (const Portage& one : portages) {
            Takers who = takers(draft, *one.plan, craft.name);
            if (spans.size() == first || spans.back().members != who.names ||
                spans.back().by != who.by)
                spans.push_back({craft.name, std::move(who.names), one.day, one.day, 0, who.by});
            spans.back().last_day = one.day;
            ++spans.back().portages;
        }
    }
    return spans;
}

/// Adds a portage done in one of its ways.
void add_choice(CarryWay& way, const CarryChoice& choice, int day) {
    way.moving_s += choice.moving_s;
    way.changeover_s += choice.changeover_s;
    way.walked_m += choice.walked_m;
    if (choice.heaviest_ratio > way.heaviest_ratio) {
        way.heaviest_ratio = choice.heaviest_ratio;
        way.heaviest_kg = choice.heaviest_kg;
        way.heaviest_member = choice.heaviest_member;
    }
    if (choice.within_limits) {
        if (!way.within_from_day)
            way.within_from_day = day;
        return;
    }
    ++way.over_limit;
    way.within_from_day.reset();
    way.most_over_kg =
        std::max(way.most_over_kg, choice.heaviest_kg * (1.0 - 1.0 / choice.heaviest_ratio));
}

std::vector<CarryWay> ways_of(const std::vector<Portage>& portages) {
    std::vector<CarryWay> ways(1); // as planned
    for (const Portage& one : portages)
        for (const CarryChoice& choice : one.choices)
            if (choice.chosen)
                add_choice(ways.front(), choice, one.day);
    for (const CarryChoice& like : portages.front().choices) {
        CarryWay way;
        way.carries = like.carries;
        way.rolled = like.rolled;
        way.by = like.by;
        std::size_t offered = 0;
        for (const Portage& one : portages)
            for (const CarryChoice& choice : one.choices)
                if (choice.carries == like.carries && choice.rolled == like.rolled &&
                    choice.by == like.by) {
                    add_choice(way, choice, one.day);
                    ++offered;
                }
        if (offered == portages.size())
            ways.push_back(std::move(way));
    }
    const CarryWay planned = ways.front();
    const double planned_s = planned.moving_s + planned.changeover_s;
    for (CarryWay& way : ways) {
        way.more_s = way.moving_s + way.changeover_s - planned_s;
        way.more_walked_m = way.walked_m - planned.walked_m;
    }
    return ways;
}

/// "one and a half carries, boats inflated".
std::string way_text(const CarrySpan& span, bool tell_boats) {
    const std::string_view carries = span.carries == 1.0   ? "a single carry"
                                     : span.carries == 1.5 ? "one and a half carries"
                                     : span.carries == 2.0 ? "a double carry"
                                                           : "a triple carry";
    const std::string_view by = span.by == CarryBy::two    ? ", two to a heavy piece"
                                : span.by == CarryBy::cart ? ", with the cart"
                                                           : "";
    if (!tell_boats)
        return fmt::format("{}{}", carries, by);
    return fmt::format("{} with the boats {}{}", carries, span.rolled ? "rolled" : "inflated", by);
}

/// "3rd".
std::string ordinal(int number) {
    const int tens = number % 100;
    const char* ending = "th";
    if (tens < 11 || tens > 13)
        ending = number % 10 == 1 ? "st" : number % 10 == 2 ? "nd" : number % 10 == 3 ? "rd" : "th";
    return fmt::format("{}{}", number, ending);
}

/// When one of several things one after the other holds; a change within a day is told by portage.
struct When {
    int first_day, last_day;
    int first, last; ///< portages, from 1
    bool shares_first_day, shares_last_day;
    bool begins, ends; ///< the first, the last of them
};

std::string when_text(const When& when) {
    if (when.begins && when.ends)
        return "throughout";
    if (when.shares_first_day || when.shares_last_day) {
        if (when.begins)
            return fmt::format("to the {} portage (day {})", ordinal(when.last), when.last_day);
        if (when.ends)
            return fmt::format("from the {} portage (day {})", ordinal(when.first), when.first_day);
        return when.first == when.last
                   ? fmt::format("over the {} portage (day {})", ordinal(when.first), when.last_day)
                   : fmt::format("from the {} to the {} portage (day {})",
                                 ordinal(when.first),
                                 ordinal(when.last),
                                 when.last_day);
    }
    if (when.first_day == when.last_day)
        return fmt::format("on day {}", when.first_day);
    if (when.begins)
        return fmt::format("to day {}", when.last_day);
    if (when.ends)
        return fmt::format("from day {}", when.first_day);
    return fmt::format("on days {} to {}", when.first_day, when.last_day);
}

/// The times of spans that follow each other.
template <class Span> std::vector<std::string> times_of(const std::vector<Span>& spans) {
    std::vector<std::string> times;
    int done = 0;
    for (std::size_t k = 0; k < spans.size(); ++k) {
        const bool begins = k == 0;
        const bool ends = k + 1 == spans.size();
        times.push_back(
            when_text({.first_day = spans[k].first_day,
                       .last_day = spans[k].last_day,
                       .first = done + 1,
                       .last = done + spans[k].portages,
                       .shares_first_day = !begins && spans[k - 1].last_day == spans[k].first_day,
                       .shares_last_day = !ends && spans[k + 1].first_day == spans[k].last_day,
                       .begins = begins,
                       .ends = ends}));
        done += spans[k].portages;
    }
    return times;
}

std::string carries_text(const CarrySummary& summary, bool tell_boats) {
    if (summary.portages == 1)
        return way_text(summary.spans.front(), tell_boats);
    std::vector<std::string> texts;
    if (summary.spans.size() <= most_spans_told) {
        const std::vector<std::string> times = times_of(summary.spans);
        for (std::size_t k = 0; k < times.size(); ++k)
            texts.push_back(fmt::format("{} {}", way_text(summary.spans[k], tell_boats), times[k]));
        return fmt::format("{}", fmt::join(texts, ", "));
    }
    // Too many changes for a sentence: how often each, the table says where.
    std::vector<CarrySpan> ways;
    for (const CarrySpan& span : summary.spans) {
        const auto same = std::find_if(ways.begin(), ways.end(), [&](const CarrySpan& way) {
            return way.carries == span.carries && way.rolled == span.rolled && way.by == span.by;
        });
        if (same == ways.end())
            ways.push_back(span);
        else
            same->portages += span.portages;
    }
    for (const CarrySpan& way : ways)
        texts.push_back(fmt::format("{} over {} of {} portages",
                                    way_text(way, tell_boats),
                                    way.portages,
                                    summary.portages));
    return fmt::format("{}", fmt::join(texts, ", "));
}

/// Whether everyone always takes the boat in which they sit alone.
bool all_take_their_own(const Assembly& draft, const std::vector<BoatSpan>& boats) {
    const std::vector<Craft>& craft = draft.prepared.trip.craft;
    return craft.size() > 1 && boats.size() == craft.size() &&
           std::equal(boats.begin(), boats.end(), craft.begin(), [](const auto& a, const auto& b) {
               return a.members == b.crew && b.crew.size() == 1 && a.by == CarryBy::hands;
           });
}

/// "the canoe", but "Ada's boat".
std::string with_article(const std::string& name) {
    const bool common = std::islower(static_cast<unsigned char>(name.front())) != 0;
    return common ? fmt::format("the {}", name) : name;
}

std::string craft_text(const std::vector<BoatSpan>& spans) {
    const std::string craft = with_article(spans.front().craft);
    const std::vector<std::string> times = times_of(spans);
    std::vector<std::string> texts;
    for (std::size_t k = 0; k < spans.size(); ++k) {
        const std::vector<std::string>& who = spans[k].members;
        const std::string names = fmt::format("{}", fmt::join(who, " and "));
        const bool several = who.size() > 1;
        const std::string_view how = spans[k].by == CarryBy::cart  ? " on the cart"
                                     : spans[k].by == CarryBy::two ? " between them"
                                     : several                     ? " in turns"
                                                                   : "";
        if (spans.size() == 1)
            return fmt::format("{} {}{} {}{}",
                               names,
                               spans[k].portages > 1 && !several ? "always " : "",
                               several ? "take" : "takes",
                               craft,
                               how);
        if (k == 0)
            texts.push_back(fmt::format(
                "{} {} {}{} {}", names, several ? "take" : "takes", craft, how, times[k]));
        else
            texts.push_back(fmt::format("{}{} {}", names, how, times[k]));
    }
    return fmt::format("{}", fmt::join(texts, ", "));
}

std::string boats_text(const Assembly& draft, const CarrySummary& summary) {
    if (summary.boats.empty() || draft.prepared.trip.party.size() < 2)
        return {};
    if (all_take_their_own(draft, summary.boats))
        return "everyone always takes their own boat";
    std::vector<std::string> texts;
    for (const Craft& craft : draft.prepared.trip.craft) {
        std::vector<BoatSpan> spans;
        for (const BoatSpan& span : summary.boats)
            if (span.craft == craft.name)
                spans.push_back(span);
        if (spans.size() <= most_spans_told)
            texts.push_back(craft_text(spans));
        else
            texts.push_back(fmt::format(
                "{} changes bearers {} times", with_article(craft.name), spans.size() - 1));
    }
    return fmt::format("{}", fmt::join(texts, "; "));
}

} // namespace

CarrySummary plan_carries(const Assembly& draft) {
    CarrySummary summary;
    const std::vector<Portage> portages = portages_of(draft);
    if (portages.empty())
        return summary;
    summary.portages = static_cast<int>(portages.size());
    for (const Portage& one : portages)
        summary.length_m += draft.prepared.stretches.stretches[one.stretch].length_m();
    summary.spans = spans_of(draft, portages);
    summary.boats = boats_of(draft, portages);
    summary.ways = ways_of(portages);
    const bool may_roll = std::any_of(summary.ways.begin() + 1,
                                      summary.ways.end(),
                                      [](const CarryWay& way) { return way.rolled; });
    summary.sentence = carries_text(summary, may_roll);
    summary.sentence.front() =
        static_cast<char>(std::toupper(static_cast<unsigned char>(summary.sentence.front())));
    const std::string boats = boats_text(draft, summary);
    summary.sentence += boats.empty() ? "." : fmt::format("; {}.", boats);
    return summary;
}

} // namespace tumpline::planner

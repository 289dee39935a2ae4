#include "planner/decisions/craft_compared.h"

#include "geo/input_error.h"
#include "planner/decisions/alternatives_compared.h"
#include "planner/make_plan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::array by_rules{CraftRule::verdict,
                              CraftRule::known,
                              CraftRule::days,
                              CraftRule::pack,
                              CraftRule::carried,
                              CraftRule::time,
                              CraftRule::price};

/// By which the smaller is the better.
double weight(const CraftOption& option, CraftRule rule) {
    switch (rule) {
    case CraftRule::verdict:
        return static_cast<double>(option.level());
    case CraftRule::known:
        return (option.river_class.known() ? 0.0 : 1.0) + (option.payload.known() ? 0.0 : 1.0);
    case CraftRule::days:
        return option.figures.days;
    case CraftRule::pack:
        return std::round(10.0 * option.figures.heaviest_kg);
    case CraftRule::carried:
        return std::round(option.figures.carried_kg_km);
    case CraftRule::time:
        return std::round(option.figures.under_way_s / 60.0);
    case CraftRule::price:
        return option.boats.price.value_or(std::numeric_limits<double>::infinity());
    case CraftRule::file:
        return 0.0;
    }
    return 0.0;
}

/// The first rule that tells two options apart.
CraftRule telling(const CraftOption& one, const CraftOption& other) {
    const auto* const found =
        std::find_if(by_rules.begin(), by_rules.end(), [&](const CraftRule rule) {
            return weight(one, rule) != weight(other, rule);
        });
    return found == by_rules.end() ? CraftRule::file : *found;
}

/// What cannot be done stays in the order of the file: figures of such a plan are nobody's.
bool is_better(const CraftOption& one, const CraftOption& other) {
    if (one.level() == VerdictLevel::cannot && other.level() == VerdictLevel::cannot)
        return false;
    const CraftRule rule = telling(one, other);
    return weight(one, rule) < weight(other, rule);
}

/// How much more of what one wishes for; nothing where a figure of either is not known.
std::optional<double> ahead(const CraftOption& one, const CraftOption& other, CraftGain gain) {
    const auto less = [&](CraftRule rule) { return weight(other, rule) - weight(one, rule); };
    const auto more_left = [](const CraftMargin& its, const CraftMargin& others) {
        return its.left && others.left && its.known() && others.known()
                   ? std::optional(*its.left - *others.left)
                   : std::nullopt;
    };
    switch (gain) {
    case CraftGain::time:
        return less(CraftRule::time);
    case CraftGain::pack:
        return less(CraftRule::pack);
    case CraftGain::carried:
        return less(CraftRule::carried);
    case CraftGain::river_class:
        return more_left(one.river_class, other.river_class);
    case CraftGain::payload:
        return more_left(one.payload, other.payload);
    case CraftGain::wind:
        return one.wind && other.wind
                   ? std::optional(one.wind->ceiling_mps - other.wind->ceiling_mps)
                   : std::nullopt;
    case CraftGain::price:
        return one.boats.price && other.boats.price
                   ? std::optional(*other.boats.price - *one.boats.price)
                   : std::nullopt;
    }
    return {};
}

std::vector<CraftGain> gains_of(const CraftOption& one, const CraftOption& other) {
    constexpr double as_printed = 0.05; // kilograms, m/s; the rest are steps of one
    std::vector<CraftGain> gains;
    for (const CraftGain gain : {CraftGain::time,
                                 CraftGain::pack,
                                 CraftGain::carried,
                                 CraftGain::river_class,
                                 CraftGain::payload,
                                 CraftGain::wind,
                                 CraftGain::price})
        if (ahead(one, other, gain).value_or(0.0) > as_printed)
            gains.push_back(gain);
    return gains;
}

/// The first reason of the verdict's level, in full.
void tell_reason(CraftOption& option) {
    const Plan& plan = *option.plan;
    if (plan.verdict.reasons.empty() || plan.verdict.reasons.front().cautions.empty())
        return;
    const Caution& worst = plan.cautions[plan.verdict.reasons.front().cautions.front()];
    option.reason = worst.text;
    option.reason_imperial = worst.imperial;
}

CraftOption planned(OtherBoats boats) {
    CraftOption option;
    option.boats = std::move(boats);
    option.reason = option.boats.refused;
    if (!option.reason.empty())
        return option;
    try {
        option.plan = make_plan(option.boats.trip, option.boats.route);
    } catch (const geo::InputError& error) { // nights out of order on a way without water
        option.reason = error.problems().front().found;
        return option;
    }
    option.figures = way_figures(*option.plan);
    option.river_class = class_margin(*option.plan, option.boats.route);
    option.payload = payload_margin(*option.plan);
    option.wind = wind_that_stops(*option.plan);
    tell_reason(option);
    return option;
}

} // namespace

std::string_view name_of(CraftRule rule) {
    switch (rule) {
    case CraftRule::verdict:
        return "verdict";
    case CraftRule::known:
        return "known";
    case CraftRule::days:
        return "days";
    case CraftRule::pack:
        return "pack";
    case CraftRule::carried:
        return "carried";
    case CraftRule::time:
        return "time";
    case CraftRule::price:
        return "price";
    case CraftRule::file:
        return "file";
    }
    return "";
}

std::string_view name_of(CraftGain gain) {
    switch (gain) {
    case CraftGain::time:
        return "time";
    case CraftGain::pack:
        return "pack";
    case CraftGain::carried:
        return "carried";
    case CraftGain::river_class:
        return "class";
    case CraftGain::payload:
        return "payload";
    case CraftGain::wind:
        return "wind";
    case CraftGain::price:
        return "price";
    }
    return "";
}

CraftComparison
compare_craft(const Trip& trip, const Route& route, const std::vector<OtherRoute>& others) {
    CraftComparison comparison;
    for (OtherBoats& boats : other_boats(trip, route, others))
        comparison.options.push_back(planned(std::move(boats)));
    std::stable_sort(comparison.options.begin(), comparison.options.end(), is_better);
    if (comparison.options.size() > 1 && comparison.options[1].level() != VerdictLevel::cannot) {
        comparison.decides = telling(comparison.options[0], comparison.options[1]);
        comparison.for_runner_up = gains_of(comparison.options[1], comparison.options[0]);
    }
    return comparison;
}

} // namespace tumpline::planner

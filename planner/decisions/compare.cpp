#include "planner/decisions/compare.h"

#include "geo/light/time_zone.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <map>
#include <tuple>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::array all_figures{Figure::distance,
                                 Figure::walk,
                                 Figure::portage,
                                 Figure::paddle,
                                 Figure::ride,
                                 Figure::led,
                                 Figure::on_foot,
                                 Figure::ascent,
                                 Figure::descent,
                                 Figure::moving,
                                 Figure::changeover,
                                 Figure::rest,
                                 Figure::elapsed,
                                 Figure::days,
                                 Figure::food,
                                 Figure::fuel,
                                 Figure::energy,
                                 Figure::stops,
                                 Figure::cautions};

double count(const Plan& plan, Level level) {
    return static_cast<double>(
        std::count_if(plan.cautions.begin(), plan.cautions.end(), [&](const Caution& caution) {
            return caution.level == level;
        }));
}

/// A climb is known where heights are.
std::optional<double> value_of(const Plan& plan, Figure figure) {
    const Totals& totals = plan.totals;
    switch (figure) {
    case Figure::distance:
        return totals.distance_m;
    case Figure::walk:
        return totals.walk_m;
    case Figure::portage:
        return totals.portage_m;
    case Figure::paddle:
        return totals.paddle_m;
    case Figure::ride:
        return totals.ride_m;
    case Figure::led:
        return totals.led_m;
    case Figure::on_foot:
        return totals.on_foot_m;
    case Figure::ascent:
        return totals.heights_known ? std::optional(totals.ascent_m) : std::nullopt;
    case Figure::descent:
        return totals.heights_known ? std::optional(totals.descent_m) : std::nullopt;
    case Figure::moving:
        return totals.moving_s;
    case Figure::changeover:
        return totals.changeover_s;
    case Figure::rest:
        return totals.rest_s;
    case Figure::elapsed:
        return totals.elapsed_s;
    case Figure::days:
        return totals.days;
    case Figure::food:
        return totals.food_kg;
    case Figure::fuel:
        return totals.fuel_kg;
    case Figure::energy:
        return totals.energy_j;
    case Figure::stops:
        return count(plan, Level::stop);
    case Figure::cautions:
        return count(plan, Level::caution);
    }
    return 0.0;
}

/// The second less the first, where both are known.
std::optional<double> difference(const std::optional<double>& from,
                                 const std::optional<double>& to) {
    return from && to ? std::optional(*to - *from) : std::nullopt;
}

/// For each plan what `of` finds in it.
template <typename Of> auto each(const std::vector<Plan>& plans, const Of& of) {
    std::vector<decltype(of(plans.front()))> found;
    found.reserve(plans.size());
    for (const Plan& plan : plans)
        found.push_back(of(plan));
    return found;
}

std::vector<std::optional<double>> differences(const std::vector<std::optional<double>>& values) {
    std::vector<std::optional<double>> found;
    found.reserve(values.size());
    for (const std::optional<double>& value : values)
        found.push_back(difference(values.front(), value));
    return found;
}

std::vector<ComparedFigure> compare_figures(const std::vector<Plan>& plans) {
    std::vector<ComparedFigure> figures;
    for (const Figure figure : all_figures) {
        ComparedFigure one{
            figure, each(plans, [&](const Plan& plan) { return value_of(plan, figure); }), {}};
        one.differences = differences(one.values);
        figures.push_back(std::move(one));
    }
    return figures;
}

/// Arrival after the midnight with which the day begins, by the clock.
double clock_s(const Plan& plan, const PlanDay& day) {
    const geo::local_seconds at = geo::to_local(day.arrive, plan.trip.time_zone);
    return std::chrono::duration<double>(at - std::chrono::local_days{day.date}).count();
}

std::vector<ComparedDay> compare_days(const std::vector<Plan>& plans) {
    std::size_t most = 0;
    for (const Plan& plan : plans)
        most = std::max(most, plan.days.size());
    std::vector<ComparedDay> days;
    for (std::size_t d = 0; d < most; ++d) {
        ComparedDay one;
        one.day = static_cast<int>(d) + 1;
        one.plan_day = each(plans, [&](const Plan& plan) {
            return d < plan.days.size() ? std::optional(d) : std::nullopt;
        });
        one.later_s = differences(each(plans, [&](const Plan& plan) {
            return d < plan.days.size() && !plan.days[d].rest_day
                       ? std::optional(clock_s(plan, plan.days[d]))
                       : std::nullopt;
        }));
        one.moving_more_s = differences(each(plans, [&](const Plan& plan) {
            return d < plan.days.size() ? std::optional(plan.days[d].moving_s) : std::nullopt;
        }));
        const std::vector<std::string> nights = each(plans, [&](const Plan& plan) {
            return d < plan.days.size() ? plan.days[d].to : std::string();
        });
        one.same_night = std::all_of(
            nights.begin(), nights.end(), [&](const auto& night) { return night == nights[0]; });
        days.push_back(std::move(one));
    }
    return days;
}

std::vector<ComparedPack> compare_packs(const std::vector<Plan>& plans) {
    std::vector<std::string> members;
    for (const Plan& plan : plans)
        for (const Member& member : plan.trip.party)
            if (std::find(members.begin(), members.end(), member.name) == members.end())
                members.push_back(member.name);
    std::vector<ComparedPack> packs;
    for (const std::string& member : members) {
        ComparedPack one;
        one.member = member;
        one.heaviest = each(plans, [&](const Plan& plan) { return heaviest_of(plan, member); });
        std::vector<std::optional<double>> pack_kg;
        for (const std::optional<Heaviest>& heaviest : one.heaviest)
            pack_kg.push_back(heaviest ? std::optional(heaviest->pack_kg) : std::nullopt);
        one.more_kg = differences(pack_kg);
        packs.push_back(std::move(one));
    }
    return packs;
}

std::vector<ComparedAppointment> compare_appointments(const std::vector<Plan>& plans) {
    std::vector<std::pair<std::string, std::string>> kept;
    for (const Plan& plan : plans)
        for (const PlanAppointment& meet : plan.appointments)
            if (std::find(kept.begin(), kept.end(), std::pair(meet.what, meet.at)) == kept.end())
                kept.emplace_back(meet.what, meet.at);
    std::vector<ComparedAppointment> appointments;
    for (const auto& [what, at] : kept) {
        ComparedAppointment one{what, at, {}, {}};
        for (const Plan& plan : plans) {
            const auto meet = std::find_if(
                plan.appointments.begin(), plan.appointments.end(), [&](const auto& other) {
                    return other.what == one.what && other.at == one.at;
                });
            one.spare_s.push_back(meet != plan.appointments.end() ? std::optional(meet->spare_s)
                                                                  : std::nullopt);
        }
        one.more_s = differences(one.spare_s);
        appointments.push_back(std::move(one));
    }
    return appointments;
}

/// By which a caution is known again in another plan.
using CautionKey = std::tuple<Level, std::string, std::string>;

CautionKey key_of(const Plan& plan, const Caution& caution) {
    std::string place;
    if (caution.leg) {
        for (const PlanLeg& leg : plan.legs)
            if (leg.leg == *caution.leg)
                place = leg.name;
    } else if (caution.day) {
        place = "day " + std::to_string(*caution.day);
    }
    return {caution.level, caution.code, place};
}

/// Cautions and stops of `plan` that `other` has not, as often as it has not; stops first.
std::vector<Caution> only_in(const Plan& plan, const Plan& other) {
    std::map<CautionKey, int> there;
    for (const Caution& caution : other.cautions)
        ++there[key_of(other, caution)];
    std::vector<Caution> only;
    for (const Caution& caution : plan.cautions)
        if (caution.level != Level::note && there[key_of(plan, caution)]-- <= 0)
            only.push_back(caution);
    std::stable_partition(only.begin(), only.end(), [](const Caution& caution) {
        return caution.level == Level::stop;
    });
    return only;
}

} // namespace

std::string_view name_of(Figure figure) {
    switch (figure) {
    case Figure::distance:
        return "distance_m";
    case Figure::walk:
        return "walk_m";
    case Figure::portage:
        return "portage_m";
    case Figure::paddle:
        return "paddle_m";
    case Figure::ride:
        return "ride_m";
    case Figure::led:
        return "led_m";
    case Figure::on_foot:
        return "on_foot_m";
    case Figure::ascent:
        return "ascent_m";
    case Figure::descent:
        return "descent_m";
    case Figure::moving:
        return "moving_s";
    case Figure::changeover:
        return "changeover_s";
    case Figure::rest:
        return "rest_s";
    case Figure::elapsed:
        return "elapsed_s";
    case Figure::days:
        return "days";
    case Figure::food:
        return "food_kg";
    case Figure::fuel:
        return "fuel_kg";
    case Figure::energy:
        return "energy_j";
    case Figure::stops:
        return "stops";
    case Figure::cautions:
        return "cautions";
    }
    return "";
}

std::optional<Heaviest> heaviest_of(const Plan& plan, const std::string& member) {
    std::optional<Heaviest> worst;
    for (const PlanDay& day : plan.days)
        for (const MemberDay& one : day.members)
            if (one.member == member && !one.heaviest_leg.none() &&
                (!worst || one.heaviest_kg > worst->pack_kg))
                worst = Heaviest{one.heaviest_kg, 0.0, one.heaviest_leg};
    if (!worst)
        return {};
    for (const MemberLoad& load : plan.legs[worst->plan_leg.index()].loads)
        if (load.member == member && load.limit_kg > 0.0)
            worst->of_limit = worst->pack_kg / load.limit_kg;
    return worst;
}

Comparison compare(std::vector<Plan> plans) {
    Comparison comparison;
    comparison.figures = compare_figures(plans);
    comparison.days = compare_days(plans);
    comparison.packs = compare_packs(plans);
    comparison.appointments = compare_appointments(plans);
    for (std::size_t p = 1; p < plans.size(); ++p)
        comparison.cautions.push_back(
            {p, only_in(plans[p], plans.front()), only_in(plans.front(), plans[p])});
    comparison.plans = std::move(plans);
    return comparison;
}

} // namespace tumpline::planner

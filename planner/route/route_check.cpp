#include "planner/route/route_check.h"

#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"
#include "planner/route/place_snap.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr double at_end_m = 500.0; // a stop this near is the route's own end

/// How far the nearest pass of a place lies off the route; empty if there is none of that name.
std::optional<double> off_route_m(const Route& route, const std::string& name) {
    std::optional<double> least_m;
    for (const RoutePlace& place : route.passes(name))
        least_m = std::min(least_m.value_or(place.off_m), place.off_m);
    return least_m;
}

class Finder {
  public:
    Finder(const Trip& trip, const Route& route) : trip_(trip), route_(route) {}

    std::vector<geo::Problem> run() {
        for (std::size_t n = 0; n < trip_.days.nights.size(); ++n)
            near_enough(trip_.days.nights[n], fmt::format("/days/nights/{}", n));
        for (std::size_t a = 0; a < trip_.appointments.size(); ++a) {
            near_enough(trip_.appointments[a].at, fmt::format("/appointments/{}/at", a));
            after_setting_off(a);
        }
        for (std::size_t c = 0; c < trip_.connections.size(); ++c)
            at_its_end(c);
        for (std::size_t l = 0; l < trip_.leaves.size(); ++l) {
            near_enough(trip_.leaves[l].at, fmt::format("/leave/{}/at", l));
            comes_back(l);
        }
        return std::move(problems_);
    }

  private:
    /// Waiting on the way would shift every day behind it: that is not planned.
    void at_its_end(std::size_t c) {
        const Connection& spec = trip_.connections[c];
        const double end_m = spec.to_start ? 0.0 : route_.length_m;
        const std::vector<RoutePlace> passes = route_.passes(spec.place);
        if (std::any_of(passes.begin(), passes.end(), [&](const RoutePlace& pass) {
                return std::abs(pass.along_m - end_m) <= at_end_m;
            }))
            return;
        const std::string_view end = spec.to_start ? "start" : "end";
        geo::Problem problem{
            .file = trip_.file.string(),
            .place = fmt::format("/connections/{}/{}", c, spec.to_start ? "to" : "at"),
            .found = fmt::format("\"{}\"", spec.place),
            .expected = fmt::format("the place where the route {}s", end),
            .advice = "on the way write an appointment for the departure that you mean, or plan "
                      "what lies behind it as a trip of its own"};
        if (passes.empty()) {
            problem.found += ", which the route does not pass";
            std::vector<std::string_view> names;
            for (const RoutePlace& place : route_.places)
                names.push_back(place.name);
            const std::string nearest = nearest_word(spec.place, names);
            problem.advice = nearest.empty() ? "add it under /route/places"
                                             : fmt::format("write \"{}\"", nearest);
        } else {
            problem.found += fmt::format(
                ", {} from the {} of the route",
                show_distance(std::abs(passes.back().along_m - end_m), UnitSystem::metric),
                end);
            problem.expected +=
                ": a connection on the way, and waiting for it there, is not planned";
        }
        problems_.push_back(std::move(problem));
    }

    void near_enough(const std::string& name, std::string place) {
        const std::optional<double> off_m = off_route_m(route_, name);
        if (off_m && *off_m > far_off_m)
            problems_.push_back(
                {.file = trip_.file.string(),
                 .place = std::move(place),
                 .found = fmt::format(
                     "\"{}\", {} off the route", name, show_distance(*off_m, UnitSystem::metric)),
                 .expected = fmt::format("a place within {} of the route",
                                         show_distance(far_off_m, UnitSystem::metric)),
                 .advice =
                     "name a place by which the route comes, or draw the way there as a leg"});
    }

    void after_setting_off(std::size_t a) {
        const Appointment& spec = trip_.appointments[a];
        const std::chrono::seconds set_off =
            trip_.days.first_set_off.value_or(trip_.days.set_off.value_or(usual_set_off));
        if (spec.day == 1 && spec.by <= set_off)
            problems_.push_back(
                {.file = trip_.file.string(),
                 .place = fmt::format("/appointments/{}/by", a),
                 .found = fmt::format("{} on day 1", show_time_of_day(spec.by)),
                 .expected = fmt::format("a time after setting off, {} on day 1",
                                         show_time_of_day(set_off)),
                 .advice = "set off earlier (\"first_set_off\" of \"days\"), or give its day"});
    }

    /// What is left can be fetched where the route comes by once more.
    void comes_back(std::size_t l) {
        const Leave& leave = trip_.leaves[l];
        const auto passes = static_cast<int>(route_.passes(leave.at).size());
        if (passes == 1)
            problems_.push_back(
                {.file = trip_.file.string(),
                 .place = fmt::format("/leave/{}/at", l),
                 .found = fmt::format("\"{}\", which the route passes once only", leave.at),
                 .expected = "a place that the route passes again, to fetch what was left",
                 .advice = "name a place on the way there and back, or leave the things at home"});
        else if (leave.pass && *leave.pass >= passes)
            problems_.push_back(
                {.file = trip_.file.string(),
                 .place = fmt::format("/leave/{}/pass", l),
                 .found = fmt::format("pass {} of {}", *leave.pass, passes),
                 .expected = passes == 2
                                 ? std::string("1: what is left is fetched at the second")
                                 : fmt::format("1 to {}: one with another after it", passes - 1),
                 .advice = {}});
    }

    const Trip& trip_;
    const Route& route_;
    std::vector<geo::Problem> problems_;
};

} // namespace

std::vector<std::string> places_off_route(const Trip& trip, const Route& route) {
    std::vector<std::string> names;
    const auto look = [&](const std::string& name) {
        if (const std::optional<double> off_m = off_route_m(route, name);
            off_m && *off_m > far_off_m)
            names.push_back(name);
    };
    for (const std::string& night : trip.days.nights)
        look(night);
    for (const Appointment& appointment : trip.appointments)
        look(appointment.at);
    for (const Leave& leave : trip.leaves)
        look(leave.at);
    return names;
}

std::vector<geo::Problem> problems_on_route(const Trip& trip, const Route& route) {
    return Finder(trip, route).run();
}

} // namespace tumpline::planner

#include "planner/route/route_check.h"

#include "planner/quantities/quantities.h"
#include "planner/route/place_snap.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

namespace tumpline::planner {

namespace {

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
        return std::move(problems_);
    }

  private:
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
    return names;
}

std::vector<geo::Problem> problems_on_route(const Trip& trip, const Route& route) {
    return Finder(trip, route).run();
}

} // namespace tumpline::planner

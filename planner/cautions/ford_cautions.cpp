#include "planner/cautions/ford_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/cautions/smallest_wader.h"
#include "planner/models/ford.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <string>

namespace tumpline::planner {

namespace {

constexpr double noon_s = 12.0 * s_per_h;

class FordWatch {
  public:
    explicit FordWatch(const Assembly& draft) : draft_(draft) {}

    std::vector<Caution> run() {
        for (const RoutePlace& place : draft_.prepared.route.places)
            if (place.kind == PlaceKind::ford)
                ford(place);
        return list_.take();
    }

  private:
    void ford(const RoutePlace& place);
    void unknown(const RoutePlace& place, const std::string& when);
    void judge(const RoutePlace& place, const FordWater& water, const std::string& when);

    const Assembly& draft_;
    CautionList list_;
};

void FordWatch::unknown(const RoutePlace& place, const std::string& when) {
    list_
        .add(Level::caution,
             "ford-unknown",
             fmt::format("{}: how deep and how fast the ford is on that day is not known, so it is "
                         "not judged. {}Look first, cross where the river is widest, keep a way "
                         "back; nobody has to cross.",
                         place.name,
                         when))
        .subject = place.name;
}

void FordWatch::judge(const RoutePlace& place, const FordWater& water, const std::string& when) {
    const Wading wading = smallest_wader(draft_.prepared.trip);
    const FordRisk risk = ford_risk(water, wading.wader);
    if (risk == FordRisk::shallow)
        return;
    const UnitText depth = in_both(show_length, water.depth_m);
    Caution& caution = list_.add(
        risk == FordRisk::refused ? Level::stop : Level::caution,
        "ford-deep",
        format_both("{}: {} deep at {} is {:.2f} m2/s (depth times speed) for {}, the smallest of "
                    "the party. {} {}River beds are rougher than the floors of these tests, and a "
                    "pack makes it worse.",
                    place.name,
                    depth,
                    in_both(show_speed, water.speed_mps),
                    ford_flow_m2ps(water),
                    wading.name,
                    risk == FordRisk::refused
                        ? "That is not planned: find another place, wait for lower water, or turn "
                          "back."
                        : "More than is planned by (0.40 m2/s, and knee deep): look for a wider "
                          "place or an earlier hour.",
                    when),
        "ARRFloodway");
    caution.subject = place.name;
    set_figure(caution,
               format_both("{} at {}", depth, in_both(show_speed, water.speed_mps)),
               ford_flow_m2ps(water));
}

void FordWatch::ford(const RoutePlace& place) {
    const Prepared& prepared = draft_.prepared;
    const std::size_t boundary = prepared.stretches.boundary_at(place.along_m);
    const std::vector<StretchTime>& times = draft_.settled.timeline.stretches;
    const StretchTime& time = times[boundary == 0 ? 0 : boundary - 1];
    const double at_s = boundary == 0 ? time.start_s : time.end_s;
    list_.at(time.day, place.leg);
    const std::string when =
        at_s < noon_s
            ? std::string()
            : fmt::format("The plan is there at {}: rivers of melting snow and ice run highest in "
                          "the afternoon and lowest in the early morning. ",
                          clock_words(instant(draft_, time.day, at_s), prepared.assumed.time_zone));
    const TripPlace& spec = prepared.trip.route.places[place.spec];
    if (spec.depth_m && spec.speed_mps)
        judge(place, {.depth_m = *spec.depth_m, .speed_mps = *spec.speed_mps}, when);
    else if (spec.depth_m && *spec.depth_m > refused_ford_m)
        judge(place, {.depth_m = *spec.depth_m, .speed_mps = 0.0}, when);
    else
        unknown(place, when);
}

} // namespace

std::vector<Caution> ford_cautions(const Assembly& draft) {
    return FordWatch(draft).run();
}

} // namespace tumpline::planner

#include "planner/results/turnaround.h"

#include "planner/conditions/calendar.h"
#include "planner/quantities/quantities.h"
#include "planner/results/way_times.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace tumpline::planner {

namespace {

/// A place to which a party can go back.
struct Haven {
    std::size_t boundary;
    std::string name;
    bool exit;
};

/// The first boundary from one on where a ride begins, or the end of the day.
std::size_t before_ride(const Assembly& draft, std::size_t boundary, std::size_t day_last) {
    const std::vector<Stretch>& stretches = draft.prepared.stretches.stretches;
    while (boundary < day_last && !is_ride(stretches[boundary].travel))
        ++boundary;
    return boundary;
}

/// Finds when to turn round on one day for one haven.
class Turning {
  public:
    Turning(const Assembly& draft, const WayTimes& way, const DaySpan& day, const Haven& haven)
        : draft_(draft), way_(way), day_(day), haven_(haven),
          haven_m_(draft.prepared.stretches.boundaries[haven.boundary].along_m),
          last_(before_ride(draft, haven.boundary, day.last)) {}

    [[nodiscard]] TurnRound find();

  private:
    [[nodiscard]] const Stretch& stretch(std::size_t i) const {
        return draft_.prepared.stretches.stretches[i];
    }

    [[nodiscard]] const StretchTime& time(std::size_t i) const {
        return draft_.settled.timeline.stretches[i];
    }

    void look_at_the_light();
    /// The way back from a point, rests included as the plan takes them.
    [[nodiscard]] std::optional<double> back_s(double along_m) const;

    /// Whether one who turns there as planned is back by dusk.
    [[nodiscard]] bool in_time(double clock_s, double along_m) const {
        return !dusk_s_ || clock_s + back_s(along_m).value_or(HUGE_VAL) <= *dusk_s_;
    }

    [[nodiscard]] double last_point_on(std::size_t i) const;
    void turn_at(double along_m, std::size_t of_stretch);

    const Assembly& draft_;
    const WayTimes& way_;
    const DaySpan& day_;
    const Haven& haven_;
    double haven_m_;
    std::size_t last_; ///< where the day ends, or a ride begins: nobody turns round on it
    std::optional<double> dusk_s_; ///< after midnight of the day
    TurnRound turn_;
};

void Turning::look_at_the_light() {
    const Prepared& prepared = draft_.prepared;
    const geo::Daylight light = geo::daylight(
        date_of(draft_, day_.day), prepared.route.at(haven_m_), prepared.assumed.time_zone);
    turn_.dusk = evening_dusk(light);
    if (turn_.dusk) {
        const double set_off_s = time(day_.first).start_s;
        dusk_s_ = set_off_s +
                  static_cast<double>((*turn_.dusk - instant(draft_, day_.day, set_off_s)).count());
    }
    if (light.twilight.day == geo::SunDay::always_below)
        turn_.limit = TurnLimit::dark;
}

std::optional<double> Turning::back_s(double along_m) const {
    const std::optional<WayTimes::Back> back = way_.back(along_m, haven_m_);
    if (!back)
        return {};
    double rests = std::floor(back->moving_s / s_per_h);
    if (rests > 0.0 && rests * s_per_h == back->moving_s)
        rests -= 1.0; // nobody rests at the door
    return back->sum_s() + rests * draft_.prepared.assumed.times.rest_per_hour_s;
}

/// On a stretch at whose start there is time to turn round and at whose end there is none.
double Turning::last_point_on(std::size_t i) const {
    double good_m = stretch(i).from_m;
    double bad_m = stretch(i).to_m;
    if (stretch(i).travel == Travel::portage || // halfway over, the loads lie at both ends
        !in_time(way_.clock_s(i, good_m), good_m))
        return good_m;
    constexpr double close_m = 0.5;
    while (bad_m - good_m > close_m) {
        const double middle_m = 0.5 * (good_m + bad_m);
        (in_time(way_.clock_s(i, middle_m), middle_m) ? good_m : bad_m) = middle_m;
    }
    return good_m;
}

void Turning::turn_at(double along_m, std::size_t of_stretch) {
    turn_.along_m = along_m;
    turn_.leg = stretch(of_stretch).leg;
    turn_.back_s = back_s(along_m).value_or(0.0);
    std::optional<double> at_s;
    if (dusk_s_)
        at_s = *dusk_s_ - turn_.back_s;
    if (turn_.limit == TurnLimit::no_way_back) // nobody waits at the edge until it is late
        at_s = std::min(at_s.value_or(HUGE_VAL), time(of_stretch).start_s);
    if (at_s)
        turn_.at = instant(draft_, day_.day, std::floor(*at_s));
}

TurnRound Turning::find() {
    turn_.day = day_.day;
    turn_.back_to = haven_.name;
    turn_.back_to_m = haven_m_;
    turn_.exit = haven_.exit;
    look_at_the_light();
    const std::size_t first = haven_.boundary;
    turn_.along_m = haven_m_;
    turn_.leg = stretch(first).leg;
    const double there_s = first == day_.first ? time(first).start_s : time(first - 1).end_s;
    if (turn_.limit == TurnLimit::dark || !in_time(there_s, haven_m_)) {
        turn_.limit = TurnLimit::dark;
        return turn_;
    }
    for (std::size_t i = first; i < last_; ++i) {
        const double end_m = stretch(i).to_m;
        if (!back_s(end_m)) {
            turn_.limit = TurnLimit::no_way_back;
            turn_at(stretch(i).from_m, i);
            return turn_;
        }
        if (!in_time(way_.clock_s(i, end_m), end_m)) {
            turn_.limit = TurnLimit::dusk;
            turn_at(last_point_on(i), i);
            return turn_;
        }
    }
    turn_.whole_day = last_ == day_.last;
    turn_.limit = dusk_s_ ? TurnLimit::dusk : TurnLimit::none;
    turn_at(stretch(last_ - 1).to_m, last_ - 1);
    return turn_;
}

/// Where the day begins or a ride ends, and each way out that it passes.
std::vector<Haven> havens(const Assembly& draft, const DaySpan& day) {
    const std::vector<Stretch>& stretches = draft.prepared.stretches.stretches;
    std::vector<Haven> all{{day.first, boundary_name(draft, day.first), false}};
    const auto add = [&](std::size_t boundary, std::string name) {
        if (boundary > all.back().boundary && boundary < day.last)
            all.push_back({boundary, std::move(name), true});
    };
    std::size_t next = day.first;
    const auto add_ends_of_rides = [&](std::size_t until) {
        for (; next < until; ++next)
            if (is_ride(stretches[next].travel))
                add(next + 1, boundary_name(draft, next + 1));
    };
    for (const RoutePlace& place : draft.prepared.route.places) {
        if (!is_way_out(place.kind))
            continue;
        const std::size_t boundary = draft.prepared.stretches.boundary_at(place.along_m);
        add_ends_of_rides(std::min(boundary, day.last));
        add(boundary, place.name);
    }
    add_ends_of_rides(day.last);
    std::erase_if(all,
                  [&](const Haven& haven) { return is_ride(stretches[haven.boundary].travel); });
    return all;
}

} // namespace

std::vector<TurnRound> plan_turn_rounds(const Assembly& draft) {
    std::vector<TurnRound> turns;
    const WayTimes way(draft);
    for (const DaySpan& day : draft.settled.timeline.days) {
        if (day.first == day.last)
            continue;
        for (const Haven& haven : havens(draft, day))
            turns.push_back(Turning(draft, way, day, haven).find());
    }
    return turns;
}

} // namespace tumpline::planner

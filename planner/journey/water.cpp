#include "planner/journey/provisions.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double morning_share =
    1.0 / 3.0; // of a camp's litres; [R14]-style supper, night, breakfast
constexpr double carried_where_found_l = 1.0; // where water is taken to be everywhere on the way

/// From arriving on a day of the timeline to setting off on the next.
double stay_s(const Timeline& timeline, const Assumed& assumed, std::size_t d) {
    const DaySpan& next = timeline.days[d + 1];
    const double set_off_s =
        next.first < next.last ? timeline.stretches[next.first].start_s : assumed.times.set_off_s;
    return s_per_day + set_off_s - timeline.arrive_s[d];
}

/// By day at the end of the route, until a connection departs: as in a camp by the hour.
double waited_l(const AssumedWater& water, double waited_s) {
    return waited_s * (water.camp_l ? *water.camp_l / s_per_day : water.camp_lps);
}

} // namespace

double drunk_under_way_l(const AssumedWater& water, const Stretch& stretch, const UnderWay& time) {
    double moving_lps = water.walking_lps;
    switch (stretch.travel) {
    case Travel::walk:
        moving_lps += stretch.steep_share * (water.climbing_lps - water.walking_lps);
        break;
    case Travel::portage:
        moving_lps = water.carrying_lps;
        break;
    case Travel::line:
    case Travel::wade:
        moving_lps = water.walking_lps;
        break;
    case Travel::paddle:
    case Travel::pole:
        moving_lps = water.paddling_lps;
        break;
    case Travel::ride:
        moving_lps = std::min(water.halting_lps, water.walking_lps);
        break;
    }
    return moving_lps * time.moving_s + std::min(water.halting_lps, moving_lps) * time.halts_s;
}

double used_in_camp_l(const AssumedWater& water, double stay_s) {
    return water.camp_l.value_or(water.kitchen_l + std::max(0.0, stay_s) * water.camp_lps);
}

namespace {

/// Goes along the route from source to source and notes what each one's vessels must hold.
class SourceToSource {
  public:
    SourceToSource(const Assumed& assumed,
                   const Stretches& route,
                   const Timeline& timeline,
                   const std::vector<WaterCache>& caches)
        : assumed_(assumed), water_(assumed.water), route_(route), timeline_(timeline),
          caches_(caches) {
        const std::size_t count = route.stretches.size();
        carry_.fill_l.assign(count + 1, 0.0);
        carry_.drunk_l.assign(count, 0.0);
        carry_.scooped_l.assign(count, 0.0);
        carry_.held_least_l = water_.reserve_l;
        carry_.left_l.assign(count + 1, 0.0);
        carry_.back_l.assign(count + 1, 0.0);
        carry_.fill_l[0] = water_.reserve_l;
    }

    WaterCarry run() {
        for (std::size_t d = 0; d < timeline_.days.size(); ++d)
            add_day(d);
        close(route_.stretches.size(), timeline_.days.empty() ? 1 : timeline_.days.back().day);
        return std::move(carry_);
    }

  private:
    [[nodiscard]] bool wet(std::size_t boundary) const {
        return water_.assumed_everywhere || route_.boundaries[boundary].water;
    }

    void add_day(std::size_t d);
    void drink_along(std::size_t stretch);
    /// Of so much, what the vessels have to be filled with: what was fetched is drunk first.
    [[nodiscard]] double beyond_fetched_l(double litres);
    void lay_down(std::size_t boundary);
    void fetch(std::size_t boundary);
    /// Takes from the vessels what a dry camp needs.
    void draw(double litres);
    /// Ends the run at a source and begins the next.
    void close(std::size_t boundary, int day);

    const Assumed& assumed_;
    const AssumedWater& water_;
    const Stretches& route_;
    const Timeline& timeline_;
    WaterCarry carry_{};
    std::size_t source_ = 0; ///< where the vessels were last filled
    double night_l_ = 0.0;   ///< of the night before
    const std::vector<WaterCache>& caches_;
    double laid_l_ = 0.0;    ///< filled at the source, to be laid down before the next
    double fetched_l_ = 0.0; ///< in the vessels, not drunk yet
    WaterCarry::Run run_{0, 0, 1, 1, 0.0, 0.0, 0, {}, 0.0};
};

void SourceToSource::close(std::size_t boundary, int day) {
    if (run_.need_l > 0.0 || laid_l_ > 0.0) {
        run_.to_boundary = boundary;
        run_.last_day = day;
        if (water_.assumed_everywhere && run_.dry_nights == 0 &&
            run_.need_l > carried_where_found_l) {
            // Only so much at a time is carried; the rest is found on the way.
            const double kept = carried_where_found_l / run_.need_l;
            for (std::size_t i = source_; i < boundary; ++i) {
                carry_.scooped_l[i] += carry_.drunk_l[i] * (1.0 - kept);
                carry_.drunk_l[i] *= kept;
            }
            run_.need_l = carried_where_found_l;
        }
        run_.laid_l = std::exchange(laid_l_, 0.0);
        run_.need_l += run_.laid_l;
        carry_.fill_l[source_] += run_.need_l;
        carry_.runs.push_back(std::move(run_));
    }
    source_ = boundary;
    run_ = {boundary, boundary, day, day, 0.0, 0.0, 0, {}, 0.0};
}

double SourceToSource::beyond_fetched_l(double litres) {
    const double fetched_l = std::min(litres, fetched_l_);
    fetched_l_ -= fetched_l;
    return litres - fetched_l;
}

void SourceToSource::lay_down(std::size_t boundary) {
    for (const WaterCache& cache : caches_)
        carry_.left_l[boundary] += cache.left_at == boundary ? cache.each_l : 0.0;
    laid_l_ += carry_.left_l[boundary];
}

void SourceToSource::fetch(std::size_t boundary) {
    for (const WaterCache& cache : caches_)
        carry_.back_l[boundary] += cache.fetched_at == boundary ? cache.each_l : 0.0;
    fetched_l_ += carry_.back_l[boundary];
}

void SourceToSource::draw(double litres) {
    const double filled_l = beyond_fetched_l(litres);
    run_.need_l += filled_l;
    run_.camps_l += filled_l;
}

void SourceToSource::drink_along(std::size_t stretch) {
    const StretchTime& time = timeline_.stretches[stretch];
    const UnderWay under_way{time.moving_s, time.still_s()};
    const double litres = drunk_under_way_l(water_, route_.stretches[stretch], under_way);
    if (route_.stretches[stretch].drinkable) {
        carry_.scooped_l[stretch] = litres;
        return;
    }
    carry_.drunk_l[stretch] = litres;
    run_.need_l += beyond_fetched_l(litres);
    run_.hours += (under_way.moving_s + under_way.halts_s) / s_per_h;
}

void SourceToSource::add_day(std::size_t d) {
    const DaySpan& day = timeline_.days[d];
    const bool last = d + 1 == timeline_.days.size();
    const bool dry_morning = d > 0 && !wet(day.first);
    const double morning_l = night_l_ * morning_share;
    night_l_ = last ? waited_l(water_, timeline_.waits_s.value_or(0.0))
                    : used_in_camp_l(water_, stay_s(timeline_, assumed_, d));
    const bool dry_evening = !wet(day.last) && (!last || night_l_ > 0.0);
    const double evening_l = last ? night_l_ : night_l_ * (1.0 - morning_share);
    if (dry_morning)
        draw(morning_l);
    for (std::size_t i = day.first; i < day.last; ++i) {
        if (wet(i) && i != source_)
            close(i, day.day);
        lay_down(i);
        drink_along(i);
        fetch(i + 1);
    }
    if (dry_evening) {
        draw(evening_l);
        if (!last) {
            ++run_.dry_nights;
            run_.dry_days.push_back(d);
        }
    }
    carry_.dry_camp.push_back(dry_evening && !last);
    carry_.camp_l.push_back({morning_l, evening_l});
    carry_.camp_from_pack.push_back({dry_morning, dry_evening});
}

} // namespace

WaterCarry carry_water(const Assumed& assumed,
                       const Stretches& route,
                       const Timeline& timeline,
                       const std::vector<WaterCache>& caches) {
    return SourceToSource(assumed, route, timeline, caches).run();
}

} // namespace tumpline::planner

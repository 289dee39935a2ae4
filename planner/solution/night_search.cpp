#include "planner/solution/night_search.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <tuple>

namespace tumpline::planner {

namespace {

constexpr std::size_t nothing = static_cast<std::size_t>(-1);
constexpr double slack_l = 1e-9;  // as the plan allows before it calls vessels too small
constexpr double rounding = 1e-9; // of costs summed in another order

/// A way from the start to a stop.
struct Way {
    double cost;
    double since_source_l;
    std::size_t stop;
    std::size_t before; ///< index of the way that it continues
};

/// One search under a bound of cost.
class NightSearch {
  public:
    NightSearch(const NightProgramme& programme, std::size_t how_many)
        : programme_(programme), how_many_(how_many), rest_(rest_of(programme)) {}

    /// No choice costs less than this.
    [[nodiscard]] double least() const { return rest_.front(); }

    /// The cheapest choices among those that cost at most `bound`.
    std::vector<NightChoice> run(double bound);

    /// Whether the last run left something out because of its bound.
    [[nodiscard]] bool pruned() const { return pruned_; }

  private:
    using Layer = std::vector<std::vector<std::size_t>>; ///< ways at each stop

    [[nodiscard]] static std::vector<double> rest_of(const NightProgramme& programme);
    void go_on(const std::vector<std::size_t>& ways, int travel_day, Layer& next);
    void keep_best(std::vector<std::size_t>& ways) const;
    [[nodiscard]] std::vector<std::size_t> stops_of(std::size_t way) const;
    [[nodiscard]] bool ahead(std::size_t a, std::size_t b) const;

    const NightProgramme& programme_;
    std::size_t how_many_;
    std::vector<double> rest_; ///< per stop: the least from there to the finish
    double bound_ = 0.0;
    bool pruned_ = false;
    std::vector<Way> ways_;
};

std::vector<double> NightSearch::rest_of(const NightProgramme& programme) {
    std::vector<double> rest(programme.stops, 0.0);
    if (!programme.least)
        return rest;
    for (std::size_t from = programme.stops - 1; from-- > 0;) {
        rest[from] = HUGE_VAL;
        for (std::size_t to = from + 1; to < programme.stops; ++to)
            rest[from] = std::min(rest[from], programme.least(from, to) + rest[to]);
    }
    return rest;
}

std::vector<std::size_t> NightSearch::stops_of(std::size_t way) const {
    std::vector<std::size_t> stops;
    for (; ways_[way].before != nothing; way = ways_[way].before)
        stops.push_back(ways_[way].stop);
    std::reverse(stops.begin(), stops.end());
    return stops;
}

/// Cheaper, or as cheap and stopping earlier.
bool NightSearch::ahead(std::size_t a, std::size_t b) const {
    if (ways_[a].cost != ways_[b].cost)
        return ways_[a].cost < ways_[b].cost;
    return stops_of(a) < stops_of(b);
}

/// Drops ways that enough others at the same stop on the same day are ahead of with as much water.
void NightSearch::keep_best(std::vector<std::size_t>& ways) const {
    std::sort(ways.begin(), ways.end(), [&](std::size_t a, std::size_t b) { return ahead(a, b); });
    std::vector<std::size_t> kept;
    for (const std::size_t way : ways) {
        const auto as_wet = std::count_if(kept.begin(), kept.end(), [&](std::size_t other) {
            return ways_[other].since_source_l <= ways_[way].since_source_l;
        });
        if (static_cast<std::size_t>(as_wet) < how_many_)
            kept.push_back(way);
    }
    ways = std::move(kept);
}

/// All days that start at one stop.
void NightSearch::go_on(const std::vector<std::size_t>& ways, int travel_day, Layer& next) {
    const std::size_t from = ways_[ways.front()].stop;
    const double cheapest = ways_[ways.front()].cost;
    const bool dry_counts = programme_.room_l < HUGE_VAL;
    const bool water_waived = (programme_.waived & bit(NightLimit::water)) != 0;
    const bool hours_waived = (programme_.waived & bit(NightLimit::most_hours)) != 0;
    for (std::size_t to = from + 1; to < programme_.stops; ++to) {
        const NightDay day = programme_.day({from, to, travel_day});
        const double cost = day.cost.sum();
        assert(cost >= 0.0);
        if ((day.broken & ~programme_.waived) == 0) {
            for (const std::size_t way : ways) {
                const double so_far = ways_[way].cost + cost;
                const double peak_l = ways_[way].since_source_l + day.to_source_l;
                if (so_far + rest_[to] > bound_ + rounding) {
                    pruned_ = true;
                    continue;
                }
                if (dry_counts && !water_waived && peak_l > programme_.room_l + slack_l)
                    continue;
                const double since_l = day.source ? day.after_source_l : peak_l;
                next[to].push_back(ways_.size());
                ways_.push_back({so_far, dry_counts && !water_waived ? since_l : 0.0, to, way});
            }
        }
        if (day.longer_costs_at_least == HUGE_VAL) {
            if (!hours_waived)
                break;
        } else if (cheapest + day.longer_costs_at_least > bound_) {
            pruned_ = true;
            break;
        }
    }
}

std::vector<NightChoice> NightSearch::run(double bound) {
    bound_ = bound;
    pruned_ = false;
    ways_ = {{0.0, 0.0, 0, nothing}};
    const std::size_t finish = programme_.stops - 1;
    Layer now(programme_.stops);
    now[0] = {0};
    std::vector<std::size_t> arrived;
    for (int travel_day = 1; static_cast<std::size_t>(travel_day) <= finish; ++travel_day) {
        Layer next(programme_.stops);
        for (std::size_t from = 0; from < finish; ++from)
            if (!now[from].empty())
                go_on(now[from], travel_day, next);
        for (std::vector<std::size_t>& ways : next)
            keep_best(ways);
        arrived.insert(arrived.end(), next[finish].begin(), next[finish].end());
        now = std::move(next);
    }
    std::sort(
        arrived.begin(), arrived.end(), [&](std::size_t a, std::size_t b) { return ahead(a, b); });
    std::vector<NightChoice> best;
    for (std::size_t k = 0; k < std::min(how_many_, arrived.size()); ++k) {
        if (ways_[arrived[k]].cost > bound) {
            pruned_ = true; // by rounding alone; one of another order may be ahead of it
            break;
        }
        std::vector<std::size_t> stops = stops_of(arrived[k]);
        stops.pop_back(); // the finish
        best.push_back({std::move(stops), ways_[arrived[k]].cost});
    }
    return best;
}

} // namespace

DayCost& DayCost::operator+=(const DayCost& other) {
    over_wish += other.over_wish;
    uneven += other.uneven;
    late += other.late;
    dry_camp += other.dry_camp;
    carried += other.carried;
    missed += other.missed;
    return *this;
}

std::vector<NightChoice> best_nights(const NightProgramme& programme, std::size_t how_many) {
    assert(programme.stops >= 2 && how_many > 0);
    NightSearch search(programme, how_many);
    for (double above = 1.0;; above *= 4.0) {
        std::vector<NightChoice> best = search.run(search.least() + above);
        if (best.size() == how_many || !search.pruned())
            return best;
    }
}

} // namespace tumpline::planner

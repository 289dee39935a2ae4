#include "planner/loads/laid_down.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

/// In which ways the party goes while something lies somewhere.
struct GoneBy {
    bool on_foot = false;
    bool afloat = false;

    [[nodiscard]] bool use(const KitItem& item) const {
        return (on_foot && item.ashore != ItemUse::packed) ||
               (afloat && item.afloat != ItemUse::packed);
    }
};

/// Resolves the entries one after the other, in the order in which the party comes by.
class Leaving {
  public:
    explicit Leaving(const LeaveInputs& in) : in_(in), laid_(in.trip.leaves.size()) {}

    void run();

    std::vector<LaidDown> laid() && { return std::move(laid_); }

    std::vector<LeftTwice> twice() && { return std::move(twice_); }

  private:
    void find_passes(std::size_t l);
    void find_things(std::size_t l);
    [[nodiscard]] bool on_day(std::size_t boundary, int day) const;
    [[nodiscard]] GoneBy ways(const LaidDown& here) const;
    [[nodiscard]] bool lies_already(std::size_t l, const ThingRef& thing, const std::string& name);

    const LeaveInputs& in_;
    std::vector<LaidDown> laid_;
    std::vector<LeftTwice> twice_;
    std::vector<std::size_t> done_; ///< entries that have their things
};

/// From the morning at its first boundary to the evening at its last.
bool Leaving::on_day(std::size_t boundary, int day) const {
    return std::any_of(in_.days.begin(), in_.days.end(), [&](const DaySpan& span) {
        return span.day == day && boundary >= span.first && boundary <= span.last;
    });
}

void Leaving::find_passes(std::size_t l) {
    const Leave& leave = in_.trip.leaves[l];
    LaidDown& here = laid_[l];
    int pass = 0;
    for (const RoutePlace& place : in_.route.passes(leave.at)) {
        const std::size_t boundary = in_.stretches.boundary_at(place.along_m);
        ++pass;
        if (here.left_at) {
            if (!here.fetched_at && boundary > *here.left_at &&
                (!leave.fetch_day || on_day(boundary, *leave.fetch_day)))
                here.fetched_at = boundary;
        } else if (boundary < in_.stretches.stretches.size() &&
                   (!leave.pass || pass == *leave.pass) &&
                   (!leave.day || on_day(boundary, *leave.day))) {
            here.left_at = boundary;
        }
    }
}

/// On the stretches until the fetching.
GoneBy Leaving::ways(const LaidDown& here) const {
    GoneBy ways;
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i)
        if (here.lies_on(i) && !is_ride(in_.stretches.stretches[i].travel))
            (in_.stretches.stretches[i].on_foot() ? ways.on_foot : ways.afloat) = true;
    return ways;
}

bool Leaving::lies_already(std::size_t l, const ThingRef& thing, const std::string& name) {
    const auto earlier = std::find_if(done_.begin(), done_.end(), [&](std::size_t one) {
        return laid_[one].lies_on(*laid_[l].left_at) && holds(laid_[one], thing);
    });
    if (earlier == done_.end())
        return false;
    if (!in_.trip.leaves[l].all_but)
        twice_.push_back({.leave = l, .earlier = *earlier, .thing = name});
    return true;
}

void Leaving::find_things(std::size_t l) {
    LaidDown& here = laid_[l];
    if (!here.left_at)
        return;
    const Leave& leave = in_.trip.leaves[l];
    const std::set<std::string_view> named(leave.things.begin(), leave.things.end());
    // Of `all_but` what the party wears or uses on the way comes along without being named.
    const auto is_left = [&](const std::string& name, bool in_use) {
        return leave.all_but ? !in_use && !named.contains(name) : named.contains(name);
    };
    const GoneBy until_then = ways(here);
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        const KitItem& item = in_.trip.kit[k];
        if (in_.brought[k] && is_left(item.name, until_then.use(item)) &&
            !lies_already(l, {Part::kit, k}, item.name))
            here.kit.push_back(k);
    }
    for (std::size_t c = 0; c < in_.trip.craft.size(); ++c) {
        const std::string& name = in_.trip.craft[c].name;
        if (is_left(name, until_then.afloat) && !lies_already(l, {Part::craft, c}, name))
            here.craft.push_back(c);
    }
    done_.push_back(l);
}

void Leaving::run() {
    std::vector<std::size_t> order;
    for (std::size_t l = 0; l < laid_.size(); ++l) {
        find_passes(l);
        order.push_back(l);
    }
    const auto when = [&](std::size_t l) {
        return laid_[l].left_at.value_or(in_.stretches.stretches.size());
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return when(a) < when(b);
    });
    for (const std::size_t l : order)
        find_things(l);
}

} // namespace

bool holds(const LaidDown& laid, const ThingRef& thing) {
    const std::vector<std::size_t>& things = thing.part == Part::kit ? laid.kit : laid.craft;
    return std::binary_search(things.begin(), things.end(), thing.index);
}

bool with_party(const std::vector<LaidDown>& laid, const ThingRef& thing, std::size_t stretch) {
    return std::none_of(laid.begin(), laid.end(), [&](const LaidDown& one) {
        return one.lies_on(stretch) && holds(one, thing);
    });
}

std::vector<LaidDown> laid_down(const LeaveInputs& inputs) {
    Leaving leaving(inputs);
    leaving.run();
    return std::move(leaving).laid();
}

std::vector<LeftTwice> left_twice(const LeaveInputs& inputs) {
    Leaving leaving(inputs);
    leaving.run();
    return std::move(leaving).twice();
}

} // namespace tumpline::planner

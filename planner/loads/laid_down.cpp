#include "planner/loads/laid_down.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

bool names(const Leave& leave, const std::string& thing) {
    return std::find(leave.things.begin(), leave.things.end(), thing) != leave.things.end();
}

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
    [[nodiscard]] bool worn_or_used(const KitItem& item, const LaidDown& here) const;
    [[nodiscard]] bool any_paddle(const LaidDown& here) const;
    [[nodiscard]] bool is_left(std::size_t l, const std::string& name, bool by_itself) const;
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

bool Leaving::any_paddle(const LaidDown& here) const {
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i)
        if (here.lies_on(i) && in_.stretches.stretches[i].travel == Travel::paddle)
            return true;
    return false;
}

/// On one of the stretches until the fetching.
bool Leaving::worn_or_used(const KitItem& item, const LaidDown& here) const {
    for (std::size_t i = 0; i < in_.stretches.stretches.size(); ++i) {
        if (!here.lies_on(i))
            continue;
        const bool afloat = in_.stretches.stretches[i].travel == Travel::paddle;
        if ((afloat ? item.afloat : item.ashore) != ItemUse::packed)
            return true;
    }
    return false;
}

/// `by_itself`: it comes along without being named.
bool Leaving::is_left(std::size_t l, const std::string& name, bool by_itself) const {
    const Leave& leave = in_.trip.leaves[l];
    return leave.all_but ? !by_itself && !names(leave, name) : names(leave, name);
}

bool Leaving::lies_already(std::size_t l, const ThingRef& thing, const std::string& name) {
    const auto earlier = std::find_if(done_.begin(), done_.end(), [&](std::size_t one) {
        const LaidDown& there = laid_[one];
        const std::vector<std::size_t>& things = thing.part == Part::kit ? there.kit : there.craft;
        return there.lies_on(*laid_[l].left_at) &&
               std::find(things.begin(), things.end(), thing.index) != things.end();
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
    for (std::size_t k = 0; k < in_.trip.kit.size(); ++k) {
        const KitItem& item = in_.trip.kit[k];
        if (in_.brought[k] && is_left(l, item.name, worn_or_used(item, here)) &&
            !lies_already(l, {Part::kit, k}, item.name))
            here.kit.push_back(k);
    }
    for (std::size_t c = 0; c < in_.trip.craft.size(); ++c) {
        const std::string& name = in_.trip.craft[c].name;
        if (is_left(l, name, any_paddle(here)) && !lies_already(l, {Part::craft, c}, name))
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

bool with_party(const std::vector<LaidDown>& laid, const ThingRef& thing, std::size_t stretch) {
    return std::none_of(laid.begin(), laid.end(), [&](const LaidDown& one) {
        const std::vector<std::size_t>& things = thing.part == Part::kit ? one.kit : one.craft;
        return one.lies_on(stretch) &&
               std::find(things.begin(), things.end(), thing.index) != things.end();
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

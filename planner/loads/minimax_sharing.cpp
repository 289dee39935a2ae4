#include "planner/loads/minimax_sharing.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

namespace tumpline::planner {

namespace {

constexpr double tie = 1e-12;
constexpr double room_rounding = 1e-9; // of sums of what things take

/// The common relative load up to which a pool fills the lighter bearers.
double level_of(const std::vector<Bearer>& bearers, double pool_mg) {
    std::vector<std::size_t> order(bearers.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto ratio = [&](std::size_t m) { return bearers[m].own_mg / bearers[m].limit_mg; };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return ratio(a) < ratio(b);
    });
    double own_mg = 0.0;
    double limit_mg = 0.0;
    double level = 0.0;
    for (std::size_t k = 0; k < order.size(); ++k) {
        own_mg += bearers[order[k]].own_mg;
        limit_mg += bearers[order[k]].limit_mg;
        level = (own_mg + pool_mg) / limit_mg;
        if (k + 1 == order.size() || level <= ratio(order[k + 1]))
            break;
    }
    return level;
}

double worst_ratio(const std::vector<Bearer>& bearers) {
    double worst = 0.0;
    for (const Bearer& bearer : bearers)
        worst = std::max(worst, bearer.own_mg / bearer.limit_mg);
    return worst;
}

bool has_room(const Bearer& bearer, const SharedThing& thing) {
    return thing.takes <= bearer.room + room_rounding;
}

/// A bearer and what a thing would make of the load.
struct Option {
    double ratio;
    std::size_t bearer;

    [[nodiscard]] bool comes_after(const Option& other) const {
        return ratio > other.ratio || (ratio == other.ratio && bearer > other.bearer);
    }
};

/// The bearer whom a thing leaves the lightest, of equals the first; after `last` if that is given.
std::optional<Option> lightest(const std::vector<Bearer>& bearers,
                               const SharedThing& thing,
                               const std::optional<Option>& last = {}) {
    std::optional<Option> best;
    const auto offer = [&](std::size_t b) {
        const Option option{(bearers[b].own_mg + thing.mass_mg) / bearers[b].limit_mg, b};
        if (has_room(bearers[b], thing) && (!last || option.comes_after(*last)) &&
            (!best || best->comes_after(option)))
            best = option;
    };
    if (thing.may_bear.empty())
        for (std::size_t b = 0; b < bearers.size(); ++b)
            offer(b);
    else
        for (const std::size_t b : thing.may_bear)
            offer(b);
    return best;
}

constexpr long most_nodes =
    20'000;                     ///< the same on every machine; fewer where bearers are very many
constexpr double close = 1e-12; ///< a heaviest ratio no further than this from the bound will do

/// Depth first, heaviest thing first, the lightest relative load tried first.
class ShareSearch {
  public:
    ShareSearch(std::vector<Bearer> bearers, const std::vector<SharedThing>& things, double pool_mg)
        : loads_(std::move(bearers)), things_(things), pool_mg_(pool_mg), order_(things.size()),
          steps_(things.size() + 1) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return things_[a].mass_mg > things_[b].mass_mg;
        });
        double total_mg = pool_mg_;
        double limit_mg = 0.0;
        for (const Bearer& bearer : loads_) {
            total_mg += bearer.own_mg;
            limit_mg += bearer.limit_mg;
        }
        for (const SharedThing& thing : things_) {
            total_mg += thing.mass_mg;
            alike_ = alike_ && thing.may_bear.empty();
        }
        bound_ = std::max(total_mg / limit_mg, worst_ratio(loads_));
        constexpr long most_looks = 400'000; // a node looks at every bearer
        const long nodes = std::min(most_nodes, most_looks / static_cast<long>(loads_.size()));
        most_nodes_ = std::max(nodes, static_cast<long>(things_.size()) + 2); // one way to its end
    }

    void run() {
        steps_.front().worst = worst_ratio(loads_);
        std::size_t depth = 0;
        bool down = goes_on(depth);
        while (nodes_ < most_nodes_ && !is_enough()) {
            if (down && put_next(depth)) {
                ++depth;
                down = goes_on(depth);
            } else if (depth == 0) {
                ended_ = true;
                return;
            } else {
                take_back(--depth);
                down = true;
            }
        }
    }

    [[nodiscard]] double bound() const { return bound_; }

    [[nodiscard]] double best() const { return best_; }

    /// Whether it came to its end, or as close to the bound as was hoped for.
    [[nodiscard]] bool complete() const {
        return nodes_ < most_nodes_ && (ended_ || best_ <= bound_ + close);
    }

    [[nodiscard]] const std::vector<std::size_t>& bearer() const { return best_bearer_; }

  private:
    /// One thing on its way from bearer to bearer.
    struct Step {
        double worst = 0.0; ///< ratio before the thing is put anywhere
        std::optional<Option> on;
        Bearer before{0.0, 0.0}; ///< the bearer without it
    };

    [[nodiscard]] bool is_enough() const { return best_ <= bound_ + close; }

    /// Whether anything is to be tried below a depth; keeps the answer if all things are put.
    bool goes_on(std::size_t depth) {
        Step& step = steps_[depth];
        step.on.reset();
        if (step.worst >= best_ - tie || is_enough() || ++nodes_ >= most_nodes_)
            return false;
        if (depth < order_.size())
            return true;
        const double level = std::max(step.worst, level_of(loads_, pool_mg_));
        if (level < best_ - tie) {
            best_ = level;
            best_bearer_.resize(things_.size());
            for (std::size_t k = 0; k < order_.size(); ++k)
                best_bearer_[order_[k]] = steps_[k].on->bearer;
        }
        return false;
    }

    /// Puts a depth's thing on the next bearer, if there is one with whom it could help.
    bool put_next(std::size_t depth) {
        Step& step = steps_[depth];
        const SharedThing& thing = things_[order_[depth]];
        std::optional<Option> next = lightest(loads_, thing, step.on);
        while (next && step.on && alike_ && same_load(loads_[next->bearer], step.before))
            next = lightest(loads_, thing, next); // as with the one before, names exchanged
        if (!next || next->ratio >= best_ - tie)
            return false;
        step.on = next;
        Bearer& bearer = loads_[next->bearer];
        step.before = bearer;
        bearer.own_mg += thing.mass_mg;
        bearer.room -= thing.takes;
        steps_[depth + 1].worst = std::max(step.worst, next->ratio);
        return true;
    }

    void take_back(std::size_t depth) { loads_[steps_[depth].on->bearer] = steps_[depth].before; }

    [[nodiscard]] static bool same_load(const Bearer& a, const Bearer& b) {
        return a.own_mg == b.own_mg && a.limit_mg == b.limit_mg && a.room == b.room;
    }

    std::vector<Bearer> loads_;
    const std::vector<SharedThing>& things_;
    double pool_mg_;
    bool ended_ = false; ///< nothing is left to try
    std::vector<std::size_t> order_;
    std::vector<Step> steps_; ///< per depth
    bool alike_ = true;       ///< anyone may bear anything
    std::vector<std::size_t> best_bearer_;
    double best_ = std::numeric_limits<double>::infinity();
    double bound_ = 0.0;
    long nodes_ = 0;
    long most_nodes_ = 0;
};

/// Things on their bearers, changed one by one.
class Exchanges {
  public:
    Exchanges(std::vector<Bearer> bearers, const std::vector<SharedThing>& things)
        : loads_(std::move(bearers)), things_(things), on_(loads_.size()), by_mass_(loads_.size()),
          put_at_(things.size(), 0), bearer_(things.size(), 0), is_lighter_(loads_.size()) {}

    void share_greedily() {
        std::vector<std::size_t> order(things_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            if (things_[a].takes != things_[b].takes)
                return things_[a].takes > things_[b].takes;
            return things_[a].mass_mg > things_[b].mass_mg;
        });
        for (const std::size_t thing : order) {
            const std::optional<Option> best = lightest(loads_, things_[thing]);
            put(thing, best ? best->bearer : heaviest());
        }
    }

    /// One move of a thing out of the heaviest load, or exchange with a lighter one; false if none
    /// helps. Of those that help the first: by the thing that goes out, the other bearer, and what
    /// comes in for it, each in the order in which things were put there.
    bool lighten() {
        const std::size_t worst = heaviest();
        const double below = ratio(worst) - 1e-9;
        for (std::size_t b = 0; b < loads_.size(); ++b)
            is_lighter_[b] = ratio(b) < below;
        for (std::size_t k = 0; k < on_[worst].size(); ++k) {
            const std::size_t out = on_[worst][k];
            for (std::size_t b = 0; b < loads_.size(); ++b) {
                if (b == worst || !may_bear(out, b))
                    continue;
                if (has_room(loads_[b], things_[out]) && ratio(b, things_[out].mass_mg) < below) {
                    take(out, worst);
                    put(out, b);
                    return true;
                }
                if (--looks_ < 0)
                    return false;
                if (!is_lighter_[b])
                    continue; // an exchange only adds to it
                if (const std::optional<std::size_t> in = exchange(out, {b, below})) {
                    take(out, worst);
                    take(*in, b);
                    put(out, b);
                    put(*in, worst);
                    return true;
                }
            }
        }
        return false;
    }

    [[nodiscard]] std::vector<std::vector<std::size_t>> result() && { return std::move(on_); }

  private:
    /// A thing beside its mass, so that a search by mass reads one run of memory.
    struct Weighed {
        double mg;
        std::size_t thing;
    };

    [[nodiscard]] double ratio(std::size_t b, double more_mg = 0.0) const {
        return (loads_[b].own_mg + more_mg) / loads_[b].limit_mg;
    }

    [[nodiscard]] bool may_bear(std::size_t thing, std::size_t b) const {
        const std::vector<std::size_t>& may = things_[thing].may_bear;
        return may.empty() || std::find(may.begin(), may.end(), b) != may.end();
    }

    [[nodiscard]] std::size_t heaviest() const {
        std::size_t worst = 0;
        for (std::size_t b = 1; b < loads_.size(); ++b)
            if (ratio(b) > ratio(worst))
                worst = b;
        return worst;
    }

    /// Whose load is to stay below which ratio of its limit.
    struct Lighter {
        std::size_t bearer = 0;
        double below = 0.0;
    };

    /// The first thing of the bearer, lighter than `out` and taking as much room, for which the
    /// load with `out` instead stays below the goal.
    [[nodiscard]] std::optional<std::size_t> exchange(std::size_t out, Lighter goal) const {
        const auto [b, below] = goal;
        const std::vector<Weighed>& things = by_mass_[b];
        const double mass_mg = things_[out].mass_mg;
        std::optional<std::size_t> first;
        auto lighter = std::lower_bound(things.begin(),
                                        things.end(),
                                        mass_mg,
                                        [](const Weighed& one, double mg) { return one.mg < mg; });
        while (lighter != things.begin()) {
            --lighter;
            if (ratio(b, mass_mg - lighter->mg) >= below)
                break; // one still lighter would leave more
            const std::size_t in = lighter->thing;
            if (things_[in].takes == things_[out].takes && may_bear(in, bearer_[out]) &&
                (!first || put_at_[in] < put_at_[*first]))
                first = in;
        }
        return first;
    }

    void put(std::size_t thing, std::size_t b) {
        on_[b].push_back(thing);
        put_at_[thing] = ++puts_;
        bearer_[thing] = b;
        const Weighed weighed{things_[thing].mass_mg, thing};
        std::vector<Weighed>& sorted = by_mass_[b];
        sorted.insert(
            std::upper_bound(sorted.begin(),
                             sorted.end(),
                             weighed,
                             [](const Weighed& x, const Weighed& y) { return x.mg < y.mg; }),
            weighed);
        loads_[b].own_mg += things_[thing].mass_mg;
        loads_[b].room -= things_[thing].takes;
    }

    void take(std::size_t thing, std::size_t b) {
        on_[b].erase(std::find(on_[b].begin(), on_[b].end(), thing));
        std::vector<Weighed>& sorted = by_mass_[b];
        sorted.erase(std::find_if(
            sorted.begin(), sorted.end(), [&](const Weighed& one) { return one.thing == thing; }));
        loads_[b].own_mg -= things_[thing].mass_mg;
        loads_[b].room += things_[thing].takes;
    }

    std::vector<Bearer> loads_;
    const std::vector<SharedThing>& things_;
    std::vector<std::vector<std::size_t>> on_;  ///< per bearer, as they were put
    std::vector<std::vector<Weighed>> by_mass_; ///< the same, lightest first
    std::vector<long> put_at_;                  ///< per thing: how many were put before it
    std::vector<std::size_t> bearer_;           ///< per thing
    std::vector<bool> is_lighter_;              ///< per bearer: than the heaviest, now
    long looks_ = 20'000; ///< for exchanges, left: bounds the time where things are very many
    long puts_ = 0;
};

} // namespace

std::vector<double> level_out(const std::vector<Bearer>& bearers, double pool_mg) {
    std::vector<double> shares(bearers.size(), 0.0);
    if (pool_mg <= 0.0) {
        double limit_mg = 0.0;
        for (const Bearer& bearer : bearers)
            limit_mg += bearer.limit_mg;
        for (std::size_t m = 0; m < bearers.size(); ++m)
            shares[m] = bearers[m].limit_mg / limit_mg;
        return shares;
    }
    const double level = level_of(bearers, pool_mg);
    double sum = 0.0;
    for (std::size_t m = 0; m < bearers.size(); ++m) {
        shares[m] = std::max(0.0, level * bearers[m].limit_mg - bearers[m].own_mg);
        sum += shares[m];
    }
    for (double& share : shares)
        share /= sum;
    return shares;
}

SharedOut share_out(const std::vector<Bearer>& bearers,
                    const std::vector<SharedThing>& things,
                    double pool_mg) {
    ShareSearch search(bearers, things, pool_mg);
    search.run();
    SharedOut result{};
    result.bearer = search.bearer();
    result.heaviest_ratio = search.best();
    result.lower_bound = search.bound();
    result.proven = search.complete();
    std::vector<Bearer> laden = bearers;
    for (std::size_t t = 0; t < result.bearer.size(); ++t)
        laden[result.bearer[t]].own_mg += things[t].mass_mg;
    result.pool_share = level_out(laden, pool_mg);
    return result;
}

std::vector<std::vector<std::size_t>> share_by_exchanges(const std::vector<Bearer>& bearers,
                                                         const std::vector<SharedThing>& things) {
    Exchanges exchanges(bearers, things);
    exchanges.share_greedily();
    constexpr int most_moves = 200; // bounds the time; far more than ever help
    for (int move = 0; move < most_moves && exchanges.lighten(); ++move) {
    }
    return std::move(exchanges).result();
}

} // namespace tumpline::planner

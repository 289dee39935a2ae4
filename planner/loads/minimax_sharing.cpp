#include "planner/loads/minimax_sharing.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace tumpline::planner {

namespace {

constexpr double tie = 1e-12;

/// The common relative load up to which a pool fills the lighter bearers.
double level_of(const std::vector<Bearer>& bearers, double pool_kg) {
    std::vector<std::size_t> order(bearers.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto ratio = [&](std::size_t m) { return bearers[m].own_kg / bearers[m].limit_kg; };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return ratio(a) < ratio(b);
    });
    double own_kg = 0.0;
    double limit_kg = 0.0;
    double level = 0.0;
    for (std::size_t k = 0; k < order.size(); ++k) {
        own_kg += bearers[order[k]].own_kg;
        limit_kg += bearers[order[k]].limit_kg;
        level = (own_kg + pool_kg) / limit_kg;
        if (k + 1 == order.size() || level <= ratio(order[k + 1]))
            break;
    }
    return level;
}

double worst_ratio(const std::vector<Bearer>& bearers) {
    double worst = 0.0;
    for (const Bearer& bearer : bearers)
        worst = std::max(worst, bearer.own_kg / bearer.limit_kg);
    return worst;
}

/// Depth first, heaviest thing first, the lightest relative load tried first.
class ShareSearch {
  public:
    ShareSearch(std::vector<Bearer> bearers, const std::vector<SharedThing>& things, double pool_kg)
        : loads_(std::move(bearers)), things_(things), pool_kg_(pool_kg), order_(things.size()),
          now_(things.size(), 0) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return things_[a].mass_kg > things_[b].mass_kg;
        });
        double total_kg = pool_kg_;
        double limit_kg = 0.0;
        for (const Bearer& bearer : loads_) {
            total_kg += bearer.own_kg;
            limit_kg += bearer.limit_kg;
        }
        for (const SharedThing& thing : things_)
            total_kg += thing.mass_kg;
        bound_ = std::max(total_kg / limit_kg, worst_ratio(loads_));
    }

    void run() { descend(0, worst_ratio(loads_)); }

    [[nodiscard]] double bound() const { return bound_; }

    [[nodiscard]] double best() const { return best_; }

    [[nodiscard]] bool complete() const { return nodes_ < most_nodes; }

    [[nodiscard]] const std::vector<std::size_t>& bearer() const { return best_bearer_; }

  private:
    static constexpr long most_nodes = 20'000; // bounds the time, the same on every machine

    [[nodiscard]] bool may(std::size_t thing, std::size_t member) const {
        const std::vector<std::size_t>& allowed = things_[thing].may_bear;
        return allowed.empty() ||
               std::find(allowed.begin(), allowed.end(), member) != allowed.end();
    }

    void descend(std::size_t depth, double worst) {
        if (worst >= best_ - tie || best_ <= bound_ + tie || ++nodes_ >= most_nodes)
            return;
        if (depth == order_.size()) {
            const double level = std::max(worst, level_of(loads_, pool_kg_));
            if (level < best_ - tie) {
                best_ = level;
                best_bearer_ = now_;
            }
            return;
        }
        const std::size_t thing = order_[depth];
        std::vector<std::size_t> members;
        for (std::size_t m = 0; m < loads_.size(); ++m)
            if (may(thing, m))
                members.push_back(m);
        const auto after = [&](std::size_t m) {
            return (loads_[m].own_kg + things_[thing].mass_kg) / loads_[m].limit_kg;
        };
        std::stable_sort(members.begin(), members.end(), [&](std::size_t a, std::size_t b) {
            return after(a) < after(b);
        });
        for (const std::size_t m : members) {
            now_[thing] = m;
            loads_[m].own_kg += things_[thing].mass_kg;
            descend(depth + 1, std::max(worst, loads_[m].own_kg / loads_[m].limit_kg));
            loads_[m].own_kg -= things_[thing].mass_kg;
        }
    }

    std::vector<Bearer> loads_;
    const std::vector<SharedThing>& things_;
    double pool_kg_;
    std::vector<std::size_t> order_;
    std::vector<std::size_t> now_;
    std::vector<std::size_t> best_bearer_;
    double best_ = std::numeric_limits<double>::infinity();
    double bound_ = 0.0;
    long nodes_ = 0;
};

} // namespace

std::vector<double> level_out(const std::vector<Bearer>& bearers, double pool_kg) {
    std::vector<double> shares(bearers.size(), 0.0);
    if (pool_kg <= 0.0) {
        double limit_kg = 0.0;
        for (const Bearer& bearer : bearers)
            limit_kg += bearer.limit_kg;
        for (std::size_t m = 0; m < bearers.size(); ++m)
            shares[m] = bearers[m].limit_kg / limit_kg;
        return shares;
    }
    const double level = level_of(bearers, pool_kg);
    double sum = 0.0;
    for (std::size_t m = 0; m < bearers.size(); ++m) {
        shares[m] = std::max(0.0, level * bearers[m].limit_kg - bearers[m].own_kg);
        sum += shares[m];
    }
    for (double& share : shares)
        share /= sum;
    return shares;
}

SharedOut share_out(const std::vector<Bearer>& bearers,
                    const std::vector<SharedThing>& things,
                    double pool_kg) {
    ShareSearch search(bearers, things, pool_kg);
    search.run();
    SharedOut result{};
    result.bearer = search.bearer();
    result.heaviest_ratio = search.best();
    result.lower_bound = search.bound();
    result.proven = search.complete();
    std::vector<Bearer> laden = bearers;
    for (std::size_t t = 0; t < things.size(); ++t)
        laden[result.bearer[t]].own_kg += things[t].mass_kg;
    result.pool_share = level_out(laden, pool_kg);
    return result;
}

} // namespace tumpline::planner

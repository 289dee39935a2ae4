#include "planner/loads/portage_loads.h"

#include "planner/loads/minimax_sharing.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

/// Empty loads with their bearers: each member's own, then the ones that are fetched.
std::vector<PortageLoad> empty_loads(const std::vector<double>& limits_kg, double carries) {
    const std::size_t members = limits_kg.size();
    std::vector<PortageLoad> loads;
    const int whole = static_cast<int>(carries);
    for (int turn = 0; turn < whole; ++turn)
        for (std::size_t m = 0; m < members; ++m)
            loads.push_back({{}, 0, m, m});
    if (carries > whole) { // the half: pairs relay one more load, the strongest with the next
        std::vector<std::size_t> order(members);
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return limits_kg[a] > limits_kg[b];
        });
        for (std::size_t k = 0; k + 1 < members; k += 2)
            loads.push_back({{}, 0, order[k], order[k + 1]});
    }
    return loads;
}

} // namespace

bool offers_carries(double carries, std::size_t members) {
    return carries == static_cast<int>(carries) || members >= 2;
}

double lengths_of(double carries) {
    return 2.0 * carries - 1.0;
}

CarryPlan
make_loads(const std::vector<Piece>& pieces, const std::vector<double>& limits_kg, double carries) {
    CarryPlan relay{};
    relay.carries = carries;
    relay.loads = empty_loads(limits_kg, carries);
    std::vector<Bearer> bearers;
    bearers.reserve(relay.loads.size());
    for (const PortageLoad& load : relay.loads) // nobody carries two boats at a time
        bearers.push_back(
            {.own_mg = 0.0,
             .limit_mg = std::min(limits_kg[load.bearer], limits_kg[load.relay]) * mg_per_kg,
             .room = 1.0});
    std::vector<SharedThing> things;
    things.reserve(pieces.size());
    for (const Piece& piece : pieces)
        things.push_back({.mass_mg = static_cast<double>(piece.mass_mg),
                          .may_bear = {},
                          .takes = piece.boat ? 1.0 : 0.0});
    std::vector<std::vector<std::size_t>> shares = share_by_exchanges(bearers, things);
    for (std::size_t l = 0; l < shares.size(); ++l) {
        PortageLoad& load = relay.loads[l];
        load.pieces = std::move(shares[l]);
        for (const std::size_t piece : load.pieces)
            load.mass_mg += pieces[piece].mass_mg;
        const double ratio = static_cast<double>(load.mass_mg) / bearers[l].limit_mg;
        if (ratio > relay.heaviest_ratio) {
            relay.heaviest_ratio = ratio;
            relay.heaviest = l;
        }
    }
    return relay;
}

} // namespace tumpline::planner

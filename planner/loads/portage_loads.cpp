#include "planner/loads/portage_loads.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

struct Bin {
    std::vector<std::size_t> pieces;
    std::int64_t mass_mg = 0;
    std::size_t bearer = 0;
    std::size_t relay = 0;
    double limit_mg = 0.0;
    int boats = 0;

    [[nodiscard]] double ratio(std::int64_t more_mg = 0) const {
        return static_cast<double>(mass_mg + more_mg) / limit_mg;
    }
};

/// Empty loads with their bearers: each member's own, then the ones that are fetched.
std::vector<Bin> empty_loads(const std::vector<double>& limits_kg, double carries) {
    const std::size_t members = limits_kg.size();
    std::vector<Bin> bins;
    const auto add = [&](std::size_t bearer, std::size_t relay) {
        Bin bin;
        bin.bearer = bearer;
        bin.relay = relay;
        bin.limit_mg = std::min(limits_kg[bearer], limits_kg[relay]) * mg_per_kg;
        bins.push_back(std::move(bin));
    };
    const int whole = static_cast<int>(carries);
    for (int turn = 0; turn < whole; ++turn)
        for (std::size_t m = 0; m < members; ++m)
            add(m, m);
    if (carries > whole) { // the half: pairs relay one more load, the strongest with the next
        std::vector<std::size_t> order(members);
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return limits_kg[a] > limits_kg[b];
        });
        for (std::size_t k = 0; k + 1 < members; k += 2)
            add(order[k], order[k + 1]);
    }
    return bins;
}

bool takes(const Bin& bin, const Piece& piece) {
    return !piece.boat || bin.boats == 0;
}

void put_into(Bin& bin, const std::vector<Piece>& pieces, std::size_t index) {
    bin.pieces.push_back(index);
    bin.mass_mg += pieces[index].mass_mg;
    bin.boats += pieces[index].boat ? 1 : 0;
}

void take(Bin& bin, const std::vector<Piece>& pieces, std::size_t index) {
    bin.pieces.erase(std::find(bin.pieces.begin(), bin.pieces.end(), index));
    bin.mass_mg -= pieces[index].mass_mg;
    bin.boats -= pieces[index].boat ? 1 : 0;
}

std::size_t heaviest_of(const std::vector<Bin>& bins) {
    std::size_t worst = 0;
    for (std::size_t b = 1; b < bins.size(); ++b)
        if (bins[b].ratio() > bins[worst].ratio())
            worst = b;
    return worst;
}

/// One move of a piece out of the heaviest load, or exchange with a lighter one; false if none
/// helps.
bool lighten(std::vector<Bin>& bins, const std::vector<Piece>& pieces) {
    const std::size_t worst = heaviest_of(bins);
    const double now = bins[worst].ratio();
    for (const std::size_t out : std::vector<std::size_t>(bins[worst].pieces)) {
        for (std::size_t b = 0; b < bins.size(); ++b) {
            if (b == worst)
                continue;
            if (takes(bins[b], pieces[out]) && bins[b].ratio(pieces[out].mass_mg) < now - 1e-9) {
                take(bins[worst], pieces, out);
                put_into(bins[b], pieces, out);
                return true;
            }
            for (const std::size_t in : std::vector<std::size_t>(bins[b].pieces)) {
                const std::int64_t shift_mg = pieces[out].mass_mg - pieces[in].mass_mg;
                if (pieces[out].boat != pieces[in].boat || shift_mg <= 0)
                    continue;
                if (bins[b].ratio(shift_mg) < now - 1e-9) {
                    take(bins[worst], pieces, out);
                    take(bins[b], pieces, in);
                    put_into(bins[b], pieces, out);
                    put_into(bins[worst], pieces, in);
                    return true;
                }
            }
        }
    }
    return false;
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
    std::vector<Bin> bins = empty_loads(limits_kg, carries);
    std::vector<std::size_t> order(pieces.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        if (pieces[a].boat != pieces[b].boat)
            return pieces[a].boat;
        return pieces[a].mass_mg > pieces[b].mass_mg;
    });
    for (const std::size_t index : order) {
        std::size_t best = bins.size();
        for (std::size_t b = 0; b < bins.size(); ++b) {
            if (!takes(bins[b], pieces[index]))
                continue;
            if (best == bins.size() ||
                bins[b].ratio(pieces[index].mass_mg) < bins[best].ratio(pieces[index].mass_mg))
                best = b;
        }
        put_into(bins[best == bins.size() ? heaviest_of(bins) : best], pieces, index);
    }
    constexpr int most_moves = 200; // bounds the time; far more than ever help
    for (int move = 0; move < most_moves && lighten(bins, pieces); ++move) {
    }
    CarryPlan relay{};
    relay.carries = carries;
    relay.heaviest = heaviest_of(bins);
    relay.heaviest_ratio = bins[relay.heaviest].ratio();
    for (Bin& bin : bins)
        relay.loads.push_back({std::move(bin.pieces), bin.mass_mg, bin.bearer, bin.relay});
    return relay;
}

} // namespace tumpline::planner

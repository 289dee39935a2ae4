#include "planner/results/bag_sums.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace tumpline::planner {

namespace {

struct WholeItem {
    std::size_t g;
    std::size_t dl;
};

/// The sums (grams, decilitres) of the left bag that some choice of items reaches, and with which
/// item each was reached first: without it, the rest of the sum was reached by items before.
class Sums {
  public:
    Sums(std::size_t most_g, std::size_t most_dl)
        : rows_(most_dl + 1), columns_(most_g + 1), by_(rows_ * columns_, unreached) {
        by_[0] = nothing;
    }

    /// From the top down, so that no item counts twice.
    void add(std::uint8_t item, const WholeItem& whole) {
        const auto& [g, dl] = whole;
        so_far_.g = std::min(so_far_.g + g, columns_ - 1);
        so_far_.dl = std::min(so_far_.dl + dl, rows_ - 1);
        for (std::size_t row = so_far_.dl + 1; row-- > dl;) {
            std::uint8_t* const to = &by_[row * columns_];
            const std::uint8_t* const from = &by_[(row - dl) * columns_];
            for (std::size_t column = so_far_.g + 1; column-- > g;)
                if (to[column] == unreached && from[column - g] != unreached)
                    to[column] = item;
        }
    }

    [[nodiscard]] bool reached(std::size_t g, std::size_t dl) const {
        return g < columns_ && dl < rows_ && by_[dl * columns_ + g] != unreached;
    }

    /// The item with which a sum was reached first; nothing for the empty bag.
    [[nodiscard]] std::optional<std::size_t> last_item(std::size_t g, std::size_t dl) const {
        const std::uint8_t item = by_[dl * columns_ + g];
        return item == nothing ? std::nullopt : std::optional<std::size_t>(item);
    }

  private:
    static constexpr std::uint8_t unreached = std::numeric_limits<std::uint8_t>::max();
    static constexpr std::uint8_t nothing = unreached - 1;

    std::size_t rows_;
    std::size_t columns_;
    std::vector<std::uint8_t> by_;
    WholeItem so_far_{0, 0}; ///< no sum is larger yet
};

constexpr std::size_t most_items = 200; // their numbers fit a byte

} // namespace

std::optional<std::vector<bool>> level_by_sums(const std::vector<BagItem>& items,
                                               const BagVolumes& volumes) {
    if (items.size() > most_items)
        return std::nullopt;
    std::vector<WholeItem> whole;
    std::size_t total_g = 0;
    std::size_t total_dl = 0;
    const bool bounded = volumes.left_l > 0.0 || volumes.right_l > 0.0;
    for (const BagItem& item : items) {
        const auto g = static_cast<std::size_t>(std::llround(item.mass_kg * 1e3));
        const auto dl = static_cast<std::size_t>(std::ceil(item.volume_l * 10.0 - 1e-6));
        whole.push_back({g, bounded ? dl : 0});
        total_g += whole.back().g;
        total_dl += whole.back().dl;
    }
    const auto room_dl = [&](double volume_l) {
        return volume_l > 0.0 ? std::min(total_dl, static_cast<std::size_t>(volume_l * 10.0 + 1e-6))
                              : total_dl;
    };
    const std::size_t left_dl = room_dl(volumes.left_l);
    const std::size_t right_dl = room_dl(volumes.right_l);
    if ((left_dl + 1) * (total_g + 1) > most_sums)
        return std::nullopt;
    Sums sums(total_g, left_dl);
    for (std::size_t k = 0; k < whole.size(); ++k)
        sums.add(static_cast<std::uint8_t>(k), whole[k]);
    const std::size_t least_dl = total_dl - right_dl; // what the right bag cannot hold
    const auto filled = [&](std::size_t g) -> std::optional<std::size_t> {
        for (std::size_t dl = least_dl; dl <= left_dl; ++dl)
            if (sums.reached(g, dl))
                return dl;
        return std::nullopt;
    };
    // Outwards from half of everything.
    for (std::size_t apart = total_g % 2; apart <= total_g; apart += 2)
        for (const std::size_t left_g : {(total_g - apart) / 2, (total_g + apart) / 2})
            if (const std::optional<std::size_t> litres = filled(left_g)) {
                std::vector<bool> right(items.size(), true);
                std::size_t g = left_g;
                std::size_t dl = *litres;
                while (const std::optional<std::size_t> item = sums.last_item(g, dl)) {
                    right[*item] = false;
                    g -= whole[*item].g;
                    dl -= whole[*item].dl;
                }
                return right;
            }
    return std::nullopt;
}

} // namespace tumpline::planner

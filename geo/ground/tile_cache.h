#pragma once

#include <cstddef>
#include <list>
#include <unordered_map>
#include <vector>

namespace tumpline::geo {

/// Cells of rasters as far as they were read, the least recently used dropped first. A tile holds
/// one column and one row of its neighbours, so that four cells around a point stand in one tile.
class TileCache {
  public:
    static constexpr int side = 256;
    static constexpr std::size_t stride = side + 1;
    static constexpr std::size_t most_tiles = 256; ///< 64 MB of cells

    struct Key {
        int raster;
        int column;
        int row;

        friend bool operator==(const Key&, const Key&) = default;
    };

    /// (side + 1)^2 cells in rows from the north-west; NaN is void.
    using Cells = std::vector<float>;

    /// The cells of a tile, or null if they must be read; valid until the next `put`.
    [[nodiscard]] const Cells* find(const Key& key);

    const Cells* put(const Key& key, Cells cells);

  private:
    struct Tile {
        Key key;
        Cells cells;
    };

    struct Hash {
        std::size_t operator()(const Key& key) const noexcept;
    };

    std::list<Tile> tiles_; ///< most recently used first
    std::unordered_map<Key, std::list<Tile>::iterator, Hash> places_;
};

} // namespace tumpline::geo

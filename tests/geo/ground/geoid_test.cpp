#include "geo/ground/geoid.h"

#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <cstdint>
#include <fstream>
#include <optional>

namespace tumpline::geo {
namespace {

/// A grid of PROJ read by hand: four doubles (south, west, steps), rows and columns, then floats in
/// rows from the south-west, all big-endian.
class Gtx {
  public:
    explicit Gtx(const char* file) : in_(file, std::ios::binary) {}

    [[nodiscard]] bool is_here() const { return in_.is_open(); }

    [[nodiscard]] float cell(int row, int column) {
        constexpr int header = 4 * 8 + 2 * 4;
        in_.seekg(header - 4);
        const auto columns = static_cast<int>(word());
        in_.seekg(header + 4 * (static_cast<std::streamoff>(row) * columns + column));
        return std::bit_cast<float>(word());
    }

  private:
    std::uint32_t word() {
        std::array<unsigned char, 4> bytes{};
        in_.read(reinterpret_cast<char*>(bytes.data()), bytes.size());
        return static_cast<std::uint32_t>(bytes[0]) << 24U |
               static_cast<std::uint32_t>(bytes[1]) << 16U |
               static_cast<std::uint32_t>(bytes[2]) << 8U | static_cast<std::uint32_t>(bytes[3]);
    }

    std::ifstream in_;
};

/// The grid begins at 90 S, 180 W and has four cells to a degree: 60 N, 8 E stands in row
/// (60 + 90) x 4 = 600 and column (8 + 180) x 4 = 752.
TEST(Geoid, IsTheCellOfTheGridAtItsNodesAndTheMeanHalfwayBetweenFour) {
    Gtx grid("/usr/share/proj/egm96_15.gtx");
    if (!grid.is_here())
        GTEST_SKIP() << "the grid of Debian's proj-data is not here";
    const std::optional<double> node = geoid_height_m({.lat_deg = 60.0, .lon_deg = 8.0});
    ASSERT_TRUE(node);
    EXPECT_NEAR(*node, grid.cell(600, 752), 1e-3);
    EXPECT_GT(*node, 30.0); // some 44 m above the ellipsoid in southern Norway
    const double mean = 0.25 * static_cast<double>(grid.cell(600, 752) + grid.cell(600, 753) +
                                                   grid.cell(601, 752) + grid.cell(601, 753));
    EXPECT_NEAR(*geoid_height_m({.lat_deg = 60.125, .lon_deg = 8.125}), mean, 1e-3);
}

TEST(Geoid, IsUnknownBeyondTheEarth) {
    EXPECT_FALSE(geoid_height_m({.lat_deg = 91.0, .lon_deg = 8.0}));
}

} // namespace
} // namespace tumpline::geo

#include "geo/ground/relief.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

namespace tumpline::geo {
namespace {

HeightGrid slope(const std::function<double(int, int)>& height) {
    HeightGrid grid{{{0.0, 0.0}, 10.0, 12, 12}, {}};
    for (int row = 0; row < 12; ++row)
        for (int column = 0; column < 12; ++column)
            grid.heights_m.push_back(static_cast<float>(height(column, row)));
    return grid;
}

std::uint8_t middle(const std::vector<std::uint8_t>& shades) {
    return shades.at(6 * 12 + 6);
}

TEST(Relief, ShadesARampAsTheFormulaSays) {
    // 0.5 up to the east. 1 + 254 (sin 45 + cos 45 tan s cos(az - aspect)) / sqrt(1 + tan^2 s), the
    // slope facing west: az 270: (0.7071 + 0.3536) / 1.1180 = 0.9487, 1 + 254 x 0.9487 = 241.97.
    const HeightGrid ramp = slope([](int column, int) { return 5.0 * column; });
    constexpr std::array<std::pair<double, int>, 4> rows{
        {{315.0, 218}, {270.0, 242}, {90.0, 81}, {0.0, 162}}};
    for (const auto& [azimuth, shade] : rows)
        EXPECT_NEAR(middle(hillshade(ramp, {.many = false, .azimuth = azimuth})), shade, 1)
            << azimuth;
    const HeightGrid level = slope([](int, int) { return 700.0; });
    EXPECT_NEAR(middle(hillshade(level, {.many = false, .azimuth = 315.0})), 181, 1);
}

TEST(Relief, IsAPictureOnlyWhereSomethingIsInTheShade) {
    EXPECT_EQ(relief_png(slope([](int, int) { return 700.0; })), "");
    EXPECT_EQ(relief_png(slope([](int, int) { return std::numeric_limits<double>::quiet_NaN(); })),
              "");
    // Falls to the south-east: away from all four lights.
    const std::string png =
        relief_png(slope([](int column, int row) { return -8.0 * (column + row); }));
    ASSERT_GT(png.size(), 60U);
    EXPECT_EQ(png.substr(1, 3), "PNG");
    EXPECT_EQ(png[16 + 3], 12); // width
    EXPECT_EQ(png[16 + 7], 12); // height
    EXPECT_EQ(png[16 + 8], 4);  // bits of a tone
    EXPECT_EQ(png[16 + 9], 0);  // grey
}

} // namespace
} // namespace tumpline::geo

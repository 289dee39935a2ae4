#include "tests/support/line_plot.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace tumpline::test {

namespace {

constexpr double left = 62.0;
constexpr double right = 520.0;
constexpr double top = 34.0;
constexpr double bottom = 330.0;

// Okabe and Ito, "Color Universal Design" (2008): black, blue, vermilion, green, purple, sky blue.
constexpr std::array colours{"#000000", "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9"};
constexpr std::array dashes{"none", "8 3", "2 3", "10 3 2 3", "5 5", "14 4"};

double place(const Axis& axis, double value, double low, double high) {
    return low + (value - axis.from) / (axis.to - axis.from) * (high - low);
}

/// Ticks in whole steps, so that no rounding adds or drops one.
int ticks(const Axis& axis) {
    return static_cast<int>(std::lround((axis.to - axis.from) / axis.tick));
}

std::string text(double x, double y, const char* anchor, const std::string& words) {
    return fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>\n", x, y, anchor, words);
}

std::string frame(const LinePlot& plot) {
    std::string svg;
    for (int i = 0; i <= ticks(plot.x); ++i) {
        const double value = plot.x.from + i * plot.x.tick;
        const double x = place(plot.x, value, left, right);
        svg += fmt::format("<path class=\"grid\" d=\"M{:.1f} {}V{}\"/>\n", x, top, bottom);
        svg += text(x, bottom + 16.0, "middle", fmt::format("{:.6g}", value));
    }
    for (int i = 0; i <= ticks(plot.y); ++i) {
        const double value = plot.y.from + i * plot.y.tick;
        const double y = place(plot.y, value, bottom, top);
        svg += fmt::format("<path class=\"grid\" d=\"M{} {:.1f}H{}\"/>\n", left, y, right);
        svg += text(left - 6.0, y + 4.0, "end", fmt::format("{:.6g}", value));
    }
    svg += text(0.5 * (left + right), bottom + 36.0, "middle", plot.x.label);
    svg += fmt::format("<text transform=\"translate(16 {:.1f}) rotate(-90)\" "
                       "text-anchor=\"middle\">{}</text>\n",
                       0.5 * (top + bottom),
                       plot.y.label);
    svg += text(left, top - 14.0, "start", plot.title);
    return svg;
}

} // namespace

std::string to_svg(const LinePlot& plot) {
    std::string svg = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 680 380\" role=\"img\" "
        "aria-label=\"{}\">\n<style>text {{font: 12px sans-serif; fill: #222}} "
        ".grid {{stroke: #ccc; fill: none}} .line {{stroke-width: 2; fill: none}}</style>\n"
        "<rect width=\"680\" height=\"380\" fill=\"#fff\"/>\n",
        plot.title);
    svg += frame(plot);
    for (std::size_t i = 0; i < plot.series.size(); ++i) {
        std::string path;
        for (const auto& [x, y] : plot.series[i].points)
            path += fmt::format("{}{:.1f} {:.1f}",
                                path.empty() ? "M" : "L",
                                place(plot.x, x, left, right),
                                place(plot.y, std::clamp(y, plot.y.from, plot.y.to), bottom, top));
        const double key = top + 10.0 + 20.0 * static_cast<double>(i);
        for (const std::string& drawn :
             {path, fmt::format("M{} {:.1f}H{}", right + 10.0, key, right + 40.0)})
            svg += fmt::format(
                "<path class=\"line\" stroke=\"{}\" stroke-dasharray=\"{}\" d=\"{}\"/>\n",
                colours.at(i),
                dashes.at(i),
                drawn);
        svg += text(right + 46.0, key + 4.0, "start", plot.series[i].name);
    }
    return svg + "</svg>\n";
}

void expect_drawn(const std::string& name, const LinePlot& plot) {
    const std::filesystem::path file =
        std::filesystem::path(TUMPLINE_SOURCE_DIR) / "docs" / "models" / name;
    const std::string drawn = to_svg(plot);
    if (std::getenv("TUMPLINE_REDRAW") != nullptr) {
        std::ofstream(file, std::ios::binary) << drawn;
        return;
    }
    std::ifstream in(file, std::ios::binary);
    const std::string kept{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    EXPECT_TRUE(kept == drawn) << file.filename().string()
                               << " shows other figures than the models give; run the tests with "
                                  "TUMPLINE_REDRAW=1 and review the drawing";
}

} // namespace tumpline::test

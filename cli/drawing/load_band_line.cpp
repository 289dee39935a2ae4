#include "cli/drawing/load_band_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace tumpline::cli {

namespace {

struct Segment {
    const DrawnPoint& a;
    const DrawnPoint& b;
};

double distance(const DrawnPoint& point, const Segment& segment) {
    const auto& [a, b] = segment;
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    const double squared = dx * dx + dy * dy;
    double share = 0.0;
    if (squared > 0.0)
        share = std::clamp(((point.x - a.x) * dx + (point.y - a.y) * dy) / squared, 0.0, 1.0);
    return std::hypot(point.x - a.x - share * dx, point.y - a.y - share * dy);
}

} // namespace

std::vector<DrawnPoint> simplified(const std::vector<DrawnPoint>& line, double tolerance) {
    if (line.size() < 3)
        return line;
    std::vector<bool> kept(line.size(), false);
    kept.front() = kept.back() = true;
    std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.size() - 1}};
    while (!open.empty()) {
        const auto [from, to] = open.back();
        open.pop_back();
        double furthest = tolerance;
        std::size_t at = from;
        for (std::size_t i = from + 1; i < to; ++i) {
            const double off = distance(line[i], {line[from], line[to]});
            if (off > furthest) {
                furthest = off;
                at = i;
            }
        }
        if (at == from)
            continue;
        kept[at] = true;
        open.emplace_back(from, at);
        open.emplace_back(at, to);
    }
    std::vector<DrawnPoint> thin;
    for (std::size_t i = 0; i < line.size(); ++i)
        if (kept[i])
            thin.push_back(line[i]);
    return thin;
}

std::string coordinate(double value) {
    const auto tenths = static_cast<long>(std::lround(value * 10.0));
    const long whole = std::labs(tenths) / 10;
    const long rest = std::labs(tenths) % 10;
    const char* sign = tenths < 0 ? "-" : "";
    return rest == 0 ? fmt::format("{}{}", sign, whole) : fmt::format("{}{}.{}", sign, whole, rest);
}

std::string path_data(const std::vector<DrawnPoint>& line) {
    std::string data;
    double x = 0.0;
    double y = 0.0;
    for (const DrawnPoint& point : line) {
        // Steps are taken from the rounded pen, so that rounding does not add up along the line.
        const double to_x = std::round(point.x * 10.0) / 10.0;
        const double to_y = std::round(point.y * 10.0) / 10.0;
        data += fmt::format(
            "{}{} {}", data.empty() ? "M" : "l", coordinate(to_x - x), coordinate(to_y - y));
        x = to_x;
        y = to_y;
    }
    return data;
}

double round_step(double least) {
    if (!(least > 0.0))
        return 1.0;
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= least * (1.0 - 1e-9))
            return factor * power;
    return 10.0 * power;
}

} // namespace tumpline::cli

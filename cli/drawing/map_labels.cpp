#include "cli/drawing/map_labels.h"

#include "cli/words/markup.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace tumpline::cli {

namespace {

/// Points of a line no further than `apart` pixels from each other.
std::vector<DrawnPoint> even_points(const std::vector<DrawnPoint>& line) {
    constexpr double apart = 3.0;
    std::vector<DrawnPoint> points;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const DrawnPoint& a = line[i];
        const DrawnPoint& b = line[i + 1];
        const int pieces = 1 + static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / apart);
        for (int piece = 0; piece < pieces; ++piece) {
            const double share = static_cast<double>(piece) / pieces;
            points.push_back({a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), a.along_m});
        }
    }
    return points;
}

} // namespace

Labels::Labels(const Frame& frame, const std::vector<DrawnPoint>& line)
    : width_(frame.width), height_(frame.height), line_(even_points(line)) {}

std::string Labels::beside(
    const DrawnPoint& point, const std::string& text, double size, const char* kind, double reach) {
    const double w = size * width_em(text) + 2.0;
    const double h = 1.2 * size;
    const double gap = 0.9 * size;
    const double aside = std::max(gap, reach + 0.1 * size);
    const double d = 0.7 * gap;
    const std::vector<Box> tries{{point.x + aside, point.y - h / 2, w, h},
                                 {point.x - aside - w, point.y - h / 2, w, h},
                                 {point.x + d, point.y - d - h, w, h},
                                 {point.x + d, point.y + d, w, h},
                                 {point.x - d - w, point.y - d - h, w, h},
                                 {point.x - d - w, point.y + d, w, h},
                                 {point.x - w / 2, point.y - gap - h, w, h},
                                 {point.x - w / 2, point.y + gap, w, h}};
    const Box* best = nullptr;
    double least_covered = 0.0;
    for (const Box& box : tries) {
        if (is_outside(box) || is_taken(box))
            continue;
        const double covered = covered_line(box);
        if (best == nullptr || covered < least_covered) {
            best = &box;
            least_covered = covered;
        }
    }
    if (best == nullptr)
        return {};
    take(*best);
    // Set from the side of the point, so that a width guessed too large leaves no gap there.
    const double middle = best->x + best->w / 2.0;
    const bool above = std::abs(middle - point.x) < 1.0;
    const bool left = !above && middle < point.x;
    return fmt::format(R"(<text class="{} {}" x="{}" y="{}" font-size="{}">{}</text>)",
                       kind,
                       above  ? "mid"
                       : left ? "end"
                              : "from",
                       coordinate(above  ? middle
                                  : left ? best->x + best->w
                                         : best->x),
                       coordinate(best->y + 0.92 * size),
                       coordinate(size),
                       escaped(text));
}

bool Labels::take_if_free(const Box& box) {
    if (is_taken(box))
        return false;
    take(box);
    return true;
}

std::string Labels::once_beside(
    const DrawnPoint& point, const std::string& text, double size, const char* kind, double reach) {
    const bool stands = std::ranges::any_of(named_, [&](const Named& other) {
        return text.starts_with(other.text) && // "Mill: rapid" after "Mill"
               std::hypot(other.at.x - point.x, other.at.y - point.y) < one_place * size;
    });
    if (stands)
        return {};
    std::string written = beside(point, text, size, kind, reach);
    if (!written.empty())
        named_.push_back({text, point});
    return written;
}

std::string Labels::upon(const Run& run, const std::string& text, double size, const char* kind) {
    const double turn = run.angle_deg * std::numbers::pi / 180.0;
    const double w = size * width_em(text) + 2.0;
    const double across = w * std::abs(std::cos(turn)) + size * std::abs(std::sin(turn));
    const double down = w * std::abs(std::sin(turn)) + size * std::abs(std::cos(turn));
    const Box box{run.middle.x - across / 2.0, run.middle.y - down / 2.0, across, down};
    if (is_outside(box) || is_taken(box) || covered_line(box) > 0.0)
        return {};
    take(box);
    return fmt::format(
        R"(<text class="{} mid" transform='translate({} {})rotate({:.0f})' dy=".34em" font-size="{}">{}</text>)",
        kind,
        coordinate(run.middle.x),
        coordinate(run.middle.y),
        run.angle_deg,
        coordinate(size),
        escaped(text));
}

/// How much of the route's line a box would hide, counted in points of the line.
double Labels::covered_line(const Box& box) const {
    constexpr double half_band = 6.0;
    return static_cast<double>(std::ranges::count_if(line_, [&](const DrawnPoint& point) {
        return point.x > box.x - half_band && point.x < box.x + box.w + half_band &&
               point.y > box.y - half_band && point.y < box.y + box.h + half_band;
    }));
}

bool Labels::is_taken(const Box& box) const {
    return std::ranges::any_of(taken_, [&](const Box& other) {
        return box.x < other.x + other.w && other.x < box.x + box.w && box.y < other.y + other.h &&
               other.y < box.y + box.h;
    });
}

bool Labels::is_outside(const Box& box) const {
    return box.x < 2.0 || box.y < 2.0 || box.x + box.w > width_ - 2.0 ||
           box.y + box.h > height_ - 2.0;
}

} // namespace tumpline::cli

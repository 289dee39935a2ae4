#include "cli/drawing/ground_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>

namespace tumpline::cli {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

/// A step between two points, which may cross the window although neither end lies in it.
bool may_cross(const std::array<DrawnPoint, 2>& step, const Window& window) {
    return std::max(step[0].x, step[1].x) >= window.left &&
           std::min(step[0].x, step[1].x) <= window.right &&
           std::max(step[0].y, step[1].y) >= window.top &&
           std::min(step[0].y, step[1].y) <= window.bottom;
}

/// One side of a window as a half plane: what lies on its inner side and how far.
struct Side {
    double nx, ny, offset;

    [[nodiscard]] double depth(const DrawnPoint& point) const {
        return nx * point.x + ny * point.y - offset;
    }
};

std::vector<DrawnPoint> cut_by(const std::vector<DrawnPoint>& ring, const Side& side) {
    std::vector<DrawnPoint> kept;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const DrawnPoint& a = ring[i];
        const DrawnPoint& b = ring[(i + 1) % ring.size()];
        const double at_a = side.depth(a);
        const double at_b = side.depth(b);
        if (at_a >= 0.0)
            kept.push_back(a);
        if ((at_a >= 0.0) != (at_b >= 0.0)) {
            const double share = at_a / (at_a - at_b);
            kept.push_back({std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share), 0.0});
        }
    }
    return kept;
}

/// Appends a whole number; a minus sign parts it from the one before.
void append(std::string& data, long number) {
    if (number >= 0 && !data.empty() && data.back() >= '0' && data.back() <= '9')
        data += ' ';
    fmt::format_to(std::back_inserter(data), "{}", number);
}

/// A line measured, so that a point can be found by its distance along.
struct Measured {
    const std::vector<DrawnPoint>& line;
    std::vector<double> at;

    explicit Measured(const std::vector<DrawnPoint>& given) : line(given) {
        double sum = 0.0;
        for (std::size_t i = 0; i < line.size(); ++i) {
            if (i > 0)
                sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
            at.push_back(sum);
        }
    }

    [[nodiscard]] DrawnPoint point(double distance) const {
        const auto next = std::upper_bound(at.begin() + 1, at.end() - 1, distance);
        const auto i = static_cast<std::size_t>(next - at.begin());
        const double length = at[i] - at[i - 1];
        const double share = length > 0.0 ? (distance - at[i - 1]) / length : 0.0;
        return {std::lerp(line[i - 1].x, line[i].x, share),
                std::lerp(line[i - 1].y, line[i].y, share),
                0.0};
    }
};

/// How far a stretch of a line leaves the straight between its ends.
struct Span {
    double from;
    double length;
};

double bow(const Measured& measured, const Span& span) {
    const auto [from, length] = span;
    const DrawnPoint a = measured.point(from);
    const DrawnPoint b = measured.point(from + length);
    const double chord = std::hypot(b.x - a.x, b.y - a.y);
    if (chord < 0.7 * length)
        return length;
    double most = 0.0;
    constexpr int samples = 6;
    for (int i = 1; i < samples; ++i) {
        const DrawnPoint p = measured.point(from + length * i / samples);
        most =
            std::max(most, std::abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord);
    }
    return most;
}

} // namespace

std::vector<std::vector<DrawnPoint>> inside(const std::vector<DrawnPoint>& line,
                                            const Window& window) {
    std::vector<std::vector<DrawnPoint>> runs;
    bool open = false;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        if (!may_cross({line[i], line[i + 1]}, window)) {
            open = false;
            continue;
        }
        if (!open)
            runs.push_back({line[i]});
        open = true;
        runs.back().push_back(line[i + 1]);
    }
    return runs;
}

std::vector<DrawnPoint> ring_inside(const std::vector<DrawnPoint>& ring, const Window& window) {
    std::vector<DrawnPoint> kept = ring;
    for (const Side& side : {Side{1.0, 0.0, window.left},
                             Side{-1.0, 0.0, -window.right},
                             Side{0.0, 1.0, window.top},
                             Side{0.0, -1.0, -window.bottom}})
        kept = cut_by(kept, side);
    return kept;
}

std::string fifths(const std::vector<DrawnPoint>& line, bool ring) {
    std::string data;
    long x = 0;
    long y = 0;
    bool started = false;
    for (const DrawnPoint& point : line) {
        const long to_x = std::lround(point.x * 5.0);
        const long to_y = std::lround(point.y * 5.0);
        if (started && to_x == x && to_y == y)
            continue;
        if (!started)
            data += 'M';
        else if (data.find('l') == std::string::npos)
            data += 'l'; // further pairs follow without a letter
        append(data, to_x - x);
        append(data, to_y - y);
        x = to_x;
        y = to_y;
        started = true;
    }
    if (data.find('l') == std::string::npos)
        return {};
    return ring ? data + "z" : data;
}

double drawn_length(const std::vector<DrawnPoint>& line) {
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
        sum += std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
    return sum;
}

std::vector<Run> straight_runs(const std::vector<DrawnPoint>& line, const RunWanted& wanted) {
    if (line.size() < 2)
        return {};
    const Measured measured(line);

    struct Candidate {
        double bow;
        Run run;
    };

    std::vector<Candidate> found;
    const double last = measured.at.back() - wanted.length;
    const int steps = static_cast<int>(last / 6.0);
    for (int i = 0; i <= steps && last > 0.0; ++i) {
        const double from = 6.0 * i;
        const double bows = bow(measured, {from, wanted.length});
        if (bows > wanted.most_bow)
            continue;
        DrawnPoint a = measured.point(from);
        DrawnPoint b = measured.point(from + wanted.length);
        if (wanted.against || b.x < a.x)
            std::swap(a, b);
        if (b.x <= a.x)
            continue; // it would hang upside down
        found.push_back({bows,
                         {measured.point(from + wanted.length / 2.0),
                          std::atan2(b.y - a.y, b.x - a.x) / degree}});
    }
    std::ranges::stable_sort(found, {}, &Candidate::bow);
    std::vector<Run> runs;
    runs.reserve(found.size());
    for (const Candidate& candidate : found)
        runs.push_back(candidate.run);
    return runs;
}

std::vector<Run> along(const std::vector<DrawnPoint>& line, double apart) {
    if (line.size() < 2)
        return {};
    const Measured measured(line);
    std::vector<Run> points;
    const int count = static_cast<int>(measured.at.back() / apart);
    for (int i = 0; i < count; ++i) {
        const double at = (i + 0.5) * apart;
        const DrawnPoint a = measured.point(std::max(0.0, at - 2.0));
        const DrawnPoint b = measured.point(std::min(measured.at.back(), at + 2.0));
        points.push_back({measured.point(at), std::atan2(b.y - a.y, b.x - a.x) / degree});
    }
    return points;
}

} // namespace tumpline::cli

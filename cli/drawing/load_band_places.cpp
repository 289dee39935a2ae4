#include "cli/drawing/load_band_places.h"

#include "cli/words/markup.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

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

/// Keeps labels off each other: boxes already taken.
class Labels {
  public:
    Labels(const Frame& frame, const std::vector<DrawnPoint>& line)
        : width_(frame.width), height_(frame.height), line_(even_points(line)) {}

    struct Box {
        double x, y, w, h;
    };

    void take(const Box& box) { taken_.push_back(box); }

    /// Places text near a point, on the free one of eight sides that hides least of the line; if
    /// none is free nothing is written.
    std::string
    beside(const DrawnPoint& point, const std::string& text, double size, const char* kind) {
        const double w = size * width_em(text) + 2.0;
        const double h = 1.2 * size;
        const double gap = 0.9 * size;
        const double d = 0.7 * gap;
        const std::vector<Box> tries{{point.x + gap, point.y - h / 2, w, h},
                                     {point.x - gap - w, point.y - h / 2, w, h},
                                     {point.x + d, point.y - d - h, w, h},
                                     {point.x + d, point.y + d, w, h},
                                     {point.x - d - w, point.y - d - h, w, h},
                                     {point.x - d - w, point.y + d, w, h},
                                     {point.x - w / 2, point.y - gap - h, w, h},
                                     {point.x - w / 2, point.y + gap, w, h}};
        const Box* best = nullptr;
        double least_covered = 0.0;
        for (const Box& box : tries) {
            if (box.x < 2.0 || box.y < 2.0 || box.x + box.w > width_ - 2.0 ||
                box.y + box.h > height_ - 2.0 || is_taken(box))
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

  private:
    /// How much of the route's line a box would hide, counted in points of the line.
    [[nodiscard]] double covered_line(const Box& box) const {
        constexpr double half_band = 6.0;
        return static_cast<double>(
            std::count_if(line_.begin(), line_.end(), [&](const DrawnPoint& point) {
                return point.x > box.x - half_band && point.x < box.x + box.w + half_band &&
                       point.y > box.y - half_band && point.y < box.y + box.h + half_band;
            }));
    }

    [[nodiscard]] bool is_taken(const Box& box) const {
        return std::any_of(taken_.begin(), taken_.end(), [&](const Box& other) {
            return box.x < other.x + other.w && other.x < box.x + box.w &&
                   box.y < other.y + other.h && other.y < box.y + box.h;
        });
    }

    double width_;
    double height_;
    std::vector<DrawnPoint> line_;
    std::vector<Box> taken_;
};

std::string mark_markup(const Mark& mark, double text) {
    const double r = 0.42 * text;
    const std::string x = coordinate(mark.at.x);
    const std::string y = coordinate(mark.at.y);
    if (mark.night > 0)
        return fmt::format(
            R"(<circle class="night" cx="{}" cy="{}" r="{}"/><text class="number" x="{}" y="{}" font-size="{}">{}</text>)",
            x,
            y,
            coordinate(0.78 * text),
            x,
            coordinate(mark.at.y + 0.33 * text),
            coordinate(0.92 * text),
            mark.night);
    switch (mark.kind) {
    case planner::PlaceKind::hazard:
    case planner::PlaceKind::ford:
        return fmt::format(R"(<path class="hazard" d="M{} {}l{} {}h{}z"/>)",
                           x,
                           coordinate(mark.at.y - 1.6 * r),
                           coordinate(1.5 * r),
                           coordinate(2.6 * r),
                           coordinate(-3.0 * r));
    case planner::PlaceKind::water:
        return fmt::format(
            R"(<path class="spring" d="M{0} {1}c{2} {3} {2} {4} 0 {4}s{5} {6} 0 -{4}"/>)",
            x,
            coordinate(mark.at.y - 1.6 * r),
            coordinate(1.6 * r),
            coordinate(1.6 * r),
            coordinate(2.8 * r),
            coordinate(-1.6 * r),
            coordinate(-1.2 * r));
    case planner::PlaceKind::exit:
    case planner::PlaceKind::start:
    case planner::PlaceKind::finish:
        return fmt::format(R"(<rect class="road" x="{}" y="{}" width="{}" height="{}"/>)",
                           coordinate(mark.at.x - 1.2 * r),
                           coordinate(mark.at.y - 1.2 * r),
                           coordinate(2.4 * r),
                           coordinate(2.4 * r));
    case planner::PlaceKind::resupply:
    case planner::PlaceKind::cache:
        return fmt::format(R"(<path class="store" d="M{} {}l{} {}l{} {}l{} {}z"/>)",
                           x,
                           coordinate(mark.at.y - 1.6 * r),
                           coordinate(1.6 * r),
                           coordinate(1.6 * r),
                           coordinate(-1.6 * r),
                           coordinate(1.6 * r),
                           coordinate(-1.6 * r),
                           coordinate(-1.6 * r));
    case planner::PlaceKind::put_in:
    case planner::PlaceKind::take_out:
    case planner::PlaceKind::camp:
    case planner::PlaceKind::landing:
        break;
    }
    return fmt::format(R"(<circle class="place" cx="{}" cy="{}" r="{}"/>)", x, y, coordinate(r));
}

} // namespace

std::vector<Mark> marks(const planner::Plan& plan,
                        const planner::Route& route,
                        const std::function<DrawnPoint(double)>& place_at) {
    std::vector<Mark> all;
    for (std::size_t i = 0; i + 1 < plan.days.size(); ++i) {
        const planner::PlanDay& day = plan.days[i];
        const bool stays = !all.empty() && all.back().at.along_m == day.to_m;
        if (!stays)
            all.push_back({place_at(day.to_m), day.to, planner::PlaceKind::camp, day.day});
    }
    const std::size_t nights = all.size();
    for (const planner::RoutePlace& place : route.places) {
        const bool slept_at = std::any_of(
            all.begin(), all.begin() + static_cast<std::ptrdiff_t>(nights), [&](const Mark& mark) {
                return std::abs(mark.at.along_m - place.along_m) < 1.0;
            });
        if (!slept_at)
            all.push_back({place_at(place.along_m), place.name, place.kind});
    }
    return all;
}

std::string places_markup(std::vector<Mark> all,
                          const std::vector<DrawnPoint>& line,
                          const Frame& frame,
                          const Drawing& drawing) {
    Labels labels(frame, line);
    for (const Mark& mark : all) {
        const double r = mark.night > 0 ? 0.8 * drawing.text : 0.5 * drawing.text;
        labels.take({mark.at.x - r, mark.at.y - r, 2.0 * r, 2.0 * r});
    }
    // Nights and the ends are named first, while there is room.
    std::stable_sort(all.begin(), all.end(), [](const Mark& a, const Mark& b) {
        const auto rank = [](const Mark& mark) {
            if (mark.night > 0)
                return 0;
            const bool end =
                mark.kind == planner::PlaceKind::start || mark.kind == planner::PlaceKind::finish;
            return end ? 1 : 2;
        };
        return rank(a) < rank(b);
    });
    std::string symbols;
    std::string nights; // above what lies at the same place
    std::string names;
    for (const Mark& mark : all) {
        (mark.night > 0 ? nights : symbols) += mark_markup(mark, drawing.text);
        if (drawing.names && !mark.name.empty())
            names += labels.beside(mark.at,
                                   fitted(one_line(mark.name), 24),
                                   drawing.text,
                                   mark.night > 0 ? "name slept" : "name");
    }
    return fmt::format(
        R"(<g class="places">{}</g><g class="names">{}</g>)", symbols + nights, names);
}

std::string place_symbol(planner::PlaceKind kind) {
    return mark_markup({{10.0, 10.0, 0.0}, {}, kind, 0}, 13.0);
}

} // namespace tumpline::cli

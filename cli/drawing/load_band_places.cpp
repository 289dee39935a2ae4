#include "cli/drawing/load_band_places.h"

#include "cli/words/markup.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace tumpline::cli {

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

std::string places_markup(std::vector<Mark> all, Labels& labels, const Drawing& drawing) {
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

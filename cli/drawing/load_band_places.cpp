#include "cli/drawing/load_band_places.h"

#include "cli/words/markup.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace tumpline::cli {

namespace {

/// "1", "1, 4", "1 … 9" where there are too many to read.
std::string nights_words(const Mark& mark) {
    constexpr std::size_t most_told = 2; // besides the first
    std::string words = std::to_string(mark.night);
    if (mark.more.size() > most_told)
        return fmt::format("{} … {}", words, mark.more.back());
    for (const int night : mark.more)
        words += fmt::format(", {}", night);
    return words;
}

/// From the middle of a night's disc to its left and right end.
double half_wide(const Mark& mark, double text) {
    return std::max(0.78 * text, (width_em(nights_words(mark)) / 2.0 + 0.45) * text);
}

std::string night_markup(const Mark& mark, double text) {
    const double r = 0.78 * text;
    const double half = mark.more.empty() ? r : half_wide(mark, text);
    return fmt::format(
        R"(<rect class="night" x="{}" y="{}" width="{}" height="{}" rx="{}"/><text class="number" x="{}" y="{}" font-size="{}">{}</text>)",
        coordinate(mark.at.x - half),
        coordinate(mark.at.y - r),
        coordinate(2.0 * half),
        coordinate(2.0 * r),
        coordinate(r),
        coordinate(mark.at.x),
        coordinate(mark.at.y + 0.35 * text),
        coordinate(text),
        nights_words(mark));
}

/// Whether the one mark would hide the other.
bool hides(const Mark& one, const Mark& other, double text) {
    const double apart = std::hypot(one.at.x - other.at.x, one.at.y - other.at.y);
    if (apart < 0.5 * text)
        return one.night > 0 ? other.night > 0 || other.name == one.name
                             : other.night == 0 && one.kind == other.kind && one.name == other.name;
    return one.night > 0 && one.name == other.name && apart < one_place * text &&
           (other.night > 0 || apart < text);
}

} // namespace

std::string mark_markup(const Mark& mark, double text) {
    const double r = 0.42 * text;
    const std::string x = coordinate(mark.at.x);
    const std::string y = coordinate(mark.at.y);
    if (mark.night > 0)
        return night_markup(mark, text);
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

std::vector<Mark> one_per_place(std::vector<Mark> all, double text) {
    std::vector<Mark> kept;
    for (Mark& mark : all) { // nights stand first
        const auto over =
            std::ranges::find_if(kept, [&](const Mark& one) { return hides(one, mark, text); });
        if (over == kept.end())
            kept.push_back(std::move(mark));
        else if (mark.night > 0)
            over->more.push_back(mark.night);
    }
    return kept;
}

void take_symbols(const std::vector<Mark>& all, Labels& labels, double text) {
    for (const Mark& mark : all) {
        const double r = mark.night > 0 ? 0.8 * text : 0.5 * text;
        const double half = mark.more.empty() ? r : half_wide(mark, text);
        labels.take({mark.at.x - half, mark.at.y - r, 2.0 * half, 2.0 * r});
    }
}

std::string places_markup(std::vector<Mark> all, Labels& labels, const Drawing& drawing) {
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
            names += labels.once_beside(mark.at,
                                        fitted(one_line(mark.name), 24),
                                        drawing.text,
                                        mark.night > 0 ? "name slept" : "name",
                                        mark.more.empty() ? 0.0 : half_wide(mark, drawing.text));
    }
    return fmt::format(
        R"(<g class="places">{}</g><g class="names">{}</g>)", symbols + nights, names);
}

std::string place_symbol(planner::PlaceKind kind) {
    return mark_markup({{10.0, 10.0, 0.0}, {}, kind, 0}, 13.0);
}

} // namespace tumpline::cli

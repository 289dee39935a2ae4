#include "cli/drawing/load_band_map.h"

#include "cli/drawing/load_band_line.h"
#include "cli/words/markup.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;

constexpr double width_quantum = 0.25; ///< changes of width that the eye takes as smooth
constexpr double thinnest = 1.2;       ///< an empty-handed stretch is still a line

double widest(const Drawing& drawing) {
    return drawing.width >= 500.0 ? 15.0 : 10.0;
}

/// Pixels of width per kilogram: the heaviest place is `widest`.
double width_per_kg(const std::vector<BandLeg>& band, const Drawing& drawing) {
    const double heaviest = heaviest_kg(band);
    return heaviest > 0.0 ? widest(drawing) / heaviest : 0.0;
}

DrawnPoint between(const DrawnPoint& a, const DrawnPoint& b, double along_m) {
    const double length_m = b.along_m - a.along_m;
    const double share = length_m > 0.0 ? (along_m - a.along_m) / length_m : 0.0;
    return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), along_m};
}

/// The part of a line, given by distances along the route.
std::vector<DrawnPoint> cut(const std::vector<DrawnPoint>& line, const Stretch& stretch) {
    std::vector<DrawnPoint> part;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const DrawnPoint& a = line[i];
        const DrawnPoint& b = line[i + 1];
        if (b.along_m < stretch.from_m || a.along_m > stretch.to_m)
            continue;
        if (part.empty())
            part.push_back(between(a, b, std::max(a.along_m, stretch.from_m)));
        part.push_back(between(a, b, std::min(b.along_m, stretch.to_m)));
    }
    return part;
}

double quantised(double width) {
    return std::max(thinnest, std::round(width / width_quantum) * width_quantum);
}

/// One run of the band with the same width.
struct BandRun {
    double width;
    std::vector<DrawnPoint> line;
};

/// The band of one leg as runs of equal width, each a quantum from the next.
std::vector<BandRun>
runs(const std::vector<DrawnPoint>& line, const BandLeg& leg, double pixels_per_kg) {
    std::vector<BandRun> all;
    for (std::size_t i = 0; i + 1 < leg.points.size(); ++i) {
        const BandPoint& from = leg.points[i];
        const BandPoint& to = leg.points[i + 1];
        const double from_width = from.sum_kg() * pixels_per_kg;
        const double to_width = to.sum_kg() * pixels_per_kg;
        if (!(to.along_m > from.along_m))
            continue;
        const int pieces =
            1 + static_cast<int>(std::min(400.0, std::abs(to_width - from_width) / width_quantum));
        for (int piece = 0; piece < pieces; ++piece) {
            const auto along_m = [&](double share) {
                return from.along_m + share * (to.along_m - from.along_m);
            };
            const double width =
                quantised(from_width + (piece + 0.5) / pieces * (to_width - from_width));
            std::vector<DrawnPoint> part = cut(
                line, {along_m(piece / double(pieces)), along_m((piece + 1.0) / double(pieces))});
            if (part.size() < 2)
                continue;
            if (!all.empty() && all.back().width == width)
                all.back().line.insert(all.back().line.end(), part.begin() + 1, part.end());
            else
                all.push_back({width, std::move(part)});
        }
    }
    return all;
}

} // namespace

std::string band_markup(const Plan& plan,
                        const planner::Route& route,
                        const std::vector<DrawnPoint>& line,
                        const Drawing& drawing) {
    const std::vector<BandLeg> band = load_band(plan);
    const double pixels_per_kg = width_per_kg(band, drawing);
    std::string markup;
    for (const BandLeg& leg : band) {
        if (!route.legs[plan.legs[leg.plan_leg.index()].leg.index()].drawn())
            continue;
        const std::vector<BandRun> pieces = runs(line, leg, pixels_per_kg);
        if (pieces.empty())
            continue;
        const planner::PlanLeg& reported = plan.legs[leg.plan_leg.index()];
        std::string casing;
        std::string colour;
        std::vector<DrawnPoint> middle;
        for (const BandRun& run : pieces) {
            const std::string data = path_data(simplified(run.line, resolved));
            casing += fmt::format(
                R"(<path d="{}" stroke-width="{}"/>)", data, coordinate(run.width + 1.6));
            colour += fmt::format(R"(<path d="{}" stroke-width="{:.2f}"/>)", data, run.width);
            middle.insert(middle.end(), run.line.begin(), run.line.end());
        }
        markup += fmt::format(
            R"(<g class="band {}" data-leg="{}"><title>{}: {}</title><g class="casing">{}</g><g class="fill">{}</g><path class="sign" d="{}" stroke-width="{}"/></g>)",
            word(leg.travel),
            leg.plan_leg,
            escaped(reported.name),
            travel_phrase(leg.travel),
            casing,
            colour,
            path_data(simplified(middle, resolved)),
            leg.travel == planner::Travel::portage ? coordinate(pieces.front().width) : "1.6");
    }
    return markup;
}

std::vector<BandKey> band_key(const Plan& plan, const Drawing& drawing, const Figures& shown) {
    const std::vector<BandLeg> band = load_band(plan);
    const double pixels_per_kg = width_per_kg(band, drawing);
    if (pixels_per_kg <= 0.0)
        return {};
    const double unit_kg =
        shown.units() == planner::UnitSystem::metric ? 1.0 : planner::kg_per_pound;
    const double top = round_step(0.45 * heaviest_kg(band) / unit_kg);
    std::vector<BandKey> key;
    for (const double step : {top, top / 2.0, top / 4.0})
        key.push_back({shown.units() == planner::UnitSystem::metric ? fmt::format("{:g} kg", step)
                                                                    : fmt::format("{:g} lb", step),
                       step * unit_kg * pixels_per_kg});
    return key;
}

} // namespace tumpline::cli

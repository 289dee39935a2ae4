#include "cli/book/book_maps.h"

#include "cli/words/base64.h"
#include "geo/ground/contours.h"
#include "geo/ground/relief.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tumpline::cli {

namespace {

/// What a book's maps do without, in the order in which it is given up.
struct Step {
    std::optional<double> corridor_m;
    int coarser = 0; ///< steps of the contours' interval
    double tolerance = 0.25;
    bool day_contours = true;
    bool day_maps = true;
    bool contours = true;
    const char* said;
};

constexpr std::array steps{
    Step{.corridor_m = {}, .said = ""},
    Step{.corridor_m = 4000.0, .said = "contours of the days only within 4 km of the route"},
    Step{.corridor_m = 3000.0, .said = "contours of the days only within 3 km of the route"},
    Step{.corridor_m = 2000.0, .said = "contours of the days only within 2 km of the route"},
    Step{.corridor_m = 2000.0,
         .coarser = 1,
         .said = "contours of the days only within 2 km of the route, and half as many"},
    Step{.corridor_m = 2000.0,
         .coarser = 1,
         .tolerance = 0.35,
         .said = "contours of the days only within 2 km of the route, half as many and simplified"},
    Step{.corridor_m = 2000.0,
         .coarser = 1,
         .tolerance = 0.35,
         .day_contours = false,
         .said = "no contours on the days' maps"},
    Step{.corridor_m = 2000.0,
         .coarser = 1,
         .tolerance = 0.35,
         .day_maps = false,
         .said = "no maps of the days"},
    Step{.corridor_m = 2000.0,
         .coarser = 1,
         .tolerance = 0.35,
         .day_maps = false,
         .contours = false,
         .said = "no maps of the days and no contours"}};

constexpr double relief_pixels = 500.0;    ///< of the picture's width
constexpr double most_cells = 1'500'000.0; ///< of all days together, for the time that it takes

double area(const Window& window) {
    return (window.right - window.left) * (window.bottom - window.top);
}

} // namespace

BookMaps::BookMaps(const planner::Plan& plan,
                   const planner::Route& route,
                   geo::Elevation* elevation,
                   planner::UnitSystem units)
    : whole_(plan, route), heights_{}, units_(units) {
    const auto drawn_on = [&](double from_m, double to_m) {
        return std::ranges::any_of(route.legs, [&](const planner::RouteLeg& leg) {
            return leg.drawn() && leg.from_m < to_m && leg.to_m > from_m;
        });
    };
    if ((elevation == nullptr && route.land == nullptr) || !drawn_on(0.0, route.length_m))
        return;
    for (const planner::PlanDay& day : plan.days)
        if (!day.rest_day && drawn_on(day.from_m, day.to_m))
            days_.push_back({day.day, RouteMap(plan, route, day), {}});
    if (elevation != nullptr) {
        sample(*elevation);
        if (plan.trip.map.relief.value_or(true))
            shade();
    }
    if (route.land != nullptr)
        for (const geo::MapLayers::Source& source : route.land->sources) {
            std::string credit = source.credit.empty()
                                     ? fmt::format("{} (whose data is not said)", source.file)
                                     : source.credit;
            if (std::ranges::find(credits_, credit) == credits_.end())
                credits_.push_back(std::move(credit));
        }
    lay();
}

const RouteMap* BookMaps::of_day(int day) const {
    if (!steps.at(step_).day_maps)
        return nullptr;
    const auto found = std::ranges::find(days_, day, &Day::day);
    return found == days_.end() ? nullptr : &found->map;
}

void BookMaps::sample(geo::Elevation& elevation) {
    const Window window = whole_.ground_view().window;
    heights_ = whole_.heights(elevation, (window.right - window.left) / relief_pixels);
    steep_ = geo::steep_slope(heights_);
    double pixels = 0.0;
    for (const Day& day : days_)
        pixels += area(day.map.ground_view().window);
    const double cell_pixels = std::max(1.0, std::sqrt(pixels / most_cells));
    for (Day& day : days_)
        day.heights = day.map.heights(elevation, cell_pixels);
}

void BookMaps::shade() {
    const std::string png = geo::relief_png(heights_);
    if (png.empty())
        return;
    const GroundView view = whole_.ground_view();
    const geo::GridFrame& frame = heights_.frame;
    const double pixels = frame.cell_m * view.pixels_per_m;
    relief_ = fmt::format(
        R"(<image id="relief" x="{:.2f}" y="{:.2f}" width="{:.2f}" height="{:.2f}" preserveAspectRatio="none" href="data:image/png;base64,{}"/>)",
        view.window.left,
        view.window.top,
        frame.columns * pixels,
        frame.rows * pixels,
        base64(png));
    whole_.lay_relief(view);
    for (Day& day : days_)
        day.map.lay_relief(view);
}

double BookMaps::interval_m(double denominator, int coarser) const {
    const std::span<const double> all = contour_steps_m(units_);
    const double least_m = geo::contour_interval_m({steep_, denominator}, all);
    const auto at = std::ranges::find(all, least_m) - all.begin();
    const auto last = static_cast<std::ptrdiff_t>(all.size()) - 1;
    return all[static_cast<std::size_t>(std::min<std::ptrdiff_t>(at + coarser, last))];
}

void BookMaps::lay() {
    const Step& step = steps.at(step_);
    const auto known = [](const geo::HeightGrid& grid) {
        return grid.heights_m.empty() ? nullptr : &grid;
    };
    GroundDetail detail{.tolerance = step.tolerance, .units = units_};
    if (step.contours)
        detail.interval_m = interval_m(whole_.denominator(), step.coarser);
    whole_.lay_ground(known(heights_), detail);
    double smallest_scale = 0.0; // one interval for all days: readers count lines
    for (const Day& day : days_)
        smallest_scale = std::max(smallest_scale, day.map.denominator());
    detail.interval_m =
        step.day_contours && step.day_maps ? interval_m(smallest_scale, step.coarser) : 0.0;
    detail.corridor_m = step.corridor_m;
    if (step.day_maps)
        for (Day& day : days_)
            day.map.lay_ground(known(day.heights), detail);
}

std::string BookMaps::defs() const {
    std::string markup = relief_ + whole_.ground_markup();
    if (steps.at(step_).day_maps)
        for (const Day& day : days_)
            markup += day.map.ground_markup();
    return markup;
}

bool BookMaps::give_up() {
    if (step_ + 1 >= steps.size() || (days_.empty() && heights_.heights_m.empty()))
        return false;
    ++step_;
    lay();
    return true;
}

std::string BookMaps::given_up() const {
    const std::string said = steps.at(step_).said;
    return said.empty() ? said : "So that the book stays small: " + said + ".";
}

} // namespace tumpline::cli

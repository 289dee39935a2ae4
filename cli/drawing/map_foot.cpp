#include "cli/drawing/map_foot.h"

#include "cli/drawing/load_band_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::cli {

std::string map_foot(const geo::MapProjection& projection,
                     const Frame& sheet,
                     const Drawing& drawing,
                     const Figures& shown) {
    const bool metric = shown.units() == planner::UnitSystem::metric;
    const double unit_m = metric ? 1000.0 : planner::m_per_mile;
    const double step = round_step(0.18 * sheet.width / sheet.pixels_per_m / unit_m);
    const double half = step * unit_m * sheet.pixels_per_m / 2.0;
    const double y = sheet.height + 1.3 * drawing.text;
    const std::string name = metric ? (step >= 1.0 ? fmt::format("{:.0f} km", step)
                                                   : fmt::format("{:.0f} m", step * 1000.0))
                                    : fmt::format("{:g} mi", step);
    const bool polar = std::abs(projection.centre().lat_deg) > 89.0;
    std::string north;
    if (!polar)
        north = fmt::format(
            R"(<g class="north" transform='translate({},{})'><path d="M0 -{}l{} {}l-{} -{}l-{} {}z"/><text x="0" y="{}" font-size="{}">N</text></g>)",
            coordinate(sheet.width - 1.2 * drawing.text),
            coordinate(y),
            coordinate(0.9 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(1.2 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(0.35 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(0.35 * drawing.text),
            coordinate(1.3 * drawing.text),
            coordinate(drawing.text));
    return fmt::format(
        R"(<g class="scale" transform='translate(1,{})'><path class="bar" d="M0 0h{}v5h-{}z"/><path class="bar hollow" d="M{} 0h{}v5h-{}z"/><text x="{}" y="7" font-size="{}">{}</text></g>{})",
        coordinate(y),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(2.0 * half + 8.0),
        coordinate(drawing.text),
        name,
        north);
}

std::string grouped(double number) {
    std::string digits = fmt::format("{:.0f}", number);
    for (std::size_t at = digits.size(); at > 3; at -= 3)
        digits.insert(at - 3, "\u00A0");
    return digits;
}

std::string kilometre_marks(const std::vector<DrawnPoint>& line,
                            const Stretch& stretch,
                            Labels& labels,
                            const Drawing& drawing,
                            const Figures& shown) {
    const bool metric = shown.units() == planner::UnitSystem::metric;
    const double unit_m = metric ? 1000.0 : planner::m_per_mile;
    double pixels = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
        pixels += std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
    const double length = (stretch.to_m - stretch.from_m) / unit_m;
    if (!(length > 0.0) || !(pixels > 0.0))
        return {};
    const double step = std::max(1.0, round_step(36.0 * length / pixels));
    std::string markup;
    for (auto i = static_cast<long>(std::floor(stretch.from_m / unit_m / step)) + 1;
         static_cast<double>(i) * step * unit_m < stretch.to_m;
         ++i) {
        const double along_m = static_cast<double>(i) * step * unit_m;
        const auto next = std::ranges::find_if(
            line, [&](const DrawnPoint& point) { return point.along_m >= along_m; });
        if (next == line.begin() || next == line.end())
            continue;
        const DrawnPoint& a = *(next - 1);
        const DrawnPoint& b = *next;
        const double share =
            b.along_m > a.along_m ? (along_m - a.along_m) / (b.along_m - a.along_m) : 0.0;
        const DrawnPoint at{std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share), along_m};
        markup += fmt::format(
            R"(<circle class="km" cx="{}" cy="{}" r="1.8"/>)", coordinate(at.x), coordinate(at.y));
        markup += labels.beside(
            at, fmt::format("{:.0f}", static_cast<double>(i) * step), drawing.text, "km");
    }
    return R"(<g class="names kilometres">)" + markup + "</g>";
}

} // namespace tumpline::cli

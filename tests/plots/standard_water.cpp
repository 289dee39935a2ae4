#include "tests/plots/standard_water.h"

#include "planner/models/paddling.h"

#include <fmt/format.h>

#include <array>
#include <iterator>
#include <string>
#include <string_view>

namespace tumpline::plots {

namespace {

using namespace planner;

constexpr double lake_m = 10'000.0;
constexpr double wind_mps = 5.0;

struct Craft {
    std::string_view name;
    HullKind kind;
};

constexpr std::array crafts = {Craft{"packraft", HullKind::packraft},
                               Craft{"inflatable", HullKind::inflatable},
                               Craft{"solo canoe", HullKind::solo_canoe},
                               Craft{"tandem canoe", HullKind::tandem_canoe},
                               Craft{"kayak", HullKind::kayak}};

std::string hours(double speed_mps) {
    return speed_mps > 0.0 ? fmt::format("{:.2f} h", lake_m / speed_mps / 3600.0) : "no way";
}

} // namespace

std::string lake_table() {
    std::string table = "| craft | `constant` | `power-balance`, calm | wind from ahead | from the "
                        "side | from astern |\n|---|---|---|---|---|---|\n";
    for (const Craft& craft : crafts) {
        const PaddledCourse course{.calm_speed_mps = default_calm_speed_mps(craft.kind),
                                   .bearing_deg = 0.0};
        const auto under = [&](double speed_mps, double from_deg) {
            return hours(under_wind(craft.kind, course, {speed_mps, from_deg}).made_good_mps);
        };
        fmt::format_to(std::back_inserter(table),
                       "| {} | {} | {} | {} | {} | {} |\n",
                       craft.name,
                       hours(course.calm_speed_mps),
                       under(0.0, 0.0),
                       under(wind_mps, 0.0),
                       under(wind_mps, 90.0),
                       under(wind_mps, 180.0));
    }
    return table;
}

} // namespace tumpline::plots

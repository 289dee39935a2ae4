#include "planner/trip/laid_over.h"

namespace tumpline::planner {

Weather laid_over(Weather under, const Weather& over) {
    const auto lay = [](auto& below, const auto& above) {
        if (above)
            below = above;
    };
    lay(under.high_c, over.high_c);
    lay(under.low_c, over.low_c);
    lay(under.wind_mps, over.wind_mps);
    // Gusts belong to the wind that they were given with.
    if (over.wind_mps && !over.gusts_mps && under.gusts_mps && *under.gusts_mps < *over.wind_mps)
        under.gusts_mps = {};
    lay(under.gusts_mps, over.gusts_mps);
    lay(under.wind_from_deg, over.wind_from_deg);
    lay(under.rain, over.rain);
    lay(under.humidity, over.humidity);
    lay(under.water_c, over.water_c);
    lay(under.snow, over.snow);
    lay(under.snow_depth_m, over.snow_depth_m);
    return under;
}

} // namespace tumpline::planner

#include "planner/models/age.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>

namespace tumpline::planner {

namespace {

constexpr double adult_years = 18.0;

/// One row of the table of comfortable speeds.
struct Gait {
    double from_years;
    double men_mps;
    double women_mps;
};

constexpr std::array<Gait, 7> gaits{{{20.0, 1.36, 1.34},
                                     {30.0, 1.43, 1.34},
                                     {40.0, 1.43, 1.39},
                                     {50.0, 1.43, 1.31},
                                     {60.0, 1.34, 1.24},
                                     {70.0, 1.26, 1.13},
                                     {80.0, 0.97, 0.94}}};

} // namespace

bool is_child(const Body& body) {
    return body.age_years < adult_years;
}

double child_day_j(const Body& body, ChildDay day) {
    constexpr double heaviest_girl_kg = 65.0;
    const double W = body.male ? body.mass_kg : std::min(body.mass_kg, heaviest_girl_kg);
    const double moderate_kcal =
        body.male ? 310.2 + 63.3 * W - 0.263 * W * W : 263.4 + 65.3 * W - 0.454 * W * W;
    double factor = 1.0;
    constexpr double school_years = 6.0;
    if (body.age_years >= school_years && day != ChildDay::moderate)
        factor = day == ChildDay::light ? 0.85 : 1.15;
    return factor * moderate_kcal * j_per_kcal;
}

std::optional<double> comfortable_gait_mps(double age_years, bool male) {
    const auto* const after = std::find_if(
        gaits.begin(), gaits.end(), [&](const Gait& row) { return row.from_years > age_years; });
    if (after == gaits.begin())
        return std::nullopt;
    const Gait& row = *(after - 1);
    return male ? row.men_mps : row.women_mps;
}

double gait_ratio(double age_years) {
    constexpr double old_years = 60.0;
    if (age_years < old_years)
        return 1.0;
    // The mean of both sexes over that of their thirties, forties and fifties.
    double middle_mps = 0.0;
    for (const double decade : {30.0, 40.0, 50.0})
        for (const bool male : {true, false})
            middle_mps += *comfortable_gait_mps(decade, male) / 6.0;
    const double here_mps =
        0.5 * (*comfortable_gait_mps(age_years, true) + *comfortable_gait_mps(age_years, false));
    return here_mps / middle_mps;
}

} // namespace tumpline::planner

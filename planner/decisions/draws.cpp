#include "planner/decisions/draws.h"

#include "planner/decisions/statistics.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace tumpline::planner {

namespace {

/// A polynomial, lowest power first.
template <std::size_t N> double polynomial(const std::array<double, N>& coefficients, double x) {
    double sum = 0.0;
    for (std::size_t k = N; k-- > 0;)
        sum = sum * x + coefficients[k];
    return sum;
}

// The coefficients of [Wichura1988], PPND16, as printed: numerators a, c, e, denominators b, d, f.
constexpr std::array a{3.3871328727963666080e0,
                       1.3314166789178437745e2,
                       1.9715909503065514427e3,
                       1.3731693765509461125e4,
                       4.5921953931549871457e4,
                       6.7265770927008700853e4,
                       3.3430575583588128105e4,
                       2.5090809287301226727e3};
constexpr std::array b{1.0,
                       4.2313330701600911252e1,
                       6.8718700749205790830e2,
                       5.3941960214247511077e3,
                       2.1213794301586595867e4,
                       3.9307895800092710610e4,
                       2.8729085735721942674e4,
                       5.2264952788528545610e3};
constexpr std::array c{1.42343711074968357734e0,
                       4.63033784615654529590e0,
                       5.76949722146069140550e0,
                       3.64784832476320460504e0,
                       1.27045825245236838258e0,
                       2.41780725177450611770e-1,
                       2.27238449892691845833e-2,
                       7.74545014278341407640e-4};
constexpr std::array d{1.0,
                       2.05319162663775882187e0,
                       1.67638483018380384940e0,
                       6.89767334985100004550e-1,
                       1.48103976427480074590e-1,
                       1.51986665636164571966e-2,
                       5.47593808499534494600e-4,
                       1.05075007164441684324e-9};
constexpr std::array e{6.65790464350110377720e0,
                       5.46378491116411436990e0,
                       1.78482653991729133580e0,
                       2.96560571828504891230e-1,
                       2.65321895265761230930e-2,
                       1.24266094738807843860e-3,
                       2.71155556874348757815e-5,
                       2.01033439929228813265e-7};
constexpr std::array f{1.0,
                       5.99832206555887937690e-1,
                       1.36929880922735805310e-1,
                       1.48753612908506148525e-2,
                       7.86869131145613259100e-4,
                       1.84631831751005468180e-5,
                       1.42151175831644588870e-7,
                       2.04426310338993978564e-15};

double factor(Normals& normals, double spread) {
    return std::exp(spread * normals.next());
}

/// The median is 1, and each side has its own spread.
double pace_factor(Normals& normals, const PaceSpread& sides) {
    const double z = normals.next();
    return std::exp(z * (z < 0.0 ? sides.slower : sides.faster));
}

} // namespace

double normal_quantile(double p) {
    assert(p > 0.0 && p < 1.0);
    const double q = p - 0.5;
    if (std::abs(q) <= 0.425) {
        const double r = 0.180625 - q * q;
        return q * polynomial(a, r) / polynomial(b, r);
    }
    const double r = std::sqrt(-std::log(q < 0.0 ? p : 1.0 - p));
    const double size = r <= 5.0 ? polynomial(c, r - 1.6) / polynomial(d, r - 1.6)
                                 : polynomial(e, r - 5.0) / polynomial(f, r - 5.0);
    return q < 0.0 ? -size : size;
}

std::uint64_t seed_of(std::uint64_t seed, std::uint64_t index) {
    std::uint64_t z = seed + (index + 1) * 0x9e3779b97f4a7c15U;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
}

double Normals::next() {
    constexpr double step = 0x1p-53; // as many steps as a double has between a half and one
    return normal_quantile((static_cast<double>(engine_() >> 11U) + 0.5) * step);
}

Draw draw(Normals& normals, const AssumedSpread& spread, const DrawSize& size) {
    Draw drawn{};
    drawn.pace_on_foot = pace_factor(normals, spread.on_foot);
    drawn.pace_afloat = pace_factor(normals, spread.afloat);
    drawn.current = factor(normals, spread.current);
    drawn.changeovers = factor(normals, spread.changeovers);
    drawn.drinking = factor(normals, spread.drinking);
    drawn.eating = factor(normals, spread.eating);
    for (std::size_t day = 0; day < size.days; ++day) {
        drawn.wind.push_back(factor(normals, spread.wind));
        std::vector<double> form;
        for (std::size_t member = 0; member < size.members; ++member)
            form.push_back(factor(normals, spread.day_form));
        drawn.form.push_back(std::move(form));
    }
    return drawn;
}

double factor_of(const Draw& drawn, Assumption assumption, std::size_t day) {
    switch (assumption) {
    case Assumption::pace_on_foot:
        return drawn.pace_on_foot;
    case Assumption::pace_afloat:
        return drawn.pace_afloat;
    case Assumption::day_form:
        return *std::min_element(drawn.form[day].begin(), drawn.form[day].end());
    case Assumption::wind:
        return drawn.wind[day];
    case Assumption::current:
        return drawn.current;
    case Assumption::changeovers:
        return drawn.changeovers;
    case Assumption::drinking:
        return drawn.drinking;
    case Assumption::eating:
        return drawn.eating;
    }
    return 1.0;
}

double factor_of(const Draw& drawn, Assumption assumption) {
    double sum = 0.0;
    for (std::size_t day = 0; day < drawn.wind.size(); ++day)
        sum += factor_of(drawn, assumption, day);
    return sum / static_cast<double>(drawn.wind.size());
}

void apply(const Draw& drawn, const Assumed& base, Assumed& assumed) {
    Departures& departures = assumed.departures;
    departures.current = drawn.current;
    departures.days.resize(drawn.wind.size());
    for (std::size_t day = 0; day < drawn.wind.size(); ++day) {
        DayDeparture& one = departures.days[day];
        one.wind = drawn.wind[day];
        one.calm_speed = drawn.pace_afloat * mean(drawn.form[day]);
        one.pace = drawn.form[day];
        for (double& pace : one.pace)
            pace *= drawn.pace_on_foot;
    }
    assumed.times.boots_to_boat_s = base.times.boots_to_boat_s * drawn.changeovers;
    assumed.times.boat_to_boots_s = base.times.boat_to_boots_s * drawn.changeovers;
    assumed.times.landing_s = base.times.landing_s * drawn.changeovers;
    assumed.times.scout_s = base.times.scout_s * drawn.changeovers;
    assumed.water.walking_lps = base.water.walking_lps * drawn.drinking;
    assumed.water.climbing_lps = base.water.climbing_lps * drawn.drinking;
    assumed.water.carrying_lps = base.water.carrying_lps * drawn.drinking;
    assumed.water.paddling_lps = base.water.paddling_lps * drawn.drinking;
    assumed.water.halting_lps = base.water.halting_lps * drawn.drinking;
    if (base.water.camp_l)
        assumed.water.camp_l = *base.water.camp_l * drawn.drinking;
    assumed.water.kitchen_l = base.water.kitchen_l * drawn.drinking;
    assumed.water.camp_lps = base.water.camp_lps * drawn.drinking;
    assumed.food.replace = base.food.replace * drawn.eating;
    if (base.food.ration_kg)
        assumed.food.ration_kg = *base.food.ration_kg * drawn.eating;
}

} // namespace tumpline::planner

#include "tests/plots/standard_route.h"

#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/resting_energy.h"
#include "planner/models/terrain.h"
#include "planner/models/walking_curves.h"
#include "planner/models/walking_rules.h"
#include "planner/models/walking_speed.h"
#include "tests/plots/noisy_route.h"
#include "tests/plots/standard_water.h"

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <iterator>
#include <string>
#include <string_view>

namespace tumpline::plots {

namespace {

using namespace planner;

constexpr WalkTotals route{.length_m = 10000.0, .ascent_m = 500.0, .descent_m = 500.0};
constexpr std::array slopes = {0.10, -0.10}; // half of the length each
constexpr double half_m = 5000.0;
constexpr double body_kg = 75.0;
constexpr double load_kg = 25.0;
constexpr Body body{.mass_kg = body_kg, .height_m = 1.78, .age_years = 35.0, .male = true};

/// Hours at a speed that depends on the slope.
template <class Speed> double hours(Speed speed_mps) {
    double time_s = 0.0;
    for (const double slope : slopes)
        time_s += half_m / speed_mps(slope);
    return time_s / 3600.0;
}

double laden_speed_mps(WalkingModel model, double slope) {
    return walking_speed_mps(model, slope) * load_factor(LoadEffect::equal_effort,
                                                         load_kg / body_kg,
                                                         walking_model_load_ratio(model));
}

std::string walking_table() {
    std::string table = "| model | no pack | 25 kg |\n|---|---|---|\n";
    for (const WalkingModel model : walking_models()) {
        if (model == WalkingModel::constant)
            continue; // as fast as one says
        const std::string bare = walking_model_includes_load(model)
                                     ? "-"
                                     : fmt::format("{:.2f} h", hours([model](double slope) {
                                                       return walking_speed_mps(model, slope);
                                                   }));
        fmt::format_to(std::back_inserter(table),
                       "| `{}` | {} | {:.2f} h |\n",
                       walking_model_name(model),
                       bare,
                       hours([model](double slope) { return laden_speed_mps(model, slope); }));
    }
    return table;
}

/// Hours of the default walking model under a load.
double hours_under(LoadEffect effect, double carried_kg) {
    const double factor = load_factor(effect, carried_kg / body_kg, 0.0);
    return hours([factor](double slope) {
        return walking_speed_mps(WalkingModel::swiss_signpost, slope) * factor;
    });
}

std::string load_table() {
    std::string table =
        "| model | 10 kg | 15 kg | 20 kg | 25 kg | 35 kg |\n|---|---|---|---|---|---|\n";
    for (const LoadEffect effect : {LoadEffect::equal_effort, LoadEffect::none}) {
        fmt::format_to(std::back_inserter(table), "| `{}` |", load_effect_name(effect));
        for (const double carried_kg : {10.0, 15.0, 20.0, 25.0, 35.0})
            fmt::format_to(
                std::back_inserter(table), " {:.2f} h |", hours_under(effect, carried_kg));
        table += '\n';
    }
    return table;
}

/// The walker under the load on one half of the route, slowed by `time_factor`.
Carrying laden(double slope, double eta, double time_factor = 1.0) {
    return {.body_kg = body_kg,
            .load_kg = load_kg,
            .speed_mps = laden_speed_mps(WalkingModel::swiss_signpost, slope) / time_factor,
            .slope = slope,
            .terrain = eta,
            .resting_w = mifflin_st_jeor_1990_w(body)};
}

/// What LCDA says of the route on some ground at the laden pace, slowed by `time_factor`.
double lcda_kcal(double eta, double time_factor) {
    double energy_j = 0.0;
    for (const double slope : slopes) {
        const Carrying walk = laden(slope, eta, time_factor);
        energy_j +=
            carriage_w(CarriageModel::lcda_backpacking_2022, walk) * half_m / walk.speed_mps;
    }
    return energy_j / 4184.0;
}

std::string ground_table() {
    std::string table =
        "| ground | time by day | in the dark | energy by day |\n|---|---|---|---|\n";
    const double path_h = hours_under(LoadEffect::equal_effort, load_kg);
    for (const Ground& kind : grounds())
        fmt::format_to(std::back_inserter(table),
                       "| `{}` | {:.2f} h | {:.2f} h | {:.0f} kcal |\n",
                       kind.name,
                       path_h * kind.time_factor,
                       path_h * kind.time_factor * night_time_factor(kind),
                       lcda_kcal(kind.eta, kind.time_factor));
    return table;
}

std::string resting_table() {
    std::string table = "| model | rate | over these hours |\n|---|---|---|\n";
    const double route_h = hours_under(LoadEffect::equal_effort, load_kg);
    for (const RestingModel model :
         {RestingModel::mifflin_st_jeor_1990, RestingModel::schofield_1985})
        fmt::format_to(std::back_inserter(table),
                       "| `{}` | {:.0f} W | {:.0f} kcal |\n",
                       resting_model_name(model),
                       resting_w(model, body),
                       resting_w(model, body) * route_h * 3600.0 / 4184.0);
    return table;
}

std::string rule_table() {
    const auto at = [](CrewPace pace) {
        return hours([pace](double slope) { return sullivan_2020_mps(slope, pace); });
    };

    struct Rule {
        std::string_view name;
        double hours;
    };

    const std::array rules = {
        Rule{"Naismith, metric [Naismith1892]", naismith_metric_s(route) / 3600.0},
        Rule{"Naismith, as of 1892 [Naismith1892]", naismith_1892_s(route) / 3600.0},
        Rule{"Langmuir's rule for parties [Langmuir1984]", langmuir_party_s(route) / 3600.0},
        Rule{"1:8 at 5 km/h [Scarf2007]", scarf_2007_m(route, scarf_men) / 5000.0},
        Rule{"Swiss rule of thumb [SwissRuleOfThumb]", swiss_rule_of_thumb_s(route) / 3600.0},
        Rule{"Swiss training rule [SwissRuleOfThumb]", swiss_training_rule_s(route) / 3600.0},
        Rule{"DIN 33466 for the whole leg [DIN33466]", din_33466_s(route) / 3600.0},
        Rule{"off the path [Irmischer2018]", hours([](double slope) {
                 return irmischer_clarke_2018_mps(slope, Footing::off_path);
             })},
        Rule{"[MarquezPerez2017]", hours(marquez_perez_2017_mps)},
        Rule{"paved roads [Wood2023]",
             hours([](double slope) { return wood_2023_paved_mps(slope); })},
        Rule{"symmetric median [CampbellFire2024]", hours(campbell_fire_2024_mps)},
        Rule{"crews with 22.7 kg, low pace [Sullivan2020]", at(CrewPace::low)},
        Rule{"crews with 22.7 kg, moderate pace [Sullivan2020]", at(CrewPace::moderate)},
        Rule{"crews with 22.7 kg, high pace [Sullivan2020]", at(CrewPace::high)},
    };
    std::string table = "| rule | time |\n|---|---|\n";
    for (const Rule& rule : rules)
        fmt::format_to(std::back_inserter(table), "| {} | {:.2f} h |\n", rule.name, rule.hours);
    return table;
}

std::string energy_table() {
    std::string table = "| model | uphill | downhill | whole route |\n|---|---|---|---|\n";
    double time_s = 0.0;
    for (const CarriageModel model : carriage_models) {
        std::array<double, 2> power_w{};
        double energy_j = 0.0;
        time_s = 0.0;
        for (std::size_t half = 0; half < slopes.size(); ++half) {
            const Carrying walk = laden(slopes[half], ground("path").eta);
            power_w[half] = carriage_w(model, walk);
            energy_j += power_w[half] * half_m / walk.speed_mps;
            time_s += half_m / walk.speed_mps;
        }
        fmt::format_to(std::back_inserter(table),
                       "| `{}` | {:.0f} W | {:.0f} W | {:.0f} kcal |\n",
                       carriage_model_name(model),
                       power_w[0],
                       power_w[1],
                       energy_j / 4184.0);
    }
    fmt::format_to(std::back_inserter(table),
                   "| `yamamoto-course-constant` | | | {:.0f} kcal |\n",
                   yamamoto_course_j({.time_s = time_s,
                                      .length_m = route.length_m,
                                      .ascent_m = route.ascent_m,
                                      .descent_m = route.descent_m,
                                      .body_kg = body_kg,
                                      .pack_kg = load_kg}) /
                       4184.0);
    return table;
}

} // namespace

std::string standard_route_page() {
    return fmt::format(
        R"(# The models on one route

10 km on a path, half of it climbing 500 m at an even 10 % and half going down again, walked by
somebody of 75 kg; moving time, without rests. Afloat: 10 km of lake. `tumpline_plots` reckons this page with
the functions that plan, and a test says when it is out of date.

## Time by the walking models

With a load of 25 kg, a third of body mass, the speeds are multiplied by the effect of
[load_effect](load_effect.md). `sullivan-2020` was measured under packs and counts from there.

{walking}
## Time by rules and curves that stand beside them

Without a load, except where it is named.

{rules}
## Time by the load's effect

At the speeds of `swiss-signpost`.

{loads}
## Time and energy by ground

At the speeds of `swiss-signpost` with 25 kg, slowed by the factors of [terrain](terrain.md); energy by
`lcda-backpacking-2022`, a man of 35 years and 1.78 m.

{grounds}
## Energy with 25 kg

At the speeds of `swiss-signpost` under that load; the same man.

{energy}
## Rest within it

What the same man would have spent lying down ([resting energy](resting_energy.md)) while he walked.

{resting}
## Climb read from heights that are wrong

The 500 m of this route as [elevation](elevation.md) reads them from heights every 25 m with errors of this
spread, and the plain sum of all rises; means of 100 draws, our own simulation.

{climb}
## 10 km of lake

Calm speeds are the planning speeds of [paddling](paddling.md); the wind blows 5 m/s (18 km/h, force 3) at 10 m.
`constant` gives the same in any wind.

{lake})",
        fmt::arg("walking", walking_table()),
        fmt::arg("rules", rule_table()),
        fmt::arg("loads", load_table()),
        fmt::arg("grounds", ground_table()),
        fmt::arg("energy", energy_table()),
        fmt::arg("resting", resting_table()),
        fmt::arg("climb", noisy_climb_table()),
        fmt::arg("lake", lake_table()));
}

} // namespace tumpline::plots

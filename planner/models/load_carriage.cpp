#include "planner/models/load_carriage.h"

#include "planner/models/compendium.h"
#include "planner/models/constants.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

/// G (1 - 1.05^(1 - 1.1^(G + 32))), the shape of the grade term of both LCDA equations.
double lcda_grade(double slope) {
    constexpr double ln_1p1 = 0.09531017980432493;  // ln 1.1
    constexpr double ln_1p05 = 0.04879016416943205; // ln 1.05
    const double G = 100.0 * slope;
    return G * (1.0 - std::exp(ln_1p05 * (1.0 - std::exp(ln_1p1 * (G + 32.0)))));
}

/// Watts of an oxygen uptake in mL/min, at 5 kcal per litre.
double oxygen_w(double ml_per_min) {
    return ml_per_min / 1000.0 * 5.0 * j_per_kcal / 60.0;
}

/// What standing under the load costs by [Pandolf1977].
double standing_w(const Carrying& walk) {
    const double W = walk.body_kg;
    const double L = walk.load_kg;
    return 1.5 * W + 2.0 * (W + L) * (L / W) * (L / W);
}

constexpr std::size_t carriage_count = 4;

constexpr std::array<std::string_view, carriage_count> carriage_names = {
    "lcda-backpacking-2022", "pandolf-santee", "ludlow-weyand-2017", "compendium-met"};

} // namespace

double lcda_backpacking_2022_load(double load_ratio) {
    const double l = load_ratio;
    return 1.0 + 1.96 * std::pow(l, 1.36);
}

double lcda_backpacking_2022_w(const Carrying& walk) {
    assert(walk.body_kg > 0.0 && walk.load_kg >= 0.0 && walk.speed_mps >= 0.0);
    const double S = walk.speed_mps;
    const double eta = walk.terrain;
    const double M_grade = 0.34 * S * lcda_grade(walk.slope);
    const double M = (0.19 + eta * (1.78 * std::pow(S, 0.58) + 0.27 * S * S * S * S + M_grade)) *
                     lcda_backpacking_2022_load(walk.load_kg / walk.body_kg);
    return walk.resting_w + walk.body_kg * M;
}

double lcda_walking_2019_w_per_kg(double speed_mps, double slope) {
    const double S = speed_mps;
    return 1.44 + 1.94 * std::pow(S, 0.43) + 0.24 * S * S * S * S + 0.34 * S * lcda_grade(slope);
}

double pandolf_1977_w(const Carrying& walk) {
    assert(walk.body_kg > 0.0 && walk.load_kg >= 0.0 && walk.speed_mps >= 0.0);
    const double W = walk.body_kg; // the paper's letters, in the paper's order
    const double L = walk.load_kg;
    const double V = walk.speed_mps;
    const double G = 100.0 * walk.slope; // the paper's grade is in percent
    const double ratio = L / W;
    return 1.5 * W + 2.0 * (W + L) * ratio * ratio +
           walk.terrain * (W + L) * (1.5 * V * V + 0.35 * V * G);
}

double santee_2003_correction_w(const Carrying& walk) {
    const double W = walk.body_kg;
    const double L = walk.load_kg;
    const double V = walk.speed_mps;
    const double G = 100.0 * walk.slope;
    return walk.terrain *
           (G * (W + L) * V / 3.5 - (W + L) * (G + 6.0) * (G + 6.0) / W + (25.0 - V * V));
}

double pandolf_santee_w(const Carrying& walk) {
    if (walk.slope >= 0.0)
        return pandolf_1977_w(walk);
    Carrying within = walk;
    within.slope = std::max(walk.slope, -0.12); // departs: the correction was measured to -12 %
    const double corrected_w = pandolf_1977_w(within) - santee_2003_correction_w(within);
    return std::max(corrected_w, standing_w(walk));
}

double ludlow_weyand_2017_ml_per_kg_min(const Carrying& walk) {
    Carrying treadmill = walk;
    treadmill.terrain = 1.0;
    return ludlow_weyand_2017_w(treadmill) / oxygen_w(walk.body_kg);
}

double ludlow_weyand_2017_w(const Carrying& walk) {
    const double W = walk.body_kg;
    const double L = walk.load_kg;
    const double V = walk.speed_mps;
    const double G = 100.0 * walk.slope;
    const double bracket = walk.slope >= 0.0 ? 0.32 * G + 3.28 + (1.0 + 0.19 * G) * 2.66 * V * V
                                             : 0.73 * (3.28 + 2.66 * V * V);
    // departs: the ground's factor; the paper has none
    return oxygen_w(W * (3.05 + (W + L) / W * walk.terrain * bracket));
}

double minetti_2002_j_per_kg_m(double slope) {
    const double i = std::clamp(slope, -0.45, 0.45);
    return ((((280.5 * i - 58.7) * i - 76.8) * i + 51.9) * i + 19.6) * i + 2.5;
}

double acsm_walking_ml_per_kg_min(double speed_mps, double slope) {
    const double v = 60.0 * speed_mps;
    const double g = std::max(slope, 0.0);
    return 3.5 + 0.1 * v + 1.8 * v * g;
}

double yamamoto_course_j(const DayWalk& day) {
    const double kcal_per_kg = 1.8 * day.time_s / 3600.0 + 0.3 * day.length_m / 1000.0 +
                               10.0 * day.ascent_m / 1000.0 + 0.6 * day.descent_m / 1000.0;
    return kcal_per_kg * (day.body_kg + day.pack_kg) * j_per_kcal;
}

double yamamoto_sweat_l(const DayWalk& day) {
    return 0.005 * (day.body_kg + day.pack_kg) * day.time_s / 3600.0;
}

double carriage_w(CarriageModel model, const Carrying& walk) {
    switch (model) {
    case CarriageModel::lcda_backpacking_2022:
        return lcda_backpacking_2022_w(walk);
    case CarriageModel::pandolf_santee:
        return pandolf_santee_w(walk);
    case CarriageModel::ludlow_weyand_2017:
        return ludlow_weyand_2017_w(walk);
    case CarriageModel::compendium_met:
        return met_w(walk.load_kg >= 0.1 * walk.body_kg ? met_backpacking : met_hiking,
                     walk.body_kg);
    }
    return 0.0; // not reached: every enumerator returns above
}

CarriageRange carriage_range(CarriageModel model) {
    CarriageRange range;
    switch (model) {
    case CarriageModel::lcda_backpacking_2022:
        range.most_load_ratio = 0.66;
        range.least_speed_mps = 0.45;
        range.most_speed_mps = 1.97;
        range.steepest_down = -0.40;
        range.steepest_up = 0.45;
        break;
    case CarriageModel::pandolf_santee:
        range.most_load_kg = 70.0;
        range.most_speed_mps = 2.0;
        range.steepest_down = -0.12;
        break;
    case CarriageModel::ludlow_weyand_2017:
        range.most_load_ratio = 0.31;
        range.least_speed_mps = 0.4;
        range.most_speed_mps = 1.6;
        range.steepest_down = -0.1051; // tan(-6 degrees)
        range.steepest_up = 0.1584;    // tan(9 degrees)
        range.most_terrain = 1.1;      // a treadmill, which a path still is nearly
        break;
    case CarriageModel::compendium_met:
        range.least_speed_mps = 0.9;
        range.steepest_down = -0.20;
        range.steepest_up = 0.20;
        break;
    }
    return range;
}

bool carriage_covers(CarriageModel model, const Carrying& walk) {
    const CarriageRange range = carriage_range(model);
    const auto below = [](const std::optional<double>& most, double value) {
        return !most || value <= *most;
    };
    const auto above = [](const std::optional<double>& least, double value) {
        return !least || value >= *least;
    };
    return below(range.most_load_ratio, walk.load_kg / walk.body_kg) &&
           below(range.most_load_kg, walk.load_kg) &&
           above(range.least_speed_mps, walk.speed_mps) &&
           below(range.most_speed_mps, walk.speed_mps) && above(range.steepest_down, walk.slope) &&
           below(range.steepest_up, walk.slope) && below(range.most_terrain, walk.terrain);
}

std::optional<CarriageModel> carriage_model(std::string_view name) {
    const auto* const found = std::find(carriage_names.begin(), carriage_names.end(), name);
    if (found == carriage_names.end())
        return std::nullopt;
    return static_cast<CarriageModel>(found - carriage_names.begin());
}

std::string_view carriage_model_name(CarriageModel model) {
    return carriage_names.at(static_cast<std::size_t>(model));
}

// The three numbers are those of one step, in the order in which it is walked.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
void LcdaSums::add(double step_m, double slope, double base_speed_mps) {
    assert(base_speed_mps > 0.0);
    const double v = base_speed_mps;
    length_m += step_m;
    time_s += step_m / v;
    s042 += step_m * std::pow(v, -0.42);
    s3 += step_m * v * v * v;
    grade += step_m * lcda_grade(slope);
}

LcdaSums& LcdaSums::operator+=(const LcdaSums& other) {
    length_m += other.length_m;
    time_s += other.time_s;
    s042 += other.s042;
    s3 += other.s3;
    grade += other.grade;
    return *this;
}

double lcda_energy_j(const LcdaSums& sums, double speed_scale, const Carrying& who) {
    assert(speed_scale > 0.0);
    const double k = speed_scale;
    const double time_s = sums.time_s / k;
    // S = k v and dt = ds/(k v): S^0.58 dt = k^-0.42 ds v^-0.42, S^4 dt = k^3 ds v^3, S dt = ds
    const double walked =
        1.78 * std::pow(k, -0.42) * sums.s042 + 0.27 * k * k * k * sums.s3 + 0.34 * sums.grade;
    return who.resting_w * time_s + who.body_kg * (0.19 * time_s + who.terrain * walked) *
                                        lcda_backpacking_2022_load(who.load_kg / who.body_kg);
}

std::span<const ModelEntry> load_carriage_entries() {
    static constexpr std::array<ModelEntry, carriage_count + 1> entries = {{
        {.family = "energy",
         .name = "lcda-backpacking-2022",
         .answers = "What does walking with this load, speed, slope and ground cost?",
         .source = "Looney2022",
         .covers = "load to 0.66 of body mass, 0.45 to 1.97 m/s, slope -40 to +45 %",
         .is_default = true,
         .why = "built on backpacks, knows slope both ways and ground, and has the smallest bias "
                "found"},
        {.family = "energy",
         .name = "pandolf-santee",
         .answers = "What does it cost by the military equation of 1977, corrected downhill?",
         .source = "Pandolf1977",
         .covers = "load to 70 kg, to 2 m/s, slope from -12 % up",
         .why = "to compare with older studies; too low under heavy loads"},
        {.family = "energy",
         .name = "ludlow-weyand-2017",
         .answers = "What does it cost by minimum mechanics?",
         .source = "Ludlow2017",
         .covers = "load to 0.31 of body mass, 0.4 to 1.6 m/s, -6 to +9 degrees, firm ground",
         .why = "close to its measurements with moderate packs on gentle slopes"},
        {.family = "energy",
         .name = "compendium-met",
         .answers = "What does it cost by the table of activities, whatever the speed and slope?",
         .source = "Herrmann2024",
         .covers = "backpacking at a brisk pace",
         .why = "a figure others can look up; high for slow walkers"},
        {.family = "energy_check",
         .name = "yamamoto-course-constant",
         .answers = "What does the day's walk cost as a whole, by an independent rule?",
         .source = "Yamamoto2006",
         .covers = "good paths without snow, fair weather",
         .is_default = true,
         .why = "a check on the day's sum: it should lie 10 to 30 % above LCDA"},
    }};
    return entries;
}

} // namespace tumpline::planner

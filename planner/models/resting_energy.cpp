#include "planner/models/resting_energy.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double seconds_per_day = 86400.0;

/// One line of [Schofield1985]: a W + b.
struct Line {
    double a;
    double b;
};

/// Row of the age among bands that begin at ascending ages; the first holds for the younger too.
template <std::size_t N>
std::size_t age_band(const Body& body, const std::array<double, N>& from_years) {
    std::size_t band = 0;
    while (band + 1 < N && body.age_years >= from_years.at(band + 1))
        ++band;
    return band;
}

constexpr std::array<double, 3> adult_bands{18.0, 30.0, 60.0};
constexpr std::array<double, 6> all_bands{0.0, 3.0, 10.0, 18.0, 30.0, 60.0};

constexpr std::array<std::string_view, 2> resting_names = {"mifflin-st-jeor-1990",
                                                           "schofield-1985"};

} // namespace

double mifflin_st_jeor_1990_w(const Body& body) {
    const double kcal_per_day = 10.0 * body.mass_kg + 6.25 * 100.0 * body.height_m -
                                5.0 * body.age_years + (body.male ? 5.0 : -161.0);
    return std::max(0.0, kcal_per_day) * j_per_kcal / seconds_per_day;
}

double schofield_1985_w(const Body& body) {
    static constexpr std::array<Line, 3> men = {{{0.063, 2.896}, {0.048, 3.653}, {0.049, 2.459}}};
    static constexpr std::array<Line, 3> women = {{{0.062, 2.036}, {0.034, 3.538}, {0.038, 2.755}}};
    const Line& line = (body.male ? men : women).at(age_band(body, adult_bands));
    return (line.a * body.mass_kg + line.b) * 1e6 / seconds_per_day;
}

double schofield_1985_kcal_form_w(const Body& body) {
    static constexpr std::array<Line, 6> men = {{{59.512, -30.4},
                                                 {22.706, 504.3},
                                                 {17.686, 658.2},
                                                 {15.057, 692.2},
                                                 {11.472, 873.1},
                                                 {11.711, 587.7}}};
    static constexpr std::array<Line, 6> women = {{{58.317, -31.1},
                                                   {20.315, 485.9},
                                                   {13.384, 692.6},
                                                   {14.818, 486.6},
                                                   {8.126, 845.6},
                                                   {9.082, 658.5}}};
    const Line& line = (body.male ? men : women).at(age_band(body, all_bands));
    return (line.a * body.mass_kg + line.b) * j_per_kcal / seconds_per_day;
}

RestingModel resting_model_for(RestingModel asked, double age_years) {
    const AgeRange ages = resting_ages(asked);
    const bool covered = age_years >= ages.youngest && (!ages.oldest || age_years <= *ages.oldest);
    return covered ? asked : RestingModel::schofield_1985;
}

double resting_w(RestingModel model, const Body& body) {
    switch (resting_model_for(model, body.age_years)) {
    case RestingModel::mifflin_st_jeor_1990:
        return mifflin_st_jeor_1990_w(body);
    case RestingModel::schofield_1985:
        // The form in kilocalories is the one that has the rows of children.
        return body.age_years < adult_bands.front() ? schofield_1985_kcal_form_w(body)
                                                    : schofield_1985_w(body);
    }
    return 0.0; // not reached: every enumerator returns above
}

AgeRange resting_ages(RestingModel model) {
    switch (model) {
    case RestingModel::mifflin_st_jeor_1990:
        return {.youngest = 19.0, .oldest = 78.0};
    case RestingModel::schofield_1985:
        return {.youngest = 0.0, .oldest = std::nullopt};
    }
    return {.youngest = 0.0, .oldest = std::nullopt}; // not reached: every enumerator returns
}

std::optional<RestingModel> resting_model(std::string_view name) {
    const auto* const found = std::find(resting_names.begin(), resting_names.end(), name);
    if (found == resting_names.end())
        return std::nullopt;
    return static_cast<RestingModel>(found - resting_names.begin());
}

std::string_view resting_model_name(RestingModel model) {
    return resting_names.at(static_cast<std::size_t>(model));
}

std::span<const ModelEntry> resting_energy_entries() {
    static constexpr std::array<ModelEntry, 2> entries = {{
        {.family = "resting",
         .name = "mifflin-st-jeor-1990",
         .answers = "What does this body spend at rest?",
         .source = "Mifflin1990",
         .covers = "19 to 78 years",
         .is_default = true,
         .why = "knows height and age, and was within 10 % for most people tested"},
        {.family = "resting",
         .name = "schofield-1985",
         .answers =
             "What does a body of this mass, sex and age spend at rest, by the tables of FAO and "
             "WHO?",
         .source = "Schofield1985",
         .covers = "every age",
         .why = "where the height is not known; and for the ages that the default does not cover"},
    }};
    return entries;
}

} // namespace tumpline::planner

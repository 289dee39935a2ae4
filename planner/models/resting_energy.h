#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

namespace tumpline::planner {

struct Body {
    double mass_kg;
    double height_m;
    double age_years;
    bool male;
};

/// Resting metabolic rate, watts.
///
///     10 kg + 6.25 cm - 5 years + 5 (men), - 161 (women)   kcal per day
///
/// Source: [Mifflin1990]. Covers: 19 to 78 years.
/// Known bias: within 10 % for 78 % of a test population.
/// Departs: not below 0, where the line would be for a body that cannot be.
[[nodiscard]] double mifflin_st_jeor_1990_w(const Body& body);

/// Basal metabolic rate, watts, from mass, sex and the age bands 18-30, 30-60 and over.
///
///     BMR = a W + b   MJ per day
///
/// Source: [Schofield1985] as [FAO2004] adopted it; coefficients from memory, anchored by printed
/// results. Covers: from 18 years; younger counts as 18. Steps at 30 and 60 as printed.
[[nodiscard]] double schofield_1985_w(const Body& body);

/// The same from its form in kilocalories, whose coefficients are rounded otherwise and which has
/// the bands of children: under 3, 3-10, 10-18. Covers: every age.
[[nodiscard]] double schofield_1985_kcal_form_w(const Body& body);

enum class RestingModel { mifflin_st_jeor_1990, schofield_1985 };

/// The model asked for, or Schofield's bands at an age that it does not cover.
[[nodiscard]] RestingModel resting_model_for(RestingModel asked, double age_years);

[[nodiscard]] double resting_w(RestingModel model, const Body& body);

/// Youngest and oldest that a model holds for, years; the second may be empty.
struct AgeRange {
    double youngest;
    std::optional<double> oldest;
};

[[nodiscard]] AgeRange resting_ages(RestingModel model);
[[nodiscard]] std::optional<RestingModel> resting_model(std::string_view name);
[[nodiscard]] std::string_view resting_model_name(RestingModel model);
[[nodiscard]] std::span<const ModelEntry> resting_energy_entries();

} // namespace tumpline::planner

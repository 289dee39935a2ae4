#pragma once

#include "planner/models/constants.h"
#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// From energy wanted to mass carried.
namespace tumpline::planner {

/// What a label prints. Carbohydrate without fibre.
struct Nutrients {
    double protein_kg;
    double fat_kg;
    double carbohydrate_kg;
    double alcohol_kg;
    double fibre_kg;
};

/// 4 P + 9 F + 4 C + 7 A + 2 Fi kcal per gram. Source: [FAO77].
/// Covers: mixed diets. Known bias: general factors; a few per cent high for nuts and much fibre
/// (from memory).
[[nodiscard]] double food_energy_j(const Nutrients& nutrients);

/// 4.0 kcal/g: between printed field rations (3.4 to 3.6) and well chosen trail food (4.4).
inline constexpr double default_energy_density_j_per_kg = 4.0e3 * j_per_kcal;
/// Share of the food's mass; its waste is carried out. From memory, range 0.05 to 0.15.
inline constexpr double default_packaging = 0.08;

inline constexpr double least_energy_density_j_per_kg = 1.5e3 * j_per_kcal; ///< fresh food
inline constexpr double most_energy_density_j_per_kg = 6.0e3 * j_per_kcal;  ///< fat is 9
/// Whether a density can be eaten for days. Covers: 1.5 to 6 kcal/g.
[[nodiscard]] bool energy_density_covers(double j_per_kg);

/// The schools' lightest and heaviest bulk rations, per person and day, 1.5 and 2.5 lb
/// [BulkRation].
inline constexpr double least_ration_kg = 0.680388555;
inline constexpr double most_ration_kg = 1.133980925;
[[nodiscard]] bool fixed_ration_covers(double kg_per_day);

/// What must be packed to eat `energy_j`.
struct Ration {
    double energy_j;
    double density_j_per_kg;
    double packaging; ///< share of the food's mass
};

/// Food and its packaging; 0 for a density that is not positive.
[[nodiscard]] double ration_kg(const Ration& ration);
/// The packaging alone: what is left to carry out when the food is eaten.
[[nodiscard]] double ration_waste_kg(const Ration& ration);

/// A printed ration or scheme, to compare a plan with.
struct PrintedRation {
    std::string_view name;
    std::optional<double> mass_kg;  ///< as printed
    std::optional<double> energy_j; ///< as printed
    std::string_view source;
};

[[nodiscard]] std::span<const PrintedRation> printed_rations();

/// Bulk rations of outdoor schools, per person and day, by how hard and cold it is.
struct RationClass {
    double least_kg;
    double most_kg;
    double least_j;
    double most_j;
    std::string_view when;
};

/// Source: [BulkRation].
[[nodiscard]] std::span<const RationClass> ration_classes();

[[nodiscard]] std::span<const ModelEntry> food_entries();

} // namespace tumpline::planner

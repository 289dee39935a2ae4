#pragma once

#include "planner/plan.h"
#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Plans side by side. Differences are always against the first; positive where the other has more.
namespace tumpline::planner {

/// A sum over a plan.
enum class Figure {
    distance,
    walk,
    portage,
    paddle,
    ride,
    led,
    on_foot,
    ascent,
    descent,
    moving,
    changeover,
    rest,
    elapsed,
    days,
    food,
    fuel,
    energy,
    stops,
    cautions
};

/// "distance_m", for programs; the suffix is the unit of the values.
[[nodiscard]] std::string_view name_of(Figure figure);

struct ComparedFigure {
    Figure figure{};
    std::vector<std::optional<double>> values;      ///< per plan; empty: not known
    std::vector<std::optional<double>> differences; ///< per plan; 0 for the first
};

/// The same day, by number, of every plan.
struct ComparedDay {
    int day = 1;
    std::vector<std::optional<std::size_t>> plan_day; ///< per plan: index into Plan::days
    std::vector<std::optional<double>> later_s; ///< arrival by the clock; empty on days of rest
    std::vector<std::optional<double>> moving_more_s;
    bool same_night = true; ///< all sleep at the same place
};

/// A member's heaviest pack on foot.
struct Heaviest {
    double pack_kg = 0.0;
    double of_limit = 0.0; ///< share; 0 without a limit
    PlanLegNumber plan_leg = {};
};

/// Empty for who never bears a load on foot.
[[nodiscard]] std::optional<Heaviest> heaviest_of(const Plan& plan, const std::string& member);

struct ComparedPack {
    std::string member;
    std::vector<std::optional<Heaviest>> heaviest; ///< per plan
    std::vector<std::optional<double>> more_kg;
};

struct ComparedAppointment {
    std::string what;
    std::string at;
    std::vector<std::optional<double>> spare_s; ///< per plan; negative: the margin is not kept
    std::vector<std::optional<double>> more_s;
};

/// What changes in the cautions from the first plan to another.
struct ComparedCautions {
    std::size_t plan = 1;
    std::vector<Caution> breaks; ///< stops and cautions that the first has not; stops first
    std::vector<Caution> mends;  ///< of the first, that this one has not
};

struct Comparison {
    std::vector<Plan> plans; ///< at least one
    std::vector<ComparedFigure> figures;
    std::vector<ComparedDay> days;
    std::vector<ComparedPack> packs; ///< members in the order in which the plans bring them
    std::vector<ComparedAppointment> appointments;
    std::vector<ComparedCautions> cautions; ///< per plan but the first
};

/// Lays plans side by side. Members and appointments are the same by name; cautions by code and leg
/// (those without a leg by day), however their figures changed. Notes are left out.
[[nodiscard]] Comparison compare(std::vector<Plan> plans);

} // namespace tumpline::planner

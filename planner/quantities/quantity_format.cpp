#include "planner/quantities/quantities.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <string>

namespace tumpline::planner {

namespace {

/// What fits a whole number of 64 bits; figures of trips are far smaller.
constexpr double largest_whole = 9e18;

/// To the nearest multiple of a step, halves away from zero; -0 becomes 0.
std::string rounded(double number, double step) {
    const double whole = std::round(number / step) * step;
    return fmt::format("{:.0f}", whole == 0.0 ? 0.0 : whole);
}

std::string fixed(double number, int decimals) {
    const double scale = std::pow(10.0, decimals);
    const double kept = std::round(number * scale) / scale;
    return fmt::format("{:.{}f}", kept == 0.0 ? 0.0 : kept, decimals);
}

/// Whether `number` shown with one decimal reaches 1.
bool reaches_one(double number) {
    return std::abs(number) >= 0.95;
}

} // namespace

std::string show_mass(double mass_kg, UnitSystem system) {
    if (system == UnitSystem::metric) {
        if (std::abs(mass_kg) >= 0.9995)
            return fixed(mass_kg, 1) + " kg";
        return rounded(mass_kg * 1000.0, std::abs(mass_kg) < 0.1 ? 1.0 : 5.0) + " g";
    }
    if (reaches_one(mass_kg / kg_per_pound))
        return fixed(mass_kg / kg_per_pound, 1) + " lb";
    return fixed(mass_kg / kg_per_ounce, 1) + " oz";
}

std::string show_distance(double length_m, UnitSystem system) {
    if (system == UnitSystem::metric) {
        if (std::abs(length_m) >= 995.0)
            return fixed(length_m / 1000.0, 1) + " km";
        return rounded(length_m, std::abs(length_m) < 100.0 ? 1.0 : 10.0) + " m";
    }
    if (std::abs(length_m) >= 0.5 * m_per_mile)
        return fixed(length_m / m_per_mile, 1) + " mi";
    return rounded(length_m / m_per_yard, std::abs(length_m) < 100.0 ? 1.0 : 10.0) + " yd";
}

std::string show_portage(double length_m, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return rounded(length_m / m_per_rod, 1.0) + " rods";
    if (std::abs(length_m) >= 995.0)
        return fixed(length_m / 1000.0, 2) + " km";
    return rounded(length_m, std::abs(length_m) < 100.0 ? 1.0 : 10.0) + " m";
}

std::string show_length(double length_m, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return fixed(length_m / m_per_inch, 1) + " in";
    return rounded(length_m * 100.0, 1.0) + " cm";
}

std::string show_height(double height_m, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return rounded(height_m / m_per_foot, 10.0) + " ft";
    return rounded(height_m, std::abs(height_m) < 100.0 ? 1.0 : 5.0) + " m";
}

std::string show_speed(double speed_mps, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return fixed(speed_mps * s_per_h / m_per_mile, 1) + " mph";
    return fixed(speed_mps / mps_per_kmh, 1) + " km/h";
}

std::string show_duration(double duration_s) {
    if (!(std::abs(duration_s) < largest_whole))
        return "?";
    const auto minutes = static_cast<std::int64_t>(std::llround(duration_s / s_per_min));
    const std::int64_t size = minutes < 0 ? -minutes : minutes;
    const char* const sign = minutes < 0 ? "-" : "";
    if (size < 60)
        return fmt::format("{}{} min", sign, size);
    return fmt::format("{}{} h {:02} min", sign, size / 60, size % 60);
}

std::string show_volume(double volume_l, UnitSystem system) {
    if (system == UnitSystem::metric) {
        if (reaches_one(volume_l))
            return fixed(volume_l, 1) + " L";
        return rounded(volume_l * 1000.0, 10.0) + " ml";
    }
    const double quarts = volume_l / (l_per_us_gallon / 4.0);
    if (reaches_one(quarts))
        return fixed(quarts, 1) + " qt";
    return fixed(volume_l / l_per_us_fluid_ounce, 0) + " fl oz";
}

std::string show_temperature(double temperature_c, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return rounded(temperature_c * 1.8 + 32.0, 1.0) + " F";
    return rounded(temperature_c, 1.0) + " C";
}

std::string show_energy(double energy_j) {
    return rounded(energy_j / j_per_kcal, 10.0) + " kcal";
}

std::string show_gradient(double gradient, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return fixed(gradient * m_per_mile / m_per_foot, 0) + " ft/mi";
    return fixed(gradient * 1000.0, 1) + " m/km";
}

std::string show_carried(double kg_km, UnitSystem system) {
    const bool imperial = system == UnitSystem::imperial;
    const double shown = imperial ? kg_km / kg_per_pound * 1000.0 / m_per_mile : kg_km;
    return fixed(shown, std::abs(shown) < 100.0 ? 1 : 0) + (imperial ? " lb mi" : " kg km");
}

std::string show_climbed(double kg_m, UnitSystem system) {
    if (system == UnitSystem::imperial)
        return rounded(kg_m / kg_per_pound / m_per_foot, 10.0) + " lb ft";
    return rounded(kg_m, 10.0) + " kg m";
}

std::string show_time_of_day(std::chrono::seconds since_midnight) {
    // to the minute, like every clock time that is printed
    const auto minutes =
        std::chrono::floor<std::chrono::minutes>(since_midnight + std::chrono::seconds(30)).count();
    const auto of_day = (minutes % 1440 + 1440) % 1440;
    return fmt::format("{:02}:{:02}", of_day / 60, of_day % 60);
}

std::string show_date(const std::chrono::year_month_day& date) {
    return fmt::format("{:04}-{:02}-{:02}",
                       static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

std::string show_number(double number, int decimals) {
    std::string text = fixed(number, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.')
            text.pop_back();
    }
    return text;
}

} // namespace tumpline::planner

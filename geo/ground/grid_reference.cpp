#include "geo/ground/grid_reference.h"

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/MagneticModel.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <exception>

namespace tumpline::geo {

std::optional<GridPlace> grid_place(const Position& at, std::optional<int> zone) {
    GridPlace place{};
    double scale = 1.0;
    try {
        GeographicLib::UTMUPS::Forward(
            at.lat_deg,
            at.lon_deg,
            place.zone,
            place.north,
            place.easting_m,
            place.northing_m,
            place.convergence_deg,
            scale,
            zone.value_or(static_cast<int>(GeographicLib::UTMUPS::STANDARD)));
    } catch (const std::exception&) { // too far from the zone
        return std::nullopt;
    }
    return place;
}

std::optional<Position> from_grid(const GridPlace& place) {
    Position at{};
    try {
        GeographicLib::UTMUPS::Reverse(
            place.zone, place.north, place.easting_m, place.northing_m, at.lat_deg, at.lon_deg);
    } catch (const std::exception&) { // beyond the zone
        return std::nullopt;
    }
    return at;
}

std::string mgrs_text(const Position& at) {
    const std::optional<GridPlace> place = grid_place(at);
    if (!place)
        return {};
    std::string run_on;
    try {
        GeographicLib::MGRS::Forward(
            place->zone, place->north, place->easting_m, place->northing_m, at.lat_deg, 5, run_on);
    } catch (const std::exception&) { // the library's own bounds of a band
        return {};
    }
    constexpr std::size_t digits = 5;
    if (run_on.size() < 2 * digits)
        return run_on;
    const std::size_t square = run_on.size() - 2 * digits;
    return fmt::format("{} {} {}",
                       run_on.substr(0, square),
                       run_on.substr(square, digits),
                       run_on.substr(square + digits));
}

std::string utm_text(const Position& at) {
    const std::optional<GridPlace> place = grid_place(at);
    const std::string square = mgrs_text(at);
    if (!place || square.empty())
        return {};
    // The band's letter stands after the zone's number; about a pole there is a letter alone.
    const std::size_t letter = square.find_first_not_of("0123456789");
    return fmt::format("{} {:.0f} {:.0f}",
                       square.substr(0, letter + 1),
                       std::floor(place->easting_m),
                       std::floor(place->northing_m));
}

std::optional<double> declination_deg(const Position& at, double year) {
    for (const char* const name : {"wmm2030", "wmm2025", "wmm2020", "wmm2015"}) {
        try {
            const GeographicLib::MagneticModel model(name);
            if (year < model.MinTime() || year > model.MaxTime())
                continue;
            double east = 0.0;
            double north = 0.0;
            double up = 0.0;
            model(year, at.lat_deg, at.lon_deg, 0.0, east, north, up);
            double across = 0.0;
            double whole = 0.0;
            double declination = 0.0;
            double inclination = 0.0;
            GeographicLib::MagneticModel::FieldComponents(
                east, north, up, across, whole, declination, inclination);
            return declination;
        } catch (const std::exception&) { // its data are not installed
            continue;
        }
    }
    return std::nullopt;
}

} // namespace tumpline::geo

#include "cli/book/book_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

std::string converged_phrase(const planner::Converged& converged) {
    return fmt::format("It took {} until no pack changed by more than {} g and no arrival by more "
                       "than {} s.{}",
                       counted(converged.rounds, "round", "rounds"),
                       planner::show_number(1000.0 * converged.largest_change_kg, 1),
                       planner::show_number(converged.largest_change_s, 1),
                       converged.settled ? ""
                                         : " They did not converge: they alternated between two "
                                           "solutions; the heavier one is shown.");
}

std::string weather_phrase(const planner::Trip& trip, const Figures& shown) {
    const planner::Weather& weather = trip.weather;
    std::vector<std::string> words;
    if (weather.high_c)
        words.push_back(fmt::format("warmest of the day {}", shown.temperature(*weather.high_c)));
    if (weather.low_c)
        words.push_back(fmt::format("coldest of the night {}", shown.temperature(*weather.low_c)));
    if (weather.wind_mps) {
        std::string wind = fmt::format("wind {}", shown.speed(*weather.wind_mps));
        if (weather.wind_from_deg)
            wind += fmt::format(" from {}°", planner::show_number(*weather.wind_from_deg, 0));
        words.push_back(std::move(wind));
    }
    if (weather.gusts_mps)
        words.push_back(fmt::format("gusts {}", shown.speed(*weather.gusts_mps)));
    if (weather.humidity)
        words.push_back(fmt::format("humidity {:.0f} %", 100.0 * *weather.humidity));
    if (weather.rain)
        words.emplace_back(*weather.rain ? "rain" : "no rain");
    if (weather.snow)
        words.emplace_back(*weather.snow ? "snow on the ground" : "no snow on the ground");
    if (weather.snow_depth_m)
        words.push_back(fmt::format("{} of snow", shown.length(*weather.snow_depth_m)));
    if (weather.water_c)
        words.push_back(fmt::format("water {}", shown.temperature(*weather.water_c)));
    return words.empty()
               ? "None was entered: what the figures assume stands above."
               : (trip.forecast.empty() ? "Entered: "
                                        : "Entered by day, hour and place, here at its hardest: ") +
                     joined(words) + ". Look at the forecast and the gauge on the day.";
}

std::string repairs_phrase(const geo::Repairs& repairs) {
    std::vector<std::string> words;
    const auto add = [&](std::size_t count, const char* one, const char* many) {
        if (count > 0)
            words.push_back(counted(static_cast<long>(count), one, many));
    };
    add(repairs.duplicates, "duplicate point dropped", "duplicate points dropped");
    add(repairs.spikes, "spike dropped", "spikes dropped");
    add(repairs.invalid_points, "point without a place dropped", "points without a place dropped");
    add(repairs.missing_heights, "missing height", "missing heights");
    add(repairs.void_heights, "void height dropped", "void heights dropped");
    add(repairs.backward_times, "time stamp running backwards", "time stamps running backwards");
    add(repairs.invalid_times, "time stamp that is no time", "time stamps that are no times");
    add(repairs.antimeridian, "crossing of the 180th meridian", "crossings of the 180th meridian");
    add(repairs.joined_parts, "gap bridged", "gaps bridged");
    return words.empty() ? "" : fmt::format("Repairs to the tracks: {}.", joined(words));
}

} // namespace

void add_about(Fields& fields, const BookSource& source) {
    const planner::Plan& plan = source.plan;
    std::vector<Fields> models;
    for (const planner::ModelUsed& model : plan.models)
        models.emplace_back()
            .text("family", model.family)
            .text("name", model.name)
            .text("source", model.source);
    std::vector<Fields> bands;
    for (const planner::BandUsed& band : plan.bands)
        bands.emplace_back()
            .text("what", band.family == "walking" ? "Times on foot" : "Times afloat")
            .text("low", fmt::format("{:.2f}", band.low))
            .text("high", fmt::format("{:.2f}", band.high))
            .text("basis", band.basis);
    std::vector<Fields> defaults;
    for (const planner::DefaultUsed& value : plan.defaults)
        defaults.emplace_back()
            .text("key", value.key)
            .text("value", value.value)
            .text("source", value.source);
    std::vector<Fields> sources;
    for (const std::string& file : source.route.sources)
        sources.emplace_back().text("source", file);
    fields.text("converged", converged_phrase(plan.converged))
        .list("models", std::move(models))
        .list("bands", std::move(bands))
        .list("defaults", std::move(defaults))
        .text("weather", weather_phrase(plan.trip, source.shown))
        .list("sources", std::move(sources))
        .text("repairs", repairs_phrase(source.route.repairs));
}

} // namespace tumpline::cli

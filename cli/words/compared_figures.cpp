#include "cli/words/compared_figures.h"

#include <fmt/format.h>

#include <cmath>

namespace tumpline::cli {

using planner::Figure;

std::string_view figure_words(Figure figure) {
    switch (figure) {
    case Figure::distance:
        return "distance";
    case Figure::walk:
        return "walking";
    case Figure::portage:
        return "portages";
    case Figure::paddle:
        return "afloat";
    case Figure::ride:
        return "by ride";
    case Figure::led:
        return "lined, waded or poled";
    case Figure::on_foot:
        return "walked, carries counted";
    case Figure::ascent:
        return "up";
    case Figure::descent:
        return "down";
    case Figure::moving:
        return "moving";
    case Figure::changeover:
        return "transitions";
    case Figure::rest:
        return "rests";
    case Figure::elapsed:
        return "from first to last";
    case Figure::days:
        return "days";
    case Figure::food:
        return "food";
    case Figure::fuel:
        return "fuel";
    case Figure::energy:
        return "energy";
    case Figure::stops:
        return "stops";
    case Figure::cautions:
        return "cautions";
    }
    return "";
}

std::string ComparedFigures::figure(Figure figure, double value) const {
    switch (figure) {
    case Figure::distance:
    case Figure::walk:
    case Figure::paddle:
    case Figure::ride:
    case Figure::led:
    case Figure::on_foot:
        return planner::show_distance(value, units_);
    case Figure::portage:
        return planner::show_portage(value, units_);
    case Figure::ascent:
    case Figure::descent:
        return planner::show_height(value, units_);
    case Figure::moving:
    case Figure::changeover:
    case Figure::rest:
    case Figure::elapsed:
        return planner::show_duration(value);
    case Figure::food:
    case Figure::fuel:
        return planner::show_mass(value, units_);
    case Figure::energy:
        return planner::show_energy(value);
    case Figure::days:
    case Figure::stops:
    case Figure::cautions:
        return fmt::format("{:.0f}", value);
    }
    return {};
}

std::string ComparedFigures::difference(Figure kind, double value) const {
    const std::string size = figure(kind, std::abs(value));
    return size == figure(kind, 0.0) ? std::string()
                                     : fmt::format("{}{}", value < 0.0 ? "-" : "+", size);
}

} // namespace tumpline::cli

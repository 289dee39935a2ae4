#include "planner/models/hydraulic_geometry.h"

#include <cmath>

namespace tumpline::planner {

double at_a_station_ratio(double flow_ratio, double exponent) {
    return std::pow(flow_ratio, exponent);
}

bool at_a_station_covers(double flow_ratio) {
    return flow_ratio >= least_flow_ratio && flow_ratio <= most_flow_ratio;
}

} // namespace tumpline::planner

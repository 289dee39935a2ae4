// Reads trips, one a line of standard input, and prints for each, one a line, a JSON list of the
// places at which the reader finds a problem.

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <nlohmann/json.hpp>

#include <iostream>
#include <string>

int main() {
    std::ios::sync_with_stdio(false);
    for (std::string line; std::getline(std::cin, line);) {
        nlohmann::json places = nlohmann::json::array();
        try {
            (void)tumpline::planner::read_trip_text(line, "trip.json");
        } catch (const tumpline::geo::InputError& error) {
            for (const tumpline::geo::Problem& problem : error.problems())
                places.push_back(problem.place);
        }
        std::cout << places.dump() << "\n";
    }
}

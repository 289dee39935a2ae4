#include "tests/support/small_trip_file.h"

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <nlohmann/json.hpp>

namespace tumpline::test {

namespace {

std::string text_with(const std::string& pointer, const std::string& value) {
    nlohmann::json file = nlohmann::json::parse(small_trip_text);
    file[nlohmann::json::json_pointer(pointer)] = nlohmann::json::parse(value);
    return file.dump();
}

} // namespace

planner::Trip small_trip_with(const std::string& pointer, const std::string& value) {
    return planner::read_trip_text(text_with(pointer, value), "t.json");
}

std::vector<std::string> problems_with(const std::string& pointer, const std::string& value) {
    std::vector<std::string> found;
    try {
        (void)small_trip_with(pointer, value);
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            found.push_back(to_string(problem));
    }
    return found;
}

} // namespace tumpline::test

// Any bytes as a trip file: a trip or an InputError with a problem in it, nothing else. Files that
// the trip names are not opened here.

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline;
    const std::string text(reinterpret_cast<const char*>(data), size);
    try {
        const planner::Trip trip = planner::read_trip_text(text, "fuzz.json");
        if (trip.party.empty() || trip.name.empty()) // both are promised
            std::abort();
    } catch (const geo::InputError& error) {
        if (error.problems().empty())
            std::abort();
        for (const geo::Problem& problem : error.problems())
            if (problem.found.empty() && problem.expected.empty())
                std::abort();
    }
    return 0;
}

#pragma once

#include "planner/recordings/new_trip.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// What a trip file names beside what was read out of the tracks.
struct FirstTripFiles {
    std::string name;                   ///< title of the trip
    std::vector<std::string> tracks;    ///< as they stand from the trip file's folder
    std::vector<std::string> elevation; ///< likewise
};

/// A trip file that plans as it stands, every key of docs/trip-file.md in it: in force, or behind
/// `//` with a value that could stand there. A line that begins with `// "` or `// {` is taken into
/// force by taking the two strokes away; the commas are right either way.
[[nodiscard]] std::string first_trip_text(const planner::FirstTrip& trip,
                                          const FirstTripFiles& files);

} // namespace tumpline::cli

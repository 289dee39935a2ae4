// Any bytes as a GeoJSON file: a track or an InputError, nothing else. The library recognises files
// by content and name, so each text is written to a file. Seeds: tests/spoilt/*.geojson.

#include "geo/input_error.h"
#include "geo/tracks/vector_file.h"
#include "tests/support/temp_folder.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline;
    static const test::TempFolder folder;
    try {
        const geo::TrackFile file = geo::read_vector_file(
            folder.write("fuzz.geojson", {reinterpret_cast<const char*>(data), size}));
        if (file.tracks.empty() && file.waypoints.empty())
            std::abort();
        for (const geo::Track& track : file.tracks)
            for (const geo::TrackPoint& point : geo::joined(track))
                if (!geo::is_valid(point.at))
                    std::abort();
    } catch (const geo::InputError& error) {
        if (error.problems().empty())
            std::abort();
    }
    return 0;
}

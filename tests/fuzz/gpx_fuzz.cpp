// Any bytes as a GPX file: a track or an InputError, nothing else. Seeds: tests/spoilt/*.gpx.

#include "geo/input_error.h"
#include "geo/tracks/gpx.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline;
    try {
        const geo::TrackFile file =
            geo::read_gpx_text({reinterpret_cast<const char*>(data), size}, "fuzz.gpx");
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

// A line with the name of a zone and four bytes of an hour: what is no zone is answered as such,
// and in a zone an instant comes back from its local time, but for the hour that a change repeats.

#include "geo/light/time_zone.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline::geo;
    if (size < 4)
        return 0;
    std::uint32_t hour = 0;
    for (std::size_t i = 0; i < 4; ++i)
        hour = 256 * hour + data[i];
    const std::string name(reinterpret_cast<const char*>(data) + 4, size - 4);
    if (!is_time_zone(name)) {
        const std::string near = nearest_time_zone(name);
        if (!near.empty() && !is_time_zone(near))
            std::abort();
        return 0;
    }
    const sys_seconds instant{std::chrono::hours(hour % 1'700'000)}; // to 2163
    const std::chrono::seconds off = to_instant(to_local(instant, name), name) - instant;
    if (off < -std::chrono::hours(25) || off > std::chrono::hours(25))
        std::abort();
    if (rfc3339(instant, name).size() < 20)
        std::abort();
    return 0;
}

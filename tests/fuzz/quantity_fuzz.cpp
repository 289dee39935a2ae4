// Any text as a quantity of every dimension, a time of day and a date: a finite value, or a refusal
// that says what was expected.

#include "planner/quantities/quantities.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline::planner;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const Dimension dimension : {Dimension::mass,
                                      Dimension::length,
                                      Dimension::area,
                                      Dimension::speed,
                                      Dimension::volume,
                                      Dimension::duration,
                                      Dimension::temperature,
                                      Dimension::energy,
                                      Dimension::energy_density,
                                      Dimension::mass_per_volume,
                                      Dimension::volume_per_mass,
                                      Dimension::drinking,
                                      Dimension::flow}) {
        const Reading reading = read_quantity(text, dimension);
        if (reading.value ? !std::isfinite(*reading.value) : reading.expected.empty())
            std::abort();
    }
    if (const auto time = read_time_of_day(text);
        time && (time->count() < 0 || time->count() > 86400))
        std::abort();
    if (const auto date = read_date(text); date && !date->ok())
        std::abort();
    return 0;
}

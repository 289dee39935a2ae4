// Any bytes as a raster of heights: heights on Earth and void cells, or an InputError, nothing
// else. The library recognises files by content, so each is written to a file.

#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "tests/support/temp_folder.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline;
    static const test::TempFolder folder;
    try {
        geo::Elevation elevation(
            {folder.write("fuzz.tif", {reinterpret_cast<const char*>(data), size})});
        for (const geo::Position& at :
             {geo::Position{61.0, 12.0}, geo::Position{60.99, 12.02}, geo::Position{0.0, 0.0}})
            if (const std::optional<double> height_m = elevation.at(at);
                height_m && !std::isfinite(*height_m))
                std::abort();
    } catch (const geo::InputError& error) {
        if (error.problems().empty())
            std::abort();
    }
    return 0;
}

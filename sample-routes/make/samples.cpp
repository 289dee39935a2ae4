#include "sample-routes/make/samples.h"

#include <array>
#include <utility>

namespace tumpline::samples {

void make_samples(const std::filesystem::path& into) {
    using Make = void (*)(const std::filesystem::path&);
    constexpr std::array<std::pair<const char*, Make>, 8> all{{
        {"saddle", make_saddle},
        {"saddle", make_recorded},
        {"lake-chain", make_lake_chain},
        {"desert-river", make_desert_river},
        {"three-day-pass", make_three_day_pass},
        {"fourteen-portages", make_fourteen_portages},
        {"five-over-two-passes", make_five_over_two_passes},
        {"northern-autumn", make_northern_autumn},
    }};
    for (const auto& [folder, make] : all) {
        std::filesystem::create_directories(into / folder);
        make(into / folder);
    }
}

} // namespace tumpline::samples

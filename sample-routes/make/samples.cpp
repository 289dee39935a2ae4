#include "sample-routes/make/samples.h"

#include <array>
#include <utility>

namespace tumpline::samples {

void make_samples(const std::filesystem::path& into) {
    using Make = void (*)(const std::filesystem::path&);
    constexpr std::array<std::pair<const char*, Make>, 3> all{{
        {"saddle", make_saddle},
        {"lake-chain", make_lake_chain},
        {"desert-river", make_desert_river},
    }};
    for (const auto& [folder, make] : all) {
        std::filesystem::create_directories(into / folder);
        make(into / folder);
    }
}

} // namespace tumpline::samples

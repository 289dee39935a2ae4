#pragma once

#include <filesystem>

namespace tumpline::samples {

/// Writes the tracks and rasters of every sample route into its folder below `into`, the same on
/// each run. The trip files are written by hand and left alone.
void make_samples(const std::filesystem::path& into);

void make_saddle(const std::filesystem::path& into);
/// A walk and a paddle with times, for learning one's own pace; beside the saddle.
void make_recorded(const std::filesystem::path& into);
void make_lake_chain(const std::filesystem::path& into);
void make_desert_river(const std::filesystem::path& into);
void make_three_day_pass(const std::filesystem::path& into);
void make_fourteen_portages(const std::filesystem::path& into);
void make_five_over_two_passes(const std::filesystem::path& into);
void make_northern_autumn(const std::filesystem::path& into);

} // namespace tumpline::samples

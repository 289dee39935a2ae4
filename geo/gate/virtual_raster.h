#pragma once

#include "geo/gate/passage.h"

#include <filesystem>
#include <string_view>

namespace tumpline::geo {

/// Whether a file that starts so is GDAL's virtual raster (VRT), which is made of other files.
[[nodiscard]] bool is_virtual_raster(std::string_view first_bytes);

/// Looks through a VRT and those that it is made of: bands of other rasters only, each a regular
/// file in or below `folders`, in a format of heights; none that is made of itself; bounded in
/// depth and number. Call prepare_gdal first, and with a Passage to `folders`.
/// Throws: InputError naming the first source that is something else.
void require_plain_sources(const std::filesystem::path& file, const Folders& folders);

} // namespace tumpline::geo

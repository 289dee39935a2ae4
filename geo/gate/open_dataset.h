#pragma once

#include "geo/gate/passage.h"

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

class GDALDataset;

namespace tumpline::geo {

struct CloseDataset {
    void operator()(GDALDataset* dataset) const;
};

using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;

/// Opens a raster, for reading, in one of the formats of heights; a VRT is looked through first.
/// `folders` are those in which what it is made of may lie; to read it later needs a Passage to
/// them.
/// Throws: InputError.
[[nodiscard]] Dataset open_raster(const std::filesystem::path& file, const Folders& folders);

/// Opens a file of lines and points, for reading, in one of the formats of tracks but GPX; needs a
/// Passage to `folders_around` it, now and as long as it is read.
/// Throws: InputError; also for a file that would fill the memory when GDAL reads it: JSON or XML
/// of more than five million values, which are held whole.
[[nodiscard]] Dataset open_vector(const std::filesystem::path& file);

/// Opens a file of what lies around a route, as open_vector does, and extracts of OpenStreetMap
/// (.osm, .pbf) besides, with the tags that a map needs as fields.
/// Throws: InputError; also for an extract of more than 50 MB or a file of more than 2 GB that has
/// no index.
[[nodiscard]] Dataset open_layers(const std::filesystem::path& file);

} // namespace tumpline::geo

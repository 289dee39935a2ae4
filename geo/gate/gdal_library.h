#pragma once

namespace tumpline::geo {

/// Makes GDAL ready in this thread and closes all its ways but one: the formats of gdal_formats.h
/// and no other, files as a Passage lets them, nothing written, fetched or started. Every use of
/// GDAL begins here. Answers whether PROJ found its database, without which no coordinate system
/// has a meaning.
bool prepare_gdal();

} // namespace tumpline::geo

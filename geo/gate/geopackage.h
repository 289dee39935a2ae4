#pragma once

#include <filesystem>
#include <string_view>

namespace tumpline::geo {

/// Whether a file that starts so is an SQLite database, as a GeoPackage is.
[[nodiscard]] bool is_sqlite(std::string_view first_bytes);

/// Looks through a database before GDAL does: tables only, no views, which are programs that need
/// not end, and no write-ahead log beside it, which a reader would have to write to.
/// Throws: InputError.
void require_plain_tables(const std::filesystem::path& file);

} // namespace tumpline::geo

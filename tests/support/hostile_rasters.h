#pragma once

#include <filesystem>
#include <string>

/// Files made to lead a reader astray, for the gate's tests.
namespace tumpline::test {

/// A VRT over the ground of `small_raster` with one source, named as it is.
[[nodiscard]] std::string vrt_of(const std::string& source);

/// The same with bands of the kind that reads the bytes of any file as cells.
[[nodiscard]] std::string raw_vrt_of(const std::string& source);

/// A KML of tiles that refers to more of them at `address`.
[[nodiscard]] std::string kml_with_link(const std::string& address);

/// An MRF header that keeps its cells and index in the files named.
[[nodiscard]] std::string mrf_with_files(const std::string& data, const std::string& index);

/// GeoJSON of one line in a coordinate system named so.
[[nodiscard]] std::string geojson_in(const std::string& crs);

/// A pipe that nobody writes to: whoever opens it to read waits for ever.
std::filesystem::path make_pipe(const std::filesystem::path& path);

} // namespace tumpline::test

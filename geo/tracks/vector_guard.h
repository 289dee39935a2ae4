#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::geo {

/// While it lives, GDAL's vector formats fetch nothing in this thread that a file refers to: a
/// GeoJSON file may name its coordinate system by an address, a table of an SQLite file may point
/// to another source.
class VectorGuard {
  public:
    VectorGuard();
    ~VectorGuard();
    VectorGuard(const VectorGuard&) = delete;
    VectorGuard& operator=(const VectorGuard&) = delete;
    VectorGuard(VectorGuard&&) = delete;
    VectorGuard& operator=(VectorGuard&&) = delete;
};

/// Names of the vector formats that are tried on a file, ended by a null: without those that lead
/// to other files, services and programs. GPX has a reader of its own. Call prepare_gdal first.
[[nodiscard]] std::vector<const char*> vector_drivers();

/// Throws: InputError for a file that would fill the memory when GDAL reads it: JSON or XML of more
/// than five million values, which are held whole, and packed files, whose size nobody knows.
void refuse_unbounded(const std::filesystem::path& file);

/// Where a fault that GDAL reported says that the trouble is, as "line 3"; empty if it does not.
[[nodiscard]] std::string fault_place(const std::string& fault, const std::filesystem::path& file);

/// A fault in words for people: without the library's own names, paths and offsets.
[[nodiscard]] std::string fault_in_words(std::string fault, const std::filesystem::path& file);

} // namespace tumpline::geo

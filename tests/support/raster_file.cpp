#include "tests/support/raster_file.h"

#include "geo/gate/gdal_library.h"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <fstream>
#include <memory>
#include <stdexcept>
#include <vector>

namespace tumpline::test {

void keep_memory(const std::string& memory, const std::filesystem::path& file) {
    vsi_l_offset size = 0;
    constexpr int take_it = TRUE;
    const std::unique_ptr<GByte, decltype(&VSIFree)> bytes(
        VSIGetMemFileBuffer(memory.c_str(), &size, take_it), VSIFree);
    std::ofstream out(file, std::ios::binary);
    out.write(reinterpret_cast<const char*>(bytes.get()), static_cast<std::streamsize>(size));
    if (!bytes || !out)
        throw std::runtime_error("cannot write " + file.string());
}

void write_raster(const std::filesystem::path& file,
                  const RasterFile& raster,
                  const std::function<double(int, int)>& height) {
    geo::prepare_gdal();
    // Writes the corner as it stands even where cells are points, as other programs do.
    CPLSetThreadLocalConfigOption("GTIFF_POINT_GEO_IGNORE", raster.point ? "TRUE" : nullptr);
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    // The gate lets GDAL write nothing but memory.
    const std::string memory = "/vsimem/" + file.filename().string();
    std::unique_ptr<GDALDataset> dataset(driver->Create(memory.c_str(),
                                                        raster.columns,
                                                        raster.rows,
                                                        1,
                                                        raster.bytes ? GDT_Byte : GDT_Float64,
                                                        nullptr));
    if (!dataset)
        throw std::runtime_error("cannot write " + file.string());
    auto corner_and_cell = raster.corner_and_cell;
    dataset->SetGeoTransform(corner_and_cell.data());
    if (!raster.crs.empty()) {
        OGRSpatialReference crs;
        crs.SetFromUserInput(raster.crs.c_str());
        dataset->SetSpatialRef(&crs);
    }
    if (raster.point)
        dataset->SetMetadataItem("AREA_OR_POINT", "Point");
    GDALRasterBand* band = dataset->GetRasterBand(1);
    if (raster.no_data)
        band->SetNoDataValue(*raster.no_data);
    if (!raster.unit.empty())
        band->SetUnitType(raster.unit.c_str());
    if (raster.bytes) {
        GDALColorTable colours;
        const GDALColorEntry red{255, 0, 0, 255};
        colours.SetColorEntry(0, &red);
        band->SetColorTable(&colours);
    }
    std::vector<double> row(static_cast<std::size_t>(raster.columns));
    for (int y = 0; y < raster.rows; ++y) {
        for (int x = 0; x < raster.columns; ++x)
            row[static_cast<std::size_t>(x)] = height(x, y);
        if (band->RasterIO(GF_Write,
                           0,
                           y,
                           raster.columns,
                           1,
                           row.data(),
                           raster.columns,
                           1,
                           GDT_Float64,
                           0,
                           0,
                           nullptr) != CE_None)
            throw std::runtime_error("cannot write " + file.string());
    }
    dataset.reset();
    keep_memory(memory, file);
    CPLSetThreadLocalConfigOption("GTIFF_POINT_GEO_IGNORE", nullptr);
}

void write_hgt(const std::filesystem::path& file,
               int samples_per_side,
               const std::function<int(int, int)>& height) {
    std::string bytes;
    bytes.reserve(2 * static_cast<std::size_t>(samples_per_side) *
                  static_cast<std::size_t>(samples_per_side));
    for (int row = 0; row < samples_per_side; ++row)
        for (int column = 0; column < samples_per_side; ++column) {
            const auto bits = static_cast<unsigned>(height(column, row)) & 0xFFFFU;
            bytes.push_back(static_cast<char>(bits >> 8U));
            bytes.push_back(static_cast<char>(bits & 0xFFU));
        }
    std::ofstream out(file, std::ios::binary);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!out)
        throw std::runtime_error("cannot write " + file.string());
}

RasterFile small_raster() {
    return {.columns = 50,
            .rows = 40,
            .corner_and_cell = {12.0, 0.001, 0.0, 61.0, 0.0, -0.001},
            .crs = "EPSG:4326",
            .no_data = std::nullopt,
            .unit = ""};
}

geo::Position centre(double column, double row) {
    return {.lat_deg = 61.0 - 0.001 * (row + 0.5), .lon_deg = 12.0 + 0.001 * (column + 0.5)};
}

double tilted_m(int column, int row) {
    return 100.0 + 3.0 * column - 2.0 * row;
}

} // namespace tumpline::test

#include "sample-routes/make/files.h"

#include <fmt/chrono.h>
#include <fmt/format.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <array>
#include <fstream>
#include <memory>
#include <stdexcept>

namespace tumpline::samples {

void write_gpx(const std::filesystem::path& file, const std::string& title, const Layout& layout) {
    std::ofstream out(file);
    out << "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<gpx version=\"1.1\" creator=\"tumpline make_samples\" "
           "xmlns=\"http://www.topografix.com/GPX/1/1\">\n";
    out << fmt::format("<metadata><name>{}</name><desc>Invented; this place does not "
                       "exist.</desc></metadata>\n",
                       title);
    for (const Waypoint& place : layout.waypoints)
        out << fmt::format("<wpt lat=\"{:.6f}\" lon=\"{:.6f}\"><ele>{:.0f}</ele><name>{}</name>"
                           "<type>{}</type></wpt>\n",
                           place.lat_deg,
                           place.lon_deg,
                           place.height_m,
                           place.name,
                           place.type);
    for (const Line& line : layout.lines) {
        out << fmt::format("<trk><name>{}</name><type>{}</type><trkseg>\n", line.name, line.type);
        for (const Point& point : line.points) {
            out << fmt::format("<trkpt lat=\"{:.6f}\" lon=\"{:.6f}\"><ele>{:.1f}</ele>",
                               point.lat_deg,
                               point.lon_deg,
                               point.recorded_m);
            if (point.time)
                out << fmt::format("<time>{:%FT%T}Z</time>", *point.time);
            out << "</trkpt>\n";
        }
        out << "</trkseg></trk>\n";
    }
    out << "</gpx>\n";
}

void write_geojson(const std::filesystem::path& file, const Layout& layout) {
    std::ofstream out(file);
    out << "{\"type\": \"FeatureCollection\", \"features\": [\n";
    for (const Waypoint& place : layout.waypoints)
        out << fmt::format(
            "{{\"type\": \"Feature\", \"properties\": {{\"name\": \"{}\", \"type\": \"{}\"}}, "
            "\"geometry\": {{\"type\": \"Point\", \"coordinates\": [{:.6f}, {:.6f}, {:.0f}]}}}},\n",
            place.name,
            place.type,
            place.lon_deg,
            place.lat_deg,
            place.height_m);
    for (std::size_t i = 0; i < layout.lines.size(); ++i) {
        const Line& line = layout.lines[i];
        out << fmt::format(
            "{{\"type\": \"Feature\", \"properties\": {{\"name\": \"{}\", \"type\": \"{}\"}}, "
            "\"geometry\": {{\"type\": \"LineString\", \"coordinates\": [\n",
            line.name,
            line.type);
        for (std::size_t j = 0; j < line.points.size(); ++j)
            out << fmt::format("[{:.6f}, {:.6f}, {:.1f}]{}\n",
                               line.points[j].lon_deg,
                               line.points[j].lat_deg,
                               line.points[j].recorded_m,
                               j + 1 < line.points.size() ? "," : "");
        out << (i + 1 < layout.lines.size() ? "]}},\n" : "]}}\n");
    }
    out << "]}\n";
}

void write_geotiff(const std::filesystem::path& file, const Raster& raster) {
    GDALRegister_GTiff();
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    if (driver == nullptr)
        throw std::runtime_error("GDAL has no GeoTIFF driver");
    const std::array<const char*, 3> options{"COMPRESS=DEFLATE", "PREDICTOR=2", nullptr};
    // In memory first: where the program's own gate is in the same process, GDAL writes nothing
    // else.
    const std::string memory = "/vsimem/" + file.filename().string();
    std::unique_ptr<GDALDataset> out(driver->Create(memory.c_str(),
                                                    raster.columns,
                                                    raster.rows,
                                                    1,
                                                    GDT_Int16,
                                                    const_cast<char**>(options.data())));
    if (!out)
        throw std::runtime_error(fmt::format("{} cannot be written", file.string()));
    std::array<double, 6> grid{
        raster.west_deg, raster.cell_lon_deg, 0.0, raster.north_deg, 0.0, -raster.cell_lat_deg};
    out->SetGeoTransform(grid.data());
    OGRSpatialReference wgs84;
    wgs84.importFromEPSG(4326);
    out->SetSpatialRef(&wgs84);
    GDALRasterBand* band = out->GetRasterBand(1);
    band->SetNoDataValue(-32768.0);
    std::vector<std::int16_t> heights = raster.heights_m;
    if (band->RasterIO(GF_Write,
                       0,
                       0,
                       raster.columns,
                       raster.rows,
                       heights.data(),
                       raster.columns,
                       raster.rows,
                       GDT_Int16,
                       0,
                       0) != CE_None)
        throw std::runtime_error(fmt::format("{} cannot be written", file.string()));
    out.reset();
    vsi_l_offset size = 0;
    const std::unique_ptr<GByte, decltype(&VSIFree)> bytes(
        VSIGetMemFileBuffer(memory.c_str(), &size, TRUE), VSIFree);
    std::ofstream disk(file, std::ios::binary);
    disk.write(reinterpret_cast<const char*>(bytes.get()), static_cast<std::streamsize>(size));
    if (!bytes || !disk)
        throw std::runtime_error(fmt::format("{} cannot be written", file.string()));
}

} // namespace tumpline::samples

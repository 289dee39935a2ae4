#include "geo/layers/write_features.h"

#include "geo/gate/gdal_library.h"
#include "geo/gate/open_dataset.h"
#include "geo/gate/quiet_gdal.h"

#include <cpl_conv.h>
#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <array>
#include <memory>
#include <stdexcept>

namespace tumpline::geo {

namespace {

/// Writes one file in the library's memory.
class FeatureFile {
  public:
    FeatureFile(const char* format, const char* ending, std::string_view date)
        : name_(fmt::format("/vsimem/tumpline_out_{}.{}", fmt::ptr(this), ending)) {
        (void)prepare_gdal();
        CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE",
                                      fmt::format("{}T00:00:00.000Z", date).c_str());
        wgs84_.importFromEPSG(4326);
        wgs84_.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
        GDALDriver* driver = GetGDALDriverManager()->GetDriverByName(format);
        if (driver != nullptr)
            dataset_.reset(driver->Create(name_.c_str(), 0, 0, 0, GDT_Unknown, nullptr));
        require(dataset_ != nullptr);
    }

    ~FeatureFile() {
        dataset_.reset();
        VSIUnlink(name_.c_str());
        CPLSetThreadLocalConfigOption("OGR_CURRENT_DATE", nullptr);
    }

    FeatureFile(const FeatureFile&) = delete;
    FeatureFile& operator=(const FeatureFile&) = delete;
    FeatureFile(FeatureFile&&) = delete;
    FeatureFile& operator=(FeatureFile&&) = delete;

    void write(const OutLayer& layer) {
        const OGRwkbGeometryType type = layer.points ? wkbPoint25D : wkbMultiLineString25D;
        OGRLayer* into = dataset_->CreateLayer(layer.name.c_str(), &wgs84_, type, nullptr);
        require(into != nullptr);
        make_fields(*into, layer);
        for (const OutFeature& feature : layer.features) {
            const OGRFeatureUniquePtr written(OGRFeature::CreateFeature(into->GetLayerDefn()));
            for (const auto& [key, value] : feature.fields) {
                if (value.number)
                    written->SetField(key.c_str(), *value.number);
                else if (!value.text.empty())
                    written->SetField(key.c_str(), value.text.c_str());
            }
            if (!feature.parts.empty())
                written->SetGeometry(geometry(feature, layer.points).get());
            require(into->CreateFeature(written.get()) == OGRERR_NONE);
        }
    }

    /// A table without places, for the mark.
    void write_mark(std::string_view mark) {
        OGRLayer* about = dataset_->CreateLayer("about", nullptr, wkbNone, nullptr);
        require(about != nullptr);
        OGRFieldDefn field("mark", OFTString);
        require(about->CreateField(&field) == OGRERR_NONE);
        const OGRFeatureUniquePtr row(OGRFeature::CreateFeature(about->GetLayerDefn()));
        row->SetField("mark", std::string(mark).c_str());
        require(about->CreateFeature(row.get()) == OGRERR_NONE);
    }

    [[nodiscard]] std::string bytes() {
        dataset_.reset(); // closed, and so whole
        vsi_l_offset size = 0;
        const GByte* const bytes = VSIGetMemFileBuffer(name_.c_str(), &size, FALSE);
        require(bytes != nullptr);
        return {reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size)};
    }

  private:
    void require(bool done) const {
        if (!done)
            throw std::runtime_error(fmt::format("GDAL cannot write: {}", quiet_.fault()));
    }

    void make_fields(OGRLayer& into, const OutLayer& layer) const {
        for (const OutFeature& feature : layer.features)
            for (const auto& [key, value] : feature.fields) {
                if (into.GetLayerDefn()->GetFieldIndex(key.c_str()) >= 0)
                    continue;
                OGRFieldDefn field(key.c_str(), value.number ? OFTReal : OFTString);
                require(into.CreateField(&field) == OGRERR_NONE);
            }
    }

    static std::unique_ptr<OGRGeometry> geometry(const OutFeature& feature, bool points) {
        const auto put = [](auto& shape, const OutPoint& point, bool heights) {
            if (heights)
                shape.addPoint(point.at.lon_deg, point.at.lat_deg, *point.height_m);
            else
                shape.addPoint(point.at.lon_deg, point.at.lat_deg);
        };
        if (points) {
            const OutPoint& point = feature.parts.front().front();
            auto shape = std::make_unique<OGRPoint>(point.at.lon_deg, point.at.lat_deg);
            if (point.height_m)
                shape->setZ(*point.height_m);
            return shape;
        }
        auto lines = std::make_unique<OGRMultiLineString>();
        for (const std::vector<OutPoint>& part : feature.parts) {
            OGRLineString line;
            const bool heights = std::ranges::all_of(
                part, [](const OutPoint& point) { return point.height_m.has_value(); });
            for (const OutPoint& point : part)
                put(line, point, heights);
            lines->addGeometry(&line);
        }
        return lines;
    }

    QuietGdal quiet_;
    std::string name_;
    OGRSpatialReference wgs84_;
    Dataset dataset_;
};

} // namespace

std::string geopackage(const OutFile& file) {
    FeatureFile out("GPKG", "gpkg", file.date);
    for (const OutLayer& layer : file.layers)
        out.write(layer);
    out.write_mark(file.mark);
    return out.bytes();
}

std::string kml(const OutFile& file) {
    FeatureFile out("LIBKML", "kml", file.date);
    for (const OutLayer& layer : file.layers)
        out.write(layer);
    std::string text = out.bytes();
    const std::size_t first = text.find('\n'); // after <?xml ...?>
    text.insert(first == std::string::npos ? text.size() : first + 1,
                fmt::format("<!-- {} -->\n", file.mark));
    return text;
}

} // namespace tumpline::geo

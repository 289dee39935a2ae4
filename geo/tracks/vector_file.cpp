#include "geo/tracks/vector_file.h"

#include "geo/gate/gdal_fault.h"
#include "geo/gate/open_dataset.h"
#include "geo/gate/passage.h"
#include "geo/gate/quiet_gdal.h"
#include "geo/gate/to_wgs84.h"
#include "geo/ground/geoid.h"
#include "geo/input_error.h"
#include "geo/one_line.h"
#include "geo/tracks/track_repair.h"

#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>
#include <ogrsf_frmts.h>

#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::geo {

namespace {

std::string attribute(const OGRFeature& feature, std::initializer_list<const char*> keys) {
    for (const char* key : keys) {
        const int index = feature.GetFieldIndex(key);
        if (index >= 0 && feature.IsFieldSetAndNotNull(index))
            return one_line(feature.GetFieldAsString(index));
    }
    return {};
}

class VectorReader {
  public:
    explicit VectorReader(const std::filesystem::path& file) { result_.file = file; }

    [[nodiscard]] TrackFile read() {
        const Folders folders = folders_around(result_.file);
        const Passage passage(folders);
        const Dataset dataset = open_vector(result_.file);
        const QuietGdal quiet;
        const std::string_view format = dataset->GetDriver()->GetDescription();
        rfc7946_ = format == "GeoJSON" || format == "GeoJSONSeq";
        for (OGRLayer* layer : dataset->GetLayers())
            read_layer(*layer);
        // a file that ends early or is damaged gives what it can and complains: half a way is none
        if (!quiet.fault().empty())
            fail({.place = fault_place(quiet.fault(), result_.file),
                  .found = fault_in_words(quiet.fault(), result_.file),
                  .expected = "a file that can be read to its end and needs nothing else",
                  .advice = "export the track again"});
        if (areas_ > 0)
            result_.left_out.push_back(fmt::format("{} area{}", areas_, areas_ == 1 ? "" : "s"));
        finish(result_, first_invalid_);
        return std::move(result_);
    }

  private:
    /// What is wrong; the file is added.
    struct Fault {
        std::string place;
        std::string found;
        std::string expected;
        std::string advice;
    };

    [[nodiscard]] Problem problem(Fault fault) const {
        return {.file = result_.file.string(),
                .place = std::move(fault.place),
                .found = std::move(fault.found),
                .expected = std::move(fault.expected),
                .advice = std::move(fault.advice)};
    }

    [[noreturn]] void fail(Fault fault) const { throw InputError({problem(std::move(fault))}); }

    void read_layer(OGRLayer& layer);
    void read_feature(const OGRFeature& feature);
    void read_geometry(const OGRGeometry& geometry, Track& track, const Waypoint& named);
    void read_line(const OGRLineString& line, Track& track);
    void read_waypoint(const OGRPoint& point, Waypoint waypoint);
    std::optional<TrackPoint> place(const OGRPoint& point);
    std::optional<double> height(const OGRPoint& point, const Position& at);
    void count_named();

    TrackFile result_;
    std::unique_ptr<const ToWgs84> to_wgs84_; ///< of the layer being read
    bool rfc7946_ = false;
    bool above_ellipsoid_ = false; ///< heights of the layer being read
    std::size_t feature_ = 0;
    std::size_t points_ = 0;
    std::size_t areas_ = 0;
    std::optional<Problem> first_invalid_;
};

void VectorReader::read_layer(OGRLayer& layer) {
    const OGRSpatialReference* reference = layer.GetSpatialRef();
    to_wgs84_.reset();
    if (reference != nullptr) {
        to_wgs84_ = std::make_unique<const ToWgs84>(*reference);
        if (!to_wgs84_->usable())
            fail({.place = fmt::format("layer {}", one_line(layer.GetName())),
                  .found = fmt::format("the coordinate system {}", one_line(reference->GetName())),
                  .expected = "one that can be turned into longitude and latitude",
                  .advice = "save the track in WGS 84"});
        above_ellipsoid_ =
            rfc7946_ || (reference->IsGeographic() != 0 && reference->GetAxesCount() == 3);
    }
    for (const OGRFeatureUniquePtr& feature : layer)
        read_feature(*feature);
}

void VectorReader::read_feature(const OGRFeature& feature) {
    ++feature_;
    const OGRGeometry* geometry = feature.GetGeometryRef();
    if (geometry == nullptr || geometry->IsEmpty() != 0)
        return;
    if (!to_wgs84_)
        fail({.place = fmt::format("feature {}", feature_),
              .found = "coordinates without a coordinate system",
              .expected = "a file that says which system its coordinates are in",
              .advice = "add it (a shapefile's .prj file), or save the track as GeoJSON"});
    for (const char* const key : {"name", "title", "type", "travel"}) {
        const int index = feature.GetFieldIndex(key);
        if (rfc7946_ && index >= 0 && feature.IsFieldSetAndNotNull(index) != 0 &&
            CPLIsUTF8(feature.GetFieldAsString(index), -1) == 0)
            fail({.place = fmt::format("feature {}", feature_),
                  .found = fmt::format("a \"{}\" that is not UTF-8", key),
                  .expected = "GeoJSON in UTF-8",
                  .advice = "save the file as UTF-8"});
    }
    Track track;
    track.kind = TrackKind::line;
    track.name = attribute(feature, {"name", "title"});
    track.type = attribute(feature, {"type", "travel"});
    const Waypoint named{
        .name = track.name, .type = track.type, .at = {0.0, 0.0}, .height_m = std::nullopt};
    read_geometry(*geometry, track, named);
    if (!track.parts.empty()) {
        count_named();
        result_.tracks.push_back(std::move(track));
    }
}

void VectorReader::read_geometry(const OGRGeometry& geometry, Track& track, const Waypoint& named) {
    const OGRwkbGeometryType type = wkbFlatten(geometry.getGeometryType());
    if (geometry.IsEmpty() != 0)
        return;
    if (type == wkbPoint) {
        read_waypoint(*geometry.toPoint(), named);
    } else if (type == wkbLineString) {
        read_line(*geometry.toLineString(), track);
    } else if (OGR_GT_IsSubClassOf(type, wkbGeometryCollection) != 0 && type != wkbMultiPolygon &&
               type != wkbMultiSurface) {
        for (const OGRGeometry* part : *geometry.toGeometryCollection())
            read_geometry(*part, track, named);
    } else if (OGR_GT_IsSubClassOf(type, wkbCurve) != 0) { // arcs, as chords of four degrees
        const std::unique_ptr<OGRGeometry> chords(geometry.getLinearGeometry(4.0));
        if (chords && wkbFlatten(chords->getGeometryType()) == wkbLineString)
            read_line(*chords->toLineString(), track);
    } else {
        ++areas_;
    }
}

void VectorReader::read_line(const OGRLineString& line, Track& track) {
    std::vector<TrackPoint> part;
    part.reserve(static_cast<std::size_t>(line.getNumPoints()));
    // The library gives points without a height one of 0 in a line whose other points have some;
    // this is looked at before heights are turned from one datum into another.
    std::vector<double> heights_m;
    for (const OGRPoint& point : line)
        if (point.Is3D() != 0 && std::isfinite(point.getZ()))
            heights_m.push_back(point.getZ());
    const bool zero_is_void = zero_means_unknown(heights_m);
    for (const OGRPoint& point : line) {
        std::optional<TrackPoint> usable = place(point);
        if (!usable) {
            ++track.repairs.invalid_points;
            continue;
        }
        if (zero_is_void && point.getZ() == 0.0) {
            usable->height_m.reset();
            ++track.repairs.void_heights;
        }
        part.push_back(*usable);
    }
    track.parts.push_back(std::move(part)); // an empty one too: its invalid points count
}

void VectorReader::read_waypoint(const OGRPoint& point, Waypoint waypoint) {
    count_named();
    if (const std::optional<TrackPoint> usable = place(point)) {
        waypoint.at = usable->at;
        waypoint.height_m = usable->height_m;
        result_.waypoints.push_back(std::move(waypoint));
    } else if (result_.left_out.size() < 100) {
        result_.left_out.push_back(fmt::format("point {} without a usable place", waypoint.name));
    }
}

std::optional<TrackPoint> VectorReader::place(const OGRPoint& point) {
    if (++points_ > most_points)
        fail({.place = "",
              .found = fmt::format("more than {} points", most_points),
              .expected = "fewer",
              .advice = "split the file, or thin it out"});
    const std::optional<Position> at = (*to_wgs84_)({point.getX(), point.getY()});
    if (at)
        return TrackPoint{.at = *at, .height_m = height(point, *at), .time = std::nullopt};
    if (!first_invalid_)
        first_invalid_ = problem({.place = fmt::format("feature {}", feature_),
                                  .found = fmt::format("[{}, {}]", point.getX(), point.getY()),
                                  .expected = "a place on Earth, longitude first",
                                  .advice = "check the order of the coordinates and their system"});
    return std::nullopt;
}

std::optional<double> VectorReader::height(const OGRPoint& point, const Position& at) {
    if (point.Is3D() == 0 || !std::isfinite(point.getZ()))
        return std::nullopt;
    if (!above_ellipsoid_) {
        if (result_.heights == HeightDatum::none)
            result_.heights = HeightDatum::geoid;
        return point.getZ();
    }
    const std::optional<double> geoid_m =
        result_.heights == HeightDatum::ellipsoid ? std::nullopt : geoid_height_m(at);
    if (geoid_m) {
        result_.heights = HeightDatum::corrected;
        return point.getZ() - *geoid_m;
    }
    if (result_.heights == HeightDatum::corrected)
        return std::nullopt; // never two datums in one file
    result_.heights = HeightDatum::ellipsoid;
    return point.getZ();
}

void VectorReader::count_named() {
    if (result_.tracks.size() + result_.waypoints.size() >= most_named)
        fail({.place = fmt::format("feature {}", feature_),
              .found = fmt::format("more than {} lines and points", most_named),
              .expected = "fewer",
              .advice = "keep those of the trip"});
}

} // namespace

TrackFile read_vector_file(const std::filesystem::path& file) {
    return VectorReader(file).read();
}

} // namespace tumpline::geo

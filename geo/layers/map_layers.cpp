#include "geo/layers/map_layers.h"

#include "geo/gate/gdal_fault.h"
#include "geo/gate/open_dataset.h"
#include "geo/gate/passage.h"
#include "geo/gate/quiet_gdal.h"
#include "geo/gate/to_wgs84.h"
#include "geo/input_error.h"
#include "geo/one_line.h"

#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <optional>
#include <utility>

namespace tumpline::geo {

namespace {

constexpr std::size_t most_features = 200'000;
constexpr std::size_t most_vertices = 2'000'000;

/// What stays the same for all features of one layer of the file.
struct LayerState {
    std::unique_ptr<ToWgs84> to_wgs84;
    std::unique_ptr<OGRFeatureQuery> where; ///< null: all
};

/// The value of a key of one feature: a field of that name, a colon in it written as an underscore,
/// or one of the pairs that GDAL keeps further tags in.
std::string tag_of(const OGRFeature& feature, std::string_view key) {
    std::string field(key);
    for (int pass = 0; pass < 2; ++pass) {
        const int index = feature.GetFieldIndex(field.c_str());
        if (index >= 0 && feature.IsFieldSetAndNotNull(index) != 0)
            return one_line(feature.GetFieldAsString(index));
        std::ranges::replace(field, ':', '_');
    }
    for (const char* const further : {"other_tags", "all_tags"}) {
        const int index = feature.GetFieldIndex(further);
        if (index >= 0 && feature.IsFieldSetAndNotNull(index) != 0)
            if (std::string value = hstore_value(feature.GetFieldAsString(index), key);
                !value.empty())
                return one_line(value);
    }
    return {};
}

/// One entry of the trip's list of layers.
class LayerReader {
  public:
    LayerReader(const LayerSource& wanted, const GeoBox& frame, MapLayers& into)
        : wanted_(wanted), frame_(frame), into_(into) {}

    void read();

  private:
    struct Fault {
        std::string place;
        std::string found;
        std::string expected;
        std::string advice;
    };

    [[noreturn]] void fail(Fault fault) const {
        throw InputError({{.file = wanted_.file.string(),
                           .place = std::move(fault.place),
                           .found = std::move(fault.found),
                           .expected = std::move(fault.expected),
                           .advice = std::move(fault.advice)}});
    }

    [[nodiscard]] std::vector<OGRLayer*> chosen(GDALDataset& dataset) const;
    [[nodiscard]] LayerState prepared(OGRLayer& layer) const;
    void narrow(OGRLayer& layer, const OGRSpatialReference& reference) const;
    void take(const OGRFeature& feature, const LayerState& state);
    [[nodiscard]] std::optional<LandFeature> described(const OGRFeature& feature) const;
    void shape(const OGRGeometry& geometry, const ToWgs84& to_wgs84, LandFeature& into);
    void ring(const OGRSimpleCurve& curve, const ToWgs84& to_wgs84, LandFeature& into);

    const LayerSource& wanted_;
    const GeoBox& frame_;
    MapLayers& into_;
    MapLayers::Source source_;
    std::size_t vertices_ = 0;
};

void LayerReader::read() {
    const Folders folders = folders_around(wanted_.file);
    const Passage passage(folders);
    const Dataset dataset = open_layers(wanted_.file);
    const QuietGdal quiet;
    source_.file = wanted_.file.filename().string();
    source_.credit = one_line(wanted_.credit);
    const std::string_view format = dataset->GetDriver()->GetDescription();
    if (source_.credit.empty() && format == "OSM")
        source_.credit = open_street_map_credit();
    std::map<const OGRLayer*, LayerState> states;
    for (OGRLayer* layer : chosen(*dataset)) {
        states.emplace(layer, prepared(*layer));
        if (source_.credit.empty() && layer->GetLayerDefn()->GetFieldIndex("osm_id") >= 0)
            source_.credit = open_street_map_credit();
    }
    for (const LandFeature& known : into_.features)
        for (const auto& part : known.parts)
            vertices_ += part.size();
    // Across layers, as an extract is one stream.
    OGRLayer* of = nullptr;
    while (
        const OGRFeatureUniquePtr feature{dataset->GetNextFeature(&of, nullptr, nullptr, nullptr)})
        if (const auto found = states.find(of); found != states.end())
            take(*feature, found->second);
    if (!quiet.fault().empty())
        fail({.place = fault_place(quiet.fault(), wanted_.file),
              .found = fault_in_words(quiet.fault(), wanted_.file),
              .expected = "a file that can be read to its end and needs nothing else",
              .advice = "export it again"});
    into_.sources.push_back(std::move(source_));
}

std::vector<OGRLayer*> LayerReader::chosen(GDALDataset& dataset) const {
    std::vector<OGRLayer*> layers;
    std::string names;
    for (OGRLayer* layer : dataset.GetLayers()) {
        const std::string name = one_line(layer->GetName());
        names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", name);
        if (wanted_.layer.empty() || wanted_.layer == name)
            layers.push_back(layer);
    }
    if (layers.empty())
        fail({.place = {},
              .found = wanted_.layer.empty() ? "no layer at all"
                                             : fmt::format("no layer \"{}\"", wanted_.layer),
              .expected = names.empty() ? "a layer of things on the ground" : "one of " + names,
              .advice = "name one of them, or leave \"layer\" out to take all"});
    return layers;
}

LayerState LayerReader::prepared(OGRLayer& layer) const {
    LayerState state;
    const std::string place = fmt::format("layer {}", one_line(layer.GetName()));
    const OGRSpatialReference* reference = layer.GetSpatialRef();
    if (reference == nullptr)
        fail({.place = place,
              .found = "coordinates without a coordinate system",
              .expected = "a layer that says which system its coordinates are in",
              .advice = "add it (ogr2ogr -a_srs)"});
    state.to_wgs84 = std::make_unique<ToWgs84>(*reference);
    if (!state.to_wgs84->usable())
        fail({.place = place,
              .found = fmt::format("the coordinate system {}", one_line(reference->GetName())),
              .expected = "one that can be turned into longitude and latitude",
              .advice = "save the layer in WGS 84 (ogr2ogr -t_srs)"});
    if (!wanted_.where.empty()) {
        // Asked here and not of the file: a database would take it for a piece of a program.
        state.where = std::make_unique<OGRFeatureQuery>();
        const QuietGdal quiet;
        if (state.where->Compile(&layer, wanted_.where.c_str()) != OGRERR_NONE)
            fail({.place = place,
                  .found = fmt::format("\"where\": \"{}\"", one_line(wanted_.where)),
                  .expected = "a comparison of the layer's fields",
                  .advice = "write it like \"class = 'lake'\""});
    }
    narrow(layer, *reference);
    return state;
}

/// Only what may lie in the frame is read, where the file has an index.
void LayerReader::narrow(OGRLayer& layer, const OGRSpatialReference& reference) const {
    if (frame_.odd())
        return;
    OGRSpatialReference wgs84;
    wgs84.importFromEPSG(4326);
    wgs84.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    OGRSpatialReference target(reference);
    target.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    const QuietGdal quiet;
    const std::unique_ptr<OGRCoordinateTransformation> there(
        OGRCreateCoordinateTransformation(&wgs84, &target));
    std::array<double, 4> box{};
    constexpr int points_a_side = 21;
    if (there &&
        there->TransformBounds(frame_.west_deg,
                               frame_.south_deg,
                               frame_.east_deg,
                               frame_.north_deg,
                               box.data(),
                               box.data() + 1,
                               box.data() + 2,
                               box.data() + 3,
                               points_a_side) != 0 &&
        box[0] <= box[2])
        layer.SetSpatialFilterRect(box[0], box[1], box[2], box[3]);
}

std::optional<LandFeature> LayerReader::described(const OGRFeature& feature) const {
    const TagReader tag = [&](std::string_view key) { return tag_of(feature, key); };
    const std::optional<TagMeaning> meaning = tag_meaning(tag);
    LandFeature land;
    if (wanted_.as) {
        land.kind = *wanted_.as;
        if (meaning && meaning->kind == land.kind)
            land.sign = meaning->sign;
    } else if (meaning) {
        land.kind = meaning->kind;
        land.sign = meaning->sign;
    } else {
        return std::nullopt;
    }
    if (meaning) {
        land.grade = meaning->grade;
        land.intermittent = meaning->intermittent;
        land.rapid = meaning->rapid;
        land.down_stream = meaning->kind == LayerKind::river && land.kind == LayerKind::river;
    }
    land.name = tag(wanted_.name.empty() ? std::string_view("name") : wanted_.name);
    land.source = into_.sources.size();
    return land;
}

void LayerReader::take(const OGRFeature& feature, const LayerState& state) {
    const OGRGeometry* geometry = feature.GetGeometryRef();
    if (geometry == nullptr || geometry->IsEmpty() != 0)
        return;
    if (state.where && state.where->Evaluate(const_cast<OGRFeature*>(&feature)) == 0)
        return;
    std::optional<LandFeature> land = described(feature);
    if (!land) {
        ++source_.unknown;
        return;
    }
    std::unique_ptr<OGRGeometry> chords;
    if (geometry->hasCurveGeometry() != 0) { // arcs, as chords of four degrees
        chords.reset(geometry->getLinearGeometry(4.0));
        geometry = chords.get();
    }
    if (geometry != nullptr)
        shape(*geometry, *state.to_wgs84, *land);
    if (land->parts.empty()) {
        ++source_.unusable;
        return;
    }
    const bool seen = std::ranges::any_of(land->parts, [&](const auto& part) {
        return land->shape == LandShape::area ||
               std::ranges::any_of(part, [&](const auto& at) { return frame_.contains(at); });
    });
    if (!seen)
        return;
    ++source_.features;
    into_.features.push_back(std::move(*land));
    if (into_.features.size() > most_features)
        fail({.place = {},
              .found = fmt::format("more than {} things in the map's frame", most_features),
              .expected = "fewer",
              .advice = "choose with \"where\", or thin the layer out first"});
}

void LayerReader::shape(const OGRGeometry& geometry, const ToWgs84& to_wgs84, LandFeature& into) {
    const OGRwkbGeometryType type = wkbFlatten(geometry.getGeometryType());
    if (geometry.IsEmpty() != 0)
        return;
    if (type == wkbPoint) {
        into.shape = LandShape::point;
        const OGRPoint& point = *geometry.toPoint();
        if (const std::optional<Position> at = to_wgs84({point.getX(), point.getY()}))
            into.parts.push_back({*at});
    } else if (type == wkbLineString) {
        const OGRLineString& line = *geometry.toLineString();
        into.shape = into.kind == LayerKind::water && line.get_IsClosed() != 0 ? LandShape::area
                                                                               : LandShape::line;
        ring(line, to_wgs84, into);
    } else if (type == wkbPolygon) {
        into.shape = LandShape::area;
        for (const OGRLinearRing* edge : *geometry.toPolygon())
            ring(*edge, to_wgs84, into);
    } else if (OGR_GT_IsSubClassOf(type, wkbGeometryCollection) != 0) {
        for (const OGRGeometry* part : *geometry.toGeometryCollection())
            shape(*part, to_wgs84, into);
    }
}

void LayerReader::ring(const OGRSimpleCurve& curve, const ToWgs84& to_wgs84, LandFeature& into) {
    std::vector<Position> points;
    vertices_ += static_cast<std::size_t>(curve.getNumPoints());
    if (vertices_ > most_vertices)
        fail({.place = {},
              .found = fmt::format("more than {} points in the map's frame", most_vertices),
              .expected = "fewer",
              .advice = "simplify the layer first (ogr2ogr -simplify)"});
    points.reserve(static_cast<std::size_t>(curve.getNumPoints()));
    for (int i = 0; i < curve.getNumPoints(); ++i)
        if (const std::optional<Position> at = to_wgs84({curve.getX(i), curve.getY(i)}))
            points.push_back(*at);
    if (points.size() > 1)
        into.parts.push_back(std::move(points));
}

} // namespace

bool MapLayers::has(LayerKind kind) const {
    return std::ranges::any_of(features,
                               [&](const LandFeature& feature) { return feature.kind == kind; });
}

std::string_view open_street_map_credit() {
    return "Contains information from OpenStreetMap, which is made available at openstreetmap.org "
           "under the Open Database License (ODbL)";
}

MapLayers read_layers(const std::vector<LayerSource>& wanted, const GeoBox& frame) {
    MapLayers layers;
    std::vector<Problem> problems;
    for (const LayerSource& source : wanted) {
        try {
            LayerReader(source, frame, layers).read();
        } catch (const InputError& error) { // so that one run shows what is wrong with all of them
            problems.insert(problems.end(), error.problems().begin(), error.problems().end());
            layers.sources.emplace_back();
        }
    }
    if (!problems.empty())
        throw InputError(std::move(problems));
    return layers;
}

} // namespace tumpline::geo

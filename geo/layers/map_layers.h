#pragma once

#include "geo/layers/geo_box.h"
#include "geo/layers/layer_source.h"
#include "geo/layers/tag_meaning.h"
#include "geo/position.h"

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::geo {

enum class LandShape { point, line, area };

/// Something that lies around a route.
struct LandFeature {
    LayerKind kind = LayerKind::water;
    LandSign sign = LandSign::plain;
    LandShape shape = LandShape::line;
    std::string name;  ///< one line; may be empty
    std::string grade; ///< of a rapid, as entered; may be empty
    bool intermittent = false;
    bool down_stream = false;                 ///< a river whose line is known to run with the water
    bool rapid = false;                       ///< a river's reach that is marked as rapids
    std::vector<std::vector<Position>> parts; ///< points, lines, or rings (even-odd) of an area
    std::size_t source = 0;                   ///< index into MapLayers::sources
};

/// What the files say of the ground in a frame, in the order of the files.
struct MapLayers {
    /// A layer as it was asked for.
    struct Source {
        std::string file; ///< its name without the folder
        std::string credit;
        std::size_t features = 0; ///< taken into the map
        std::size_t unknown = 0;  ///< left out: none of our kinds
        std::size_t unusable = 0; ///< left out: without a usable place
    };

    std::vector<LandFeature> features;
    std::vector<Source> sources;

    [[nodiscard]] bool has(LayerKind kind) const;
};

/// What OpenStreetMap asks for under a map of its data.
/// Source: [OSM], attribution guidelines.
[[nodiscard]] std::string_view open_street_map_credit();

/// Reads what lies in `frame` of each layer. Needs no order among kinds.
/// Throws: InputError with every layer that cannot be used: no such file or layer, no coordinate
/// system, a `where` that makes no sense, more than a map can hold.
[[nodiscard]] MapLayers read_layers(const std::vector<LayerSource>& wanted, const GeoBox& frame);

} // namespace tumpline::geo

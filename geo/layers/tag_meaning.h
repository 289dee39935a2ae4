#pragma once

#include "geo/layers/layer_source.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace tumpline::geo {

/// What a feature is beyond its kind; told apart by its sign on the map.
enum class LandSign { plain, stream, canal, fall, weir, unmarked };

/// What tags say of a feature.
struct TagMeaning {
    LayerKind kind;
    LandSign sign = LandSign::plain;
    std::string grade; ///< of a rapid or reach, as entered; may be empty
    bool intermittent = false;
    bool rapid = false; ///< a reach that is marked as rapids
};

/// The value of a key; empty if there is none.
using TagReader = std::function<std::string(std::string_view)>;

/// What the usual tags of OpenStreetMap mean for a map; empty for what none of our kinds is.
/// Source: [OSM] (waterway, natural, rapids, whitewater, highway, trail_visibility, building,
/// boundary, leisure). The absence of a tag is not the absence of the thing.
[[nodiscard]] std::optional<TagMeaning> tag_meaning(const TagReader& tag);

/// The value of `key` in a text of "key"=>"value" pairs, as GDAL keeps further tags.
[[nodiscard]] std::string hstore_value(std::string_view pairs, std::string_view key);

} // namespace tumpline::geo

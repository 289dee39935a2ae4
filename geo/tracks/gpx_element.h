#pragma once

#include <cstdint>
#include <string_view>

namespace tumpline::geo {

/// What an open element of a GPX file means to us.
enum class GpxNode : std::uint8_t {
    ignored, ///< it and everything in it
    document,
    track,
    route,
    segment,
    point, ///< of a track or route
    waypoint,
    name, ///< this and the following hold text
    type,
    height,
    time
};

[[nodiscard]] constexpr bool has_text(GpxNode node) {
    return node >= GpxNode::name;
}

/// What the element `tag` means inside `parent`; ignored where the schema has no such element, or
/// none that we read.
/// Source: [GPX11]; GPX 1.0 uses the same names.
[[nodiscard]] GpxNode gpx_child(GpxNode parent, std::string_view tag);

/// A name as it stands in a tag: "gpx:trk" has the prefix "gpx".
struct GpxTag {
    std::string_view prefix;
    std::string_view local;
};

[[nodiscard]] GpxTag gpx_tag(std::string_view qualified);

} // namespace tumpline::geo

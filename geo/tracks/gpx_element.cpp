#include "geo/tracks/gpx_element.h"

#include <cstddef>

namespace tumpline::geo {

namespace {

GpxNode in_document(std::string_view tag) {
    if (tag == "trk")
        return GpxNode::track;
    if (tag == "rte")
        return GpxNode::route;
    return tag == "wpt" ? GpxNode::waypoint : GpxNode::ignored;
}

GpxNode name_or_type(std::string_view tag) {
    if (tag == "name")
        return GpxNode::name;
    return tag == "type" ? GpxNode::type : GpxNode::ignored;
}

} // namespace

GpxNode gpx_child(GpxNode parent, std::string_view tag) {
    switch (parent) {
    case GpxNode::document:
        return in_document(tag);
    case GpxNode::track:
        return tag == "trkseg" ? GpxNode::segment : name_or_type(tag);
    case GpxNode::route:
        return tag == "rtept" ? GpxNode::point : name_or_type(tag);
    case GpxNode::segment:
        return tag == "trkpt" ? GpxNode::point : GpxNode::ignored;
    case GpxNode::point:
        if (tag == "ele")
            return GpxNode::height;
        return tag == "time" ? GpxNode::time : GpxNode::ignored;
    case GpxNode::waypoint:
        return tag == "ele" ? GpxNode::height : name_or_type(tag);
    case GpxNode::ignored:
    case GpxNode::name:
    case GpxNode::type:
    case GpxNode::height:
    case GpxNode::time:
        return GpxNode::ignored;
    }
    return GpxNode::ignored;
}

GpxTag gpx_tag(std::string_view qualified) {
    const std::size_t colon = qualified.find(':');
    if (colon == std::string_view::npos)
        return {.prefix = {}, .local = qualified};
    return {.prefix = qualified.substr(0, colon), .local = qualified.substr(colon + 1)};
}

} // namespace tumpline::geo

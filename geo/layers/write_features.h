#pragma once

#include "geo/position.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::geo {

/// A point to be written; its height above the geoid may be unknown.
struct OutPoint {
    Position at;
    std::optional<double> height_m;
};

/// A field's value: a text, or a number.
struct OutValue {
    std::string text;
    std::optional<double> number; ///< then the text does not count
};

/// A thing with a point (one part of one point) or lines.
struct OutFeature {
    std::vector<std::pair<std::string, OutValue>> fields; ///< "name" and "description" among them
    std::vector<std::vector<OutPoint>> parts;             ///< empty: no place is known
};

/// Things of one kind.
struct OutLayer {
    std::string name;
    bool points = false; ///< lines otherwise
    std::vector<OutFeature> features;
};

/// A whole file and what else stands in it.
struct OutFile {
    std::vector<OutLayer> layers;
    std::string_view mark; ///< kept as a text of its own
    std::string_view date; ///< "2027-06-18": what the file says of its own date
};

/// The bytes of a GeoPackage in WGS 84, by the GDAL library. Points and lines have heights where
/// all of a line's are known. The mark stands in the table "about".
[[nodiscard]] std::string geopackage(const OutFile& file);

/// The text of a KML, by the GDAL library; lines lie on the ground. The mark stands in a comment.
[[nodiscard]] std::string kml(const OutFile& file);

} // namespace tumpline::geo

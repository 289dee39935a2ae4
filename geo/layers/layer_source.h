#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace tumpline::geo {

/// What lies around a route, as a map draws it.
enum class LayerKind { water, river, path, road, rapid, building, protected_ground };

/// A layer that somebody wants on the map.
struct LayerSource {
    std::filesystem::path file;
    std::string layer = {};           ///< by its name in the file; empty: all of them
    std::optional<LayerKind> as = {}; ///< empty: by the tags of OpenStreetMap
    std::string where = {};           ///< only features for which this holds; empty: all
    std::string name = {};            ///< the field that holds their names; empty: "name"
    std::string credit = {};          ///< whose data they are
};

} // namespace tumpline::geo

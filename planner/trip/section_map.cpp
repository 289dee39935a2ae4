#include "planner/trip/sections.h"

namespace tumpline::planner {

const Section<geo::LayerSource>& layer_section() {
    using geo::LayerSource;
    static const Section<LayerSource> section{
        "layer",
        "a layer of the map",
        {
            {"file", Need::must, [](const TripValue& v, LayerSource& l) { put(l.file, v.name()); }},
            {"layer",
             Need::may,
             [](const TripValue& v, LayerSource& l) { put(l.layer, v.name()); }},
            {"as",
             Need::may,
             [](const TripValue& v, LayerSource& l) { put(l.as, v.meaning(layer_kind_words())); }},
            {"where",
             Need::may,
             [](const TripValue& v, LayerSource& l) { put(l.where, v.text()); }},
            {"name", Need::may, [](const TripValue& v, LayerSource& l) { put(l.name, v.name()); }},
            {"credit",
             Need::may,
             [](const TripValue& v, LayerSource& l) { put(l.credit, v.text()); }},
        }};
    return section;
}

const Section<TripMap>& map_section() {
    static const Section<TripMap> section{
        "map",
        "the map",
        {
            {"layers",
             Need::may,
             [](const TripValue& v, TripMap& m) {
                 if (is_short_enough(v, most_layers, "put what belongs together into one file"))
                     read_list(v, layer_section(), m.layers);
             }},
            {"relief",
             Need::may,
             [](const TripValue& v, TripMap& m) { put(m.relief, v.yes_or_no()); }},
        }};
    return section;
}

} // namespace tumpline::planner

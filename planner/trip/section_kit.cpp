#include "planner/trip/sections.h"

namespace tumpline::planner {

namespace {

void read_condition(const TripValue& value, KitItem& item) {
    read_section(value, condition_section(), item.when.emplace_back());
    if (value.json().kind == JsonValue::Kind::object && value.json().members.empty())
        value.add_problem("at least one key of a condition",
                          "leave \"when\" out if the item always comes");
}

/// One condition, or a list of which any suffices.
void read_when(const TripValue& value, KitItem& item) {
    if (value.json().kind == JsonValue::Kind::object) {
        read_condition(value, item);
        return;
    }
    for (const TripValue& condition : value.items("a condition"))
        read_condition(condition, item);
}

void read_owner(const TripValue& value, KitItem& item) {
    const std::optional<std::string> owner = value.name();
    if (owner && *owner != "party")
        item.owner = *owner;
}

} // namespace

const Section<Condition>& condition_section() {
    static const Section<Condition> section{
        "condition",
        "a condition",
        {
            {"class",
             Need::may,
             [](const TripValue& v, Condition& c) { put(c.river_class, v.river_class()); }},
            {"rain",
             Need::may,
             [](const TripValue& v, Condition& c) { put(c.rain, v.yes_or_no()); }},
            {"water_below",
             Need::may,
             [](const TripValue& v, Condition& c) {
                 put(c.water_below_c, v.quantity(sensible_temperature));
             }},
            {"night_below",
             Need::may,
             [](const TripValue& v, Condition& c) {
                 put(c.night_below_c, v.quantity(sensible_temperature));
             }},
            {"snow",
             Need::may,
             [](const TripValue& v, Condition& c) { put(c.snow, v.yes_or_no()); }},
            {"open_crossing",
             Need::may,
             [](const TripValue& v, Condition& c) { put(c.open_crossing, v.yes_or_no()); }},
        }};
    return section;
}

const Section<PaddleSpec>& paddle_section() {
    static const Section<PaddleSpec> section{
        "paddle",
        "a paddle",
        {
            {"length",
             Need::may,
             [](const TripValue& v, PaddleSpec& p) {
                 put(p.length_m, v.quantity({Dimension::length, 0.8, 3.5}));
             }},
            {"pieces",
             Need::may,
             [](const TripValue& v, PaddleSpec& p) {
                 put(p.pieces, v.whole_number({1, 8}));
             }},
            {"packed_length",
             Need::may,
             [](const TripValue& v, PaddleSpec& p) {
                 put(p.packed_length_m, v.quantity({Dimension::length, 0.2, 3.5}));
             }},
            {"stroke",
             Need::may,
             [](const TripValue& v, PaddleSpec& p) { put(p.stroke, v.meaning(stroke_words())); }},
        }};
    return section;
}

const Section<KitItem>& kit_section() {
    static const Section<KitItem> section{
        "item",
        "a kit item",
        {
            {"item", Need::must, [](const TripValue& v, KitItem& k) { put(k.name, v.name()); }},
            {"mass",
             Need::must,
             [](const TripValue& v, KitItem& k) {
                 put(k.mass_kg, v.quantity({Dimension::mass, 0.0, 100.0}));
             }},
            {"count",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 put(k.count, v.whole_number({1, 1000}));
             }},
            {"for", Need::may, read_owner},
            {"ashore",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.ashore, v.meaning(item_use_words())); }},
            {"afloat",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.afloat, v.meaning(item_use_words())); }},
            {"when", Need::may, read_when},
            {"bring",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.bring, v.yes_or_no()); }},
            {"in", Need::may, [](const TripValue& v, KitItem& k) { put(k.piece, v.name()); }},
            {"volume",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 put(k.volume_l, v.quantity({Dimension::volume, 0.0, 500.0}));
             }},
            {"at_hand",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.at_hand, v.yes_or_no()); }},
            {"stays_with",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.bearer, v.name()); }},
            {"is",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.is, v.meaning(safety_gear_words())); }},
            {"must", Need::may, [](const TripValue& v, KitItem& k) { put(k.must, v.yes_or_no()); }},
            {"bag",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.bag, v.meaning(bag_side_words())); }},
            {"borne_by",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 put(k.borne_by, v.whole_number({1, 2}));
             }},
            {"cart_payload",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 put(k.cart_payload_kg, v.quantity({Dimension::mass, 1.0, 500.0}));
             }},
            {"lies",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.lies, v.meaning(boat_end_words())); }},
            {"paddle",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 read_section(v, paddle_section(), k.paddle.emplace());
             }},
            {"gets_wet",
             Need::may,
             [](const TripValue& v, KitItem& k) { put(k.gets_wet, v.yes_or_no()); }},
            {"wet",
             Need::may,
             [](const TripValue& v, KitItem& k) {
                 put(k.wet_fraction, v.number({0.0, 3.0}));
             }},
        }};
    return section;
}

} // namespace tumpline::planner

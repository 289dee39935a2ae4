#include "planner/trip/sections.h"

namespace tumpline::planner {

namespace {

constexpr Sensible body{Dimension::mass, 15.0, 300.0};
constexpr Sensible load_limit{Dimension::mass, 0.0, 150.0};
constexpr Sensible stature{Dimension::length, 0.8, 2.6};
constexpr Sensible walking_speed{Dimension::speed, 0.2, 4.0};
constexpr Sensible paddling_speed{Dimension::speed, 0.2, 5.0};

void read_crew(const TripValue& value, Craft& craft) {
    for (const TripValue& item : value.items("the name of a member"))
        if (const std::optional<std::string> name = item.name())
            craft.crew.push_back(*name);
}

void read_bags(const TripValue& value, Craft& craft) {
    for (const TripValue& item : value.items("the volume of a bag"))
        if (const auto volume_l = item.quantity({Dimension::volume, 1.0, 500.0}))
            craft.bags_l.push_back(*volume_l);
    const JsonValue& json = value.json();
    if (json.kind == JsonValue::Kind::list && !json.items.empty() && json.items.size() != 2)
        value.add_problem("two bags, left and right, or none");
}

/// "lake", "sea", "river", "river III".
std::optional<SuitedWater> read_suited(const TripValue& value) {
    constexpr std::string_view river = "river ";
    const std::string& text = value.json().text;
    if (value.json().kind == JsonValue::Kind::text && text.starts_with(river)) {
        const std::optional<RiverClass> hardest =
            read_river_class(std::string_view(text).substr(river.size()));
        if (!hardest) {
            value.add_problem("\"river\" with the hardest class, such as \"river III\"");
            return {};
        }
        return SuitedWater{.water = Water::river, .hardest = *hardest};
    }
    const std::optional<Water> water = value.meaning(water_words());
    return water ? std::optional(SuitedWater{.water = *water}) : std::nullopt;
}

void read_suits(const TripValue& value, Craft& craft) {
    for (const TripValue& item : value.items("\"lake\", \"river III\" or \"sea\""))
        if (const std::optional<SuitedWater> suited = read_suited(item))
            craft.suits.push_back(*suited);
    if (value.json().kind == JsonValue::Kind::list && value.json().items.empty())
        value.add_problem("at least one water", "leave \"suits\" out where it is not known");
}

/// What a boat of the trip and one that it might take have in common, but for the kind.
template <class Boat> std::vector<Key<Boat>> boat_keys() {
    return {
        {"name", Need::must, [](const TripValue& v, Boat& c) { put(c.name, v.name()); }},
        {"mass",
         Need::must,
         [](const TripValue& v, Boat& c) {
             put(c.mass_kg, v.quantity({Dimension::mass, 0.2, 200.0}));
         }},
        {"payload",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.payload_kg, v.quantity({Dimension::mass, 20.0, 2000.0}));
         }},
        {"calm_speed",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.calm_speed_mps, v.quantity(paddling_speed)); }},
        {"bags", Need::may, [](const TripValue& v, Boat& c) { read_bags(v, c); }},
        {"wet",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.wet_fraction, v.number({0.0, 1.0}));
         }},
        {"class",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.river_class, v.river_class()); }},
        {"wind_ceiling",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.wind_ceiling_mps, v.quantity(sensible_wind)); }},
        {"rolled",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.rolled_l, v.quantity({Dimension::volume, 0.5, 500.0}));
         }},
        {"borne_by",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.borne_by, v.whole_number({1, 2}));
         }},
        {"rolls_up",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.rolls_up, v.yes_or_no()); }},
        {"waterplane",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.waterplane_m2, v.quantity({Dimension::area, 0.2, 20.0}));
         }},
        {"freeboard",
         Need::may,
         [](const TripValue& v, Boat& c) {
             put(c.freeboard_m, v.quantity({Dimension::length, 0.02, 1.5}));
         }},
        {"deck",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.deck, v.meaning(deck_words())); }},
        {"suits", Need::may, [](const TripValue& v, Boat& c) { read_suits(v, c); }},
        {"thigh_straps",
         Need::may,
         [](const TripValue& v, Boat& c) { put(c.thigh_straps, v.yes_or_no()); }},
    };
}

void read_replaced(const TripValue& value, CraftChoice& choice) {
    for (const TripValue& item : value.items("the name of a boat, or of a paddle, of the trip"))
        if (const std::optional<std::string> name = item.name())
            choice.replaces.push_back(*name);
}

std::vector<Key<Craft>> craft_keys() {
    std::vector<Key<Craft>> keys = boat_keys<Craft>();
    keys.push_back({"kind", Need::may, [](const TripValue& v, Craft& c) {
                        put(c.kind, v.meaning(craft_kind_words()));
                    }});
    keys.push_back({"crew", Need::may, read_crew});
    return keys;
}

/// A kind of boat, or a paddle.
void read_choice_kind(const TripValue& value, CraftChoice& choice) {
    std::vector<std::string_view> words;
    for (const Word<CraftKind>& kind : craft_kind_words())
        words.push_back(kind.word);
    words.emplace_back("paddle");
    const std::optional<std::string_view> chosen = value.one_of(words);
    choice.is_paddle = chosen == "paddle";
    for (const Word<CraftKind>& kind : craft_kind_words())
        if (chosen == kind.word)
            choice.kind = kind.meaning;
}

std::vector<Key<CraftChoice>> craft_choice_keys() {
    std::vector<Key<CraftChoice>> keys = boat_keys<CraftChoice>();
    keys.push_back({"kind", Need::may, read_choice_kind});
    keys.push_back({"paddle", Need::may, [](const TripValue& v, CraftChoice& c) {
                        read_section(v, paddle_section(), c.paddle.emplace());
                    }});
    keys.push_back({"seats", Need::may, [](const TripValue& v, CraftChoice& c) {
                        put(c.seats, v.whole_number({1, 20}));
                    }});
    keys.push_back({"replaces", Need::may, read_replaced});
    keys.push_back({"price", Need::may, [](const TripValue& v, CraftChoice& c) {
                        put(c.price, v.number({0.0, 1e6}));
                    }});
    return keys;
}

} // namespace

const Section<Member>& member_section() {
    static const Section<Member> section{
        "member",
        "a member of the party",
        {
            {"name", Need::must, [](const TripValue& v, Member& m) { put(m.name, v.name()); }},
            {"body",
             Need::must,
             [](const TripValue& v, Member& m) { put(m.body_kg, v.quantity(body)); }},
            {"height",
             Need::may,
             [](const TripValue& v, Member& m) { put(m.height_m, v.quantity(stature)); }},
            {"age",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.age_years, v.number({3.0, 110.0}));
             }},
            {"sex",
             Need::may,
             [](const TripValue& v, Member& m) { put(m.sex, v.meaning(sex_words())); }},
            {"carry_limit",
             Need::may,
             [](const TripValue& v, Member& m) { put(m.carry_limit_kg, v.quantity(load_limit)); }},
            {"portage_limit",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.portage_limit_kg, v.quantity(load_limit));
             }},
            {"pack_volume",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.pack_volume_l, v.quantity({Dimension::volume, 1.0, 500.0}));
             }},
            {"pack_length",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.pack_length_m, v.quantity({Dimension::length, 0.2, 2.0}));
             }},
            {"pace",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.pace, v.number({0.2, 3.0}));
             }},
            {"level_speed",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.level_speed_mps, v.quantity(walking_speed));
             }},
            {"class",
             Need::may,
             [](const TripValue& v, Member& m) { put(m.river_class, v.river_class()); }},
            {"fitness",
             Need::may,
             [](const TripValue& v, Member& m) {
                 put(m.fitness, v.duration({0.1, 3.0}));
             }},
        }};
    return section;
}

const Section<Craft>& craft_section() {
    static const Section<Craft> section{"craft", "a craft", craft_keys()};
    return section;
}

const Section<CraftChoice>& craft_choice_section() {
    static const Section<CraftChoice> section{
        "craft_choice", "a boat or paddle to choose from", craft_choice_keys()};
    return section;
}

} // namespace tumpline::planner

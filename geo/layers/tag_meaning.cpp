#include "geo/layers/tag_meaning.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace tumpline::geo {

namespace {

using namespace std::string_view_literals;

constexpr std::array footpaths{"path"sv, "footway"sv, "bridleway"sv, "steps"sv};
constexpr std::array roads{"motorway"sv,
                           "trunk"sv,
                           "primary"sv,
                           "secondary"sv,
                           "tertiary"sv,
                           "unclassified"sv,
                           "residential"sv,
                           "service"sv,
                           "track"sv,
                           "living_street"sv,
                           "road"sv,
                           "motorway_link"sv,
                           "trunk_link"sv,
                           "primary_link"sv,
                           "secondary_link"sv,
                           "tertiary_link"sv,
                           "cycleway"sv};
constexpr std::array streams{"stream"sv, "brook"sv, "ditch"sv, "drain"sv};
constexpr std::array hard_to_see{"horrible"sv, "no"sv};
constexpr std::array guarded{"protected_area"sv, "national_park"sv};

bool is_in(std::span<const std::string_view> words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

bool said(std::string_view value) {
    return !value.empty() && value != "no";
}

std::optional<TagMeaning> waterway_meaning(const TagReader& tag) {
    const std::string waterway = tag("waterway");
    const std::string rapids = tag("rapids");
    std::string grade = tag("whitewater:rapid_grade");
    if (grade.empty())
        grade = tag("whitewater:section_grade");
    if (grade.empty() && said(rapids) && rapids != "yes")
        grade = rapids;
    TagMeaning meaning{.kind = LayerKind::river, .grade = grade};
    meaning.intermittent = said(tag("intermittent"));
    meaning.rapid = said(rapids);
    if (waterway == "waterfall" || waterway == "rapids" || waterway == "weir" ||
        waterway == "dam" || tag("whitewater") == "rapid") {
        meaning.kind = LayerKind::rapid;
        meaning.sign = waterway == "waterfall"                   ? LandSign::fall
                       : waterway == "weir" || waterway == "dam" ? LandSign::weir
                                                                 : LandSign::plain;
        return meaning;
    }
    if (waterway == "riverbank") {
        meaning.kind = LayerKind::water;
        return meaning;
    }
    if (is_in(streams, waterway))
        meaning.sign = LandSign::stream;
    else if (waterway == "canal")
        meaning.sign = LandSign::canal;
    else if (waterway != "river") {
        if (!meaning.rapid)
            return std::nullopt;
        meaning.kind = LayerKind::rapid;
    }
    return meaning;
}

} // namespace

std::optional<TagMeaning> tag_meaning(const TagReader& tag) {
    if (std::optional<TagMeaning> meaning = waterway_meaning(tag))
        return meaning;
    if (tag("natural") == "water" || said(tag("water")) || tag("landuse") == "reservoir")
        return TagMeaning{
            .kind = LayerKind::water, .grade = {}, .intermittent = said(tag("intermittent"))};
    const std::string highway = tag("highway");
    if (is_in(footpaths, highway))
        return TagMeaning{.kind = LayerKind::path,
                          .sign = is_in(hard_to_see, tag("trail_visibility")) ? LandSign::unmarked
                                                                              : LandSign::plain,
                          .grade = {}};
    if (is_in(roads, highway))
        return TagMeaning{.kind = LayerKind::road, .grade = {}};
    if (said(tag("building")))
        return TagMeaning{.kind = LayerKind::building, .grade = {}};
    if (is_in(guarded, tag("boundary")) || tag("leisure") == "nature_reserve")
        return TagMeaning{.kind = LayerKind::protected_ground, .grade = {}};
    return std::nullopt;
}

std::string hstore_value(std::string_view pairs, std::string_view key) {
    std::vector<std::string> texts; // keys and values in turn
    bool inside = false;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        const char letter = pairs[i];
        if (letter == '"') {
            inside = !inside;
            if (inside)
                texts.emplace_back();
        } else if (inside) {
            if (letter == '\\' && i + 1 < pairs.size())
                ++i;
            texts.back() += pairs[i];
        }
    }
    for (std::size_t i = 0; i + 1 < texts.size(); i += 2)
        if (texts[i] == key)
            return texts[i + 1];
    return {};
}

} // namespace tumpline::geo

#include "planner/route/place_words.h"

#include "planner/route/traced_line.h"
#include "planner/trip/vocabulary.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <initializer_list>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

/// Lower case, every run of other characters one space, a space at both ends: words can be looked
/// for whole. Letters beyond ASCII stay as they are.
std::string plain_words(std::string_view text) {
    std::string words = " ";
    for (const char letter : text) {
        const auto byte = static_cast<unsigned char>(letter);
        if (std::isalnum(byte) != 0 || byte >= 0x80)
            words.push_back(static_cast<char>(std::tolower(byte)));
        else if (words.back() != ' ')
            words.push_back(' ');
    }
    if (words.back() != ' ')
        words.push_back(' ');
    return words;
}

bool tells(const std::string& words, std::initializer_list<std::string_view> any) {
    return std::any_of(any.begin(), any.end(), [&](std::string_view word) {
        return words.find(" " + std::string(word) + " ") != std::string::npos;
    });
}

/// Whether a word begins with one of `any`: "paddling", "canoeing".
bool begins(const std::string& words, std::initializer_list<std::string_view> any) {
    return std::any_of(any.begin(), any.end(), [&](std::string_view word) {
        return words.find(" " + std::string(word)) != std::string::npos;
    });
}

std::optional<PlaceKind> kind_in(std::string_view text) {
    const std::string words = plain_words(text);
    for (const Word<PlaceKind>& known : place_kind_words())
        if (words == plain_words(known.word))
            return known.meaning;
    if (tells(words, {"take out", "takeout", "getting out", "egress"}))
        return PlaceKind::take_out;
    if (tells(words, {"put in", "putin", "launch", "slipway", "getting in"}))
        return PlaceKind::put_in;
    if (begins(words, {"rapid", "waterfall", "weir", "hazard", "danger", "strainer", "gorge"}) ||
        tells(words, {"fall", "falls", "dam", "siphon", "ledge"}))
        return PlaceKind::hazard;
    if (tells(words,
              {"camp",
               "campsite",
               "camping",
               "bivouac",
               "bivvy",
               "tent",
               "tents",
               "shelter",
               "hut",
               "night"}))
        return PlaceKind::camp;
    if (tells(words, {"shop", "store", "resupply", "supermarket", "post office", "village"}))
        return PlaceKind::resupply;
    if (tells(words, {"cache", "depot", "food drop"}))
        return PlaceKind::cache;
    if (tells(words, {"spring", "well", "water", "drinking water", "tap", "fountain"}))
        return PlaceKind::water;
    if (tells(words, {"start", "trailhead", "car park", "parking"}))
        return PlaceKind::start;
    if (tells(words, {"finish", "end", "pickup", "pick up"}))
        return PlaceKind::finish;
    if (tells(words, {"exit", "way out", "bail out", "road", "bus", "bus stop", "station"}))
        return PlaceKind::exit;
    return std::nullopt;
}

} // namespace

std::optional<PlaceKind> kind_of(const geo::Waypoint& waypoint) {
    const std::optional<PlaceKind> by_type = kind_in(waypoint.type);
    return by_type ? by_type : kind_in(waypoint.name);
}

std::optional<Travel> travel_from_name(std::string_view name) {
    const std::string words = plain_words(name);
    if (begins(words, {"portag"}) || tells(words, {"carry"}))
        return Travel::portage;
    if (begins(words, {"walk", "hik", "trek", "on foot"}) ||
        tells(words, {"trail", "path", "footpath", "pass", "climb", "ridge", "approach"}))
        return Travel::walk;
    if (begins(words, {"paddl", "cano", "kayak", "packraft", "raft", "float"}))
        return Travel::paddle;
    const bool beside = tells(words,
                              {"to",
                               "from",
                               "of",
                               "along",
                               "round",
                               "around",
                               "above",
                               "over",
                               "by",
                               "road",
                               "track",
                               "bridge"});
    if (!beside && water_from_name(name))
        return Travel::paddle;
    return std::nullopt;
}

std::string_view other_than_walking(const geo::Track& track) {
    const auto other_in = [](const std::string& words) -> std::string_view {
        if (tells(words, {"running", "jog", "jogging", "trailrunning"}))
            return "a run";
        if (begins(words, {"cycl", "bicycl", "bik", "mtb", "mountainbik"}) ||
            tells(words, {"ride", "riding", "horseback"}))
            return "a ride";
        if (tells(words, {"ski", "skis", "skiing", "skating", "snowboarding"}))
            return "skiing or skating";
        if (tells(words, {"drive", "driving"}))
            return "a drive";
        return {};
    };
    const std::string type = plain_words(track.type);
    if (const std::string_view other = other_in(type); !other.empty())
        return other;
    if (tells(type, {"run", "trailrun"})) // as a name it may be that of a stream
        return "a run";
    if (tells(type, {"car", "motor", "train", "ferry"}))
        return "a drive";
    return travel_from_type(track.type) ? std::string_view() : other_in(plain_words(track.name));
}

std::optional<Water> water_from_name(std::string_view name) {
    const std::string words = plain_words(name);
    if (tells(words, {"river", "stream", "creek", "rapids", "reach", "brook"}))
        return Water::river;
    if (tells(words, {"sea", "fjord", "bay", "strait", "sound", "coast"}))
        return Water::sea;
    if (tells(words, {"lake", "loch", "lough", "tarn", "pond", "reservoir"}))
        return Water::lake;
    return std::nullopt;
}

} // namespace tumpline::planner

#include "planner/trip_words.h"

#include <algorithm>
#include <array>

namespace tumpline::planner {

namespace {

constexpr std::array travels{
    Word{"walk", Travel::walk}, Word{"portage", Travel::portage}, Word{"paddle", Travel::paddle}};
constexpr std::array terrains{Word{"path", Terrain::path},
                              Word{"rough-path", Terrain::rough_path},
                              Word{"forest", Terrain::forest},
                              Word{"off-path", Terrain::off_path},
                              Word{"brush", Terrain::brush},
                              Word{"bog", Terrain::bog},
                              Word{"sand", Terrain::sand},
                              Word{"snow", Terrain::snow}};
constexpr std::array waters{
    Word{"lake", Water::lake}, Word{"river", Water::river}, Word{"sea", Water::sea}};
constexpr std::array boats_on_carry{Word{"rolled", BoatOnCarry::rolled},
                                    Word{"whole", BoatOnCarry::whole},
                                    Word{"auto", BoatOnCarry::automatic}};
constexpr std::array place_kinds{Word{"start", PlaceKind::start},
                                 Word{"finish", PlaceKind::finish},
                                 Word{"put-in", PlaceKind::put_in},
                                 Word{"take-out", PlaceKind::take_out},
                                 Word{"camp", PlaceKind::camp},
                                 Word{"water", PlaceKind::water},
                                 Word{"resupply", PlaceKind::resupply},
                                 Word{"cache", PlaceKind::cache},
                                 Word{"exit", PlaceKind::exit},
                                 Word{"hazard", PlaceKind::hazard}};
constexpr std::array sexes{Word{"female", Sex::female}, Word{"male", Sex::male}};
constexpr std::array craft_kinds{Word{"packraft", CraftKind::packraft},
                                 Word{"inflatable", CraftKind::inflatable},
                                 Word{"solo-canoe", CraftKind::solo_canoe},
                                 Word{"tandem-canoe", CraftKind::tandem_canoe},
                                 Word{"kayak", CraftKind::kayak}};
constexpr std::array item_uses{
    Word{"packed", ItemUse::packed}, Word{"worn", ItemUse::worn}, Word{"used", ItemUse::used}};
constexpr std::array meals{
    Word{"breakfast", Meal::breakfast}, Word{"trail", Meal::trail}, Word{"dinner", Meal::dinner}};
constexpr std::array weekdays{Word{"monday", 1},
                              Word{"tuesday", 2},
                              Word{"wednesday", 3},
                              Word{"thursday", 4},
                              Word{"friday", 5},
                              Word{"saturday", 6},
                              Word{"sunday", 7}};
constexpr std::array<std::string_view, 7> classes{"", "I", "II", "III", "IV", "V", "VI"};

template <class Table, class Meaning>
std::string_view word_of(const Table& table, const Meaning& meaning) {
    const auto* const found = std::find_if(
        table.begin(), table.end(), [&](const auto& entry) { return entry.meaning == meaning; });
    return found == table.end() ? std::string_view() : found->word;
}

/// "III" or "3"; 0 if neither.
RiverClass plain_class(std::string_view text) {
    for (RiverClass grade = 1; grade <= 6; ++grade) {
        const bool digit = text.size() == 1 && text[0] == static_cast<char>('0' + grade);
        if (digit || text == classes.at(static_cast<std::size_t>(grade)))
            return grade;
    }
    return 0;
}

} // namespace

std::span<const Word<Travel>> travel_words() {
    return travels;
}

std::span<const Word<Terrain>> terrain_words() {
    return terrains;
}

std::span<const Word<Water>> water_words() {
    return waters;
}

std::span<const Word<BoatOnCarry>> boat_on_carry_words() {
    return boats_on_carry;
}

std::span<const Word<PlaceKind>> place_kind_words() {
    return place_kinds;
}

std::span<const Word<Sex>> sex_words() {
    return sexes;
}

std::span<const Word<CraftKind>> craft_kind_words() {
    return craft_kinds;
}

std::span<const Word<ItemUse>> item_use_words() {
    return item_uses;
}

std::span<const Word<Meal>> meal_words() {
    return meals;
}

std::span<const Word<int>> weekday_words() {
    return weekdays;
}

std::string_view word(Travel travel) {
    return word_of(travels, travel);
}

std::string_view word(Terrain terrain) {
    return word_of(terrains, terrain);
}

std::string_view word(Water water) {
    return word_of(waters, water);
}

std::string_view word(BoatOnCarry boat) {
    return word_of(boats_on_carry, boat);
}

std::string_view word(PlaceKind kind) {
    return kind == PlaceKind::landing ? "landing" : word_of(place_kinds, kind);
}

std::string_view word(Sex sex) {
    return word_of(sexes, sex);
}

std::string_view word(CraftKind kind) {
    return word_of(craft_kinds, kind);
}

std::string_view word(ItemUse use) {
    return word_of(item_uses, use);
}

std::string_view word(Meal meal) {
    return word_of(meals, meal);
}

std::string_view class_word(RiverClass river_class) {
    const auto index = static_cast<std::size_t>(std::clamp(river_class, 0, 6));
    return classes.at(index);
}

std::optional<RiverClass> read_river_class(std::string_view text) {
    RiverClass harder = 0;
    const std::size_t dash = text.find('-');
    if (dash != std::string_view::npos && dash + 1 < text.size()) { // "II-III"
        const RiverClass one = plain_class(text.substr(0, dash));
        const RiverClass other = plain_class(text.substr(dash + 1));
        harder = one == 0 || other == 0 ? 0 : std::max(one, other);
    } else if (!text.empty() && text.back() == '+') {
        const RiverClass grade = plain_class(text.substr(0, text.size() - 1));
        harder = grade == 0 ? 0 : std::min(grade + 1, 6);
    } else if (!text.empty() && text.back() == '-') {
        harder = plain_class(text.substr(0, text.size() - 1));
    } else {
        harder = plain_class(text);
    }
    return harder == 0 ? std::nullopt : std::optional(harder);
}

} // namespace tumpline::planner

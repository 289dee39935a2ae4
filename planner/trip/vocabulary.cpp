#include "planner/trip/vocabulary.h"

#include <algorithm>
#include <array>

namespace tumpline::planner {

namespace {

constexpr auto unit_systems = std::to_array<Word<UnitSystem>>(
    {{"metric", UnitSystem::metric}, {"imperial", UnitSystem::imperial}});
constexpr auto travels = std::to_array<Word<Travel>>({{"walk", Travel::walk},
                                                      {"portage", Travel::portage},
                                                      {"paddle", Travel::paddle},
                                                      {"ride", Travel::ride},
                                                      {"line", Travel::line},
                                                      {"wade", Travel::wade},
                                                      {"pole", Travel::pole}});
constexpr auto terrains = std::to_array<Word<Terrain>>({{"path", Terrain::path},
                                                        {"rough-path", Terrain::rough_path},
                                                        {"forest", Terrain::forest},
                                                        {"off-path", Terrain::off_path},
                                                        {"brush", Terrain::brush},
                                                        {"bog", Terrain::bog},
                                                        {"sand", Terrain::sand},
                                                        {"snow", Terrain::snow}});
constexpr auto waters = std::to_array<Word<Water>>(
    {{"lake", Water::lake}, {"river", Water::river}, {"sea", Water::sea}});
constexpr auto boats_on_carry =
    std::to_array<Word<BoatOnCarry>>({{"rolled", BoatOnCarry::rolled},
                                      {"inflated", BoatOnCarry::whole},
                                      {"whole", BoatOnCarry::whole}, // as it was called at first
                                      {"auto", BoatOnCarry::automatic}});
constexpr auto carry_bys = std::to_array<Word<std::optional<CarryBy>>>({{"hands", CarryBy::hands},
                                                                        {"two", CarryBy::two},
                                                                        {"cart", CarryBy::cart},
                                                                        {"auto", std::nullopt}});
constexpr auto place_kinds = std::to_array<Word<PlaceKind>>({{"start", PlaceKind::start},
                                                             {"finish", PlaceKind::finish},
                                                             {"put-in", PlaceKind::put_in},
                                                             {"take-out", PlaceKind::take_out},
                                                             {"camp", PlaceKind::camp},
                                                             {"water", PlaceKind::water},
                                                             {"resupply", PlaceKind::resupply},
                                                             {"cache", PlaceKind::cache},
                                                             {"exit", PlaceKind::exit},
                                                             {"hazard", PlaceKind::hazard},
                                                             {"ford", PlaceKind::ford}});
constexpr auto sexes = std::to_array<Word<Sex>>({{"female", Sex::female}, {"male", Sex::male}});
constexpr auto craft_kinds =
    std::to_array<Word<CraftKind>>({{"packraft", CraftKind::packraft},
                                    {"inflatable", CraftKind::inflatable},
                                    {"solo-canoe", CraftKind::solo_canoe},
                                    {"tandem-canoe", CraftKind::tandem_canoe},
                                    {"kayak", CraftKind::kayak}});
constexpr auto item_uses = std::to_array<Word<ItemUse>>(
    {{"packed", ItemUse::packed}, {"worn", ItemUse::worn}, {"used", ItemUse::used}});
constexpr auto safety_gear =
    std::to_array<Word<SafetyGear>>({{"life-jacket", SafetyGear::life_jacket},
                                     {"cold-suit", SafetyGear::cold_suit},
                                     {"helmet", SafetyGear::helmet},
                                     {"throw-bag", SafetyGear::throw_bag},
                                     {"first-aid", SafetyGear::first_aid},
                                     {"light", SafetyGear::light},
                                     {"spare-paddle", SafetyGear::spare_paddle},
                                     {"shelter", SafetyGear::shelter}});
constexpr auto bag_sides =
    std::to_array<Word<BagSide>>({{"left", BagSide::left}, {"right", BagSide::right}});
constexpr auto boat_ends =
    std::to_array<Word<BoatEnd>>({{"bow", BoatEnd::bow}, {"stern", BoatEnd::stern}});
constexpr auto decks = std::to_array<Word<Deck>>(
    {{"open", Deck::open}, {"spray-deck", Deck::spray_deck}, {"self-bailing", Deck::self_bailing}});
constexpr auto strokes =
    std::to_array<Word<Stroke>>({{"low", Stroke::low}, {"high", Stroke::high}});
constexpr auto meals = std::to_array<Word<Meal>>(
    {{"breakfast", Meal::breakfast}, {"trail", Meal::trail}, {"dinner", Meal::dinner}});
constexpr auto water_stows =
    std::to_array<Word<WaterStow>>({{"bottle-at-hand", WaterStow::bottle_at_hand},
                                    {"bags", WaterStow::bags},
                                    {"at-hand", WaterStow::at_hand}});
constexpr auto weekdays = std::to_array<Word<int>>({{"monday", 1},
                                                    {"tuesday", 2},
                                                    {"wednesday", 3},
                                                    {"thursday", 4},
                                                    {"friday", 5},
                                                    {"saturday", 6},
                                                    {"sunday", 7}});
constexpr auto height_recorders = std::to_array<Word<HeightRecorder>>(
    {{"gnss", HeightRecorder::gnss}, {"barometer", HeightRecorder::barometer}});
constexpr auto layer_kinds =
    std::to_array<Word<geo::LayerKind>>({{"water", geo::LayerKind::water},
                                         {"river", geo::LayerKind::river},
                                         {"path", geo::LayerKind::path},
                                         {"road", geo::LayerKind::road},
                                         {"rapid", geo::LayerKind::rapid},
                                         {"building", geo::LayerKind::building},
                                         {"protected", geo::LayerKind::protected_ground}});
constexpr std::array<std::string_view, 7> roman_classes{"", "I", "II", "III", "IV", "V", "VI"};

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
        if (digit || text == roman_classes.at(static_cast<std::size_t>(grade)))
            return grade;
    }
    return 0;
}

} // namespace

std::span<const Word<UnitSystem>> unit_system_words() {
    return unit_systems;
}

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

std::span<const Word<std::optional<CarryBy>>> carry_by_words() {
    return carry_bys;
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

std::span<const Word<SafetyGear>> safety_gear_words() {
    return safety_gear;
}

std::span<const Word<BagSide>> bag_side_words() {
    return bag_sides;
}

std::span<const Word<BoatEnd>> boat_end_words() {
    return boat_ends;
}

std::span<const Word<Deck>> deck_words() {
    return decks;
}

std::span<const Word<Stroke>> stroke_words() {
    return strokes;
}

std::span<const Word<Meal>> meal_words() {
    return meals;
}

std::span<const Word<WaterStow>> water_stow_words() {
    return water_stows;
}

std::span<const Word<int>> weekday_words() {
    return weekdays;
}

std::span<const Word<geo::LayerKind>> layer_kind_words() {
    return layer_kinds;
}

std::span<const Word<HeightRecorder>> height_recorder_words() {
    return height_recorders;
}

std::string_view word(Travel travel) {
    return word_of(travels, travel);
}

std::string_view past_word(Travel travel) {
    constexpr auto words = std::to_array<Word<Travel>>({{"walked", Travel::walk},
                                                        {"walked", Travel::portage},
                                                        {"paddled", Travel::paddle},
                                                        {"ridden", Travel::ride},
                                                        {"lined", Travel::line},
                                                        {"waded", Travel::wade},
                                                        {"poled", Travel::pole}});
    return word_of(words, travel);
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

std::string_view word(SafetyGear gear) {
    return word_of(safety_gear, gear);
}

std::string_view word(BoatEnd end) {
    return word_of(boat_ends, end);
}

std::string_view word(CarryBy by) {
    return word_of(carry_bys, std::optional(by));
}

std::string_view waters_word(Water water) {
    switch (water) {
    case Water::lake:
        return "lakes";
    case Water::river:
        return "rivers";
    case Water::sea:
        return "the sea";
    }
    return {};
}

std::string_view word(Deck deck) {
    return word_of(decks, deck);
}

std::string_view word(Stroke stroke) {
    return word_of(strokes, stroke);
}

std::string_view word(BagSide side) {
    return word_of(bag_sides, side);
}

std::string_view word(ItemUse use) {
    return word_of(item_uses, use);
}

std::string_view word(Meal meal) {
    return word_of(meals, meal);
}

std::string_view class_word(RiverClass river_class) {
    const auto index = static_cast<std::size_t>(std::clamp(river_class, 0, 6));
    return roman_classes.at(index);
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

#pragma once

#include "planner/trip/trip.h"

#include <span>
#include <string_view>

/// The closed sets of words in a trip file, and the words that outputs use for the same things.
namespace tumpline::planner {

template <class Meaning> struct Word {
    std::string_view word;
    Meaning meaning;
};

[[nodiscard]] std::span<const Word<UnitSystem>> unit_system_words();
[[nodiscard]] std::span<const Word<Travel>> travel_words();
[[nodiscard]] std::span<const Word<Terrain>> terrain_words();
[[nodiscard]] std::span<const Word<Water>> water_words();
[[nodiscard]] std::span<const Word<BoatOnCarry>> boat_on_carry_words();
[[nodiscard]] std::span<const Word<std::optional<CarryBy>>> carry_by_words(); ///< and "auto"
[[nodiscard]] std::span<const Word<PlaceKind>> place_kind_words();            ///< without `landing`
[[nodiscard]] std::span<const Word<Sex>> sex_words();
[[nodiscard]] std::span<const Word<CraftKind>> craft_kind_words();
[[nodiscard]] std::span<const Word<ItemUse>> item_use_words();
[[nodiscard]] std::span<const Word<SafetyGear>> safety_gear_words();
[[nodiscard]] std::span<const Word<BagSide>> bag_side_words();
[[nodiscard]] std::span<const Word<BoatEnd>> boat_end_words();
[[nodiscard]] std::span<const Word<Deck>> deck_words();
[[nodiscard]] std::span<const Word<Stroke>> stroke_words();
[[nodiscard]] std::span<const Word<Meal>> meal_words();
[[nodiscard]] std::span<const Word<WaterStow>> water_stow_words();
[[nodiscard]] std::span<const Word<int>> weekday_words();
[[nodiscard]] std::span<const Word<geo::LayerKind>> layer_kind_words();
[[nodiscard]] std::span<const Word<HeightRecorder>> height_recorder_words(); ///< ISO: Monday is 1

/// The word of a meaning; of `PlaceKind::landing` "landing".
[[nodiscard]] std::string_view word(Travel travel);
/// What was done with a leg: "walked", "paddled", "lined".
[[nodiscard]] std::string_view past_word(Travel travel);
[[nodiscard]] std::string_view word(Terrain terrain);
[[nodiscard]] std::string_view word(Water water);
[[nodiscard]] std::string_view word(BoatOnCarry boat);
[[nodiscard]] std::string_view word(PlaceKind kind);
[[nodiscard]] std::string_view word(Sex sex);
[[nodiscard]] std::string_view word(CraftKind kind);
[[nodiscard]] std::string_view word(ItemUse use);
[[nodiscard]] std::string_view word(SafetyGear gear);
[[nodiscard]] std::string_view word(BagSide side);
[[nodiscard]] std::string_view word(BoatEnd end);
[[nodiscard]] std::string_view word(CarryBy by);
[[nodiscard]] std::string_view word(Deck deck);
[[nodiscard]] std::string_view word(Stroke stroke);
[[nodiscard]] std::string_view word(Meal meal);

/// All of a kind: "lakes", "rivers", "the sea".
[[nodiscard]] std::string_view waters_word(Water water);

/// "" for 0, else "I" to "VI".
[[nodiscard]] std::string_view class_word(RiverClass river_class);

/// A river class as written on maps and in guidebooks: "III" or "3"; "III-", "II+" and "II-III"
/// count as the harder one, III. Empty if it is none.
[[nodiscard]] std::optional<RiverClass> read_river_class(std::string_view text);

} // namespace tumpline::planner

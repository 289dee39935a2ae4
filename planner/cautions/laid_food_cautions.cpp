#include "planner/cautions/laid_food_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/milligrams.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <string>

namespace tumpline::planner {

namespace {

constexpr std::string_view food_source = "docs/left.md#food";

/// What a day lacks, meal by meal.
struct DayShort {
    const StoreShort* first = nullptr;
    std::vector<std::string> meals;
    std::int64_t needs_mg = 0;
    std::int64_t lacks_mg = 0;
};

std::string meal_words(Meal meal) {
    return meal == Meal::trail ? std::string("food on the way") : std::string(word(meal));
}

class LaidFoodRules {
  public:
    explicit LaidFoodRules(const Assembly& draft)
        : trip_(draft.prepared.trip), stretches_(draft.prepared.stretches),
          timeline_(draft.settled.timeline), loads_(draft.settled.loads) {}

    std::vector<Caution> run();

  private:
    void too_much(const StoreLaid& laid);
    void lacking(const DayShort& day);
    [[nodiscard]] std::string where(const StoreShort& meal) const;

    const Trip& trip_;
    const Stretches& stretches_;
    const Timeline& timeline_;
    const Loads& loads_;
    CautionList list_;
};

void LaidFoodRules::too_much(const StoreLaid& laid) {
    constexpr std::int64_t a_gram_mg = 1000;
    if (laid.wanted_mg <= laid.carried_mg + a_gram_mg)
        return;
    const std::size_t left_at = *loads_.laid[laid.leave].left_at;
    list_.at(timeline_.stretches[left_at].day, stretches_.stretches[left_at].leg);
    list_.add(Level::stop,
              "food-not-carried",
              format_both("{} of food are to be left at {}, and the packs hold {} there that is "
                          "to be eaten; the reserve stays with the party. Leave no more than that.",
                          in_both(show_mass, mg_to_kg(laid.wanted_mg)),
                          trip_.leaves[laid.leave].at,
                          in_both(show_mass, mg_to_kg(laid.carried_mg))),
              food_source);
}

/// Places at which food lies while a meal is eaten.
std::string LaidFoodRules::where(const StoreShort& meal) const {
    std::vector<std::string> places;
    for (std::size_t l = 0; l < loads_.laid.size(); ++l) {
        const LaidDown& laid = loads_.laid[l];
        const bool there =
            meal.meal == Meal::trail
                ? laid.lies_on(meal.stretch)
                : laid.misses_night(meal.stretch + (meal.meal == Meal::dinner ? 1 : 0));
        if (trip_.leaves[l].food_kg && there)
            places.push_back(trip_.leaves[l].at);
    }
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places.empty() ? std::string("where it was left") : "at " + listed(places);
}

void LaidFoodRules::lacking(const DayShort& day) {
    list_.at(day.first->day, stretches_.stretches[day.first->stretch].leg);
    list_.add(Level::stop,
              "no-food",
              format_both("Day {} lacks {} of {} (without packaging) for {}: it lies {}. Leave "
                          "less, or fetch it before.",
                          day.first->day,
                          in_both(show_mass, mg_to_kg(day.lacks_mg)),
                          in_both(show_mass, mg_to_kg(day.needs_mg)),
                          listed(day.meals),
                          where(*day.first)),
              food_source);
}

std::vector<Caution> LaidFoodRules::run() {
    for (const StoreLaid& laid : loads_.food_laid)
        too_much(laid);
    DayShort day;
    for (const StoreShort& meal : loads_.food_short) {
        if (day.first && day.first->day != meal.day) {
            lacking(day);
            day = {};
        }
        if (!day.first)
            day.first = &meal;
        const std::string words = meal_words(meal.meal);
        if (day.meals.empty() || day.meals.back() != words)
            day.meals.push_back(words);
        day.needs_mg += meal.needs_mg;
        day.lacks_mg += meal.lacks_mg;
    }
    if (day.first)
        lacking(day);
    return list_.take();
}

} // namespace

std::vector<Caution> laid_food_cautions(const Assembly& draft) {
    return LaidFoodRules(draft).run();
}

} // namespace tumpline::planner

#include "planner/cautions/laid_stores.h"

#include "planner/quantities/spelling.h"
#include "planner/trip/vocabulary.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

std::string meal_words(Meal meal) {
    return meal == Meal::trail ? std::string("food on the way") : std::string(word(meal));
}

} // namespace

std::vector<DayShort> short_by_day(const std::vector<StoreShort>& meals) {
    std::vector<DayShort> days;
    for (const StoreShort& meal : meals) {
        if (days.empty() || days.back().first->day != meal.day)
            days.push_back({.first = &meal, .meals = {}, .needs_mg = 0, .lacks_mg = 0});
        DayShort& day = days.back();
        const std::string words = meal_words(meal.meal);
        if (day.meals.empty() || day.meals.back() != words)
            day.meals.push_back(words);
        day.needs_mg += meal.needs_mg;
        day.lacks_mg += meal.lacks_mg;
    }
    return days;
}

std::string where_it_lies(const Assembly& draft,
                          const StoreShort& meal,
                          const std::function<bool(const Leave&)>& lays) {
    const std::vector<Leave>& leaves = draft.prepared.trip.leaves;
    const std::vector<LaidDown>& all = draft.settled.loads.laid;
    std::vector<std::string> places;
    for (std::size_t l = 0; l < all.size(); ++l) {
        const bool there =
            meal.meal == Meal::trail
                ? all[l].lies_on(meal.stretch)
                : all[l].misses_night(meal.stretch + (meal.meal == Meal::dinner ? 1 : 0));
        if (lays(leaves[l]) && there)
            places.push_back(leaves[l].at);
    }
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places.empty() ? std::string("where it was left") : "at " + listed(places);
}

bool is_too_much(const StoreLaid& laid) {
    constexpr std::int64_t a_gram_mg = 1000;
    return laid.wanted_mg > laid.carried_mg + a_gram_mg;
}

void at_leave(CautionList& list, const Assembly& draft, std::size_t leave) {
    const std::size_t left_at = *draft.settled.loads.laid[leave].left_at;
    list.at(draft.settled.timeline.stretches[left_at].day,
            draft.prepared.stretches.stretches[left_at].leg);
}

void at_meal(CautionList& list, const Assembly& draft, const StoreShort& meal) {
    list.at(meal.day, draft.prepared.stretches.stretches[meal.stretch].leg);
}

} // namespace tumpline::planner

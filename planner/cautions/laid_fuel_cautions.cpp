#include "planner/cautions/laid_fuel_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/milligrams.h"
#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/vocabulary.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view fuel_source = "docs/left.md#fuel";

class LaidFuelRules {
  public:
    explicit LaidFuelRules(const Assembly& draft)
        : trip_(draft.prepared.trip), stretches_(draft.prepared.stretches),
          timeline_(draft.settled.timeline), loads_(draft.settled.loads) {}

    std::vector<Caution> run();

  private:
    /// What the meals of one day lack.
    struct DayWithout {
        const StoreShort* first = nullptr;
        std::vector<std::string> meals = {};
        std::int64_t lacks_mg = 0;
    };

    void laid(const StoreLaid& laid);
    void lacking(const DayWithout& day);
    [[nodiscard]] std::string where(const StoreShort& meal) const;

    const Trip& trip_;
    const Stretches& stretches_;
    const Timeline& timeline_;
    const Loads& loads_;
    CautionList list_;
};

void LaidFuelRules::laid(const StoreLaid& laid) {
    constexpr std::int64_t a_gram_mg = 1000;
    const std::size_t left_at = *loads_.laid[laid.leave].left_at;
    list_.at(timeline_.stretches[left_at].day, stretches_.stretches[left_at].leg);
    if (laid.wanted_mg > laid.carried_mg + a_gram_mg)
        list_.add(
            Level::stop,
            "fuel-not-carried",
            format_both("{} of fuel are to be left at {}, and the packs hold {} there that is "
                        "to be burnt; the reserve stays with the party. Leave no more than "
                        "that.",
                        in_both(show_mass, mg_to_kg(laid.wanted_mg)),
                        trip_.leaves[laid.leave].at,
                        in_both(show_mass, mg_to_kg(laid.carried_mg))),
            fuel_source);
    list_.add(
        Level::note,
        "fuel-container",
        format_both("{} of fuel are left at {} without a container: those of the stage stay in "
                    "the pack. Bring one for it, and name it among the kit and the \"things\".",
                    in_both(show_mass, mg_to_kg(std::min(laid.wanted_mg, laid.carried_mg))),
                    trip_.leaves[laid.leave].at),
        fuel_source);
}

std::string LaidFuelRules::where(const StoreShort& meal) const {
    std::vector<std::string> places;
    const std::size_t night = meal.stretch + (meal.meal == Meal::dinner ? 1 : 0);
    for (std::size_t l = 0; l < loads_.laid.size(); ++l)
        if (trip_.leaves[l].fuel_kg && loads_.laid[l].misses_night(night))
            places.push_back(trip_.leaves[l].at);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places.empty() ? std::string("where it was left") : "at " + listed(places);
}

void LaidFuelRules::lacking(const DayWithout& day) {
    list_.at(day.first->day, stretches_.stretches[day.first->stretch].leg);
    list_.add(Level::stop,
              "no-fuel",
              format_both("Day {} lacks {} of fuel for {}: it lies {}. Leave less, or fetch it "
                          "before.",
                          day.first->day,
                          in_both(show_mass, mg_to_kg(day.lacks_mg)),
                          listed(day.meals),
                          where(*day.first)),
              fuel_source);
}

std::vector<Caution> LaidFuelRules::run() {
    for (const StoreLaid& one : loads_.fuel_laid)
        laid(one);
    DayWithout day;
    for (const StoreShort& meal : loads_.fuel_short) {
        if (day.first != nullptr && day.first->day != meal.day) {
            lacking(day);
            day = {};
        }
        if (day.first == nullptr)
            day.first = &meal;
        day.meals.emplace_back(word(meal.meal));
        day.lacks_mg += meal.lacks_mg;
    }
    if (day.first != nullptr)
        lacking(day);
    return list_.take();
}

} // namespace

std::vector<Caution> laid_fuel_cautions(const Assembly& draft) {
    return LaidFuelRules(draft).run();
}

} // namespace tumpline::planner

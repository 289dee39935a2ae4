#include "planner/cautions/child_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/loads/limits.h"
#include "planner/models/age.h"
#include "planner/models/constants.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

namespace tumpline::planner {

namespace {

constexpr double pace_of_their_own_years = 14.0; // younger ones set the pace of a party

/// What is to be said of one child.
class ChildWatch {
  public:
    ChildWatch(const Assembly& draft, const Plan& plan, std::size_t member, CautionList& list)
        : draft_(draft), plan_(plan), member_(member),
          child_(draft.prepared.assumed.members[member]), list_(list) {}

    void run() {
        load();
        food();
        list_.anywhere();
        pace();
    }

  private:
    [[nodiscard]] std::string who() const {
        return fmt::format(
            "{} ({:.0f} years)", draft_.prepared.trip.party[member_].name, child_.age_years);
    }

    void load();
    void food();
    void pace();

    const Assembly& draft_;
    const Plan& plan_;
    std::size_t member_;
    const AssumedMember& child_;
    CautionList& list_;
};

/// The heaviest pack or carry on foot.
void ChildWatch::load() {
    const PlanLeg* worst = nullptr;
    for (const PlanLeg& leg : plan_.legs)
        if (bears_packs(leg.travel) &&
            (!worst || leg.loads[member_].pack_max_kg > worst->loads[member_].pack_max_kg))
            worst = &leg;
    if (!worst)
        return;
    const double share = worst->loads[member_].pack_max_kg / child_.body_kg;
    if (!over_limit(worst->loads[member_].pack_max_kg, child_load_share * child_.body_kg))
        return;
    list_.at(worst->day, worst->leg);
    list_.add(
        Level::caution,
        "child-load",
        format_both("{} carries {}, {:.0f} % of the body mass. For children's bags at most 10 "
                    "to 20 % is told{}; no trial of children on walks of days was found. "
                    "Take things out of this pack.",
                    who(),
                    in_both(show_mass, worst->loads[member_].pack_max_kg),
                    100.0 * share,
                    share > child_most_share ? ", and this is more" : ""),
        "AAPBackpack");
}

/// What a whole day's food gives, against an ordinary day of a child of that mass.
void ChildWatch::food() {
    const AssumedFood& food = draft_.prepared.assumed.food;
    constexpr double usual_j_per_kg = 4.0e3 * j_per_kcal;
    for (const PlanDay& day : plan_.days) {
        const double eaten_j =
            food.ration_kg
                ? *food.ration_kg *
                      draft_.prepared.trip.food.energy_density_j_per_kg.value_or(usual_j_per_kg)
                : day.members[member_].energy_j * food.replace;
        if (eaten_j >= child_.least_day.of_rest_j)
            continue;
        list_.at(day.day);
        list_.add(Level::caution,
                  "child-food",
                  fmt::format("A day's food of {} gives about {:.0f} kcal; a child of that mass "
                              "spends {:.0f} on an ordinary day, and grows. Take more for this "
                              "child.",
                              who(),
                              eaten_j / j_per_kcal,
                              child_.least_day.of_rest_j / j_per_kcal),
                  "FAO2004");
        return; // once
    }
}

void ChildWatch::pace() {
    if (child_.age_years >= pace_of_their_own_years || plan_.totals.on_foot_m <= 0.0 ||
        draft_.prepared.trip.party[member_].pace)
        return;
    list_.add(Level::caution,
              "child-pace",
              fmt::format("{} is planned at an adult's pace: no walking speed of children over a "
                          "day was found to plan by. The child sets the pace of the party: give "
                          "\"pace\", from a walk that you did together.",
                          who()));
}

} // namespace

std::vector<Caution> child_cautions(const Assembly& draft, const Plan& plan) {
    CautionList list;
    for (std::size_t m = 0; m < draft.prepared.assumed.members.size(); ++m)
        if (draft.prepared.assumed.members[m].least_day.of_rest_j > 0.0)
            ChildWatch(draft, plan, m, list).run();
    return list.take();
}

} // namespace tumpline::planner

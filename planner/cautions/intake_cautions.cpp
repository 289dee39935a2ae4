#include "planner/cautions/intake_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/models/constants.h"
#include "planner/models/drinking.h"

#include <fmt/format.h>

#include <optional>
#include <string>

namespace tumpline::planner {

namespace {

/// What a party tires under within days; common practice, no source.
constexpr double least_replaced = 0.7;
/// Of a ration whose density the trip file does not give, as where the plan assumes one.
constexpr double usual_density_j_per_kg = 4.0 * j_per_kcal * 1000.0;
/// Typed figures a tenth under the model are no difference.
constexpr double near_model = 0.9;
/// The low end of what is used in camp, docs/models/drinking.md.
constexpr double least_camp_l = 1.5;

class IntakeWatch {
  public:
    IntakeWatch(const Assembly& draft, const Plan& plan)
        : prepared_(draft.prepared), trip_(draft.prepared.trip), plan_(plan) {}

    std::vector<Caution> run() {
        fixed_ration();
        replaced_share();
        drinking();
        return list_.take();
    }

  private:
    void fixed_ration();
    void replaced_share();
    void drinking();
    void drinks_less(std::string_view when, double given_l_per_h, double model_l_per_h);

    const Prepared& prepared_;
    const Trip& trip_;
    const Plan& plan_;
    CautionList list_;
};

/// Against the mean of the days under way: what is eaten too little on one is made up on others.
void IntakeWatch::fixed_ration() {
    if (!trip_.food.ration_kg)
        return;
    const double eaten_j =
        *trip_.food.ration_kg * trip_.food.energy_density_j_per_kg.value_or(usual_density_j_per_kg);
    for (std::size_t m = 0; m < trip_.party.size(); ++m) {
        double spent_j = 0.0;
        int days = 0;
        for (const PlanDay& day : plan_.days)
            if (!day.rest_day) {
                spent_j += day.members[m].energy_j;
                ++days;
            }
        if (days == 0 || eaten_j * days >= least_replaced * spent_j)
            continue;
        const double share = eaten_j * days / spent_j;
        Caution& caution = list_.add(
            Level::caution,
            "ration-low",
            format_both("A ration of {} is about {:.0f} kcal a day; {} spends {:.0f} kcal on the "
                        "mean day under way. {:.0f} % of it is far too little for more than a day "
                        "or two.",
                        in_both(show_mass, *trip_.food.ration_kg),
                        eaten_j / j_per_kcal,
                        trip_.party[m].name,
                        spent_j / days / j_per_kcal,
                        100.0 * share));
        caution.subject = trip_.party[m].name;
        set_figure(caution, fmt::format("{:.0f} % of what is spent", 100.0 * share), -share);
    }
}

void IntakeWatch::replaced_share() {
    if (trip_.food.ration_kg || prepared_.assumed.food.replace >= least_replaced)
        return;
    const double share = prepared_.assumed.food.replace;
    Caution& caution =
        list_.add(Level::caution,
                  "ration-low",
                  fmt::format("Food replaces {:.0f} % of the energy spent: far too little for more "
                              "than a day or two.",
                              100.0 * share));
    set_figure(caution, fmt::format("{:.0f} % of what is spent", 100.0 * share), -share);
}

void IntakeWatch::drinks_less(std::string_view when, double given_l_per_h, double model_l_per_h) {
    if (given_l_per_h >= near_model * model_l_per_h)
        return;
    const UnitText given = hourly_words(given_l_per_h);
    const UnitText model = hourly_words(model_l_per_h);
    Caution& caution = list_.add(
        Level::caution,
        "drinking-too-little",
        format_both("{} an hour are planned {} and the model asks for {} at {}: people differ, and "
                    "who drinks too little is the last to notice.",
                    given,
                    when,
                    model,
                    in_both(show_temperature, prepared_.assumed.weather.high_c)),
        "TBMED507");
    caution.subject = when;
    set_figure(caution,
               format_both("{} of {} an hour", given, model),
               (model_l_per_h - given_l_per_h) / model_l_per_h);
}

void IntakeWatch::drinking() {
    const double air_c = prepared_.assumed.weather.high_c;
    const bool on_foot = plan_.totals.walk_m + plan_.totals.portage_m > 0.0;
    if (on_foot && trip_.water.walking_lps)
        drinks_less("on foot",
                    3600.0 * *trip_.water.walking_lps,
                    3600.0 * drinking_lps(Effort::moderate, air_c));
    if (plan_.totals.paddle_m > 0.0 && trip_.water.paddling_lps)
        drinks_less("afloat",
                    3600.0 * *trip_.water.paddling_lps,
                    3600.0 * drinking_lps(Effort::easy, air_c));
    if (plan_.days.size() < 2 || !trip_.water.camp_l || *trip_.water.camp_l >= least_camp_l)
        return;
    const UnitText given = in_both(show_volume, *trip_.water.camp_l);
    const UnitText least = in_both(show_volume, least_camp_l);
    Caution& caution = list_.add(
        Level::caution,
        "drinking-too-little",
        format_both("{} for each in camp, to cook, drink and wash with: {} are the least that "
                    "people get by on.",
                    given,
                    least));
    caution.subject = "in camp";
    set_figure(
        caution, format_both("{} of {}", given, least), 1.0 - *trip_.water.camp_l / least_camp_l);
}

} // namespace

std::vector<Caution> intake_cautions(const Assembly& draft, const Plan& plan) {
    return IntakeWatch(draft, plan).run();
}

} // namespace tumpline::planner

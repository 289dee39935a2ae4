#pragma once

#include "cli/book/book_fields.h"
#include "cli/book/book_maps.h"
#include "cli/words/figures.h"
#include "planner/plan.h"
#include "planner/route/route.h"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

/// The parts of the book, each the fields of one template in cli/templates.
namespace tumpline::cli {

/// What every part is made from.
struct BookSource {
    const planner::Plan& plan;
    const planner::Route& route;
    const Figures& shown;
    const BookMaps& maps;
};

void add_trip(Fields& fields, const BookSource& source);
void add_days(Fields& fields, const BookSource& source);
void add_packing(Fields& fields, const BookSource& source);
void add_supplies(Fields& fields, const BookSource& source);
void add_contact(Fields& fields, const BookSource& source);
/// The ways of doing each portage, which few read on the way.
void add_carry_ways(Fields& fields, const BookSource& source);
void add_about(Fields& fields, const BookSource& source);

/// Of one day: each portage with who takes what and the ways of doing it; what each boat bears.
[[nodiscard]] std::vector<Fields> portage_fields(const BookSource& source,
                                                 const planner::PlanDay& day);
[[nodiscard]] std::vector<Fields> craft_fields(const BookSource& source,
                                               const planner::PlanDay& day);

/// Of one day: by when to leave for each appointment, from where on the way forward is the shorter
/// way out, from where to turn round.
[[nodiscard]] std::vector<Fields> leave_fields(const BookSource& source,
                                               const planner::PlanDay& day);
/// Ways out as seen from about every third of a day, and from the point of no return.
[[nodiscard]] std::vector<Fields> exit_fields(const BookSource& source,
                                              const planner::PlanDay& day);
[[nodiscard]] std::vector<Fields> no_return_fields(const BookSource& source,
                                                   const planner::PlanDay& day);
[[nodiscard]] std::vector<Fields> turn_fields(const BookSource& source,
                                              const planner::PlanDay& day);

/// The figures that pointing at a profile shows, as JSON that may stand in a <script>.
[[nodiscard]] std::string profile_figures(const BookSource& source);

/// Fields of the cautions for which `wanted` holds, the gravest first.
[[nodiscard]] std::vector<Fields>
caution_fields(const BookSource& source,
               const std::vector<planner::Caution>& cautions,
               const std::function<bool(const planner::Caution&)>& wanted);

/// A row of the boxes of figures.
struct Figure {
    std::string_view label;
    std::string value;
    std::string more; ///< what it is made of; may be empty
};

[[nodiscard]] Fields figure(const Figure& shown);

/// The climb and descent of a day or the whole.
template <typename Way> [[nodiscard]] Fields climb_figure(const Way& way, const Figures& shown) {
    return figure({"Up",
                   shown.climb(way.ascent_m, way.heights_known),
                   way.heights_known ? "down " + shown.height(way.descent_m) : std::string()});
}

/// "walk 14.2 km, afloat 3.1 km": the ways of travel that occur.
struct Ways {
    double walk_m;
    double portage_m;
    double paddle_m;
    double ride_m;
    double led_m;
};

/// Of a day, or of all.
template <typename Sum> [[nodiscard]] Ways ways_of(const Sum& sum) {
    return {sum.walk_m, sum.portage_m, sum.paddle_m, sum.ride_m, sum.led_m};
}

[[nodiscard]] std::string ways_phrase(const Ways& ways, const Figures& shown);

/// A date as a year with its fraction, in the middle of its month.
[[nodiscard]] double year_of(planner::Date date);

/// "one day", "3 days".
[[nodiscard]] std::string counted(long count, std::string_view one, std::string_view many);

/// Joins with commas.
[[nodiscard]] std::string joined(const std::vector<std::string>& words);

} // namespace tumpline::cli

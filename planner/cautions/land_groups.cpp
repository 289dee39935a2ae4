#include "planner/cautions/land_groups.h"

#include "planner/quantities/unit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace tumpline::planner {

namespace {

/// How the facts of one kind are put together: `all` has a gap for the legs.
struct Kind {
    std::string_view code;
    std::string_view one; ///< before a leg's own figure
    std::string_view all;
};

constexpr std::array kinds{
    Kind{"ground-rapid",
         "Not named by the trip",
         "The map's layers show rapids or falls where the trip names no hazard: {}. Scout each "
         "from shore, and ask who knows the river."},
    Kind{"ground-carried",
         "Where the boats are carried",
         "The map's layers show rapids or falls where the boats are carried: {}. Do not let the "
         "water take you past the landings."},
    Kind{"ground-shore",
         "Far from shore",
         "By the layers the line leads far from the nearest shore: {}."},
    Kind{"ground-stream",
         "Running water crossed",
         "Running water is crossed by the layers: {}. Whether it can be crossed or drunk they do "
         "not say."},
    Kind{"ground-off-path",
         "No marked path",
         "No marked path of the layers runs here: {}. The pace is planned as on a path."}};

const Kind* kind_of(const Caution& caution) {
    const auto* const found = std::ranges::find(kinds, caution.code, &Kind::code);
    return found == kinds.end() || !caution.leg || caution.figure.empty() ? nullptr : found;
}

UnitText figure_of(const Caution& caution) {
    return {caution.figure,
            caution.figure_imperial.empty() ? caution.figure : caution.figure_imperial};
}

/// "leg 2 at 3.0 km, 7.5 km; leg 4 at 12 km": a leg that has several says its name once.
UnitText legs_told(const std::vector<const Caution*>& facts) {
    UnitText told = "";
    std::optional<LegNumber> leg;
    for (const Caution* fact : facts) {
        const std::string head =
            fact->leg == leg
                ? std::string(", ")
                : fmt::format("{}leg {} ", told.metric.empty() ? "" : "; ", *fact->leg);
        told = format_both("{}{}{}", told, head, figure_of(*fact));
        leg = fact->leg;
    }
    return told;
}

} // namespace

bool is_land_fact(const Caution& caution) {
    return kind_of(caution) != nullptr;
}

std::string land_fact_word(const Caution& caution) {
    const Kind* const kind = kind_of(caution);
    return kind == nullptr ? std::string() : std::string(kind->one);
}

std::vector<Caution> grouped_by_kind(const std::vector<Caution>& cautions) {
    std::vector<Caution> grouped;
    for (const Caution& caution : cautions) {
        const Kind* const kind = kind_of(caution);
        if (kind == nullptr) {
            grouped.push_back(caution);
            continue;
        }
        std::vector<const Caution*> facts;
        for (const Caution& other : cautions)
            if (kind_of(other) == kind)
                facts.push_back(&other);
        if (facts.size() == 1)
            grouped.push_back(caution);
        if (facts.size() == 1 || facts.front() != &caution)
            continue;
        const UnitText text = format_both(kind->all, legs_told(facts));
        Caution& all = grouped.emplace_back(caution);
        all.day.reset();
        all.leg.reset();
        all.text = text.metric;
        all.imperial = imperial_if_other(text);
        all.figure.clear();
        all.figure_imperial.clear();
    }
    return grouped;
}

} // namespace tumpline::planner

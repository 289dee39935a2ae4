#pragma once

#include "planner/decisions/craft_choice_trips.h"
#include "planner/decisions/craft_margins.h"
#include "planner/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The trip with each boat that its file offers, side by side.
namespace tumpline::planner {

struct CraftOption {
    OtherBoats boats;
    std::optional<Plan> plan; ///< empty: refused
    WayFigures figures;
    CraftMargin river_class; ///< in classes
    CraftMargin payload;     ///< kilograms
    std::optional<CraftWind> wind;
    std::string reason; ///< the first thing that stands against it; empty if nothing known does
    std::string reason_imperial; ///< empty if it is the same

    [[nodiscard]] VerdictLevel level() const {
        return plan ? plan->verdict.level : VerdictLevel::cannot;
    }
};

/// What two options are set in order by, the first that tells them apart; each as far as it is
/// printed (docs/craft.md).
enum class CraftRule {
    verdict, ///< can be done and keeps what was asked; can be done
    known,   ///< fewer of the margins of class and payload are not known
    days,
    pack,    ///< the heaviest, by 100 g
    carried, ///< load times distance, by 1 kg km
    time,    ///< under way, by the minute
    price,   ///< one that is known before one that is not
    file     ///< nothing: the order of the file
};

[[nodiscard]] std::string_view name_of(CraftRule rule);

/// What speaks for one option beside another, whatever decides.
enum class CraftGain { time, pack, carried, river_class, payload, wind, price };

[[nodiscard]] std::string_view name_of(CraftGain gain);

struct CraftComparison {
    std::vector<CraftOption> options;     ///< the best first; what cannot be done last
    std::optional<CraftRule> decides;     ///< between the first two, where both can be done
    std::vector<CraftGain> for_runner_up; ///< in what the second is ahead of the first

    /// Whether any can be done.
    [[nodiscard]] bool any() const {
        return !options.empty() && options.front().level() != VerdictLevel::cannot;
    }
};

/// Plans the trip with its own boats, with each of its choices and without a boat.
[[nodiscard]] CraftComparison
compare_craft(const Trip& trip, const Route& route, const std::vector<OtherRoute>& others);

} // namespace tumpline::planner

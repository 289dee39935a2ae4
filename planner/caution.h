#pragma once

#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>

namespace tumpline::planner {

/// How much a caution weighs: `note` explains, `caution` wants a decision, `stop` means that the
/// plan cannot be done as it stands.
enum class Level { note, caution, stop };

/// Something the reader must know beside a figure.
struct Caution {
    Level level = Level::note;
    std::string code;             ///< stable word for programs, "after-dusk"; docs/cautions.md
    std::optional<int> day;       ///< from 1
    std::optional<LegNumber> leg; ///< of the route
    std::string text;
    std::string source;        ///< key in docs/references.md, or "common practice, no source"
    std::string imperial = {}; ///< the text in imperial units; empty if it is the same
    std::string title = {};    ///< in a few words, the same for every caution of its code
    std::string subject = {};  ///< the person, boat or place that it is about, if one
    std::string figure = {};   ///< how bad, in a few words: "24.1 kg of 19.0 kg"
    std::string figure_imperial = {}; ///< the same in imperial units; empty if it is the same
    double excess = 0.0; ///< how bad, to find the worst of one code, in that code's own unit
};

} // namespace tumpline::planner

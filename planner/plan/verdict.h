#pragma once

#include "planner/quantities/leg_number.h"
#include "planner/quantities/unit_text.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What a plan comes to in one word, as data: the cautions weighed and grouped, and what could not
/// be judged. Computed by planner/cautions/verdict.h.
namespace tumpline::planner {

/// `clear`: nothing known stands against it; `breaks`: it breaks what was asked for; `cannot`: it
/// cannot be done. In the order of their weight.
enum class VerdictLevel { clear, breaks, cannot };

/// Where a caution holds, as far as it holds somewhere.
struct CautionPlace {
    std::optional<int> day;       ///< from 1
    std::optional<LegNumber> leg; ///< of the route
    std::string leg_name;
    std::string text; ///< "day 2, leg 4 (Fall carry)"; empty if it holds for the whole trip
};

/// Cautions of one code about one person, boat or place: one line under the verdict.
struct VerdictReason {
    VerdictLevel level = VerdictLevel::clear; ///< what these alone make of the plan
    std::string code;
    std::string title;                 ///< "Pack over the limit"
    std::string subject;               ///< "Ada"; empty if it is about nobody in particular
    UnitText figure = "";              ///< of the worst: "24.1 kg of 19.0 kg"; may be empty
    CautionPlace worst;                ///< where it is worst
    std::vector<int> days;             ///< all days on which it holds, ascending
    std::vector<LegNumber> legs;       ///< all legs on which it holds, ascending
    std::size_t count = 0;             ///< of cautions
    std::vector<std::size_t> cautions; ///< indices into Plan::cautions, the worst first
    UnitText line = "";                ///< all of it in one line
};

/// Something that could not be judged, because it was not given.
struct NotJudged {
    std::string code;            ///< stable word for programs, "water-temperature"
    std::string title;           ///< "water temperature"; with names where it is about some only
    std::string key;             ///< JSON pointer of what would give it; empty if no key does
    std::vector<LegNumber> legs; ///< on which it matters; empty: the whole trip
};

struct Verdict {
    VerdictLevel level = VerdictLevel::clear;
    std::vector<VerdictReason> reasons; ///< what makes the level, worst first; empty if clear
    std::vector<VerdictReason> also;    ///< the other cautions, worst first
    std::vector<std::size_t> always;    ///< what holds on any such trip, counted nowhere: indices
                                        ///< into Plan::cautions
    std::vector<NotJudged> unknown;
    std::string unknown_line; ///< "Not judged, because not given: ..."; empty if nothing is
};

/// "cannot be done", "breaks what you asked", "nothing known stands against it".
[[nodiscard]] std::string verdict_words(VerdictLevel level);

/// "This plan cannot be done.", "Nothing known stands against this plan."
[[nodiscard]] std::string verdict_sentence(VerdictLevel level);

/// "cannot", "breaks", "clear": the word for programs.
[[nodiscard]] std::string verdict_word(VerdictLevel level);

} // namespace tumpline::planner

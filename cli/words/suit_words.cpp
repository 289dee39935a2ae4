#include "cli/words/suit_words.h"

#include "cli/words/words.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace tumpline::cli {

namespace {

using planner::LegSuitability;
using planner::SuitReason;
using planner::Suits;
using planner::Water;

/// "rivers up to class II".
std::string made_for(const LegSuitability& row) {
    return row.water == Water::river && row.hardest > 0
               ? fmt::format("rivers up to class {}", planner::class_word(row.hardest))
               : std::string(planner::waters_word(row.water));
}

std::string spec_words(const planner::PaddleSpec& paddle, const Figures& shown) {
    std::string words;
    const auto add = [&](const std::string& part) {
        words += fmt::format("{}{}", words.empty() ? "" : ", ", part);
    };
    if (paddle.length_m)
        add(shown.length(*paddle.length_m));
    if (paddle.pieces)
        add(*paddle.pieces == 1 ? std::string("one piece")
                                : fmt::format("{} pieces", *paddle.pieces));
    if (paddle.packed_length_m)
        add(fmt::format("packed {}", shown.length(*paddle.packed_length_m)));
    if (paddle.stroke)
        add(fmt::format("for a {} stroke", planner::word(*paddle.stroke)));
    return words.empty() ? std::string("nothing is said of it") : words;
}

} // namespace

std::string_view suits_word(Suits suits) {
    switch (suits) {
    case Suits::yes:
        return "suits";
    case Suits::with_care:
        return "with care";
    case Suits::not_known:
        return "not known";
    case Suits::no:
        return "does not suit";
    }
    return {};
}

std::string_view suits_name(Suits suits) {
    switch (suits) {
    case Suits::yes:
        return "yes";
    case Suits::with_care:
        return "with_care";
    case Suits::not_known:
        return "not_known";
    case Suits::no:
        return "no";
    }
    return {};
}

std::string_view reason_name(SuitReason reason) {
    constexpr std::array<std::string_view, 15> names{"water_named",
                                                     "water_not_named",
                                                     "class_over",
                                                     "class_not_given",
                                                     "suits_not_given",
                                                     "open_deck",
                                                     "deck_idle",
                                                     "light_boat",
                                                     "heavy_boat",
                                                     "straps",
                                                     "no_straps",
                                                     "stroke_fits",
                                                     "low_stroke",
                                                     "high_stroke",
                                                     "stroke_open"};
    return names.at(static_cast<std::size_t>(reason));
}

std::string remark_words(const LegSuitability& row, SuitReason reason, const Figures& shown) {
    switch (reason) {
    case SuitReason::water_named:
        return fmt::format("made for {}", made_for(row));
    case SuitReason::water_not_named:
        return fmt::format("{} not among what it is made for",
                           row.water == Water::sea
                               ? "the sea is"
                               : fmt::format("{} are", planner::waters_word(row.water)));
    case SuitReason::class_over:
        return fmt::format("class {} is harder than what it is made for, {}",
                           planner::class_word(row.river_class.value_or(0)),
                           made_for(row));
    case SuitReason::class_not_given:
        return row.part == planner::Part::craft
                   ? fmt::format("made for {}, and the class of this one is not given",
                                 made_for(row))
                   : std::string("the river's class is not given");
    case SuitReason::suits_not_given:
        return "for what water it is made is not said";
    case SuitReason::open_deck:
        return "waves come into an open boat";
    case SuitReason::deck_idle:
        return "without rain on calm water the spray deck can stay at home, where it comes off";
    case SuitReason::light_boat:
        return fmt::format("{} is light for rapids: boats for them mostly weigh about {}",
                           shown.mass(row.mass_kg),
                           shown.mass(4.0));
    case SuitReason::heavy_boat:
        return fmt::format("{} is much for flat water: boats for it mostly weigh about {}",
                           shown.mass(row.mass_kg),
                           shown.mass(2.0));
    case SuitReason::straps:
        return "thigh straps are usual from class III: whether it has them is not known";
    case SuitReason::no_straps:
        return "without thigh straps, which are usual from class III: a swim is likelier, and a "
               "roll "
               "is not to be counted on";
    case SuitReason::stroke_fits:
        return "its stroke fits this water";
    case SuitReason::low_stroke:
        return "made for a low stroke: paddles for rapids are shorter, for a high one";
    case SuitReason::high_stroke:
        return "made for a high stroke: touring paddles are longer, for a low one";
    case SuitReason::stroke_open:
        return "for which stroke it is made is not said";
    }
    return {};
}

std::string suit_words(const LegSuitability& row, const Figures& shown) {
    std::string words = fmt::format("{} {}: ", row.what, suits_word(row.worst()));
    if (row.worst() == Suits::not_known)
        words = fmt::format("{}, {}: ", row.what, suits_word(row.worst()));
    bool first = true;
    for (const planner::SuitRemark& remark : row.remarks) {
        words += (first ? "" : "; ") + remark_words(row, remark.reason, shown);
        first = false;
    }
    return words;
}

std::string water_kind_words(const LegSuitability& row) {
    const std::string_view water = planner::word(row.water);
    if (row.water == Water::river && !row.river_class)
        return fmt::format("{}, class not given", water);
    if (!row.river_class)
        return std::string(water);
    return fmt::format("{}, class {}", water, planner::class_word(*row.river_class));
}

std::string water_words(const LegSuitability& row) {
    return fmt::format("{} ({})", row.leg_name, water_kind_words(row));
}

std::string paddle_words(const planner::PaddleInPack& paddle, const Figures& shown) {
    std::string head = fmt::format("{}: {}; ", paddle.what, spec_words(paddle.paddle, shown));
    switch (paddle.packed) {
    case planner::PackedPaddle::not_known:
        return head + "whether it goes into a pack is not known";
    case planner::PackedPaddle::goes_in:
        return head + (paddle.by == planner::PackedBy::lengths
                           ? fmt::format("goes into {}'s pack of {}",
                                         paddle.bearer,
                                         shown.length(paddle.pack_length_m.value_or(0.0)))
                           : std::string("four pieces go into a pack"));
    case planner::PackedPaddle::sticks_out:
        return head + (paddle.by == planner::PackedBy::lengths
                           ? fmt::format("sticks {} out of {}'s pack of {}",
                                         shown.length(paddle.sticks_out_m),
                                         paddle.bearer,
                                         shown.length(paddle.pack_length_m.value_or(0.0)))
                           : std::string("two pieces or one stick out of a pack"));
    }
    return head;
}

std::string ends_words(const planner::EndsLoad& ends, const Figures& shown) {
    constexpr double a_gram_kg = 1e-3;
    const double more_kg = ends.stern_kg - ends.bow_kg;
    const std::string apart = std::abs(more_kg) < a_gram_kg
                                  ? std::string("level")
                                  : fmt::format("{} more at the {}",
                                                shown.mass(std::abs(more_kg)),
                                                more_kg > 0.0 ? "stern" : "bow");
    return fmt::format("bow {}, stern {} of what is said to lie there: {}",
                       shown.mass(ends.bow_kg),
                       shown.mass(ends.stern_kg),
                       apart);
}

} // namespace tumpline::cli

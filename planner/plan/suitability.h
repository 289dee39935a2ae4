#pragma once

#include "planner/loads/ledger.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/trip.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Boats and paddles beside the water of the legs: what speaks for and against, never a score.
namespace tumpline::planner {

/// What a remark comes to, the better first.
enum class Suits { yes, with_care, not_known, no };

/// What is said of a boat or a paddle on a leg. All but the first five are common practice, no
/// source.
enum class SuitReason {
    water_named,     ///< what the file says that the boat is made for
    water_not_named, ///< not among it
    class_over,      ///< a river harder than said
    class_not_given, ///< of the leg, where the boat suits rivers up to some class
    suits_not_given, ///< the file does not say what the boat is made for
    open_deck,       ///< on rapids or where waves are met
    deck_idle,       ///< a spray deck on calm water without rain
    light_boat,      ///< lighter than boats for rapids are
    heavy_boat,      ///< as heavy as boats for rapids on a leg of flat water
    straps,          ///< a class from which thigh straps are usual
    no_straps,       ///< the same, and the file says that it has none
    stroke_fits,
    low_stroke,  ///< a touring paddle in rapids
    high_stroke, ///< a paddle for rapids on flat water
    stroke_open  ///< the file does not say for which stroke it is
};

struct SuitRemark {
    Suits suits = Suits::yes;
    SuitReason reason = SuitReason::water_named;
};

/// A boat or a paddle on a leg that is paddled.
struct LegSuitability {
    LegNumber leg = {}; ///< of the route
    std::string leg_name = {};
    Water water = Water::lake;
    std::optional<RiverClass> river_class = {}; ///< of the leg; empty: not given
    Part part = Part::craft;                    ///< craft or kit
    std::size_t index = 0;                      ///< into Trip::craft or Trip::kit
    std::string what = {};
    double mass_kg = 0.0;   ///< dry
    RiverClass hardest = 0; ///< of the rivers that the boat suits; 0: not said
    std::vector<SuitRemark> remarks = {};

    /// What the worst of the remarks comes to.
    [[nodiscard]] Suits worst() const {
        Suits worst = Suits::yes;
        for (const SuitRemark& remark : remarks)
            worst = std::max(worst, remark.suits);
        return worst;
    }
};

/// Whether a paddle goes into the pack of whoever carries it.
enum class PackedPaddle { goes_in, sticks_out, not_known };

/// How the answer was found.
enum class PackedBy { lengths, pieces, nothing };

struct PaddleInPack {
    std::size_t item = 0; ///< into Trip::kit
    std::string what = {};
    std::string bearer = {};
    PaddleSpec paddle = {};
    std::optional<double> pack_length_m = {}; ///< of the bearer's pack
    PackedPaddle packed = PackedPaddle::not_known;
    PackedBy by = PackedBy::nothing;
    double sticks_out_m = 0.0; ///< by lengths
};

struct Suitability {
    std::vector<LegSuitability> legs = {};  ///< by leg: boats, then paddles
    std::vector<PaddleInPack> paddles = {}; ///< packed on foot

    [[nodiscard]] bool empty() const { return legs.empty() && paddles.empty(); }
};

} // namespace tumpline::planner

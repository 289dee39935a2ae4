#pragma once

#include "cli/words/figures.h"

#include <string>

namespace tumpline::cli {

/// How a meeting stands beside its margin.
struct Meeting {
    double spare_s; ///< beyond the margin; negative where that is touched
    double margin_s;
};

/// "3 h 31 min to spare"; "met, but with 10 min less than the margin of 30 min"; "missed by 2 h".
[[nodiscard]] std::string meeting_words(const Meeting& meeting, const Figures& shown);

} // namespace tumpline::cli

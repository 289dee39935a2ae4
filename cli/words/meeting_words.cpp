#include "cli/words/meeting_words.h"

#include <fmt/format.h>

namespace tumpline::cli {

std::string meeting_words(const Meeting& meeting, const Figures& shown) {
    if (meeting.spare_s >= 0.0)
        return fmt::format("{} to spare", shown.duration(meeting.spare_s));
    const double late_s = -meeting.spare_s - meeting.margin_s;
    if (late_s > 0.0)
        return fmt::format("missed by {}", shown.duration(late_s));
    return fmt::format("met, but with {} less than the margin of {}",
                       shown.duration(-meeting.spare_s),
                       shown.duration(meeting.margin_s));
}

} // namespace tumpline::cli

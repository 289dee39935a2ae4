#include "cli/text/text_page.h"
#include "cli/words/left_words.h"

#include <fmt/format.h>

namespace tumpline::cli {

void add_left(TextPage& page) {
    if (page.plan().left.empty())
        return;
    page.heading("Left and fetched");
    for (const planner::LaidThings& left : page.plan().left)
        page.item(fmt::format("day {}, {} at {}: {}; {}",
                              left.day,
                              left.at,
                              page.distance(left.along_m),
                              laid_words(left, page),
                              fetched_words(left, page)));
}

std::vector<std::string> left_words(const TextPage& page, const planner::PlanLeg& leg) {
    std::vector<std::string> told;
    for (const planner::LaidThings& left : page.plan().left) {
        if (left.day == leg.day && left.leg == leg.leg)
            told.push_back(fmt::format("leave at {}: {}", left.at, laid_words(left, page)));
        if (left.fetch_day == leg.day && left.fetch_leg == leg.leg)
            told.push_back(fmt::format("fetch at {}: {}", left.at, laid_words(left, page)));
    }
    return told;
}

} // namespace tumpline::cli

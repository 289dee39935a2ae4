#include "cli/text/text_page.h"

#include <fmt/format.h>

namespace tumpline::cli {

namespace {

std::string things_words(const TextPage& page, const planner::LaidThings& left) {
    std::string words;
    for (const planner::LaidThing& thing : left.things)
        words += fmt::format("{}{}{}",
                             words.empty() ? "" : ", ",
                             thing.count > 1 ? fmt::format("{} ", thing.count) : "",
                             thing.what);
    return fmt::format("{} ({})", words, page.mass(left.mass_kg));
}

std::string fetched_words(const TextPage& page, const planner::LaidThings& left) {
    if (!left.fetch_day)
        return "never fetched";
    return fmt::format(
        "fetched on day {} at {}", *left.fetch_day, page.distance(*left.fetch_along_m));
}

} // namespace

void add_left(TextPage& page) {
    if (page.plan().left.empty())
        return;
    page.heading("Left and fetched");
    for (const planner::LaidThings& left : page.plan().left)
        page.item(fmt::format("day {}, {} at {}: {}; {}",
                              left.day,
                              left.at,
                              page.distance(left.along_m),
                              things_words(page, left),
                              fetched_words(page, left)));
}

std::vector<std::string> left_words(const TextPage& page, const planner::PlanLeg& leg) {
    std::vector<std::string> told;
    for (const planner::LaidThings& left : page.plan().left) {
        if (left.day == leg.day && left.leg == leg.leg)
            told.push_back(fmt::format("leave at {}: {}", left.at, things_words(page, left)));
        if (left.fetch_day == leg.day && left.fetch_leg == leg.leg)
            told.push_back(fmt::format("fetch at {}: {}", left.at, things_words(page, left)));
    }
    return told;
}

} // namespace tumpline::cli

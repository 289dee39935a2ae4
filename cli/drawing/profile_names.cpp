#include "cli/drawing/profile_names.h"

#include "cli/drawing/map_labels.h"
#include "cli/words/markup.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace tumpline::cli {

namespace {

constexpr double row_height = 1.3; ///< of the letters
constexpr double gap = 3.0;        ///< pixels between a line and its words

/// What is named first while there is room.
int rank(const Mark& mark) {
    if (mark.night > 0)
        return 1;
    switch (mark.kind) {
    case planner::PlaceKind::hazard:
    case planner::PlaceKind::ford:
        return 0;
    case planner::PlaceKind::start:
    case planner::PlaceKind::finish:
        return 1;
    case planner::PlaceKind::exit:
    case planner::PlaceKind::water:
    case planner::PlaceKind::resupply:
    case planner::PlaceKind::cache:
        return 2;
    case planner::PlaceKind::put_in:
    case planner::PlaceKind::take_out:
    case planner::PlaceKind::camp:
    case planner::PlaceKind::landing:
        break;
    }
    return 3;
}

} // namespace

ProfileNames::ProfileNames(std::vector<Mark> marks, const Room& room)
    : marks_(std::move(marks)), room_(room) {
    // From the left a name stands low beside its line; from the right no line runs through the
    // words of one before it. Whichever finds room for more.
    place_all(1.0);
    std::vector<Named> from_left = std::exchange(named_, {});
    place_all(-1.0);
    if (from_left.size() >= named_.size())
        named_ = std::move(from_left);
}

void ProfileNames::place_all(double direction) {
    std::vector<std::size_t> order(marks_.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::stable_sort(order, {}, [&](std::size_t i) {
        return std::pair{rank(marks_[i]), direction * marks_[i].at.x};
    });
    for (const std::size_t mark : order)
        place(mark);
}

/// Neither on other words nor under another's line, and no line of its own through words below.
bool ProfileNames::fits(const Named& one) const {
    if (one.from < room_.left || one.to > room_.right)
        return false;
    const double x = marks_[one.mark].at.x;
    return std::ranges::none_of(named_, [&](const Named& other) {
        const double other_x = marks_[other.mark].at.x;
        if (one.row == other.row)
            return one.from < other.to + 2.0 * gap && other.from < one.to + 2.0 * gap;
        if (one.row < other.row)
            return other_x > one.from - 1.0 && other_x < one.to + 1.0;
        return x > other.from - 1.0 && x < other.to + 1.0;
    });
}

void ProfileNames::place(std::size_t mark) {
    const std::string words = fitted(one_line(marks_[mark].name), 24);
    if (words.empty())
        return;
    const double width = room_.text * width_em(words);
    const double x = marks_[mark].at.x;
    const bool stands = std::ranges::any_of(named_, [&](const Named& other) {
        return other.words == words &&
               std::abs(marks_[other.mark].at.x - x) < one_place * room_.text;
    });
    if (stands)
        return;
    for (int row = 0; row < room_.most_rows; ++row)
        for (const bool right : {true, false}) {
            const double from = right ? x + gap : x - gap - width;
            const Named one{mark, words, row, from, from + width, right};
            if (!fits(one))
                continue;
            named_.push_back(one);
            return;
        }
}

double ProfileNames::height() const {
    int rows = 0;
    for (const Named& one : named_)
        rows = std::max(rows, one.row + 1);
    return rows * row_height * room_.text;
}

std::string ProfileNames::markup(double foot) const {
    std::string lines;
    std::string words;
    for (const Named& one : named_) {
        const Mark& mark = marks_[one.mark];
        const double base = foot - (one.row + 0.35) * row_height * room_.text;
        lines += fmt::format(R"(<path class="lead" d="M{} {}V{}"/>)",
                             coordinate(mark.at.x),
                             coordinate(base - 0.75 * room_.text),
                             coordinate(mark.at.y));
        words += fmt::format(R"(<text class="name{}{}" x="{}" y="{}" font-size="{}">{}</text>)",
                             mark.night > 0 ? " slept" : "",
                             one.leads_right ? "" : " end",
                             coordinate(mark.at.x + (one.leads_right ? gap : -gap)),
                             coordinate(base),
                             coordinate(room_.text),
                             escaped(one.words));
    }
    std::string symbols; // nights above what lies at the same place
    for (const bool nights : {false, true})
        for (const Mark& mark : marks_)
            if ((mark.night > 0) == nights)
                symbols += mark_markup(mark, room_.text);
    return fmt::format(R"(<g class="marks">{}</g><g class="places">{}</g><g class="names">{}</g>)",
                       lines,
                       symbols,
                       words);
}

} // namespace tumpline::cli

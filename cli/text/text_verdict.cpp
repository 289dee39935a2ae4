#include "cli/text/text_page.h"
#include "cli/words/caution_text.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::Verdict;
using planner::VerdictLevel;
using planner::VerdictReason;

/// More nobody takes in at a glance; the rest is one word away.
constexpr std::size_t most_lines = 10;
/// A stop says why and what to do about it in its own words.
constexpr std::size_t most_explained = 3;

std::string sentence(VerdictLevel level) {
    switch (level) {
    case VerdictLevel::cannot:
        return "This plan cannot be done.";
    case VerdictLevel::breaks:
        return "This plan breaks what you asked.";
    case VerdictLevel::clear:
        return "Nothing known stands against this plan.";
    }
    return {};
}

std::string reason_line(const TextPage& page, const VerdictReason& reason) {
    return in_units({reason.line.metric, reason.line.imperial}, page.units());
}

/// One line each, the worst first; the rest is counted.
void add_lines(TextPage& page, const std::vector<VerdictReason>& reasons, bool explained) {
    std::size_t told = 0;
    for (const VerdictReason& reason : reasons) {
        if (told == most_lines && reasons.size() > most_lines + 1) {
            page.item(fmt::format("and {} more: --show cautions", reasons.size() - told));
            return;
        }
        page.item(reason_line(page, reason));
        if (explained && told < most_explained && reason.level == VerdictLevel::cannot)
            page.hang("    ",
                      words_of(page.plan().cautions[reason.cautions.front()], page.units()));
        ++told;
    }
}

/// What holds on any such trip, in one line, so that it is not mistaken for news.
void add_always(TextPage& page, const Plan& plan) {
    std::vector<std::string> titles;
    for (const std::size_t index : plan.verdict.always) {
        const std::string& title = plan.cautions[index].title;
        if (std::find(titles.begin(), titles.end(), title) == titles.end())
            titles.push_back(title);
    }
    if (!titles.empty())
        page.line(
            fmt::format("As on any such trip: {} (--show cautions).", fmt::join(titles, ", ")));
}

} // namespace

void add_verdict(TextPage& page) {
    const Verdict& verdict = page.plan().verdict;
    page.heading(sentence(verdict.level));
    add_lines(page, verdict.reasons, true);
    if (!verdict.also.empty()) {
        page.line(verdict.reasons.empty() ? "To decide or to know:" : "Also to decide or to know:");
        add_lines(page, verdict.also, false);
    }
    if (!verdict.unknown_line.empty())
        page.line(verdict.unknown_line);
    add_always(page, page.plan());
}

} // namespace tumpline::cli

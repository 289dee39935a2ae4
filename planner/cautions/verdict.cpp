#include "planner/cautions/verdict.h"

#include "planner/cautions/caution_titles.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

namespace tumpline::planner {

namespace {

/// What one caution makes of the plan.
VerdictLevel weight(const Caution& caution) {
    if (caution.level == Level::stop)
        return VerdictLevel::cannot;
    const bool breaks = caution.level == Level::caution && caution_kind(caution.code).breaks;
    return breaks ? VerdictLevel::breaks : VerdictLevel::clear;
}

/// "1 to 3, 5 and 7".
std::string runs_of(const std::vector<int>& days) {
    std::vector<std::string> runs;
    for (std::size_t first = 0; first < days.size();) {
        std::size_t last = first;
        while (last + 1 < days.size() && days[last + 1] == days[last] + 1)
            ++last;
        if (last >= first + 2)
            runs.push_back(fmt::format("{} to {}", days[first], days[last]));
        else
            for (std::size_t k = first; k <= last; ++k)
                runs.push_back(std::to_string(days[k]));
        first = last + 1;
    }
    return listed(runs);
}

CautionPlace place_of(const Plan& plan, const Caution& caution) {
    CautionPlace place{.day = caution.day, .leg = caution.leg, .leg_name = {}, .text = {}};
    for (const PlanLeg& leg : plan.legs)
        if (caution.leg && leg.leg == *caution.leg)
            place.leg_name = leg.name;
    if (caution.day)
        place.text = fmt::format("day {}", *caution.day);
    if (caution.leg)
        place.text += fmt::format("{}leg {}", place.text.empty() ? "" : ", ", *caution.leg);
    if (!place.leg_name.empty())
        place.text += fmt::format(" ({})", place.leg_name);
    return place;
}

/// Days where there are several, then the figure of the worst and where that is.
UnitText line_of(const VerdictReason& reason) {
    UnitText line = reason.subject.empty()
                        ? UnitText(reason.title)
                        : UnitText(fmt::format("{}, {}", reason.title, reason.subject));
    const bool several = reason.count > 1;
    const std::string where = reason.worst.text;
    std::vector<UnitText> parts;
    if (several && reason.days.size() > 1)
        parts.emplace_back("days " + runs_of(reason.days));
    else if (several)
        parts.emplace_back(fmt::format("{} times", reason.count));
    if (!reason.figure.metric.empty()) {
        parts.push_back(several ? format_both("worst {}", reason.figure) : reason.figure);
        if (!where.empty())
            parts.emplace_back(where);
    } else if (!where.empty()) {
        parts.emplace_back(several && parts.size() == 1 ? "first on " + where : where);
    }
    for (std::size_t k = 0; k < parts.size(); ++k)
        line = format_both("{}{}{}", line, k == 0 ? ": " : ", ", parts[k]);
    return line;
}

/// Cautions that share level, code and subject, gathered in their order.
class ReasonGroups {
  public:
    explicit ReasonGroups(const Plan& plan) : plan_(plan) {}

    void add(std::size_t index) {
        const Caution& caution = plan_.cautions[index];
        const VerdictLevel level = weight(caution);
        const auto [slot, is_new] =
            slots_.try_emplace({level, caution.code, caution.subject}, reasons_.size());
        if (is_new)
            reasons_.push_back({.level = level,
                                .code = caution.code,
                                .title = caution.title,
                                .subject = caution.subject,
                                .worst = {},
                                .days = {},
                                .legs = {},
                                .cautions = {}});
        reasons_[slot->second].cautions.push_back(index);
    }

    [[nodiscard]] std::vector<VerdictReason> take() {
        for (VerdictReason& reason : reasons_)
            finish(reason);
        std::stable_sort(reasons_.begin(), reasons_.end(), [](const auto& a, const auto& b) {
            return std::tuple(-static_cast<int>(a.level), caution_kind(a.code).order) <
                   std::tuple(-static_cast<int>(b.level), caution_kind(b.code).order);
        });
        return std::move(reasons_);
    }

  private:
    void finish(VerdictReason& reason) const {
        std::stable_sort(reason.cautions.begin(), reason.cautions.end(), [&](auto a, auto b) {
            return plan_.cautions[a].excess > plan_.cautions[b].excess;
        });
        std::set<int> days;
        std::set<LegNumber> legs;
        for (const std::size_t index : reason.cautions) {
            const Caution& caution = plan_.cautions[index];
            if (caution.day)
                days.insert(*caution.day);
            if (caution.leg)
                legs.insert(*caution.leg);
        }
        const Caution& worst = plan_.cautions[reason.cautions.front()];
        reason.days.assign(days.begin(), days.end());
        reason.legs.assign(legs.begin(), legs.end());
        reason.count = reason.cautions.size();
        reason.worst = place_of(plan_, worst);
        reason.figure = UnitText(
            worst.figure, worst.figure_imperial.empty() ? worst.figure : worst.figure_imperial);
        reason.line = line_of(reason);
    }

    const Plan& plan_;
    std::map<std::tuple<VerdictLevel, std::string, std::string>, std::size_t> slots_;
    std::vector<VerdictReason> reasons_;
};

} // namespace

std::string verdict_words(VerdictLevel level) {
    switch (level) {
    case VerdictLevel::clear:
        return "nothing known stands against it";
    case VerdictLevel::breaks:
        return "breaks what you asked";
    case VerdictLevel::cannot:
        return "cannot be done";
    }
    return {};
}

std::string verdict_sentence(VerdictLevel level) {
    return level == VerdictLevel::clear ? "Nothing known stands against this plan."
                                        : fmt::format("This plan {}.", verdict_words(level));
}

std::string verdict_word(VerdictLevel level) {
    switch (level) {
    case VerdictLevel::clear:
        return "clear";
    case VerdictLevel::breaks:
        return "breaks";
    case VerdictLevel::cannot:
        return "cannot";
    }
    return {};
}

Verdict verdict_of(const Plan& plan, std::vector<NotJudged> unknown) {
    Verdict verdict;
    verdict.unknown = std::move(unknown);
    ReasonGroups groups(plan);
    for (std::size_t k = 0; k < plan.cautions.size(); ++k) {
        const Caution& caution = plan.cautions[k];
        if (caution_kind(caution.code).always)
            verdict.always.push_back(k);
        else if (caution.level != Level::note)
            groups.add(k);
    }
    for (VerdictReason& reason : groups.take()) {
        verdict.level = std::max(verdict.level, reason.level);
        (reason.level == VerdictLevel::clear ? verdict.also : verdict.reasons)
            .push_back(std::move(reason));
    }
    std::vector<std::string> titles;
    for (const NotJudged& one : verdict.unknown)
        titles.push_back(one.title);
    if (!titles.empty())
        verdict.unknown_line = fmt::format("Not judged, because not given: {}.", listed(titles));
    return verdict;
}

} // namespace tumpline::planner

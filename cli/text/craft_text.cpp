#include "cli/text/craft_text.h"

#include "cli/text/text_page.h"
#include "cli/words/suit_words.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Boats;
using planner::CraftComparison;
using planner::CraftGain;
using planner::CraftMargin;
using planner::CraftOption;
using planner::CraftRule;
using planner::VerdictLevel;

constexpr std::string_view not_known = "not known";

std::string name_of_option(const CraftOption& option) {
    switch (option.boats.boats) {
    case Boats::own:
        return option.boats.trip.craft.empty() ? "as the trip is, no boat" : "as the trip is";
    case Boats::choice:
        return option.boats.name;
    case Boats::none:
        return option.boats.by.empty()
                   ? "no boat"
                   : fmt::format("no boat, by {}", fmt::join(option.boats.by, ", "));
    }
    return {};
}

/// What is left of a limit; one that is passed for certain is told even where more is not known.
template <typename Shown> std::string margin_text(const CraftMargin& margin, const Shown& shown) {
    if (!margin.asked)
        return "none asked";
    if (margin.left && (margin.known() || *margin.left < 0.0))
        return shown(*margin.left);
    return std::string(not_known);
}

std::string class_text(const CraftMargin& margin) {
    return margin_text(margin, [](double left) -> std::string {
        return left == 0.0 ? "0" : fmt::format("{:+.0f}", left);
    });
}

/// The figures of an option as the table, and the sentences about it, show them.
class CraftWords {
  public:
    CraftWords(const TextPage& page, const CraftOption& option) : page_(page), option_(option) {}

    [[nodiscard]] std::string time() const {
        return TextPage::duration(option_.figures.under_way_s);
    }

    [[nodiscard]] std::string pack() const {
        return option_.figures.heaviest_member.empty() ? std::string("none")
                                                       : page_.mass(option_.figures.heaviest_kg);
    }

    [[nodiscard]] std::string carried() const {
        return page_.carried(option_.figures.carried_kg_km);
    }

    [[nodiscard]] std::string river_class() const { return class_text(option_.river_class); }

    [[nodiscard]] std::string payload() const {
        return margin_text(option_.payload, [&](double left_kg) { return page_.mass(left_kg); });
    }

    [[nodiscard]] std::string wind() const {
        if (!option_.wind)
            return "none asked";
        return page_.speed(option_.wind->ceiling_mps) + (option_.wind->assumed ? "*" : "");
    }

    [[nodiscard]] std::string price() const {
        if (!option_.boats.price)
            return std::string(not_known);
        const double price = *option_.boats.price;
        return price == std::round(price) ? fmt::format("{:.0f}", price)
                                          : fmt::format("{:.2f}", price);
    }

    /// What a rule went by.
    [[nodiscard]] std::string by(CraftRule rule) const;
    /// The same of a gain.
    [[nodiscard]] std::string gained(CraftGain gain) const;

  private:
    const TextPage& page_;
    const CraftOption& option_;
};

std::string CraftWords::by(CraftRule rule) const {
    switch (rule) {
    case CraftRule::verdict:
        return fmt::format("\"{}\"", planner::verdict_words(option_.level()));
    case CraftRule::known: {
        std::vector<std::string> open;
        if (!option_.river_class.known())
            open.emplace_back("class margin");
        if (!option_.payload.known())
            open.emplace_back("payload margin");
        return open.empty() ? "both are known"
                            : fmt::format("{} not known", fmt::join(open, " and "));
    }
    case CraftRule::days:
        return fmt::format("{}", option_.figures.days);
    case CraftRule::pack:
        return pack();
    case CraftRule::carried:
        return carried();
    case CraftRule::time:
        return time();
    case CraftRule::price:
        return price();
    case CraftRule::file:
        return {};
    }
    return {};
}

std::string CraftWords::gained(CraftGain gain) const {
    switch (gain) {
    case CraftGain::time:
        return time();
    case CraftGain::pack:
        return pack();
    case CraftGain::carried:
        return carried();
    case CraftGain::river_class:
        return river_class();
    case CraftGain::payload:
        return payload();
    case CraftGain::wind:
        return wind();
    case CraftGain::price:
        return price();
    }
    return {};
}

std::string_view noun(CraftRule rule) {
    switch (rule) {
    case CraftRule::verdict:
        return "verdict";
    case CraftRule::known:
        return "margins of class and payload";
    case CraftRule::days:
        return "days";
    case CraftRule::pack:
        return "heaviest pack";
    case CraftRule::carried:
        return "load × distance";
    case CraftRule::time:
        return "time under way";
    case CraftRule::price:
        return "price";
    case CraftRule::file:
        return {};
    }
    return {};
}

std::string_view noun(CraftGain gain) {
    switch (gain) {
    case CraftGain::time:
        return noun(CraftRule::time);
    case CraftGain::pack:
        return noun(CraftRule::pack);
    case CraftGain::carried:
        return noun(CraftRule::carried);
    case CraftGain::river_class:
        return "class margin";
    case CraftGain::payload:
        return "payload margin";
    case CraftGain::wind:
        return "wind that stops it";
    case CraftGain::price:
        return noun(CraftRule::price);
    }
    return {};
}

void add_table(TextPage& page, const CraftComparison& compared) {
    constexpr std::size_t widest = 28; // so that a long way without a boat leaves room for figures
    Table table({{"Boat"},
                 {"Plan"},
                 {"Days", true},
                 {"Under way", true},
                 {"Heaviest pack", true},
                 {"Load × distance", true},
                 {"Class margin", true},
                 {"Payload margin", true},
                 {"Wind that stops it", true},
                 {"Price", true}});
    for (const CraftOption& option : compared.options) {
        const CraftWords words(page, option);
        const std::string name = fitted(name_of_option(option), widest);
        if (!option.plan) {
            table.row({name, "no plan"});
            continue;
        }
        table.row({name,
                   std::string(planner::verdict_word(option.level())),
                   fmt::format("{}", option.figures.days),
                   words.time(),
                   words.pack(),
                   words.carried(),
                   words.river_class(),
                   words.payload(),
                   words.wind(),
                   words.price()});
    }
    page.add(table);
}

/// The best, its runner-up and what decides.
void add_decision(TextPage& page, const CraftComparison& compared) {
    const CraftOption& best = compared.options.front();
    if (!compared.any()) {
        page.heading("None of them can be done");
        return;
    }
    page.heading(one_line(fmt::format("The best: {}", name_of_option(best))));
    if (!compared.decides) {
        page.line("No other can be done.");
        return;
    }
    const CraftOption& second = compared.options[1];
    const CraftWords its(page, best);
    const CraftWords others(page, second);
    page.line(*compared.decides == CraftRule::file
                  ? fmt::format("Runner-up: {}. Nothing tells them apart; the first in the trip "
                                "file stands first.",
                                name_of_option(second))
                  : fmt::format("Runner-up: {}. What decides: {}, {} against {}.",
                                name_of_option(second),
                                noun(*compared.decides),
                                its.by(*compared.decides),
                                others.by(*compared.decides)));
    std::vector<std::string> ahead;
    for (const CraftGain gain : compared.for_runner_up)
        ahead.push_back(
            fmt::format("{}, {} against {}", noun(gain), others.gained(gain), its.gained(gain)));
    if (!ahead.empty())
        page.line(fmt::format("What speaks for the runner-up: {}.", fmt::join(ahead, "; ")));
}

/// Where least is left of a limit.
std::string least_words(const CraftOption& option, const CraftMargin& margin) {
    const planner::PlanLeg& leg = option.plan->legs[margin.plan_leg.index()];
    return fmt::format("{} on leg {}, {}", margin.craft, leg_number(leg), leg.name);
}

std::string reason_in(const CraftOption& option, planner::UnitSystem units) {
    return in_units({.metric = option.reason, .imperial = option.reason_imperial}, units);
}

/// Of each boat and paddle each remark that is no praise, with the first leg that it holds on, and
/// how paddles go into the packs; what is told already is left out.
void add_suits_of(std::vector<std::string>& said,
                  std::set<std::string>& told,
                  const TextPage& page,
                  const planner::Plan& plan) {
    for (const planner::LegSuitability& row : plan.suitability.legs)
        for (const planner::SuitRemark& remark : row.remarks) {
            const std::string words =
                fmt::format("{}: {}", row.what, remark_words(row, remark.reason, page));
            if (remark.suits != planner::Suits::yes && told.insert(words).second)
                said.push_back(fmt::format("{} (leg {}, {})", words, row.leg, row.leg_name));
        }
    for (const planner::PaddleInPack& paddle : plan.suitability.paddles)
        if (const std::string words = paddle_words(paddle, page); told.insert(words).second)
            said.push_back(words);
}

/// What an option is, what stands against it, and what of it is not known.
void add_remarks(TextPage& page, std::set<std::string>& told, const CraftOption& option) {
    std::vector<std::string> said;
    if (!option.boats.replaces.empty())
        said.push_back(fmt::format(
            "{} in place of {}", option.boats.count, fmt::join(option.boats.replaces, ", ")));
    if (option.river_class.left)
        said.push_back("class margin least: " + least_words(option, option.river_class));
    if (option.payload.left)
        said.push_back("payload margin least: " + least_words(option, option.payload));
    if (!option.river_class.known())
        said.push_back(
            fmt::format("class not given: {}", fmt::join(option.river_class.missing, ", ")));
    if (!option.payload.known())
        said.push_back(
            fmt::format("payload not given: {}", fmt::join(option.payload.missing, ", ")));
    if (option.plan)
        add_suits_of(said, told, page, *option.plan);
    if (!option.boats.price && option.plan)
        said.emplace_back("price not given");
    if (option.level() != VerdictLevel::clear)
        said.push_back(fmt::format(
            "{}: {}", planner::verdict_words(option.level()), reason_in(option, page.units())));
    if (!said.empty())
        page.item(fmt::format("{}: {}", name_of_option(option), fmt::join(said, "; ")));
}

} // namespace

std::string craft_text(const CraftComparison& compared, const Reader& reader) {
    const planner::Plan none;
    const auto planned =
        std::find_if(compared.options.begin(),
                     compared.options.end(),
                     [](const CraftOption& option) { return option.plan.has_value(); });
    TextPage page(planned == compared.options.end() ? none : *planned->plan, reader);
    const planner::Trip& trip = compared.options.front().boats.trip;
    page.heading(one_line(trip.name.empty() ? trip.file.string() : trip.name));
    const bool paddles = std::any_of(compared.options.begin(),
                                     compared.options.end(),
                                     [](const CraftOption& one) { return one.boats.paddle; });
    page.line(paddles ? "The trip with each boat, and with its own boats and each paddle, the best "
                        "first."
                      : "The trip with each boat, the best first.");
    add_table(page, compared);
    add_decision(page, compared);
    page.heading("What to know of each");
    std::set<std::string> told; // of boats and paddles that several options share
    for (const CraftOption& option : compared.options)
        add_remarks(page, told, option);
    if (!told.empty())
        page.item(
            "What is said of a boat or a paddle on a leg stands where it comes first, with its "
            "first leg; beyond what the trip file says that a boat is made for, it is common "
            "practice, no source.");
    page.item(
        "Plan: clear, where nothing known stands against it; breaks, where it breaks what was "
        "asked; cannot, where it cannot be done, whatever its figures say.");
    page.item("They are set in order by the first of these that tells them apart: whether the plan "
              "can be done and keeps what was asked, whether the margins of class and payload are "
              "known, days, heaviest pack, load × distance, time under way, price. Margins are "
              "least where the boat is nearest its limit (docs/craft.md).");
    page.item("*: assumed by the kind of boat. A class, a payload and a wind ceiling are what "
              "somebody wrote of a boat: whether this crew paddles it there, local authority, "
              "current river information and qualified guides know better.");
    return page.take();
}

} // namespace tumpline::cli

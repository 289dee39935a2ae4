#include "cli/book/book.h"

#include "cli/book/book_parts.h"
#include "cli/book/book_template.h"
#include "cli/files/output_mark.h"
#include "cli/words/caution_text.h"
#include "cli/words/version.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

namespace {

using planner::Caution;
using planner::Level;

/// A sign for each level, so that colour is never alone in telling them apart.
struct LevelLook {
    const char* style;
    const char* sign;
    const char* word;
};

LevelLook look(Level level) {
    switch (level) {
    case Level::note:
        return {"note", "●", "Note"};
    case Level::caution:
        return {"warn", "▲", "Caution"};
    case Level::stop:
        return {"stop", "■", "Stop"};
    }
    return {"note", "●", "Note"};
}

/// "Day 2, leg 4", as far as it has a place.
std::string place(const Caution& caution) {
    std::vector<std::string> words;
    if (caution.day)
        words.push_back(fmt::format("day {}", *caution.day));
    if (caution.leg)
        words.push_back(fmt::format("leg {}", *caution.leg));
    std::string phrase = joined(words);
    if (!phrase.empty())
        phrase.front() = phrase.front() == 'd' ? 'D' : 'L';
    return phrase;
}

std::string when(const planner::Plan& plan) {
    if (plan.days.empty())
        return long_date(plan.trip.start);
    const planner::PlanDay& first = plan.days.front();
    const planner::PlanDay& last = plan.days.back();
    if (plan.days.size() == 1)
        return long_date(first.date);
    return fmt::format("{} to {}", long_date(first.date), long_date(last.date));
}

std::string written(const BookSource& source) {
    const planner::Plan& plan = source.plan;
    Fields fields;
    fields.text("version", version())
        .text("mark", blank_mark)
        .text("trip_name", plan.trip.name.empty() ? "A trip" : plan.trip.name)
        .text("when", when(plan))
        .markup("style", std::string(book_template("book.css")))
        .markup("script", std::string(book_template("book.js")))
        .markup("ground", source.maps.defs())
        .markup("figures", profile_figures(source));
    std::vector<Fields> party;
    for (const planner::Member& member : plan.trip.party)
        party.emplace_back().text("name", member.name);
    fields.list("party", std::move(party)).truth("stacking", plan.trip.party.size() > 1);
    add_trip(fields, source);
    add_days(fields, source);
    add_packing(fields, source);
    add_supplies(fields, source);
    add_carry_ways(fields, source);
    add_about(fields, source);
    add_contact(fields, source);
    return filled("book.html", fields);
}

} // namespace

Fields figure(const Figure& shown) {
    Fields fields;
    fields.text("label", shown.label).text("value", shown.value).text("more", shown.more);
    return fields;
}

std::vector<Fields> caution_fields(const BookSource& source,
                                   const std::vector<Caution>& cautions,
                                   const std::function<bool(const Caution&)>& wanted) {
    std::vector<const Caution*> chosen;
    for (const Caution& caution : cautions)
        if (wanted(caution))
            chosen.push_back(&caution);
    std::stable_sort(chosen.begin(), chosen.end(), [](const Caution* a, const Caution* b) {
        return a->level > b->level;
    });
    std::vector<Fields> rows;
    for (const Caution* caution : chosen) {
        const LevelLook seen = look(caution->level);
        Fields& row = rows.emplace_back();
        row.text("level", seen.style)
            .text("sign", seen.sign)
            .text("level_word", seen.word)
            .text("place", place(*caution))
            .text("text", words_of(*caution, source.shown.units()))
            .text("source", caution->source);
    }
    return rows;
}

double year_of(planner::Date date) {
    return static_cast<int>(date.year()) + (static_cast<unsigned>(date.month()) - 0.5) / 12.0;
}

std::string joined(const std::vector<std::string>& words) {
    return fmt::to_string(fmt::join(words, ", "));
}

std::string ways_phrase(const Ways& ways, const Figures& shown) {
    std::vector<std::string> parts;
    if (ways.walk_m > 0.0)
        parts.push_back(fmt::format("walk {}", shown.distance(ways.walk_m)));
    if (ways.portage_m > 0.0)
        parts.push_back(fmt::format("portage {}", shown.portage(ways.portage_m)));
    if (ways.paddle_m > 0.0)
        parts.push_back(fmt::format("afloat {}", shown.distance(ways.paddle_m)));
    if (ways.led_m > 0.0)
        parts.push_back(fmt::format("lined, waded or poled {}", shown.distance(ways.led_m)));
    if (ways.ride_m > 0.0)
        parts.push_back(fmt::format("ride {}", shown.distance(ways.ride_m)));
    return joined(parts);
}

std::string counted(long count, std::string_view one, std::string_view many) {
    return count == 1 ? fmt::format("one {}", one) : fmt::format("{} {}", count, many);
}

std::string book(const planner::Plan& plan,
                 const planner::Route& route,
                 planner::UnitSystem units,
                 geo::Elevation* elevation) {
    constexpr std::size_t most_bytes = 1'500'000;
    const Figures shown(units, plan.trip.time_zone, Blank::kept);
    BookMaps maps(plan, route, elevation, units);
    const BookSource source{plan, route, shown, maps};
    std::string text = written(source);
    while (text.size() > most_bytes) {
        // The rest of the book stays as it is until the maps of the days go.
        const std::size_t rest = text.size() - maps.defs().size();
        bool less = false;
        while (maps.give_up()) {
            less = true;
            if (rest + maps.defs().size() <= most_bytes ||
                maps.of_day(plan.days.front().day) == nullptr)
                break;
        }
        if (!less)
            break;
        text = written(source);
    }
    return marked(std::move(text));
}

} // namespace tumpline::cli

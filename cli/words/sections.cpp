#include "cli/words/sections.h"

#include "cli/words/text_width.h"
#include "geo/input_error.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <map>

namespace tumpline::cli {

namespace {

constexpr std::string_view everything = "all";

/// The words that a command's `--show` knows.
std::vector<std::string_view> words_for(std::string_view command) {
    std::vector<std::string_view> words;
    for (const Section section : sections_of(command))
        words.push_back(word(section));
    words.push_back(everything);
    return words;
}

} // namespace

std::string_view word(Section section) {
    switch (section) {
    case Section::verdict:
        return "verdict";
    case Section::days:
        return "days";
    case Section::legs:
        return "legs";
    case Section::packs:
        return "packs";
    case Section::portages:
        return "portages";
    case Section::boats:
        return "boats";
    case Section::food:
        return "food";
    case Section::appointments:
        return "appointments";
    case Section::connections:
        return "connections";
    case Section::permits:
        return "permits";
    case Section::bail_out:
        return "bail-out";
    case Section::turnaround:
        return "turnaround";
    case Section::packing:
        return "packing";
    case Section::luggage:
        return "luggage";
    case Section::kit:
        return "kit";
    case Section::loads:
        return "loads";
    case Section::remedies:
        return "remedies";
    case Section::alternatives:
        return "alternatives";
    case Section::flow:
        return "flow";
    case Section::left:
        return "left";
    case Section::cautions:
        return "cautions";
    case Section::assumptions:
        return "assumptions";
    case Section::best:
        return "best";
    case Section::next:
        return "next";
    case Section::listed:
        return "listed";
    case Section::arrivals:
        return "arrivals";
    case Section::water:
        return "water";
    case Section::drivers:
        return "drivers";
    case Section::limits:
        return "limits";
    case Section::totals:
        return "totals";
    }
    return {};
}

const std::vector<Section>& sections_of(std::string_view command) {
    static const std::map<std::string_view, std::vector<Section>> sections{
        {"plan",
         {Section::verdict,     Section::days,     Section::legs,         Section::packs,
          Section::remedies,    Section::portages, Section::alternatives, Section::flow,
          Section::left,        Section::boats,    Section::food,         Section::appointments,
          Section::connections, Section::permits,  Section::bail_out,     Section::turnaround,
          Section::packing,     Section::kit,      Section::cautions,     Section::assumptions}},
        {"pack",
         {Section::verdict,
          Section::packing,
          Section::luggage,
          Section::remedies,
          Section::portages,
          Section::food,
          Section::kit,
          Section::loads,
          Section::cautions}},
        {"nights", {Section::best, Section::next, Section::listed}},
        {"odds",
         {Section::arrivals,
          Section::appointments,
          Section::connections,
          Section::flow,
          Section::food,
          Section::water,
          Section::packs,
          Section::drivers,
          Section::limits}},
        {"compare",
         {Section::cautions,
          Section::totals,
          Section::days,
          Section::packs,
          Section::appointments}},
    };
    static const std::vector<Section> none;
    const auto found = sections.find(command);
    return found == sections.end() ? none : found->second;
}

Show show_named(std::string_view command, std::string_view names) {
    const std::vector<std::string_view> words = words_for(command);
    Show show;
    for (;;) {
        const std::size_t comma = std::min(names.find(','), names.size());
        const std::string_view name = names.substr(0, comma);
        if (name == everything) {
            show = show_all(command);
        } else {
            const auto& all = sections_of(command);
            const auto found = std::find_if(all.begin(), all.end(), [&](const Section section) {
                return word(section) == name;
            });
            if (found == all.end()) {
                const std::string near = planner::nearest_word(name, words);
                throw geo::InputError(
                    {{.file = fmt::format("tumpline {}", command),
                      .place = "--show",
                      .found = fmt::format("\"{}\"", fitted(one_line(name), 60)),
                      .expected = planner::either(words),
                      .advice = near.empty() ? std::string() : fmt::format("write \"{}\"", near)}});
            }
            if (!show.wants(*found))
                show.sections.push_back(*found);
        }
        if (comma == names.size())
            return show;
        names.remove_prefix(comma + 1);
    }
}

} // namespace tumpline::cli

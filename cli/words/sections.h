#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

/// What a command prints beyond its first screen, as `--show` names it.
namespace tumpline::cli {

enum class Section {
    verdict,
    days,
    legs,
    packs,
    portages,
    boats,
    food,
    appointments,
    connections,
    permits,
    bail_out,
    turnaround,
    packing,
    luggage,
    kit,
    loads,
    remedies,
    alternatives,
    flow,
    left,
    cautions,
    assumptions,
    best,
    next,
    listed,
    arrivals,
    water,
    drivers,
    limits,
    totals
};

/// The word for `section` on the command line.
[[nodiscard]] std::string_view word(Section section);

/// The sections of a command ("plan"), in the order in which it prints them.
[[nodiscard]] const std::vector<Section>& sections_of(std::string_view command);

/// What a reader asked to see; nothing: the first screen.
struct Show {
    std::vector<Section> sections;

    [[nodiscard]] bool first_screen() const { return sections.empty(); }

    [[nodiscard]] bool wants(Section section) const {
        return std::find(sections.begin(), sections.end(), section) != sections.end();
    }
};

/// All of a command.
[[nodiscard]] inline Show show_all(std::string_view command) {
    return {sections_of(command)};
}

/// Reads "legs,packs" or "all". Throws: geo::InputError that names the command's sections.
[[nodiscard]] Show show_named(std::string_view command, std::string_view names);

} // namespace tumpline::cli

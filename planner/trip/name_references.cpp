#include "planner/trip/name_references.h"

#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::planner {

std::string in_quotes(std::string_view text) {
    return fmt::format("\"{}\"", text);
}

void References::check(std::string_view name,
                       const Names& known,
                       const std::string& place,
                       std::string_view noun) {
    // A thing whose own name could not be read is a problem already: this may mean it.
    if (name.empty() || std::find(known.begin(), known.end(), name) != known.end() ||
        std::find(known.begin(), known.end(), std::string_view()) != known.end())
        return;
    for (UnknownName& each : unknown_)
        if (each.name == name && each.noun == noun)
            return each.places.push_back(place);
    unknown_.push_back({std::string(name), std::string(noun), known, {place}});
}

void References::report() {
    for (const UnknownName& each : unknown_) {
        const std::string nearest = nearest_word(each.name, each.known);
        const bool few = !each.known.empty() && each.known.size() <= 12;
        const std::size_t more = each.places.size() - 1;
        problems_.add(
            each.places.front(),
            {.found = more == 0 ? in_quotes(each.name)
                                : fmt::format("{} (and at {} more {})",
                                              in_quotes(each.name),
                                              more,
                                              more == 1 ? "place" : "places"),
             .expected = few ? fmt::format("{} ({})", each.noun, either(each.known)) : each.noun,
             .advice =
                 nearest.empty() ? std::string() : fmt::format("write {}", in_quotes(nearest))});
    }
}

void check_once(const Names& names, const NameList& where, Problems& problems) {
    for (std::size_t i = 0; i < names.size(); ++i)
        for (std::size_t earlier = 0; earlier < i; ++earlier)
            if (!names[i].empty() && names[i].size() == names[earlier].size() &&
                edit_distance(names[i], names[earlier]) == 0) {
                problems.add(
                    fmt::format("{}/{}/{}", where.list, i, where.key),
                    {.found = in_quotes(names[i]),
                     .expected = fmt::format("another name than {}/{}'s", where.list, earlier),
                     .advice = {}});
                break;
            }
}

} // namespace tumpline::planner

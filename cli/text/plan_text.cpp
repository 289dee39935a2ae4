#include "cli/text/plan_text.h"

#include "cli/text/text_page.h"

#include <utility>

namespace tumpline::cli {

namespace {

/// A section and what adds it.
using Part = std::pair<Section, void (*)(TextPage&)>;

template <std::size_t Count>
void add_parts(TextPage& page, const Show& show, const Part (&parts)[Count]) {
    for (const auto& [section, add] : parts)
        if (show.wants(section))
            add(page);
}

void add_all_portages(TextPage& page) {
    add_carrying(page);
    add_portages(page);
}

void add_all_boats(TextPage& page) {
    add_craft(page);
    add_ends(page);
    add_suits(page);
}

} // namespace

std::string plan_text(const planner::Plan& plan, const Reader& reader) {
    static constexpr Part parts[] = {{Section::days, add_days},
                                     {Section::legs, add_legs},
                                     {Section::packs, add_packs},
                                     {Section::remedies, add_remedies},
                                     {Section::portages, add_all_portages},
                                     {Section::alternatives, add_other_ways},
                                     {Section::flow, add_flow},
                                     {Section::left, add_left},
                                     {Section::boats, add_all_boats},
                                     {Section::food, add_supplies},
                                     {Section::appointments, add_appointments},
                                     {Section::connections, add_connections},
                                     {Section::permits, add_permits},
                                     {Section::bail_out, add_exits},
                                     {Section::turnaround, add_turn_rounds},
                                     {Section::packing, add_packing},
                                     {Section::kit, add_stays_home},
                                     {Section::cautions, add_cautions_left},
                                     {Section::assumptions, add_assumptions}};
    TextPage page(plan, reader);
    add_title(page);
    add_verdict(page);
    if (reader.show.first_screen()) {
        add_first_screen(page);
        add_more(page, "plan");
    }
    add_parts(page, reader.show, parts);
    return page.take();
}

std::string pack_text(const planner::Plan& plan, const Reader& reader) {
    static constexpr Part parts[] = {{Section::packing, add_packing},
                                     {Section::luggage, add_luggage},
                                     {Section::remedies, add_remedies},
                                     {Section::portages, add_carrying},
                                     {Section::food, add_boxes},
                                     {Section::kit, add_stays_home},
                                     {Section::loads, add_loads},
                                     {Section::cautions, add_cautions_left}};
    TextPage page(plan, reader);
    add_title(page);
    add_verdict(page);
    add_heaviest(page);
    const bool first = reader.show.first_screen();
    add_parts(
        page, first ? Show{{Section::packing, Section::food, Section::kit}} : reader.show, parts);
    if (first)
        add_more(page, "pack");
    return page.take();
}

} // namespace tumpline::cli

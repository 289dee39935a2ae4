#include "cli/text/plan_text.h"

#include "cli/text/text_page.h"

namespace tumpline::cli {

std::string plan_text(const planner::Plan& plan, const Reader& reader) {
    TextPage page(plan, reader);
    add_summary(page);
    add_days(page);
    add_legs(page);
    add_packs(page);
    add_remedies(page);
    add_carrying(page);
    add_portages(page);
    add_other_ways(page);
    add_craft(page);
    add_supplies(page);
    add_appointments(page);
    add_exits(page);
    add_turn_rounds(page);
    add_stays_home(page);
    add_cautions_left(page);
    add_assumptions(page);
    return page.take();
}

std::string pack_text(const planner::Plan& plan, const Reader& reader) {
    TextPage page(plan, reader);
    add_summary(page);
    add_packing(page);
    add_remedies(page);
    add_carrying(page);
    add_boxes(page);
    add_stays_home(page);
    add_loads(page);
    add_cautions_left(page);
    return page.take();
}

} // namespace tumpline::cli

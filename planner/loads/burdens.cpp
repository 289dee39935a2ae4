#include "planner/loads/burdens.h"

#include "planner/loads/portage.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {

namespace {

/// The passes of a member over a portage, and how long the slower ones are waited for.
void add_portage(Burden& burden,
                 const PortagePlan& plan,
                 const Stretch& stretch,
                 std::size_t member) {
    for (const PortageLoad& load : plan.relay.loads) {
        const double drag_kg = mg_to_kg(pulled_mg(plan.relay, load)) * cart_drag(stretch);
        if (load.rolls() || (load.pieces.empty() && drag_kg == 0.0) ||
            (load.bearer != member && load.relay != member))
            continue;
        burden.portaged.push_back({.mass_kg = mg_to_kg(load.mass_mg) + drag_kg + burden.worn_kg,
                                   .share = load.bearer == load.relay ? 1.0 : 0.5});
    }
    burden.waiting_s = std::max(0.0, plan.moving_s - plan.member_s[member]);
}

} // namespace

Burdens burdens_of(const Stretches& stretches, const Loads& loads) {
    Burdens burdens(loads.stretches.size());
    for (std::size_t i = 0; i < burdens.size(); ++i) {
        const StretchLoads& load = loads.stretches[i];
        burdens[i].resize(load.worn_kg.size());
        for (std::size_t m = 0; m < burdens[i].size(); ++m) {
            Burden& burden = burdens[i][m];
            burden.worn_kg = load.worn_kg[m];
            burden.start_kg = load.start_kg[m] + load.worn_kg[m];
            burden.end_kg = load.end_kg[m] + load.worn_kg[m];
            if (stretches.stretches[i].travel == Travel::portage)
                add_portage(burden, *loads.portages[i], stretches.stretches[i], m);
        }
    }
    return burdens;
}

} // namespace tumpline::planner

#include "planner/bearers.h"
#include "planner/caution_list.h"
#include "planner/milligrams.h"
#include "planner/plan_draft.h"
#include "planner/remedies.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace tumpline::planner {

namespace {

/// What one member should not go beyond.
struct Limit {
    double kg;
    bool given; ///< by the trip file; otherwise a share of body mass is assumed
};

/// What is to be said of packs and of what cannot be divided.
class LoadWatch {
  public:
    LoadWatch(const Draft& draft, const Plan& plan)
        : draft_(draft), plan_(plan), trip_(draft.prepared.trip), everyone_(trip_.party.size()) {
        std::iota(everyone_.begin(), everyone_.end(), std::size_t{0});
    }

    std::vector<Caution> run();

  private:
    void packs_on(const PlanLeg& leg);
    void things_on_walks();
    void pieces_on_portages();
    void too_heavy(const std::string& name,
                   double mass_kg,
                   const std::vector<std::size_t>& may_bear,
                   Travel travel);

    [[nodiscard]] Limit limit_of(std::size_t member, Travel travel) const;

    const Draft& draft_;
    const Plan& plan_;
    const Trip& trip_;
    std::vector<std::size_t> everyone_;
    std::set<std::size_t> told_crushed_; ///< members
    std::set<std::string> told_things_;
    CautionList list_;
};

Limit LoadWatch::limit_of(std::size_t member, Travel travel) const {
    const Member& asked = trip_.party[member];
    const AssumedMember& assumed = draft_.prepared.assumed.members[member];
    if (travel == Travel::walk)
        return {assumed.walk_limit_kg, asked.carry_limit_kg.has_value()};
    return {assumed.portage_limit_kg, asked.portage_limit_kg || asked.carry_limit_kg};
}

/// A thing that none of those who may bear it is to carry. Where the trip file says so the trip
/// cannot be made as it stands; a limit that was only assumed forbids nothing.
void LoadWatch::too_heavy(const std::string& name,
                          double mass_kg,
                          const std::vector<std::size_t>& may_bear,
                          Travel travel) {
    const std::vector<std::size_t>& bearers = may_bear.empty() ? everyone_ : may_bear;
    bool given = true;
    std::size_t strongest = bearers.front();
    for (const std::size_t member : bearers) {
        const Limit limit = limit_of(member, travel);
        if (mass_kg <= limit.kg + shown_over_kg)
            return;
        given = given && limit.given;
        if (limit.kg > limit_of(strongest, travel).kg)
            strongest = member;
    }
    if (!told_things_.insert(name).second)
        return;
    const Wording mass = both(show_mass, mass_kg);
    const Wording limit = both(show_mass, limit_of(strongest, travel).kg);
    const std::string& bearer = trip_.party[strongest].name;
    const Wording who = bearers.size() == 1
                            ? worded("{}'s limit of {}", bearer, limit)
                            : worded("every limit; the highest is {}'s, {}", bearer, limit);
    list_.say(
        given ? Level::stop : Level::caution,
        "item-over-limits",
        worded("{} of {} goes on one back and is over {}{}. Leave it, divide it into items of its "
               "own, or raise a limit that somebody truly bears.",
               name,
               mass,
               who,
               given ? std::string_view("") : std::string_view(" (assumed by body mass)")));
}

void LoadWatch::things_on_walks() {
    const std::vector<bool>& brought = draft_.prepared.kit.brought;
    const auto packed_kg = [&](std::size_t k) {
        const KitItem& item = trip_.kit[k];
        return brought[k] && item.ashore == ItemUse::packed ? mg_to_kg(item_mg(item)) : 0.0;
    };
    for (const Bundle& bundle : bundles_of(trip_, brought)) {
        const KitItem& first = trip_.kit[bundle.items.front()];
        double mass_kg = 0.0;
        for (const std::size_t k : bundle.items)
            mass_kg += packed_kg(k);
        too_heavy(first.piece.empty() ? first.name : first.piece, mass_kg, {}, Travel::walk);
    }
    for (std::size_t k = 0; k < trip_.kit.size(); ++k)
        if (const std::optional<std::size_t> bound = bound_to(trip_, trip_.kit[k]))
            too_heavy(trip_.kit[k].name, packed_kg(k), {*bound}, Travel::walk);
    for (std::size_t c = 0; c < trip_.craft.size(); ++c) {
        const AssumedCraft& craft = draft_.prepared.assumed.craft[c];
        too_heavy(trip_.craft[c].name, craft.mass_kg, craft.crew, Travel::walk);
    }
}

void LoadWatch::pieces_on_portages() {
    const Loads& loads = draft_.settled.loads;
    for (std::size_t s = 0; s < loads.portages.size(); ++s) {
        if (!loads.portages[s])
            continue;
        const PlanLeg& leg = plan_.legs[loads.plan_leg[s]];
        list_.at(leg.day, leg.leg);
        for (const Piece& piece : loads.portages[s]->pieces)
            too_heavy(piece.name, mg_to_kg(piece.mass_mg), {}, Travel::portage);
    }
}

void LoadWatch::packs_on(const PlanLeg& leg) {
    for (const MemberLoad& load : leg.loads) {
        const auto member = static_cast<std::size_t>(&load - leg.loads.data());
        const double body_kg = trip_.party[member].body_kg;
        if (load.pack_max_kg > load.limit_kg + shown_over_kg)
            list_.say(Level::caution,
                      "pack-over-limit",
                      worded("{} carries {}, {} over the limit of {} ({:.0f} % of body mass).",
                             load.member,
                             both(show_mass, load.pack_max_kg),
                             both(show_mass, load.pack_max_kg - load.limit_kg),
                             both(show_mass, load.limit_kg),
                             100.0 * load.pack_max_kg / body_kg),
                      "Bastien2016");
        if (leg.travel == Travel::walk && load.pack_max_kg > body_kg &&
            told_crushed_.insert(member).second)
            list_.say(Level::stop,
                      "pack-over-body",
                      worded("{}'s pack of {} is heavier than its bearer: no day is "
                             "walked under it. Take less, put in a supply, or carry in stages.",
                             load.member,
                             both(show_mass, load.pack_max_kg)),
                      "Bastien2016");
    }
}

std::vector<Caution> LoadWatch::run() {
    const auto walked = std::find_if(plan_.legs.begin(), plan_.legs.end(), [](const PlanLeg& leg) {
        return leg.travel == Travel::walk;
    });
    if (walked != plan_.legs.end()) {
        list_.at(walked->day, walked->leg);
        things_on_walks();
    }
    pieces_on_portages();
    for (const PlanLeg& leg : plan_.legs) {
        list_.at(leg.day, leg.leg);
        if (leg.travel != Travel::paddle)
            packs_on(leg);
    }
    return list_.take();
}

} // namespace

std::vector<Caution> load_cautions(const Draft& draft, const Plan& plan) {
    return LoadWatch(draft, plan).run();
}

} // namespace tumpline::planner

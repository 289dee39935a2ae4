#include "planner/cautions/load_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/loads/limits.h"
#include "planner/quantities/milligrams.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

/// What is to be said of packs and of what cannot be divided.
class LoadWatch {
  public:
    LoadWatch(const Assembly& draft, const Plan& plan)
        : draft_(draft), plan_(plan), trip_(draft.prepared.trip), everyone_(trip_.party.size()) {
        std::iota(everyone_.begin(), everyone_.end(), std::size_t{0});
    }

    std::vector<Caution> run();

  private:
    void pack_over(const MemberLoad& load, double body_kg);
    void packs_on(const PlanLeg& leg);
    void things_on(const PlanLeg& walk);
    void pieces_on_portages();
    void hands_on(const PlanLeg& portage);
    void too_heavy(const std::string& name,
                   double mass_kg,
                   const std::vector<std::size_t>& may_bear,
                   const PlanLeg& leg);

    /// Whether the trip file gives a member's limit; otherwise a share of body mass is assumed.
    [[nodiscard]] bool gives_limit(std::size_t member, Travel travel) const;

    const Assembly& draft_;
    const Plan& plan_;
    const Trip& trip_;
    std::vector<std::size_t> everyone_;
    std::set<std::size_t> told_crushed_; ///< members
    /// Things by name, each with the one member who may bear it, and for everybody's none.
    std::set<std::pair<std::string, std::optional<std::size_t>>> told_things_;
    std::set<std::pair<std::string, Level>> told_names_;
    CautionList list_;
};

bool LoadWatch::gives_limit(std::size_t member, Travel travel) const {
    const Member& spec = trip_.party[member];
    return spec.carry_limit_kg || (travel == Travel::portage && spec.portage_limit_kg);
}

/// A thing that none of those who may bear it is to carry. Where the trip file says so the trip
/// cannot be made as it stands; a limit that was only assumed forbids nothing.
void LoadWatch::too_heavy(const std::string& name,
                          double mass_kg,
                          const std::vector<std::size_t>& may_bear,
                          const PlanLeg& leg) {
    const std::vector<std::size_t>& bearers = may_bear.empty() ? everyone_ : may_bear;
    bool given = true;
    std::size_t strongest = bearers.front();
    for (const std::size_t member : bearers) {
        const double limit_kg = leg.loads[member].limit_kg;
        if (!over_limit(mass_kg, limit_kg))
            return;
        given = given && gives_limit(member, leg.travel);
        if (limit_kg > leg.loads[strongest].limit_kg)
            strongest = member;
    }
    const Level level = given ? Level::stop : Level::caution;
    // Two members may each have a barrel; what no one in particular bears was told under its name.
    const std::optional<std::size_t> whose =
        bearers.size() == 1 ? std::optional(bearers.front()) : std::nullopt;
    const bool of_everybody = told_things_.contains({name, std::nullopt});
    const bool new_name = told_names_.emplace(name, level).second;
    const bool new_thing = told_things_.emplace(name, whose).second;
    if (!new_name && (!whose || !new_thing || of_everybody))
        return;
    list_.at(leg.day, leg.leg);
    const UnitText mass = in_both(show_mass, mass_kg);
    const UnitText limit = in_both(show_mass, leg.loads[strongest].limit_kg);
    const std::string& bearer = leg.loads[strongest].member;
    const UnitText who = bearers.size() == 1
                             ? format_both("{}'s limit of {}", bearer, limit)
                             : format_both("every limit; the highest is {}'s, {}", bearer, limit);
    Caution& caution = list_.add(
        level,
        "item-over-limits",
        format_both(
            "{} of {} goes on one back and is over {}{}. Leave it, divide it into items of its "
            "own, or raise a limit that somebody truly bears.",
            name,
            mass,
            who,
            given ? std::string_view("") : std::string_view(" (assumed by body mass)")));
    caution.subject = name;
    set_figure(
        caution, format_both("{} of {}", mass, limit), mass_kg - leg.loads[strongest].limit_kg);
}

void LoadWatch::things_on(const PlanLeg& walk) {
    for (const TiedItems& tied : draft_.settled.loads.tied) {
        const bool bound = tied.holder && !tied.may_wander;
        too_heavy(tied.name,
                  mg_to_kg(tied.mass_mg),
                  bound ? std::vector{*tied.holder} : std::vector<std::size_t>{},
                  walk);
    }
    for (std::size_t c = 0; c < trip_.craft.size(); ++c) {
        const AssumedCraft& craft = draft_.prepared.assumed.craft[c];
        too_heavy(trip_.craft[c].name, craft.mass_kg, craft.crew, walk);
    }
}

void LoadWatch::pieces_on_portages() {
    const Loads& loads = draft_.settled.loads;
    for (std::size_t s = 0; s < loads.portages.size(); ++s) {
        if (!loads.portages[s])
            continue;
        std::set<std::size_t> rolling;
        for (const PortageLoad& load : loads.portages[s]->relay.loads)
            if (load.rolls())
                rolling.insert(load.pieces.begin(), load.pieces.end());
        const std::vector<Piece>& pieces = loads.portages[s]->pieces;
        for (std::size_t p = 0; p < pieces.size(); ++p) {
            const Piece& piece = pieces[p];
            if (!piece.divisible() && !rolling.contains(p))
                too_heavy(
                    piece.name, mg_to_kg(piece.mass_mg), {}, plan_.legs[loads.plan_leg[s].index()]);
        }
    }
}

void LoadWatch::pack_over(const MemberLoad& load, double body_kg) {
    const UnitText pack = in_both(show_mass, load.pack_max_kg);
    const UnitText limit = in_both(show_mass, load.limit_kg);
    Caution& caution =
        list_.add(Level::caution,
                  "pack-over-limit",
                  format_both("{} carries {}, {} over the limit of {} ({:.0f} % of body mass).",
                              load.member,
                              pack,
                              in_both(show_mass, load.pack_max_kg - load.limit_kg),
                              limit,
                              100.0 * load.pack_max_kg / body_kg),
                  "Bastien2016");
    caution.subject = load.member;
    set_figure(caution,
               format_both("{} of {}", pack, limit),
               load.limit_kg > 0.0 ? load.pack_max_kg / load.limit_kg : load.pack_max_kg);
}

void LoadWatch::packs_on(const PlanLeg& leg) {
    for (const MemberLoad& load : leg.loads) {
        const auto member = static_cast<std::size_t>(&load - leg.loads.data());
        const double body_kg = trip_.party[member].body_kg;
        if (over_limit(load.pack_max_kg, load.limit_kg))
            pack_over(load, body_kg);
        if (leg.travel == Travel::walk && over_limit(load.pack_max_kg, body_kg) &&
            told_crushed_.insert(member).second) {
            Caution& caution = list_.add(
                Level::stop,
                "pack-over-body",
                format_both("{}'s pack of {} is heavier than its bearer: no day is "
                            "walked under it. Take less, put in a supply, or carry in stages.",
                            load.member,
                            in_both(show_mass, load.pack_max_kg)),
                "Bastien2016");
            caution.subject = load.member;
            set_figure(caution, in_both(show_mass, load.pack_max_kg), load.pack_max_kg);
        }
    }
}

/// Hands that the trip file asks for, where the carries and the boats asked for do not allow them.
void LoadWatch::hands_on(const PlanLeg& portage) {
    const std::optional<CarryBy>& asked =
        draft_.prepared.route.legs[portage.leg.index()].spec.carry_by;
    const auto chosen = std::find_if(portage.choices.begin(),
                                     portage.choices.end(),
                                     [](const CarryChoice& choice) { return choice.chosen; });
    if (!asked || chosen == portage.choices.end() || chosen->by == *asked)
        return;
    list_.add(Level::caution,
              "hands-not-had",
              fmt::format("\"carry_by\": \"{}\" is asked for and cannot be had with these people, "
                          "carries and boats: planned is \"{}\". Ask for other carries, or leave "
                          "the key out.",
                          word(*asked),
                          word(chosen->by)),
              "docs/carries.md");
}

std::vector<Caution> LoadWatch::run() {
    const auto walked = std::find_if(plan_.legs.begin(), plan_.legs.end(), [](const PlanLeg& leg) {
        return leg.travel == Travel::walk;
    });
    if (walked != plan_.legs.end())
        things_on(*walked);
    pieces_on_portages();
    for (const PlanLeg& leg : plan_.legs) {
        list_.at(leg.day, leg.leg);
        if (bears_packs(leg.travel))
            packs_on(leg);
        if (leg.travel == Travel::portage)
            hands_on(leg);
    }
    return list_.take();
}

} // namespace

std::vector<Caution> load_cautions(const Assembly& draft, const Plan& plan) {
    return LoadWatch(draft, plan).run();
}

} // namespace tumpline::planner

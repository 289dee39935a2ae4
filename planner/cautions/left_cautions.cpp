#include "planner/cautions/left_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::string_view source = "docs/left.md";

/// NamesOnce, each once, in the order in which they came.
class NamesOnce {
  public:
    void add(const std::string& name) {
        if (seen_.insert(name).second)
            names_.push_back(name);
    }

    [[nodiscard]] bool empty() const { return names_.empty(); }

    /// "tent, stove and 12 more"; a list that nobody would read to its end is cut.
    [[nodiscard]] std::string in_words() const {
        constexpr std::size_t most = 12;
        if (names_.size() <= most)
            return listed(names_);
        std::vector<std::string> told(names_.begin(), names_.begin() + most - 1);
        told.push_back(fmt::format("{} more", names_.size() - told.size()));
        return listed(told);
    }

    [[nodiscard]] std::string_view lies() const { return names_.size() == 1 ? "lies" : "lie"; }

  private:
    std::vector<std::string> names_;
    std::set<std::string> seen_;
};

/// What is missed on one leg, by how much it matters.
struct Missed {
    NamesOnce needed;
    NamesOnce wanted;
};

class LeftRules {
  public:
    explicit LeftRules(const Assembly& draft)
        : trip_(draft.prepared.trip), stretches_(draft.prepared.stretches),
          brought_(draft.prepared.kit.brought), timeline_(draft.settled.timeline),
          laid_(draft.settled.loads.laid) {}

    std::vector<Caution> run(const Plan& plan);

  private:
    void never(std::size_t leave);
    void unwatched(const LaidThings& left);
    void on_legs(std::size_t leave);
    void nights(std::size_t leave);
    void miss_thing(Missed& missed, std::size_t item, Travel travel) const;
    void tell(std::size_t leave, const Missed& missed, Travel travel);
    [[nodiscard]] bool shelter_at_hand(std::size_t stretch) const;

    [[nodiscard]] bool is_shelter(std::size_t item) const {
        return trip_.kit[item].is == SafetyGear::shelter;
    }

    const Trip& trip_;
    const Stretches& stretches_;
    const std::vector<bool>& brought_;
    const Timeline& timeline_;
    const std::vector<LaidDown>& laid_;
    CautionList list_;
};

void LeftRules::never(std::size_t leave) {
    const Leave& spec = trip_.leaves[leave];
    const LaidDown& laid = laid_[leave];
    if (!laid.left_at) {
        list_.at(spec.day);
        list_.add(Level::stop,
                  "not-left",
                  fmt::format("The plan does not come by {} {}: nothing is left there, and "
                              "everything is carried on.",
                              spec.at,
                              spec.day ? fmt::format("on day {}", *spec.day) : "to leave things"),
                  source);
    } else if (!laid.fetched_at) {
        list_.at(timeline_.stretches[*laid.left_at].day);
        list_.add(Level::stop,
                  "not-fetched",
                  fmt::format("What is left at {} is never fetched: the plan does not come by "
                              "there again{}.",
                              spec.at,
                              spec.fetch_day ? fmt::format(" on day {}", *spec.fetch_day) : ""),
                  source);
    }
}

void LeftRules::unwatched(const LaidThings& left) {
    const bool food = std::any_of(left.things.begin(),
                                  left.things.end(),
                                  [](const LaidThing& thing) { return thing.part == Part::food; });
    // Nothing gnaws at water; what it is in is a thing like others.
    const bool water_alone =
        std::all_of(left.things.begin(), left.things.end(), [](const LaidThing& thing) {
            return thing.part == Part::water;
        });
    list_.at(left.day, left.leg);
    list_.add(
        Level::caution,
        "left-unwatched",
        water_alone
            ? fmt::format("The water left at {} lies unwatched. Mark the place, and know what "
                          "you do if it is gone. Whether things may be left there is for the "
                          "local rules to say.",
                          left.at)
            : fmt::format("What is left at {} lies unwatched. Animals take food and gnaw what "
                          "smells of salt or of food; wind takes boats that are not tied, and "
                          "water rises. Lay it high, tie it, close it, mark the place.{} Whether "
                          "things may be left there is for the local rules to say.",
                          left.at,
                          food ? " The food goes where bears, foxes, ravens and mice do not get at "
                                 "it; if they do, the days after have none: know what you do then."
                               : ""));
}

/// What is worn or used in a way of travel, and gear that the rules of safety want at hand.
void LeftRules::miss_thing(Missed& missed, std::size_t item, Travel travel) const {
    const KitItem& thing = trip_.kit[item];
    const bool afloat = planner::afloat(travel);
    const ItemUse use = afloat ? thing.afloat : thing.ashore;
    if (use == ItemUse::worn || (afloat && use == ItemUse::used))
        return missed.needed.add(thing.name);
    if (use == ItemUse::used)
        return missed.wanted.add(thing.name);
    if (!thing.is)
        return;
    switch (*thing.is) {
    case SafetyGear::life_jacket:
    case SafetyGear::cold_suit:
    case SafetyGear::helmet:
    case SafetyGear::throw_bag:
    case SafetyGear::spare_paddle:
        if (afloat)
            missed.wanted.add(thing.name);
        break;
    case SafetyGear::first_aid:
    case SafetyGear::light:
        missed.wanted.add(thing.name);
        break;
    case SafetyGear::shelter: // at nights
        break;
    }
}

void LeftRules::tell(std::size_t leave, const Missed& missed, Travel travel) {
    const std::string& at = trip_.leaves[leave].at;
    const std::string_view way = past_word(travel);
    if (!missed.needed.empty())
        list_.add(Level::stop,
                  "needed-elsewhere",
                  fmt::format("This leg is {}, and {} {} at {} until then. Take it along, or "
                              "fetch it before.",
                              way,
                              missed.needed.in_words(),
                              missed.needed.lies(),
                              at),
                  source);
    if (!missed.wanted.empty())
        list_.add(Level::caution,
                  "gear-left-behind",
                  fmt::format(
                      "This leg is {} without {}, left at {}.", way, missed.wanted.in_words(), at));
}

void LeftRules::on_legs(std::size_t leave) {
    const LaidDown& laid = laid_[leave];
    std::set<std::pair<int, LegNumber>> told;
    for (std::size_t i = 0; i < stretches_.stretches.size(); ++i) {
        const Stretch& stretch = stretches_.stretches[i];
        const int day = timeline_.stretches[i].day;
        if (is_ride(stretch.travel) || !laid.lies_on(i) || !told.insert({day, stretch.leg}).second)
            continue;
        Missed missed;
        if (stretch.afloat())
            for (const std::size_t c : laid.craft)
                missed.needed.add(trip_.craft[c].name);
        for (const std::size_t k : laid.kit)
            miss_thing(missed, k, stretch.travel);
        list_.at(day, stretch.leg);
        tell(leave, missed, stretch.travel);
    }
}

bool LeftRules::shelter_at_hand(std::size_t stretch) const {
    for (std::size_t k = 0; k < trip_.kit.size(); ++k)
        if (brought_[k] && is_shelter(k) && with_party(laid_, {Part::kit, k}, stretch))
            return true;
    return false;
}

/// Nights between leaving and fetching.
void LeftRules::nights(std::size_t leave) {
    const LaidDown& laid = laid_[leave];
    for (std::size_t d = 0; d + 1 < timeline_.days.size(); ++d) {
        const std::size_t boundary = timeline_.days[d].last;
        if (!laid.misses_night(boundary) || laid.kit.empty() || shelter_at_hand(boundary - 1))
            continue;
        NamesOnce shelters;
        for (const std::size_t k : laid.kit)
            if (is_shelter(k))
                shelters.add(trip_.kit[k].name);
        list_.at(timeline_.days[d].day);
        if (!shelters.empty())
            list_.add(Level::stop,
                      "needed-elsewhere",
                      fmt::format("The night of day {} is without a shelter: {} {} at {}.",
                                  timeline_.days[d].day,
                                  shelters.in_words(),
                                  shelters.lies(),
                                  trip_.leaves[leave].at),
                      source);
        else
            list_.add(Level::caution,
                      "gear-left-behind",
                      fmt::format("The night of day {} is spent away from what was left at {}, and "
                                  "no thing of the kit says that it is a shelter: whether the "
                                  "party has one with it is not known.",
                                  timeline_.days[d].day,
                                  trip_.leaves[leave].at));
    }
}

std::vector<Caution> LeftRules::run(const Plan& plan) {
    for (std::size_t l = 0; l < laid_.size(); ++l) {
        never(l);
        on_legs(l);
        nights(l);
    }
    for (const LaidThings& left : plan.left)
        unwatched(left);
    return list_.take();
}

} // namespace

std::vector<Caution> left_cautions(const Assembly& draft, const Plan& plan) {
    return LeftRules(draft).run(plan);
}

} // namespace tumpline::planner

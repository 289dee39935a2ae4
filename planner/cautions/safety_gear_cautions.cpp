#include "planner/cautions/safety_gear_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/kit_names.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace tumpline::planner {

namespace {

/// From which class on; common practice, no source: others want a helmet from II on.
constexpr RiverClass throw_bag_class = 2;
constexpr RiverClass helmet_class = 3;
/// Below it a wetsuit or dry suit is held to be essential, and water counts as cold.
/// [ColdWater1101]
constexpr double suit_below_c = 10.0;
constexpr double cold_below_c = 15.0;

constexpr std::array all_gear{SafetyGear::life_jacket,
                              SafetyGear::cold_suit,
                              SafetyGear::helmet,
                              SafetyGear::throw_bag,
                              SafetyGear::first_aid,
                              SafetyGear::light,
                              SafetyGear::spare_paddle,
                              SafetyGear::shelter};

std::string_view gear_name(SafetyGear gear) {
    switch (gear) {
    case SafetyGear::life_jacket:
        return "life jacket";
    case SafetyGear::cold_suit:
        return "dry suit or wetsuit";
    case SafetyGear::helmet:
        return "helmet";
    case SafetyGear::throw_bag:
        return "throw bag";
    case SafetyGear::first_aid:
        return "first aid";
    case SafetyGear::light:
        return "light";
    case SafetyGear::spare_paddle:
        return "spare paddle";
    case SafetyGear::shelter:
        return "shelter";
    }
    return {};
}

/// One for each person; of the others one for the party.
bool for_each_person(SafetyGear gear) {
    return gear == SafetyGear::life_jacket || gear == SafetyGear::cold_suit ||
           gear == SafetyGear::helmet;
}

/// Why practice wants it on this trip, and on which leg that shows first or most.
struct Wanted {
    UnitText why;
    std::optional<LegNumber> leg;
};

class GearRules {
  public:
    GearRules(const Assembly& draft, const Plan& plan)
        : prepared_(draft.prepared), trip_(draft.prepared.trip), plan_(plan) {}

    std::vector<Caution> run();
    [[nodiscard]] std::vector<std::string> unlisted() const;

  private:
    [[nodiscard]] std::optional<Wanted> wanted(SafetyGear gear) const;
    [[nodiscard]] std::optional<Wanted> from_class(RiverClass least) const;
    [[nodiscard]] std::optional<Wanted> afloat(const UnitText& why) const;
    [[nodiscard]] std::optional<Wanted> paddled(const UnitText& why) const;
    [[nodiscard]] std::optional<Wanted> suit() const;
    [[nodiscard]] bool ever_dark() const;
    void at(const Wanted& why);
    [[nodiscard]] UnitText reason_of(std::size_t thing) const;
    void left(std::size_t thing, const Wanted& why);
    void not_worn(const KitItem& item, const Wanted& why);

    const Prepared& prepared_;
    const Trip& trip_;
    const Plan& plan_;
    CautionList list_;
};

std::optional<Wanted> GearRules::afloat(const UnitText& why) const {
    const std::vector<RouteLeg>& legs = prepared_.route.legs;
    for (std::size_t i = 0; i < legs.size(); ++i)
        if (planner::afloat(legs[i].travel))
            return Wanted{why, LegNumber::of_index(i)};
    return {};
}

std::optional<Wanted> GearRules::paddled(const UnitText& why) const {
    const std::vector<RouteLeg>& legs = prepared_.route.legs;
    for (std::size_t i = 0; i < legs.size(); ++i)
        if (legs[i].travel == Travel::paddle)
            return Wanted{why, LegNumber::of_index(i)};
    return {};
}

std::optional<Wanted> GearRules::from_class(RiverClass least) const {
    const std::vector<RouteLeg>& legs = prepared_.route.legs;
    std::optional<Wanted> hardest;
    RiverClass most = 0;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const RiverClass here = legs[i].spec.river_class.value_or(0);
        if (!planner::afloat(legs[i].travel) || here < least || here <= most)
            continue;
        most = here;
        hardest = Wanted{fmt::format("water of class {} and harder; this is class {}",
                                     class_word(least),
                                     class_word(here)),
                         LegNumber::of_index(i)};
    }
    return hardest;
}

std::optional<Wanted> GearRules::suit() const {
    const std::optional<double>& water_c = prepared_.assumed.weather.water_c;
    if (!water_c || *water_c >= cold_below_c)
        return {};
    return afloat(format_both(
        "water below {}; this is at {}",
        in_both(show_temperature, *water_c < suit_below_c ? suit_below_c : cold_below_c),
        in_both(show_temperature, *water_c)));
}

bool GearRules::ever_dark() const {
    return std::any_of(plan_.days.begin(), plan_.days.end(), [](const PlanDay& day) {
        return day.light.twilight.day != geo::SunDay::always_above;
    });
}

std::optional<Wanted> GearRules::wanted(SafetyGear gear) const {
    const bool night_out = plan_.days.size() > 1;
    switch (gear) {
    case SafetyGear::life_jacket:
        return afloat("any way afloat, worn");
    case SafetyGear::cold_suit:
        return suit();
    case SafetyGear::helmet:
        return from_class(helmet_class);
    case SafetyGear::throw_bag:
        return from_class(throw_bag_class);
    case SafetyGear::first_aid:
        return Wanted{"any trip", {}};
    case SafetyGear::light:
        return ever_dark() ? std::optional(Wanted{"any trip on which it gets dark", {}})
                           : std::nullopt;
    case SafetyGear::spare_paddle:
        return paddled("any way afloat, one for the party");
    case SafetyGear::shelter:
        return night_out ? std::optional(Wanted{"any night out", {}}) : std::nullopt;
    }
    return {};
}

void GearRules::at(const Wanted& why) {
    std::optional<int> day;
    for (const PlanLeg& leg : plan_.legs)
        if (why.leg && leg.leg == *why.leg && !day)
            day = leg.day;
    list_.at(day, why.leg);
}

/// Why a thing stays at home, in brackets.
UnitText GearRules::reason_of(std::size_t thing) const {
    const UnitText& why = prepared_.kit.reasons[thing].why;
    return why.metric.empty() ? UnitText("") : format_both(" ({})", why);
}

void GearRules::left(std::size_t thing, const Wanted& why) {
    const KitItem& item = trip_.kit[thing];
    const UnitText reason = reason_of(thing);
    at(why);
    const bool cool = item.is == SafetyGear::cold_suit &&
                      prepared_.assumed.weather.water_c.value_or(0.0) >= suit_below_c;
    Caution& caution = list_.add(
        Level::caution,
        cool ? "cool-water-suit" : "left-at-home",
        format_both("{} stays at home{}. Practice wants it on {}. Bring it, or know why not.",
                    name_with_owner(item),
                    reason,
                    why.why),
        item.is == SafetyGear::cold_suit ? std::string_view("ColdWater1101") : common_practice);
    caution.subject = name_with_owner(item);
}

/// A life jacket in a bag is none.
void GearRules::not_worn(const KitItem& item, const Wanted& why) {
    at(why);
    Caution& caution =
        list_.add(Level::caution,
                  "jacket-stowed",
                  fmt::format("{} is not worn afloat: \"afloat\" of it is \"{}\". Write "
                              "\"afloat\": \"worn\"; a life jacket in a bag is none.",
                              name_with_owner(item),
                              word(item.afloat)),
                  "USCGStatistics");
    caution.subject = name_with_owner(item);
}

std::vector<Caution> GearRules::run() {
    for (const SafetyGear gear : all_gear) {
        const std::optional<Wanted> why = wanted(gear);
        for (std::size_t k = 0; why && k < trip_.kit.size(); ++k) {
            const KitItem& item = trip_.kit[k];
            if (item.is != gear)
                continue;
            if (!prepared_.kit.brought[k])
                left(k, *why);
            else if (gear == SafetyGear::life_jacket && item.afloat == ItemUse::packed)
                not_worn(item, *why);
        }
    }
    return list_.take();
}

std::vector<std::string> GearRules::unlisted() const {
    std::vector<std::string> missing;
    for (const SafetyGear gear : all_gear) {
        if (!wanted(gear))
            continue;
        int of_party = 0;
        std::vector<std::string> without;
        for (const Member& member : trip_.party) {
            const bool has = std::any_of(trip_.kit.begin(), trip_.kit.end(), [&](const auto& item) {
                return item.is == gear && item.owner == member.name;
            });
            if (!has)
                without.push_back(member.name);
        }
        for (const KitItem& item : trip_.kit)
            if (item.is == gear && item.owner.empty())
                of_party += item.count;
        const std::size_t lacking =
            without.size() - std::min(without.size(), static_cast<std::size_t>(of_party));
        const bool anybody = without.size() < trip_.party.size() || of_party > 0;
        const std::string name(gear_name(gear));
        if (!for_each_person(gear)) {
            if (!anybody)
                missing.push_back(name);
        } else if (lacking == trip_.party.size()) {
            missing.push_back(name);
        } else if (lacking > 0) {
            without.erase(without.begin(), without.end() - static_cast<std::ptrdiff_t>(lacking));
            missing.push_back(fmt::format("{} of {}", name, listed(without)));
        }
    }
    return missing;
}

} // namespace

std::vector<Caution> safety_gear_cautions(const Assembly& draft, const Plan& plan) {
    return GearRules(draft, plan).run();
}

std::vector<std::string> unlisted_safety_gear(const Assembly& draft, const Plan& plan) {
    return GearRules(draft, plan).unlisted();
}

} // namespace tumpline::planner

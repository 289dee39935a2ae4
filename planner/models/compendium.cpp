#include "planner/models/compendium.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>

namespace tumpline::planner {

namespace {

constexpr std::array<Activity, 70> activities = {{
    {CompendiumEdition::y2011, "17010", "backpacking", 7.0},
    {CompendiumEdition::y2011, "17012", "backpacking/hiking/organized walking with daypack", 7.8},
    {CompendiumEdition::y2011, "17020", "carrying 15 lb load, level or downstairs", 5.0},
    {CompendiumEdition::y2011, "17033", "climbing hills no load", 6.3},
    {CompendiumEdition::y2011, "17035", "climbing hills 0-9 lb", 6.5},
    {CompendiumEdition::y2011, "17040", "climbing hills 10-20 lb", 7.3},
    {CompendiumEdition::y2011, "17050", "climbing hills 21-42 lb", 8.3},
    {CompendiumEdition::y2011, "17060", "climbing hills 42+ lb", 9.0},
    {CompendiumEdition::y2011, "17080", "hiking cross country", 6.0},
    {CompendiumEdition::y2011, "17082", "hiking fields and hillsides normal pace", 5.3},
    {CompendiumEdition::y2011, "17170", "walking 2.5 mph level", 3.0},
    {CompendiumEdition::y2011, "17180", "walking 2.5 mph downhill", 3.3},
    {CompendiumEdition::y2011, "17190", "walking 2.8-3.2 mph", 3.5},
    {CompendiumEdition::y2011, "17200", "walking 3.5 mph brisk", 4.3},
    {CompendiumEdition::y2011, "17210", "walking 2.9-3.5 mph uphill 1-5 %", 5.3},
    {CompendiumEdition::y2011, "17211", "walking 2.9-3.5 mph uphill 6-15 %", 8.0},
    {CompendiumEdition::y2011, "17262", "walking plowed field or sand", 4.5},
    {CompendiumEdition::y2011, "18020", "canoeing on camping trip", 4.0},
    {CompendiumEdition::y2011, "18030", "canoeing portaging", 7.0},
    {CompendiumEdition::y2011, "18040", "canoeing/rowing 2.0-3.9 mph light", 2.8},
    {CompendiumEdition::y2011, "18050", "canoeing/rowing 4.0-5.9 mph moderate", 5.8},
    {CompendiumEdition::y2011, "18060", "canoe/row/kayak competition >6 mph", 12.5},
    {CompendiumEdition::y2011, "18070", "canoeing/rowing for pleasure general", 3.5},
    {CompendiumEdition::y2011, "18080", "canoeing/rowing competition, crew", 12.0},
    {CompendiumEdition::y2011, "18100", "kayaking moderate effort", 5.0},
    {CompendiumEdition::y2011, "18370", "whitewater rafting/kayaking/canoeing", 5.0},
    {CompendiumEdition::y2011, "18352", "tubing, floating on a river", 2.3},
    {CompendiumEdition::y2011,
     "09110",
     "camping: standing, walking, sitting, light-to-moderate",
     2.5},
    {CompendiumEdition::y2011, "07030", "sleeping", 0.95},
    {CompendiumEdition::y2011, "07021", "sitting quietly", 1.3},
    {CompendiumEdition::y2011, "07040", "standing quietly", 1.3},
    {CompendiumEdition::y2011, "07011", "lying awake", 1.3},
    {CompendiumEdition::y2011, "19190", "snow shoeing moderate", 5.3},
    {CompendiumEdition::y2024, "17010", "backpacking", 7.0},
    {CompendiumEdition::y2024, "17011", "walking with a day pack, level, city", 3.5},
    {CompendiumEdition::y2024, "17012", "backpacking, hiking with a daypack", 7.8},
    {CompendiumEdition::y2024, "17018", "carrying 15-155 lb level or downstairs, slow", 4.5},
    {CompendiumEdition::y2024, "17019", "carrying 50-150 lb level, moderate pace", 6.5},
    {CompendiumEdition::y2024, "17032", "climbing hills no load 5-20 %, very slow", 5.0},
    {CompendiumEdition::y2024, "17033", "climbing hills 15-50 lb load, 1-2 %, slow", 3.8},
    {CompendiumEdition::y2024, "17034", "climbing hills no load 1-5 %", 5.3},
    {CompendiumEdition::y2024, "17035", "climbing hills no load 6-10 %", 7.0},
    {CompendiumEdition::y2024, "17036", "climbing hills no load 11-20 %", 8.8},
    {CompendiumEdition::y2024, "17038", "climbing hills no load 30 %, slow", 8.5},
    {CompendiumEdition::y2024, "17039", "climbing hills no load 30-40 %, 1.2-1.8 mph", 15.5},
    {CompendiumEdition::y2024, "17040", "climbing hills no load 10-40 %, 1.8-5.0 mph", 16.3},
    {CompendiumEdition::y2024, "17045", "climbing hills 10-20 lb load, 5-10 %", 6.5},
    {CompendiumEdition::y2024, "17050", "climbing hills 21-40 lb load, 3-10 %", 7.5},
    {CompendiumEdition::y2024, "17080", "hiking cross country", 6.0},
    {CompendiumEdition::y2024, "17081", "hiking slowly, fields and hillsides, no load", 3.8},
    {CompendiumEdition::y2024, "17082", "hiking normal pace, fields and hillsides, no load", 5.3},
    {CompendiumEdition::y2024, "17170", "walking 2.5 mph firm level", 3.0},
    {CompendiumEdition::y2024, "17190", "walking 2.8-3.4 mph", 3.8},
    {CompendiumEdition::y2024, "17200", "walking 3.5-3.9 mph", 4.8},
    {CompendiumEdition::y2024, "17220", "walking 4.0-4.4 mph", 5.5},
    {CompendiumEdition::y2024, "17434", "treadmill 2.5 mph, 40 lb load, 5-20 C", 4.8},
    {CompendiumEdition::y2024, "17438", "treadmill 2.5 mph, 40 lb load, -10-0 C", 5.8},
    {CompendiumEdition::y2024, "18040", "canoeing/rowing 2.0-3.9 mph light", 2.8},
    {CompendiumEdition::y2024, "18050", "canoeing/rowing 4.0-5.9 mph moderate", 5.8},
    {CompendiumEdition::y2024, "18060", "competition >6 mph", 12.5},
    {CompendiumEdition::y2024, "18070", "canoeing/rowing for pleasure", 3.5},
    {CompendiumEdition::y2024, "18080", "competition, crew", 12.0},
    {CompendiumEdition::y2024, "18100", "kayaking moderate effort", 5.0},
    {CompendiumEdition::y2024, "18370", "whitewater", 5.0},
    {CompendiumEdition::y2024, "09110", "camping light-to-moderate", 2.5},
    {CompendiumEdition::y2024, "07030", "sleeping", 1.0},
    {CompendiumEdition::y2024, "07021", "sitting quietly", 1.0},
    {CompendiumEdition::y2024, "07011", "lying awake", 1.0},
    {CompendiumEdition::y2024, "07040", "standing quietly", 1.3},
    {CompendiumEdition::y2024, "19190", "snow shoeing moderate", 5.3},
}};

} // namespace

std::span<const Activity> compendium() {
    return activities;
}

std::optional<double> met(CompendiumEdition edition, std::string_view code) {
    const auto* const found =
        std::find_if(activities.begin(), activities.end(), [edition, code](const Activity& row) {
            return row.edition == edition && row.code == code;
        });
    if (found == activities.end())
        return std::nullopt;
    return found->met;
}

double met_energy_j(const Spell& spell) {
    return met_w(spell.met, spell.body_kg) * spell.duration_s;
}

double met_oxygen_energy_j(const Spell& spell) {
    const double kcal_per_minute = spell.met * 3.5 * spell.body_kg / 200.0; // 5 kcal per litre
    return kcal_per_minute * j_per_kcal / 60.0 * spell.duration_s;
}

double met_w(double met, double body_kg) {
    return met * body_kg * j_per_kcal / 3600.0;
}

std::span<const ModelEntry> compendium_entries() {
    static constexpr std::array<ModelEntry, 1> entries = {{
        {.family = "compendium",
         .name = "compendium-2024",
         .answers = "What do sleeping, camp work and paddling cost?",
         .source = "Herrmann2024",
         .covers = "adults; rows of 2011 where 2024 was not seen",
         .is_default = true,
         .why = "the only common table of all these activities"},
    }};
    return entries;
}

} // namespace tumpline::planner

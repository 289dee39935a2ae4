#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/paddling.h"
#include "planner/models/resting_energy.h"
#include "planner/models/walking_speed.h"
#include "planner/trip/sections.h"

#include <array>
#include <span>

namespace tumpline::planner {

namespace {

constexpr Between share{0.0, 1.0};

std::optional<std::string> model(const TripValue& value, std::string_view family) {
    const std::optional<std::string_view> chosen = value.one_of(model_words(family));
    return chosen ? std::optional(std::string(*chosen)) : std::nullopt;
}

} // namespace

std::vector<std::string_view> model_words(std::string_view family) {
    const std::array tables{walking_speed_entries(),
                            load_effect_entries(),
                            load_carriage_entries(),
                            resting_energy_entries(),
                            paddling_entries()};
    std::vector<std::string_view> words;
    for (const std::span<const ModelEntry> table : tables)
        for (const ModelEntry& entry : table)
            if (entry.family == family)
                words.push_back(entry.name);
    return words;
}

const Section<Models>& models_section() {
    static const Section<Models> section{
        "models",
        "the models",
        {
            {"walking",
             Need::may,
             [](const TripValue& v, Models& m) { put(m.walking, model(v, "walking")); }},
            {"load_effect",
             Need::may,
             [](const TripValue& v, Models& m) { put(m.load_effect, model(v, "load_effect")); }},
            {"energy",
             Need::may,
             [](const TripValue& v, Models& m) { put(m.energy, model(v, "energy")); }},
            {"resting",
             Need::may,
             [](const TripValue& v, Models& m) { put(m.resting, model(v, "resting")); }},
            {"paddling",
             Need::may,
             [](const TripValue& v, Models& m) { put(m.paddling, model(v, "paddling")); }},
        }};
    return section;
}

const Section<Spread>& spread_section() {
    static const Section<Spread> section{
        "spread",
        "the spread",
        {
            {"pace",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.pace, v.number(share)); }},
            {"day_form",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.day_form, v.number(share)); }},
            {"wind",
             Need::may,
             [](const TripValue& v, Spread& s) {
                 put(s.wind, v.number({0.0, 3.0}));
             }},
            {"current",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.current, v.number(share)); }},
            {"changeovers",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.changeovers, v.number(share)); }},
            {"drinking",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.drinking, v.number(share)); }},
            {"eating",
             Need::may,
             [](const TripValue& v, Spread& s) { put(s.eating, v.number(share)); }},
        }};
    return section;
}

} // namespace tumpline::planner

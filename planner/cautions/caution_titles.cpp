#include "planner/cautions/caution_titles.h"

#include <algorithm>
#include <array>

namespace tumpline::planner {

namespace {

struct TitleRow {
    std::string_view code;
    std::string_view title;
    bool breaks = false;
    bool always = false;
};

/// The gravest first: what drowns, what falls with the dark, what hurts backs, what fails a plan,
/// what makes figures doubtful. docs/cautions.md has the same codes.
constexpr auto title_rows = std::to_array<TitleRow>({
    {"no-craft", "No boat, or no seat in one"},
    {"needed-elsewhere", "Needed while it lies elsewhere"},
    {"no-food", "Food lies elsewhere"},
    {"no-fuel", "Fuel lies elsewhere"},
    {"fuel-not-carried", "More fuel to leave than there is"},
    {"fuel-container", "Fuel left without a container"},
    {"laid-water-freezes", "Water left where it freezes"},
    {"food-not-carried", "More food to leave than there is"},
    {"not-fetched", "Left and never fetched"},
    {"not-left", "Not left as asked"},
    {"class-over-party", "River harder than somebody paddles"},
    {"class-over-craft", "River harder than the boat is meant for"},
    {"water-not-suited", "Water that the boat is not made for"},
    {"flow-not-runnable", "River outside its runnable range"},
    {"craft-over-payload", "Boat over its payload"},
    {"wind-stops-boat", "Wind stops the boat"},
    {"current-stops-boat", "Current stops the boat"},
    {"water-rises", "River that rises along its leg"},
    {"after-dusk-afloat", "On the water in the dark"},
    {"no-night", "No night after a ride"},
    {"exposed-crossing", "Open crossing"},
    {"wind-over-ceiling", "Wind above the boat's ceiling", true},
    {"waves", "Waves"},
    {"weather-other-days", "Weather for days that the plan does not have"},
    {"wind-rises", "Wind that rises later in the day"},
    {"led-pace", "Lined, waded or poled: pace and shore not known"},
    {"led-by-nobody", "Nobody leads a boat"},
    {"rapid-not-run", "Rapid lined or waded, not run"},
    {"pole-current", "Current too strong to pole against"},
    {"wade-deep", "Wading too deep or too fast"},
    {"wade-unknown", "Depth or current of wading not known"},
    {"wade-cold", "Wading in cold water"},
    {"ford-deep", "Ford too deep or too fast"},
    {"ford-unknown", "Ford of unknown depth"},
    {"avalanche-ground", "Avalanche ground"},
    {"class-unjudged", "Class III or harder, and nobody's class is known", true},
    {"left-at-home", "Safety gear left at home", true},
    {"gear-left-behind", "Gear left behind on the way", true},
    {"jacket-stowed", "Life jacket not worn", true},
    {"low-freeboard", "Little freeboard", true},
    {"class-hard", "Class III or harder"},
    {"cool-water-suit", "Suit left at home, cool water"},
    {"ice-on-water", "Ice on the water"},
    {"flow-beyond", "River outside the levels that are given"},
    {"flow-unread", "Level of a river without a reading"},
    {"flow-estimated", "Current of a level estimated"},
    {"class-unknown", "Class of a river not known"},
    {"ground-rapid", "Rapid or fall that the trip does not name"},
    {"water-temperature-unknown", "Water temperature not known"},
    {"wind-unknown", "Wind not known"},
    {"payload-unknown", "Payload not known"},
    {"water-over-capacity", "More drinking water needed than the vessels hold"},
    {"pack-over-body", "Pack heavier than its bearer"},
    {"item-over-limits", "One thing heavier than any limit", true},
    {"child-load", "Heavy pack on a child", true},
    {"child-food", "Too little food for a child"},
    {"child-pace", "Pace of a child not known"},
    {"pack-over-limit", "Pack over the limit", true},
    {"hands-not-had", "Carry not done as asked", true},
    {"tranter-blank", "Day on foot beyond Tranter's table", true},
    {"hours-over-limit", "Day over the limit of hours"},
    {"after-dusk", "Arrival after dusk", true},
    {"camp-late", "In camp later than asked", true},
    {"before-dawn", "Setting off before first light"},
    {"longer-than-asked", "Day longer than asked", true},
    {"no-feasible-nights", "No choice of nights keeps every limit"},
    {"camp-closed", "Camp closed"},
    {"camp-too-small", "Camp too small"},
    {"supply-closed", "Supply closed"},
    {"supply-short", "Too little food at a supply", true},
    {"appointment-missed", "Appointment missed", true},
    {"no-arrival", "Nothing arrives in time for the start"},
    {"no-departure", "No departure from the end"},
    {"waiting", "Waiting for a connection"},
    {"permit-date", "No permit on that date"},
    {"permit-people", "Party too large for a permit"},
    {"bags-too-small", "Bags too small", true},
    {"pack-too-small", "Pack too small", true},
    {"container-too-small", "Food container too small", true},
    {"drinking-over-limit", "More to drink than a body should take in"},
    {"heat", "Heat"},
    {"wind-chill", "Wind chill"},
    {"snow-sinking", "Snow under foot"},
    {"frost", "Frost at night"},
    {"thunderstorms", "Thunderstorms"},
    {"drinking-too-little", "Less to drink than the model asks for"},
    {"ration-low", "Ration far under what is spent"},
    {"near-miss", "Condition narrowly missed"},
    {"rest-day-unused", "Day of rest not taken"},
    {"water-assumed", "Drinking water assumed everywhere"},
    {"no-elevation", "Heights not known"},
    {"undrawn-leg", "Leg without a line"},
    {"level-ground-assumed", "Heights missing in part"},
    {"route-gap", "Gap in the route"},
    {"left-unwatched", "Things left unwatched"},
    {"turned-round", "Leg turned round"},
    {"recorded-wander", "Recorded line longer than the way"},
    {"place-off-route", "Place off the route"},
    {"no-date", "No start date"},
    {"cold-water", "Cold water", false, true},
    {"usual-water", "On any water", false, true},
    {"no-current", "Current not given"},
    {"current-estimated", "Current estimated"},
    {"gradient-hint", "Gradient of a river"},
    {"gradient-short", "Gradient over a short way"},
    {"bags-uneven", "Bags uneven"},
    {"dusk-within-band", "After dusk on a slow day"},
    {"set-off-moved", "Set-off moved to after an arrival"},
    {"dry-camp", "Camp without water"},
    {"energy-out-of-bounds", "Energy outside what was measured"},
    {"energy-by-other-rule", "Energy by another rule"},
    {"tranter-day", "Day on foot by Tranter's table"},
    {"nights-flipped", "Two solutions took turns"},
    {"paddling-estimate", "Paddling speed estimated"},
    {"tracks-repaired", "Tracks repaired"},
    {"ground-carried", "Rapid or fall at a carry"},
    {"ground-shore", "Far from shore"},
    {"ground-stream", "Running water crossed on foot"},
    {"ground-off-path", "No marked path"},
    {"ground-unknown", "Not in the map's layers"},
    {"left-out", "Left out of a track file"},
    {"outside-model-range", "Outside a model's range"},
});

} // namespace

CautionKind caution_kind(std::string_view code) {
    const auto* const row = std::find_if(title_rows.begin(),
                                         title_rows.end(),
                                         [&](const TitleRow& one) { return one.code == code; });
    CautionKind kind;
    kind.code = code;
    kind.order = static_cast<int>(row - title_rows.begin());
    if (row == title_rows.end())
        return kind;
    kind.title = row->title;
    kind.breaks = row->breaks;
    kind.always = row->always;
    return kind;
}

} // namespace tumpline::planner

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"
#include "tests/support/small_trip_file.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

/// Each case below sets one key of it wrongly.
constexpr const char* small = test::small_trip_text;

std::vector<std::string> problems_of(const std::string& text,
                                     const std::vector<Setting>& settings = {}) {
    std::vector<std::string> found;
    try {
        (void)read_trip_text(text, "t.json", settings);
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            found.push_back(to_string(problem));
    }
    return found;
}

TEST(TripFileWrong, TheSmallTripIsAllRight) {
    EXPECT_THAT(problems_of(small), testing::IsEmpty());
}

TEST(TripFileWrong, WhatSharesAContainerStaysWithOneMember) {
    std::string text = small;
    const std::string tent = R"({"item": "tent", "mass": "1.9 kg"})";
    text.replace(text.find(tent),
                 tent.size(),
                 R"({"item": "tent", "mass": "1.9 kg", "in": "sack", "stays_with": "Ada"},
                    {"item": "tarp", "mass": "800 g", "in": "sack", "stays_with": "Ben"})");
    EXPECT_THAT(problems_of(text),
                testing::ElementsAre(testing::AllOf(
                    testing::HasSubstr("/kit/1/stays_with"),
                    testing::HasSubstr("\"Ada\", with whom /kit/0 of the same \"in\" stays"))));
}

/// The small trip with `count` more of an item in a list, after what the list begins with.
std::string with_more(const std::string& begins, const std::string& item, int count) {
    std::string text = small;
    std::string more;
    for (int k = 0; k < count; ++k)
        more += fmt::format(fmt::runtime(item), k) + ", ";
    text.insert(text.find(begins) + begins.size(), more);
    return text;
}

TEST(TripFileWrong, ListsThatNoTripHasAreRefusedAtOnce) {
    EXPECT_THAT(problems_of(with_more(R"("kit": [)", R"({{"item": "t{}", "mass": "1 g"}})", 5'000)),
                testing::ElementsAre("t.json: /kit: found a list of 5001, expected at most 5000; "
                                     "put small things together into one line"));
    EXPECT_THAT(problems_of(with_more(R"("kit": [)", R"({{"item": "t{}", "mass": "1 g"}})", 4'999)),
                testing::IsEmpty());
    EXPECT_THAT(
        problems_of(with_more(
            R"("places": [)", R"({{"name": "p{}", "kind": "water", "at": [1, 2]}})", 2'000)),
        testing::ElementsAre("t.json: /route/places: found a list of 2001, expected at most "
                             "2000; keep the places that the trip can come by"));
    EXPECT_THAT(
        problems_of(with_more(R"("legs": [)", R"({{"name": "l{}", "travel": "walk"}})", 2'000)),
        testing::ElementsAre("t.json: /route/legs: found a list of 2002, expected at most 2000; "
                             "plan the trip in parts"));
    EXPECT_THAT(
        problems_of(with_more(R"("party": [)", R"({{"name": "m{}", "body": "60 kg"}})", 99)),
        testing::ElementsAre("t.json: /party: found a list of 101, expected at most 100; "
                             "plan for parties that walk together"));
    EXPECT_THAT(
        problems_of(
            with_more(R"("craft": [)", R"({{"name": "b{}", "mass": "3 kg", "crew": []}})", 100)),
        testing::ElementsAre("t.json: /craft: found a list of 101, expected at most 100; plan for "
                             "parties that paddle together"));
    std::string crowded = small;
    std::string meetings;
    for (int k = 0; k <= 1'000; ++k)
        meetings +=
            fmt::format(R"({}{{"what": "a{}", "at": "Birch spit", "day": 1, "by": "12:00"}})",
                        k > 0 ? "," : "",
                        k);
    crowded.insert(1, "\"appointments\": [" + meetings + "],");
    EXPECT_THAT(
        problems_of(crowded),
        testing::ElementsAre("t.json: /appointments: found a list of 1001, expected at most "
                             "1000; keep those that bind the trip"));
}

struct Case {
    const char* pointer;
    const char* value;
    const char* message; ///< without "t.json: POINTER: "
};

const std::vector<Case> cases{
    // masses and other quantities
    {"/kit/0/mass",
     "1.9",
     R"(found 1.9, expected a mass with a unit (g, kg, oz, lb); write "1.9 kg")"},
    {"/kit/0/mass",
     "970",
     R"(found 970, expected a mass with a unit (g, kg, oz, lb); write "970 g")"},
    {"/kit/0/mass",
     "1.9 kgs",
     R"(found "1.9 kgs", expected a mass with a unit (g, kg, oz, lb); write "1.9 kg")"},
    {"/kit/0/mass",
     "1,9 kg",
     R"(found "1,9 kg", expected a mass with a unit (g, kg, oz, lb); write decimals with a point, and thousands without a separator)"},
    {"/kit/0/mass",
     "4 oz 7 lb",
     R"(found "4 oz 7 lb", expected a mass with a unit (g, kg, oz, lb); larger units first, each once, as in "7 lb 4 oz" or "1 h 30 min")"},
    {"/kit/0/mass", "true", "found true, expected a mass with a unit (g, kg, oz, lb)"},
    {"/kit/0/mass", "null", "found null, expected a mass with a unit (g, kg, oz, lb)"},
    {"/kit/0/mass", "-1 kg", R"(found "-1 kg", expected a mass from 0 kg to 100 kg)"},
    {"/kit/0/mass", "500 kg", R"(found "500 kg", expected a mass from 0 kg to 100 kg)"},
    {"/party/0/body", "5 kg", R"(found "5 kg", expected a mass from 15 kg to 300 kg)"},
    {"/party/0/height",
     "171",
     R"(found 171, expected a length with a unit (m, km, ft, yd, mi, rods, nmi); write "171 cm")"},
    {"/weather/high", "64", R"(found 64, expected a temperature with a unit (C, F); write "64 F")"},
    {"/water/walking",
     "0.5 L",
     R"(found "0.5 L", expected a volume per hour with a unit (L/h, ml/h, qt/h, fl oz/h); write "0.5 L/h")"},
    {"/food/energy_density",
     "4.4",
     R"(found 4.4, expected an energy per mass with a unit (kcal/g, kcal/100g, kcal/oz, kJ/g, kJ/100g); write "4.4 kcal/g")"},
    {"/days/rest_per_hour",
     "10 m",
     R"(found "10 m", expected a duration with a unit (min, h, s); write "10 min")"},
    {"/days/rest_per_hour", "2 h", R"(found "2 h", expected a duration from 0 min to 60 min)"},
    // plain numbers
    {"/party/0/pace", "0", "found 0, expected a number from 0.2 to 3"},
    {"/days/hours",
     "\"8 h\"",
     R"(found "8 h", expected a number from 0.5 to 24; write it without quotation marks)"},
    {"/kit/0/count", "1.5", "found 1.5, expected a whole number from 1 to 1000"},
    {"/kit/0/count", "1e300", "found 1e300, expected a whole number from 1 to 1000"},
    {"/weather/rain",
     "\"yes\"",
     R"(found "yes", expected true or false; write it without quotation marks)"},
    // words
    {"/kit/0/afloat", "wron", R"(found "wron", expected packed, worn or used; write "worn")"},
    {"/water/stow",
     "bag",
     R"(found "bag", expected bottle-at-hand, bags or at-hand; write "bags")"},
    {"/kit/0/is",
     "lifejacket",
     R"(found "lifejacket", expected life-jacket, cold-suit, helmet, throw-bag, first-aid, light, spare-paddle or shelter; write "life-jacket")"},
    {"/kit/0/must",
     "\"yes\"",
     R"(found "yes", expected true or false; write it without quotation marks)"},
    {"/kit/0/bag", "lef", R"(found "lef", expected left or right; write "left")"},
    {"/route/places/0/kind",
     "put_in",
     R"(found "put_in", expected start, finish, put-in, take-out, camp, water, resupply, cache, exit, hazard or ford; write "put-in")"},
    {"/models/walking",
     "swis-signpost",
     R"(found "swis-signpost", expected swiss-signpost, naismith-langmuir, langmuir-party, tobler, irmischer-clarke, campbell-2019, campbell-2019-p10, campbell-2019-p20, campbell-2019-p30, campbell-2019-p40, campbell-2019-p50, campbell-2019-p60, campbell-2019-p70, campbell-2019-p80, campbell-2019-p90, sullivan-2020, sullivan-2020-moderate, sullivan-2020-high, din-33466 or constant; write "swiss-signpost")"},
    {"/models/load_effect", "\"\"", R"(found "", expected equal-effort or none)"},
    {"/fuel/stove",
     "wite-gas",
     R"(found "wite-gas", expected gas, gas-exchanger, white-gas, ethanol, methanol or hexamine; write "white-gas")"},
    {"/food/ration",
     "700",
     R"(found 700, expected "energy", or a mass per person and day with a unit (g, kg, oz, lb); write "700 g")"},
    {"/food/ration",
     "enrgy",
     R"(found "enrgy", expected "energy", or a mass per person and day with a unit (g, kg, oz, lb); write "energy")"},
    {"/route/legs/1/carries", "4", R"(found 4, expected 1, 1.5, 2, 3 or "auto")"},
    {"/route/legs/0/class",
     "VII",
     R"(found "VII", expected a river class from "I" to "VI"; "III-", "II+" and "II-III" count as the harder one, III)"},
    // dates, times, positions
    {"/start",
     "2027-02-30",
     R"(found "2027-02-30", expected a date "YYYY-MM-DD" of the calendar, from 1900 to 2199, in quotation marks; for instance "2027-06-18")"},
    {"/days/set_off",
     "25:00",
     R"(found "25:00", expected a time of day "HH:MM" of the 24-hour clock, in quotation marks; for instance "08:00")"},
    {"/time_zone",
     "Europe/Olso",
     R"(found "Europe/Olso", expected a time zone of the IANA database, such as "Europe/Oslo"; write "Europe/Oslo")"},
    {"/route/places/0/at",
     "[61.5, 103.1]",
     "found [61.5, 103.1], expected [longitude, latitude], within 180 and 90 degrees; write "
     "[103.1, 61.5]"},
    {"/route/places/0/at",
     "\"61.5 N\"",
     R"(found "61.5 N", expected a distance along the route, such as "km 41", "mi 30.5", "km 3.2 of LEG" or "km 2 before the end of LEG"; or a position, for instance [13.1021, 61.5210])"},
    // shapes
    {"/party", "[]", "found an empty list, expected at least one member of the party"},
    {"/route/tracks", "[]", "found an empty list, expected at least one file with a track"},
    {"/route/tracks",
     "a.gpx",
     R"(found "a.gpx", expected a list in square brackets, each item the name of a file; write it as [ ... ])"},
    {"/models", "[1]", "found a list, expected the models: an object in curly brackets"},
    {"/kit/0", "3", "found 3, expected a kit item: an object in curly brackets"},
    {"/kit/0/item",
     "7",
     R"(found 7, expected a name in quotation marks, one line, not empty; write "7")"},
    {"/kit/0/item",
     "\" \"",
     R"(found " ", expected a name in quotation marks, one line, not empty)"},
    {"/kit/0/when",
     "{}",
     R"(found an empty object, expected at least one key of a condition; leave "when" out if the item always comes)"},
    {"/craft/0/bags", "[\"70 L\"]", "found a list, expected two bags, left and right, or none"},
    {"/days/nights",
     "\"Birch spit\"",
     R"(found "Birch spit", expected a list of names of places, or "auto")"},
    {"/tumpline",
     "2",
     "found 2, expected 1, the only version of the trip file's form that there is"},
    // keys
    {"/kit/0/mas",
     "\"1 kg\"",
     "found an unknown key, expected a key of a kit item; write \"mass\""},
    {"/days/zzz",
     "1",
     "found an unknown key, expected a key of the days (set_off, first_set_off, hours, "
     "hours_limit, nights, rest_days_after, weather_days, rest_per_hour, most_days, "
     "dusk_is_limit, halt or in_camp_before_dark)"},
    {"/rout", "1", "found an unknown key, expected a key of a trip; write \"route\""},
};

class TripFileWrong : public testing::TestWithParam<Case> {};

TEST_P(TripFileWrong, SaysWhereWhatAndWhatInstead) {
    const Case& wrong = GetParam();
    EXPECT_THAT(problems_of(small, {{.pointer = wrong.pointer, .value = wrong.value}}),
                testing::ElementsAre(fmt::format("t.json: {}: {}", wrong.pointer, wrong.message)));
}

INSTANTIATE_TEST_SUITE_P(Keys, TripFileWrong, testing::ValuesIn(cases));

/// Problems whose place is another key than the one that is set.
const std::vector<Case> cross_checks{
    {"/kit/0/for",
     "Adda",
     R"(/kit/0/for: found "Adda", expected an owner (Ada, Ben or party); write "Ada")"},
    {"/kit/0/stays_with",
     "Eve",
     R"(/kit/0/stays_with: found "Eve", expected a member of the party (Ada or Ben))"},
    {"/kit/0",
     R"({"item": "tent", "mass": "1 kg", "must": true, "bring": false})",
     R"(/kit/0/bring: found false beside "must": true, expected one of them: what must come is brought; leave "must" out)"},
    {"/kit/0",
     R"({"item": "tent", "mass": "1 kg", "at_hand": true, "bag": "left"})",
     R"(/kit/0/bag: found "left" beside "at_hand": true, expected one of them: what is at hand lies in no bag)"},
    {"/kit",
     R"([{"item": "a", "mass": "1 kg", "in": "pack", "bag": "left"},
         {"item": "b", "mass": "1 kg", "in": "pack", "bag": "right"}])",
     R"(/kit/1/bag: found "right", expected the bag of /kit/0, with which it is in "pack")"},
    {"/party/1/name",
     "ada",
     R"(/party/1/name: found "ada", expected another name than /party/0's)"},
    {"/party/1/name",
     "party",
     R"(/party/1/name: found "party", expected another name: "party" means all members together)"},
    {"/party/0/carry_limit",
     "140 kg",
     "/party/0/carry_limit: found 140 kg, expected at most twice the body's mass, 136 kg"},
    {"/craft/0/crew/-",
     "Bne",
     R"(/craft/0/crew/1: found "Bne", expected a member of the party (Ada or Ben); write "Ben")"},
    {"/craft/-",
     R"({"name": "blue boat", "mass": "3 kg", "crew": ["Ada"]})",
     R"(/craft/1/crew/0: found "Ada", expected each member in one craft only; already in "red boat")"},
    {"/craft/-",
     R"({"name": "red boat", "mass": "3 kg"})",
     R"(/craft/1/name: found "red boat", expected another name than /craft/0's)"},
    {"/route/places/-",
     R"({"name": "Birch spit", "kind": "water"})",
     R"(/route/places/1/name: found "Birch spit", expected another name than /route/places/0's)"},
    {"/days/nights",
     R"(["Birch split"])",
     R"(/days/nights/0: found "Birch split", expected the name of a place of the route (Birch spit); write "Birch spit")"},
    {"/days/rest_days_after",
     "[2, 2]",
     "/days/rest_days_after/1: found 2 twice, expected each day once"},
    {"/days",
     R"({"hours": 8, "hours_limit": 6})",
     "/days/hours_limit: found 6, expected no less than the hours wished, 8"},
    {"/weather",
     R"({"high": "10 C", "low": "12 C"})",
     "/weather/low: found 12 C, expected no more than the high, 10 C"},
    {"/food/shares",
     R"({"breakfast": 0.3, "trail": 0.3, "dinner": 0.3})",
     "/food/shares: found shares that sum to 0.9, expected breakfast, trail and dinner to sum to "
     "1"},
    {"/route/legs/0/terrain",
     "bog",
     R"(/route/legs/0/terrain: found "terrain" on a leg with "travel": "paddle", expected it on legs on foot only)"},
    {"/route/legs/1/current",
     "2 km/h",
     R"(/route/legs/1/current: found "current" on a leg with "travel": "portage", expected it on legs afloat only)"},
    {"/route/legs/-",
     R"({"travel": "walk", "carries": 2})",
     R"(/route/legs/2/carries: found "carries" on a leg with "travel": "walk", expected it on portages only)"},
    {"/route/legs/-",
     R"({"travel": "ride"})",
     R"(/route/legs/2: found a ride without "lasts", expected how long it takes; write "lasts": "50 min")"},
    {"/route/legs/-", // and not that it has none
     R"({"travel": "ride", "lasts": "26 h"})",
     R"(/route/legs/2/lasts: found "26 h", expected a duration from 1 min to 24 h)"},
    {"/route/legs/-",
     R"({"travel": "ride", "lasts": "50 min", "water": "lake"})",
     R"(/route/legs/2/water: found "water" on a leg with "travel": "ride", expected it on legs afloat only)"},
    {"/route/legs/-",
     R"({"travel": "line", "water": "lake"})",
     R"(/route/legs/2/water: found "water": "lake" on a leg with "travel": "line", expected "river", or no "water": boats are led on rivers; paddle a lake along its shore: "travel": "paddle")"},
    {"/route/legs/-",
     R"({"travel": "pole", "depth": "knee"})",
     R"(/route/legs/2/depth: found "depth" on a leg with "travel": "pole", expected it on legs that are waded only)"},
    {"/route/legs/0/speed",
     "2 km/h",
     R"(/route/legs/0/speed: found "speed" on a leg with "travel": "paddle", expected it on legs that are lined, waded or poled only)"},
    {"/craft/0/thigh_straps", "3", R"(/craft/0/thigh_straps: found 3, expected true or false)"},
    {"/route/legs/0/lasts",
     "50 min",
     R"(/route/legs/0/lasts: found "lasts" on a leg with "travel": "paddle", expected it on rides only: other legs take what the plan works out; write "travel": "ride" if others take you there)"},
    {"/route/legs/-",
     R"({"instead_of": "cary"})",
     R"(/route/legs/2/instead_of: found "cary", expected the name of a leg (lake or carry); write "carry")"},
    {"/kit/-", R"({"item": "pot"})", R"(/kit/1: found no "mass", expected a kit item to have one)"},
};

class TripFileCrossCheck : public testing::TestWithParam<Case> {};

TEST_P(TripFileCrossCheck, SaysWhereWhatAndWhatInstead) {
    const Case& wrong = GetParam();
    EXPECT_THAT(problems_of(small, {{.pointer = wrong.pointer, .value = wrong.value}}),
                testing::ElementsAre(fmt::format("t.json: {}", wrong.message)));
}

INSTANTIATE_TEST_SUITE_P(Keys, TripFileCrossCheck, testing::ValuesIn(cross_checks));

TEST(TripFileProblems, AllComeInOneRun) {
    EXPECT_THAT(
        problems_of(
            R"({"party": [{"name": "Ada", "body": 68}], "kit": [{"item": "tent", "mass": 2}]})"),
        testing::ElementsAre(
            R"(t.json: found no "tumpline", expected a trip to have one; write "tumpline": 1)",
            R"(t.json: found no "route", expected a trip to have one)",
            R"(t.json: /party/0/body: found 68, expected a mass with a unit (g, kg, oz, lb); write "68 kg")",
            R"(t.json: /kit/0/mass: found 2, expected a mass with a unit (g, kg, oz, lb); write "2 kg")"));
}

TEST(TripFileProblems, AreCountedBeyondAHundred) {
    std::string items;
    for (int i = 0; i < 150; ++i)
        items += R"({"item": "x", "mass": 1},)";
    items += R"({"item": "x", "mass": 1})";
    const auto problems =
        problems_of(small, {{.pointer = "/kit", .value = fmt::format("[{}]", items)}});
    ASSERT_EQ(problems.size(), 101U);
    EXPECT_EQ(problems.back(),
              "t.json: found 51 more problems, expected the ones above put right first");
}

TEST(TripFileWrong, ATrackInPlaceOfATripIsToldToUseNew) {
    for (const auto& [text, format] :
         {std::pair("<?xml version=\"1.0\"?>\n<gpx version=\"1.1\">", "GPX"),
          std::pair("<kml xmlns=\"http://www.opengis.net/kml/2.2\">", "KML"),
          std::pair(R"({"type": "FeatureCollection", "features": []})", "GeoJSON"),
          std::pair(R"({"type": "LineString", "coordinates": [[1, 61], [1, 62]]})", "GeoJSON")})
        EXPECT_THAT(problems_of(text),
                    testing::ElementsAre(fmt::format(
                        "t.json: found a track ({}), expected a trip file; use new: tumpline new "
                        "t.json -o trip.json writes a trip file from it",
                        format)));
}

TEST(TripFileWrong, OneFaultIsOneMessage) {
    const std::string kit = R"([{"item": "tent", "mass": "1.9 kg", "for": "Ada"},
        {"item": "pot", "mass": "1 kg", "for": "Ada"},
        {"item": "mat", "mass": "1 kg", "for": "Ada", "stays_with": "Ada"}])";
    // the name of a member spelled wrongly, to which a boat and three things point
    EXPECT_THAT(
        problems_of(
            small,
            {{.pointer = "/kit", .value = kit}, {.pointer = "/party/0/name", .value = "Adda"}}),
        testing::ElementsAre(
            "t.json: /craft/0/crew/0: found \"Ada\" (and at 1 more place), expected a member "
            "of the party (Adda or Ben); write \"Adda\"",
            "t.json: /kit/0/for: found \"Ada\" (and at 2 more places), expected an owner "
            "(Adda, Ben or party); write \"Adda\""));
    // its key spelled wrongly: not missing as well, and nobody who is meant by it unknown
    EXPECT_THAT(
        problems_of(small,
                    {{.pointer = "/kit", .value = kit},
                     {.pointer = "/party/0", .value = R"({"nmae": "Ada", "body": "68 kg"})"}}),
        testing::ElementsAre("t.json: /party/0/nmae: found an unknown key, expected a key "
                             "of a member of the party; write \"name\""));
}

TEST(TripFileSettings, AreAppliedBeforeReading) {
    const Trip trip =
        read_trip_text(small,
                       "t.json",
                       {{.pointer = "/days/set_off", .value = "07:00"},
                        {.pointer = "/party/0/pace", .value = "1.25"},
                        {.pointer = "/kit/-", .value = R"({"item": "pot", "mass": "300 g"})"},
                        {.pointer = "/weather/rain", .value = "true"},
                        {.pointer = "/name", .value = "Round the lake"}});
    EXPECT_EQ(trip.days.set_off, std::chrono::hours(7));
    EXPECT_EQ(trip.party[0].pace, 1.25);
    ASSERT_EQ(trip.kit.size(), 2U);
    EXPECT_EQ(trip.kit[1].name, "pot");
    EXPECT_EQ(trip.weather.rain, true);
    EXPECT_EQ(trip.name, "Round the lake");
}

TEST(TripFileSettings, ThatPointNowhereAreNamed) {
    EXPECT_THAT(
        problems_of(small, {{.pointer = "/kit/7/mass", .value = "1 kg"}}),
        testing::ElementsAre("t.json: found the setting /kit/7/mass=1 kg, expected a number up "
                             "to 0, or \"-\" for one more, in place of \"7\""));
    EXPECT_THAT(
        problems_of(small, {{.pointer = "name", .value = "x"}}),
        testing::ElementsAre("t.json: found the setting name=x, expected a JSON pointer such as "
                             "/days/set_off or /party/0/pace"));
    EXPECT_THAT(
        problems_of(small, {{.pointer = "/tumpline/x", .value = "1"}}),
        testing::ElementsAre("t.json: found the setting /tumpline/x=1, expected a pointer that "
                             "ends before \"x\" (1 has no keys)"));
}

TEST(TripFileWrong, ACartNeedsGroundToRollOnAndToBeThere) {
    const auto of_leg = [](const std::string& more, const std::string& kit) {
        return problems_of(R"({"tumpline": 1, "route": {"tracks": ["a.gpx"], "legs": [
            {"name": "carry", "track": "a", )" +
                           more + R"(}]}, "party": [{"name": "Ada", "body": "68 kg"}], "kit": [)" +
                           kit + "]}");
    };
    const std::string cart = R"({"item": "cart", "mass": "5 kg", "cart_payload": "60 kg"})";
    EXPECT_THAT(of_leg(R"("travel": "portage", "cart": true)", cart), testing::IsEmpty());
    EXPECT_THAT(of_leg(R"("travel": "portage", "cart": true)", ""),
                testing::ElementsAre(testing::HasSubstr("/route/legs/0/cart")));
    EXPECT_THAT(of_leg(R"("travel": "portage", "cart": true, "terrain": "bog")", cart),
                testing::ElementsAre(testing::HasSubstr("/route/legs/0/cart")));
    EXPECT_THAT(of_leg(R"("travel": "walk", "cart": true)", cart),
                testing::ElementsAre(testing::HasSubstr("/route/legs/0/cart")));
    const auto at_carry_by = testing::ElementsAre(testing::HasSubstr("/route/legs/0/carry_by"));
    EXPECT_THAT(of_leg(R"("travel": "portage", "cart": true, "carry_by": "cart")", cart),
                testing::IsEmpty());
    EXPECT_THAT(of_leg(R"("travel": "portage", "carry_by": "cart")", cart), at_carry_by);
    EXPECT_THAT(of_leg(R"("travel": "portage", "carry_by": "two")", cart), at_carry_by);
    EXPECT_THAT(of_leg(R"("travel": "portage", "carry_by": "two")",
                       R"({"item": "barrel", "mass": "9 kg", "borne_by": 2})"),
                testing::IsEmpty());
    EXPECT_THAT(of_leg(R"("travel": "walk", "carry_by": "hands")", cart), at_carry_by);
    EXPECT_THAT(
        of_leg(R"("travel": "portage")", R"({"item": "barrel", "mass": "9 kg", "borne_by": 3})"),
        testing::ElementsAre(testing::HasSubstr("/kit/0/borne_by")));
}

TEST(TripFileWrong, BoatsToChooseFromTellTheirMistakes) {
    const auto of_choice = [](const std::string& choices) {
        std::string text = small;
        const std::string kit = "\"kit\": [";
        text.replace(text.find(kit), kit.size(), "\"craft_choices\": " + choices + ", " + kit);
        return problems_of(text);
    };
    EXPECT_THAT(of_choice(R"([{"name": "light boat", "mass": "2 kg", "seats": 1, "price": 900,
                              "replaces": ["red boat"]}])"),
                testing::IsEmpty());
    EXPECT_THAT(of_choice(R"([{"name": "light boat", "mass": "2 kg", "replaces": ["red baot"]}])"),
                testing::ElementsAre(testing::AllOf(
                    testing::HasSubstr("/craft_choices/0/replaces/0: found \"red baot\""),
                    testing::HasSubstr("write \"red boat\""))));
    EXPECT_THAT(of_choice(R"([{"name": "red boat", "mass": "2 kg"}])"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/0/name")));
    EXPECT_THAT(of_choice(R"([{"name": "a", "mass": "2 kg"}, {"name": "a", "mass": "3 kg"}])"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/1/name")));
    EXPECT_THAT(of_choice(R"([{"name": "a", "mass": "2 kg", "crew": ["Ada"]}])"),
                testing::ElementsAre(testing::HasSubstr("crew")));
    EXPECT_THAT(of_choice(R"([{"name": "a"}])"), testing::ElementsAre(testing::HasSubstr("mass")));
    EXPECT_THAT(of_choice(R"([{"name": "a", "mass": "2 kg", "seats": 0}])"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/0/seats")));
    EXPECT_THAT(of_choice(R"([{"name": "a", "mass": "2 kg", "price": -1}])"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/0/price")));
    EXPECT_THAT(of_choice(R"([{"name": "a", "mass": "2 kg", "freeboard": "20 cm"}])"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/0/freeboard")));
}

TEST(TripFileWrong, PaddlesToChooseFromTellTheirMistakes) {
    const auto of_choice = [](const std::string& choice) {
        std::string text = small;
        const std::string kit = "\"kit\": [";
        text.replace(text.find(kit), kit.size(), "\"craft_choices\": [" + choice + "], " + kit);
        return problems_of(text);
    };
    EXPECT_THAT(of_choice(R"({"name": "short", "mass": "1 kg", "kind": "paddle",
                             "paddle": {"stroke": "high"}, "price": 150})"),
                testing::IsEmpty());
    EXPECT_THAT(of_choice(R"({"name": "short", "mass": "1 kg", "kind": "padle"})"),
                testing::ElementsAre(testing::HasSubstr("write \"paddle\"")));
    EXPECT_THAT(of_choice(R"({"name": "a", "mass": "1 kg", "kind": "paddle", "class": "II"})"),
                testing::ElementsAre(testing::HasSubstr("keys of a boat")));
    EXPECT_THAT(of_choice(R"({"name": "a", "mass": "2 kg", "paddle": {}})"),
                testing::ElementsAre(testing::HasSubstr("/craft_choices/0/paddle")));
    EXPECT_THAT(
        of_choice(R"({"name": "a", "mass": "1 kg", "kind": "paddle", "replaces": ["red boat"]})"),
        testing::ElementsAre(testing::HasSubstr("/craft_choices/0/replaces/0")));
}

} // namespace
} // namespace tumpline::planner

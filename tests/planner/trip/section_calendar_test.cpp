/// Connections and permits as the trip file writes them, right and wrong.

#include "geo/input_error.h"
#include "planner/trip/timetable.h"
#include "planner/trip/trip_file.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::string dated_trip(const std::string& more, const std::string& start = "2027-06-18") {
    return fmt::format(R"({{"tumpline": 1, {} "route": {{"tracks": ["a.gpx"],
        "legs": [{{"name": "Gorge", "travel": "paddle"}}],
        "places": [{{"name": "Camp", "kind": "camp"}}]}},
        "party": [{{"name": "Ada", "body": "68 kg"}}], {}}})",
                       start.empty() ? "" : fmt::format("\"start\": \"{}\",", start),
                       more);
}

std::vector<std::string> wrong_in(const std::string& text) {
    std::vector<std::string> found;
    try {
        (void)read_trip_text(text, "t.json", {});
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            found.push_back(to_string(problem));
    }
    return found;
}

std::string with_departs(const std::string& departs) {
    return dated_trip(R"("connections": [{"what": "bus", "at": "Road", "departs": )" + departs +
                      "}]");
}

TEST(SectionCalendar, ReadsConnectionsAndPermits) {
    const Trip trip = read_trip_text(dated_trip(R"("connections": [
            {"what": "bus", "at": "Road", "departs": ["Mo 09:10", "We,Fr 17:40"], "margin": "45 min"},
            {"what": "taxi", "to": "Pier", "arrives": ["2027-06-18 07:35"]}],
          "permits": [{"for": "Camp", "dates": ["2027-06-15", "2027-07-31"], "people": 6, "note": "by post"},
                      {"for": "Gorge"}])"),
                                     "t.json",
                                     {});
    ASSERT_EQ(trip.connections.size(), 2U);
    EXPECT_EQ(trip.connections[0].place, "Road");
    EXPECT_FALSE(trip.connections[0].to_start);
    ASSERT_EQ(trip.connections[0].times.size(), 2U);
    EXPECT_EQ(timetable_words(trip.connections[0].times[1]), "We,Fr 17:40");
    EXPECT_EQ(trip.connections[0].margin, std::chrono::minutes{45});
    EXPECT_TRUE(trip.connections[1].to_start);
    EXPECT_EQ(trip.connections[1].place, "Pier");
    ASSERT_EQ(trip.permits.size(), 2U);
    EXPECT_EQ(trip.permits[0].where, "Camp");
    EXPECT_EQ(trip.permits[0].most_people, 6);
    EXPECT_EQ(show_date(trip.permits[0].dates->last), "2027-07-31");
    EXPECT_EQ(trip.permits[0].note, "by post");
    EXPECT_FALSE(trip.permits[1].dates);
}

TEST(SectionCalendar, SaysWhichHourOfATimetableIsWrong) {
    EXPECT_THAT(wrong_in(with_departs(R"(["Mo 09:10", "Mon 09:10"])")),
                ElementsAre(AllOf(HasSubstr("/connections/0/departs/1: found \"Mon 09:10\""),
                                  HasSubstr("write \"Mo\""))));
    EXPECT_THAT(wrong_in(with_departs(R"(["Mo 25:00"])")),
                ElementsAre(AllOf(HasSubstr("/connections/0/departs/0: found \"Mo 25:00\""),
                                  HasSubstr("from 00:00 to 23:59"))));
    EXPECT_THAT(wrong_in(with_departs("[]")),
                ElementsAre(HasSubstr("/connections/0/departs: found an empty list, expected at "
                                      "least one hour")));
    EXPECT_THAT(wrong_in(with_departs("[7]")),
                ElementsAre(HasSubstr("/connections/0/departs/0: found 7")));
    EXPECT_THAT(wrong_in(with_departs(R"("Mo 09:10")")),
                ElementsAre(HasSubstr("a list in square brackets")));
}

TEST(SectionCalendar, AConnectionHasOneEnd) {
    const std::string one_end = "\"at\" with \"departs\"";
    EXPECT_THAT(wrong_in(dated_trip(R"("connections": [{"what": "bus", "at": "Road"}])")),
                ElementsAre(AllOf(HasSubstr("/connections/0: found \"at\", expected"),
                                  HasSubstr(one_end))));
    EXPECT_THAT(wrong_in(dated_trip(R"("connections": [{"what": "bus", "at": "Road",
                    "arrives": ["07:00"]}])")),
                ElementsAre(HasSubstr(one_end)));
    EXPECT_THAT(wrong_in(dated_trip(R"("connections": [{"what": "bus", "at": "Road",
                    "departs": ["07:00"], "to": "Pier", "arrives": ["07:00"]}])")),
                ElementsAre(HasSubstr(one_end)));
    EXPECT_THAT(wrong_in(dated_trip(R"("connections": [{"what": "bus"}])")),
                ElementsAre(HasSubstr("neither a place nor hours")));
}

TEST(SectionCalendar, APermitIsForSomethingOfTheTrip) {
    EXPECT_THAT(wrong_in(dated_trip(R"("permits": [{"for": "Gorg"}])")),
                ElementsAre(AllOf(HasSubstr("/permits/0/for"), HasSubstr("write \"Gorge\""))));
    EXPECT_THAT(wrong_in(dated_trip(
                    R"("permits": [{"for": "Camp", "dates": ["2027-07-01", "2027-06-01"]}])")),
                ElementsAre(HasSubstr("the earlier date first")));
    EXPECT_THAT(wrong_in(dated_trip(R"("permits": [{"for": "Camp", "dates": ["2027-07-01"]}])")),
                ElementsAre(HasSubstr("two dates")));
    EXPECT_THAT(wrong_in(dated_trip(R"("permits": [{"for": "Camp", "people": 0}])")),
                ElementsAre(HasSubstr("/permits/0/people: found 0")));
}

TEST(SectionCalendar, ATimetableNeedsTheDateOfTheStart) {
    const std::string bus =
        R"("connections": [{"what": "bus", "at": "Road", "departs": ["Mo 09:10"]}])";
    EXPECT_THAT(wrong_in(dated_trip(bus)), IsEmpty());
    EXPECT_THAT(wrong_in(dated_trip(bus, "")),
                Contains(AllOf(HasSubstr("/connections"), HasSubstr("no \"start\""))));
}

} // namespace
} // namespace tumpline::planner

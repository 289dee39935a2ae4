#include "cli/live/live_trip.h"

#include "geo/input_error.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;
using planner::Edit;

/// The saddle's sample in a folder of its own.
class LiveTripFile : public ::testing::Test {
  protected:
    LiveTripFile() {
        fs::copy(test::root / "sample-routes" / "saddle", folder_.path() / "saddle");
        file_ = folder_.path() / "saddle" / "trip.json";
    }

    test::TempFolder folder_;
    fs::path file_;
};

TEST_F(LiveTripFile, AnEditAnswersAsSetDoes) {
    LiveTrip trip(file_);
    const LivePlan live = trip.planned({{Edit::Way::add, "/days/set_off", "\"07:00\""}});
    EXPECT_EQ(live.plan.trip.days.set_off, std::chrono::hours(7));
    EXPECT_NE(live.on_file.days.set_off, std::chrono::hours(7));
    EXPECT_EQ(live.seen, digest_of(trip.text()));
}

TEST_F(LiveTripFile, AnEditOfALegIsInThePlanThoughTheRouteIsKept) {
    LiveTrip trip(file_);
    const LivePlan before = trip.planned({});
    const LivePlan slow = trip.planned({{Edit::Way::add, "/route/legs/5/current", "\"1 km/h\""}});
    ASSERT_EQ(before.plan.trip.route.legs[5].name, "Upper river");
    EXPECT_GT(slow.plan.totals.moving_s, before.plan.totals.moving_s);
    EXPECT_EQ(slow.plan.totals.distance_m, before.plan.totals.distance_m);
}

TEST_F(LiveTripFile, SnowInAnEditIsLookedAtForSteepGround) {
    LiveTrip trip(file_);
    EXPECT_FALSE(trip.planned({}).route->steep);
    const LivePlan snowy = trip.planned({{Edit::Way::add, "/weather/snow_depth", "\"20 cm\""}});
    ASSERT_TRUE(snowy.route->steep);
    EXPECT_FALSE(snowy.route->steep->parts.empty());
}

TEST_F(LiveTripFile, WritesOnlyOverWhatWasSeen) {
    LiveTrip trip(file_);
    const std::string before = trip.text();
    const std::vector<Edit> edits{{Edit::Way::add, "/days/hours", "7"}};
    EXPECT_FALSE(trip.write(edits, digest_of(before + " ")));
    EXPECT_EQ(trip.text(), before);
    EXPECT_TRUE(trip.write(edits, digest_of(before)));
    EXPECT_NE(trip.text(), before);
    EXPECT_FALSE(trip.write(edits, digest_of(before)));
}

TEST_F(LiveTripFile, WritesNothingThatIsNoTrip) {
    LiveTrip trip(file_);
    const std::string before = trip.text();
    EXPECT_THROW((void)trip.write({{Edit::Way::remove, "/party", {}}}, digest_of(before)),
                 geo::InputError);
    EXPECT_THROW((void)trip.write({{Edit::Way::add, "/parti", "1"}}, digest_of(before)),
                 geo::InputError);
    EXPECT_EQ(trip.text(), before);
}

TEST_F(LiveTripFile, WritesNothingThatCannotBePlanned) {
    LiveTrip trip(file_);
    const std::string before = trip.text();
    for (const Edit& edit : {Edit{Edit::Way::add, "/route/tracks", "[\"no-such.gpx\"]"},
                             Edit{Edit::Way::add, "/route/elevation", "[\"no-such.tif\"]"},
                             Edit{Edit::Way::add, "/days/nights", "[\"nowhere\"]"}}) {
        EXPECT_THROW((void)trip.write({edit}, digest_of(before)), geo::InputError) << edit.pointer;
        EXPECT_EQ(trip.text(), before) << edit.pointer;
    }
}

} // namespace

} // namespace tumpline::cli

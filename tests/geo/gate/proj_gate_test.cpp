#include "geo/gate/proj_gate.h"

#include "geo/input_error.h"
#include "geo/tracks/vector_file.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <proj.h>

#include <chrono>
#include <string>

namespace tumpline::geo {
namespace {

/// Each of these names a file that PROJ would open; it waited there for ever.
TEST(ProjGate, TheNameOfACoordinateSystemOpensNoPipe) {
    const test::TempFolder folder;
    const std::string pipe = test::make_pipe(folder.path() / "pipe").string();
    for (const std::string& crs :
         {"+init=" + pipe + ":1",
          "+proj=pipeline +step +init=" + pipe + ":1 +type=crs",
          "+proj=longlat +ellps=bessel +nadgrids=" + pipe + " +no_defs",
          "+proj=longlat +ellps=GRS80 +geoidgrids=" + pipe + " +no_defs"}) {
        try { // read or refused, but soon
            static_cast<void>(
                read_vector_file(folder.write("trip.geojson", test::geojson_in(crs))));
        } catch (const InputError& error) {
            EXPECT_FALSE(error.problems().front().found.empty()) << crs;
        }
    }
}

TEST(ProjGate, OpensPlainFilesInProjsOwnFoldersOnly) {
    const test::TempFolder folder;
    const std::string file = folder.write("grid.gtx", "no grid, but a file").string();
    const ProjContext context = make_proj_context();
    const auto makes = [&](const std::string& grid) {
        PJ* operation =
            proj_create(context.get(), ("+proj=vgridshift +multiplier=1 +grids=" + grid).c_str());
        const bool made = operation != nullptr;
        proj_destroy(operation);
        return made;
    };
    EXPECT_TRUE(makes("egm96_15.gtx")) << "needs Debian's proj-data";
    EXPECT_FALSE(makes(file));
    EXPECT_TRUE(close_gdals_proj());
}

} // namespace
} // namespace tumpline::geo

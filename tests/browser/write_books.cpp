// Writes the books that tests/browser/look_at_books.js opens, and beside each the plan as JSON:
//     write_books FOLDER
#include "cli/book/book.h"
#include "cli/json/plan_json.h"
#include "planner/decisions/choices.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"
#include "tests/support/source_tree.h"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>

namespace {

using namespace tumpline;

void write(const std::filesystem::path& file, std::string_view text) {
    std::ofstream out(file, std::ios::binary);
    out << text;
    if (!out.flush())
        throw std::runtime_error("cannot write " + file.string());
}

void write_book(const std::filesystem::path& folder,
                const std::string& name,
                const planner::Plan& plan,
                const planner::Route& route) {
    write(folder / (name + ".html"), cli::book(plan, route, planner::UnitSystem::metric));
    write(folder / (name + ".json"), cli::plan_json(plan, "test"));
}

} // namespace

int main(int count, char** words) {
    if (count != 2) {
        std::cerr << "usage: write_books FOLDER\n";
        return 2;
    }
    const std::filesystem::path folder = words[1];
    std::filesystem::create_directories(folder);
    const planner::Plan plan = test::hand_built_plan();
    write_book(folder, "three-days", plan, test::hand_built_route(plan));
    const planner::Plan hostile = test::with_hostile_names(plan);
    write_book(folder, "hostile-names", hostile, test::hand_built_route(hostile));
    const planner::Plan bare = test::one_leg(plan);
    write_book(folder, "one-leg", bare, test::without_heights(test::hand_built_route(bare)));
    const planner::Plan sixty = test::repeated(plan, 20);
    write_book(folder, "sixty-days", sixty, test::hand_built_route(sixty));
    for (const char* sample : {"saddle", "lake-chain"}) { // from tracks to the book
        const planner::Trip trip =
            planner::read_trip(test::root / "sample-routes" / sample / "trip.json");
        const planner::BuiltRoute built = planner::build_routes(trip);
        write_book(folder,
                   sample,
                   planner::make_plan_with_choices(trip, built.route, built.others),
                   built.route);
    }
    return 0;
}

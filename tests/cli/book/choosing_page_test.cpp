/// The tables of docs/models/choosing.md: sample trips planned under one model and another, as the
/// program prints the figures. Each table stands between "<!-- table TRIP -->" (or
/// "TRIP windy") and "<!-- end -->".
///
/// With TUMPLINE_REWRITE_SCREENS=1 in the environment the tables are rewritten with what is planned
/// now; the words around them must then be read again.

#include "cli/app.h"
#include "planner/quantities/quantities.h"
#include "tests/support/source_tree.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using test::root;

const fs::path page = root / "docs" / "models" / "choosing.md";

/// A family of models and the one that stands against its default.
struct Choice {
    const char* family;
    const char* model;
};

constexpr Choice choices[] = {{"walking", "naismith-langmuir"},
                              {"walking", "din-33466"},
                              {"load_effect", "none"},
                              {"energy", "pandolf-santee"},
                              {"energy", "compendium-met"},
                              {"paddling", "constant"}};

/// A table's trip, and what it is to be planned under.
struct Case {
    std::string trip;
    bool windy; ///< 25 km/h of wind, and the paddling models alone
};

json plan_of(const Case& planned, const Choice* choice) {
    std::vector<std::string> arguments = {
        "plan", (root / "sample-routes" / planned.trip / "trip.json").string(), "--format", "json"};
    if (planned.windy) {
        arguments.emplace_back("--set");
        arguments.emplace_back("/weather/wind=25 km/h");
    }
    if (choice != nullptr) {
        arguments.emplace_back("--set");
        arguments.push_back(fmt::format("/models/{}={}", choice->family, choice->model));
    }
    std::ostringstream out, err;
    static_cast<void>(run(arguments, {.out = out, .err = err}));
    EXPECT_EQ(err.str(), "");
    return json::parse(out.str());
}

std::string hours(double time_s) {
    return planner::show_duration(time_s);
}

/// ", +19 %", or nothing where it rounds to nothing.
std::string change(double now, double before) {
    const double percent = std::round(100.0 * (now / before - 1.0));
    return percent == 0.0 ? std::string() : fmt::format(", {:+.0f} %", percent);
}

/// The clock of an RFC 3339 time, to the nearest minute as the plan's text shows it.
std::string clock(const std::string& time) {
    const int seconds = std::stoi(time.substr(11, 2)) * 3600 + std::stoi(time.substr(14, 2)) * 60 +
                        std::stoi(time.substr(17, 2));
    const int minutes = (seconds + 30) / 60;
    return fmt::format("{:02}:{:02}", minutes / 60 % 24, minutes % 60);
}

/// Heaviest pack or carry of the trip.
double heaviest_kg(const json& plan) {
    double most_kg = 0.0;
    for (const json& day : plan["days"])
        for (const json& member : day["members"])
            most_kg = std::max(most_kg, member["heaviest_kg"].get<double>());
    return most_kg;
}

std::string row(const json& plan, const json& usual, const Choice* choice) {
    std::string cells = choice == nullptr
                            ? std::string("| as by default |")
                            : fmt::format("| {} `{}` |", choice->family, choice->model);
    for (const json& day : plan["days"])
        cells += day["rest_day"].get<bool>()
                     ? std::string(" rest |")
                     : fmt::format(" {} |", hours(day["moving_s"].get<double>()));
    const double moving_s = plan["totals"]["moving_s"].get<double>();
    const double food_kg = plan["totals"]["food_kg"].get<double>();
    json arrive; // the last one on the way; behind it only days of waiting
    for (const json& day : plan["days"])
        if (day["waiting_for"].is_null())
            arrive = day["arrive"];
    cells += fmt::format(" {}{} | {} | {:.1f} kg{} | {:.1f} kg |\n",
                         hours(moving_s),
                         change(moving_s, usual["totals"]["moving_s"].get<double>()),
                         clock(arrive.get<std::string>()),
                         food_kg,
                         change(food_kg, usual["totals"]["food_kg"].get<double>()),
                         heaviest_kg(plan));
    return cells;
}

std::string table(const Case& planned) {
    const json usual = plan_of(planned, nullptr);
    std::string text = "| models |";
    std::string rule = "|---|";
    for (const json& day : usual["days"]) {
        text += fmt::format(" day {} |", day["day"].get<int>());
        rule += "---|";
    }
    text +=
        " moving in all | last arrival | food | heaviest pack |\n" + rule + "---|---|---|---|\n";
    text += row(usual, usual, nullptr);
    for (const Choice& choice : choices)
        if (!planned.windy || std::string(choice.family) == "paddling")
            text += row(plan_of(planned, &choice), usual, &choice);
    return text;
}

TEST(ChoosingPage, ShowsWhatIsPlanned) {
    std::ifstream in(page);
    const std::string text(std::istreambuf_iterator<char>(in), {});
    in.close();
    static const std::regex place("<!-- table ([a-z-]+)( windy)? -->\n([^<]*)<!-- end -->");
    std::string now;
    auto from = text.cbegin();
    int tables = 0;
    for (std::sregex_iterator it(text.begin(), text.end(), place), end; it != end; ++it) {
        const std::string planned = "\n" + table({(*it)[1], (*it)[2].matched}) + "\n";
        if (std::getenv("TUMPLINE_REWRITE_SCREENS") == nullptr) {
            EXPECT_EQ((*it)[3].str(), planned) << (*it)[1];
        }
        now.append(from, (*it)[3].first);
        now += planned;
        from = (*it)[3].second;
        ++tables;
    }
    now.append(from, text.cend());
    EXPECT_EQ(tables, 4) << "the page has lost a table";
    if (std::getenv("TUMPLINE_REWRITE_SCREENS") != nullptr)
        std::ofstream(page, std::ios::binary) << now;
}

} // namespace
} // namespace tumpline::cli

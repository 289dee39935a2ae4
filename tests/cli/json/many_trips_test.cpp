#include "cli/export/export_csv.h"
#include "cli/json/plan_json.h"
#include "planner/decisions/choices.h"
#include "planner/make_plan.h"
#include "tests/support/varied_trip.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <clocale>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <future>
#include <map>
#include <numeric>
#include <string>
#include <tuple>
#include <vector>

/// What holds of every plan and of what is written of it, over many made-up trips.
/// TUMPLINE_RANDOM_TRIPS sets how many (100000 for a long run), TUMPLINE_SEED the first seed.
namespace tumpline::cli {
namespace {

using planner::Account;
using planner::Entry;
using planner::MemberLoad;
using planner::Part;
using planner::Plan;
using planner::PlanDay;
using planner::PlanLeg;
using planner::Travel;

std::uint64_t number_of(const char* variable, std::uint64_t otherwise) {
    const char* text = std::getenv(variable);
    return text ? std::strtoull(text, nullptr, 10) : otherwise;
}

/// A thousand where the program is optimised; a few where it is slow for the sake of its checks.
constexpr std::uint64_t usual_trips =
#ifdef NDEBUG
    1000;
#else
    40;
#endif

bool ours(Account account) {
    return account == Account::pack || account == Account::worn || account == Account::in_use;
}

/// No account is ever overdrawn, and what is in the accounts at the end is what came less what
/// went.
void check_ledger(const Plan& plan) {
    std::map<std::tuple<std::size_t, Account, Part>, std::int64_t> held_mg;
    std::int64_t came_mg = 0;
    std::int64_t went_mg = 0;
    for (const Entry& entry : plan.ledger.entries) {
        ASSERT_GE(entry.mass_mg, 0) << entry.why;
        if (ours(entry.from)) {
            std::int64_t& from = held_mg[{entry.member, entry.from, entry.part}];
            from -= entry.mass_mg;
            EXPECT_GE(from, 0) << entry.why << ", day " << entry.day;
        } else {
            came_mg += entry.mass_mg;
        }
        if (ours(entry.to))
            held_mg[{entry.member, entry.to, entry.part}] += entry.mass_mg;
        else
            went_mg += entry.mass_mg;
    }
    std::int64_t left_mg = 0;
    for (const auto& [account, mg] : held_mg)
        left_mg += mg;
    EXPECT_EQ(left_mg, came_mg - went_mg);
    std::int64_t packs_mg = 0;
    for (const auto& [account, mg] : held_mg)
        if (std::get<Account>(account) == Account::pack)
            packs_mg += mg;
    double shown_kg = 0.0;
    for (const planner::MemberDay& member : plan.days.back().members)
        shown_kg += member.pack_end_kg;
    EXPECT_NEAR(shown_kg, static_cast<double>(packs_mg) / 1e6, 1e-6);
}

template <class Thing, class Figure>
double sum_of(const std::vector<Thing>& things, const Figure& figure) {
    return std::accumulate(things.begin(), things.end(), 0.0, [&](double sum, const Thing& thing) {
        return sum + figure(thing);
    });
}

void expect_same(double one, double other, const char* what) {
    EXPECT_NEAR(one, other, 1e-9 * std::max(1.0, std::abs(one))) << what;
}

/// Days are the sums of their legs, and the trip is the sum of its days.
void check_sums(const Plan& plan) {
    const auto of_days = [&](double PlanDay::*figure) {
        return sum_of(plan.days, [&](const PlanDay& day) { return day.*figure; });
    };
    const auto of_legs = [&](double PlanLeg::*figure) {
        return sum_of(plan.legs, [&](const PlanLeg& leg) { return leg.*figure; });
    };
    expect_same(of_days(&PlanDay::walk_m), plan.totals.walk_m, "walk");
    expect_same(of_days(&PlanDay::portage_m), plan.totals.portage_m, "portage");
    expect_same(of_days(&PlanDay::paddle_m), plan.totals.paddle_m, "paddle");
    expect_same(of_days(&PlanDay::led_m), plan.totals.led_m, "led");
    EXPECT_NEAR(plan.totals.walk_m + plan.totals.portage_m + plan.totals.paddle_m +
                    plan.totals.led_m,
                plan.totals.distance_m,
                1e-6 * plan.totals.distance_m);
    expect_same(of_days(&PlanDay::moving_s), of_legs(&PlanLeg::moving_s), "moving");
    expect_same(of_days(&PlanDay::moving_s), plan.totals.moving_s, "moving");
    expect_same(of_days(&PlanDay::rest_s), of_legs(&PlanLeg::rest_s), "rest");
    expect_same(of_days(&PlanDay::changeover_s), of_legs(&PlanLeg::changeover_s), "change-over");
    expect_same(of_days(&PlanDay::ascent_m), of_legs(&PlanLeg::ascent_m), "ascent");
    expect_same(of_days(&PlanDay::ascent_m), plan.totals.ascent_m, "ascent");
    expect_same(of_days(&PlanDay::on_foot_m), plan.totals.on_foot_m, "on foot");
    for (const PlanDay& day : plan.days) {
        const auto of_members = [&](double planner::MemberDay::*figure) {
            return sum_of(day.members, [&](const auto& member) { return member.*figure; });
        };
        expect_same(of_members(&planner::MemberDay::food_kg), day.food_kg, "food");
        EXPECT_NEAR(of_members(&planner::MemberDay::water_l), day.water_l, 1e-4);
    }
    EXPECT_NEAR(sum_of(plan.stages, [](const auto& stage) { return stage.food_kg; }),
                plan.totals.food_kg,
                1e-4 * (1.0 + plan.totals.food_kg));
}

void check_figures(const Plan& plan) {
    const auto figure = [](double value, const char* what) {
        EXPECT_TRUE(std::isfinite(value) && value >= 0.0) << what << " " << value;
    };
    for (const PlanLeg& leg : plan.legs) {
        figure(leg.moving_s, "moving");
        figure(leg.ascent_m, "ascent");
        EXPECT_LE(leg.moving_low_s, leg.moving_s);
        EXPECT_GE(leg.moving_high_s, leg.moving_s);
        for (const MemberLoad& load : leg.loads) {
            for (const double kg :
                 {load.pack_start_kg, load.pack_end_kg, load.pack_max_kg, load.worn_kg})
                figure(kg, "pack");
            figure(load.energy_j, "energy");
            EXPECT_NEAR(load.parts.sum_kg(), load.pack_max_kg, 1e-6);
            EXPECT_GE(load.pack_max_kg, load.pack_start_kg - 1e-6);
        }
    }
    for (const PlanDay& day : plan.days) {
        figure(day.food_kg, "food");
        figure(day.fuel_kg, "fuel");
        figure(day.water_l, "water");
    }
}

/// The clock and the way go on and never back.
void check_order(const Plan& plan) {
    for (std::size_t k = 0; k < plan.legs.size(); ++k) {
        const PlanLeg& leg = plan.legs[k];
        EXPECT_LE(leg.start, leg.end);
        EXPECT_LE(leg.from_m, leg.to_m);
        if (k == 0)
            continue;
        EXPECT_EQ(leg.from_m, plan.legs[k - 1].to_m);
        EXPECT_GE(leg.day, plan.legs[k - 1].day);
        if (leg.day == plan.legs[k - 1].day) {
            EXPECT_GE(leg.start, plan.legs[k - 1].end);
        }
    }
    for (std::size_t k = 1; k < plan.events.size(); ++k) {
        EXPECT_GE(plan.events[k].along_m, plan.events[k - 1].along_m - 1e-6);
        if (plan.events[k].day == plan.events[k - 1].day) {
            EXPECT_GE(plan.events[k].at, plan.events[k - 1].at);
        }
    }
    for (std::size_t d = 1; d < plan.days.size(); ++d)
        for (std::size_t m = 0; m < plan.days[d].members.size(); ++m)
            EXPECT_NEAR(plan.days[d].members[m].pack_start_kg,
                        plan.days[d - 1].members[m].pack_end_kg,
                        1e-6)
                << "in the night before day " << d + 1;
}

/// JSON says what the plan has.
void check_json(const Plan& plan, const std::string& text) {
    const nlohmann::json json = nlohmann::json::parse(text);
    ASSERT_EQ(json.at("legs").size(), plan.legs.size());
    for (std::size_t k = 0; k < plan.legs.size(); ++k) {
        const nlohmann::json& leg = json.at("legs")[k];
        EXPECT_NEAR(leg.at("moving_s").get<double>(), plan.legs[k].moving_s, 1e-3);
        for (std::size_t m = 0; m < plan.legs[k].loads.size(); ++m)
            EXPECT_NEAR(leg.at("loads")[m].at("pack_start_kg").get<double>(),
                        plan.legs[k].loads[m].pack_start_kg,
                        1e-6);
    }
    EXPECT_NEAR(json.at("totals").at("distance_m").get<double>(), plan.totals.distance_m, 1e-3);
}

class OtherLocale {
  public:
    OtherLocale() : before_(std::setlocale(LC_ALL, nullptr)) {
        for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8"})
            if (std::setlocale(LC_ALL, name) != nullptr)
                return;
    }

    OtherLocale(const OtherLocale&) = delete;
    OtherLocale& operator=(const OtherLocale&) = delete;

    ~OtherLocale() { std::setlocale(LC_ALL, before_.c_str()); }

  private:
    std::string before_;
};

/// Once more in two threads at a time, under another locale.
void check_repeated(const test::RandomTrip& drawn, const std::string& text) {
    const OtherLocale other;
    const auto again = [&] {
        return plan_json(planner::make_plan(drawn.trip, drawn.route), "test");
    };
    std::future<std::string> beside = std::async(std::launch::async, again);
    EXPECT_EQ(again(), text);
    EXPECT_EQ(beside.get(), text);
}

TEST(ManyTrips, KeepTheirBooksSumsAndClocks) {
    const std::uint64_t first = number_of("TUMPLINE_SEED", 1);
    const std::uint64_t count = number_of("TUMPLINE_RANDOM_TRIPS", usual_trips);
    std::uint64_t others = 0;
    for (std::uint64_t seed = first; seed < first + count; ++seed) {
        SCOPED_TRACE(testing::Message() << "TUMPLINE_SEED=" << seed);
        const test::VariedTrip varied = test::varied_trip(seed);
        const Plan plan = planner::make_plan(varied.drawn.trip, varied.drawn.route);
        check_ledger(plan);
        check_sums(plan);
        check_figures(plan);
        check_order(plan);
        const std::string text = plan_json(plan, "test");
        check_json(plan, text);
        if (seed % 50 == 0)
            check_repeated(varied.drawn, text);
        for (const planner::OtherRoute& other : varied.others) {
            if (!other.refused.empty())
                continue;
            ++others;
            const Plan round = planner::make_plan(other.trip, other.route);
            check_ledger(round);
            check_figures(round);
        }
        if (HasFailure()) {
            ADD_FAILURE() << "stops at the first trip that fails: seed " << seed;
            return;
        }
    }
    RecordProperty("first_seed", std::to_string(first));
    RecordProperty("trips", std::to_string(count));
    std::printf("seeds %llu to %llu, %llu alternatives\n",
                static_cast<unsigned long long>(first),
                static_cast<unsigned long long>(first + count - 1),
                static_cast<unsigned long long>(others));
}

/// Seeds that broke one of these once: of 1389 each drank a milligram more than had been filled.
TEST(ManyTrips, ThatOnceBrokeThemKeepThem) {
    for (const std::uint64_t seed : {1389U}) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::VariedTrip varied = test::varied_trip(seed);
        const Plan plan = planner::make_plan(varied.drawn.trip, varied.drawn.route);
        check_ledger(plan);
        check_sums(plan);
    }
}

/// The trips are as varied as is said of them.
TEST(ManyTrips, HoldWhatIsSaidOfThem) {
    int portage_first = 0, portage_last = 0, in_a_row = 0, back = 0, children = 0, ashore = 0,
        alternatives = 0, upstream = 0, boats = 0;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        const test::VariedTrip varied = test::varied_trip(seed);
        const std::vector<planner::RouteLeg>& legs = varied.drawn.route.legs;
        portage_first += legs.front().travel == Travel::portage ? 1 : 0;
        portage_last += legs.back().travel == Travel::portage ? 1 : 0;
        in_a_row +=
            std::adjacent_find(legs.begin(), legs.end(), [](const auto& one, const auto& next) {
                return one.travel == Travel::portage && next.travel == Travel::portage;
            }) != legs.end();
        back += legs.back().name.ends_with(" back") ? 1 : 0;
        alternatives += varied.drawn.route.alternatives.empty() ? 0 : 1;
        upstream += std::any_of(legs.begin(), legs.end(), [](const auto& leg) {
            return leg.spec.current_mps.value_or(0.0) < 0.0;
        });
        const planner::Trip& trip = varied.drawn.trip;
        children += std::any_of(trip.party.begin(), trip.party.end(), [](const auto& member) {
            return member.age_years.value_or(99) < 14;
        });
        std::size_t seats = 0;
        for (const planner::Craft& craft : trip.craft)
            seats += craft.crew.size();
        ashore += !trip.craft.empty() && seats < trip.party.size() ? 1 : 0;
        boats += trip.craft.size() > 1 ? 1 : 0;
    }
    for (const int count : {portage_first,
                            portage_last,
                            in_a_row,
                            back,
                            children,
                            ashore,
                            alternatives,
                            upstream,
                            boats})
        EXPECT_GE(count, 10);
}

} // namespace
} // namespace tumpline::cli

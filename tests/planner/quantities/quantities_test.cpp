#include "planner/quantities/quantities.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <clocale>
#include <cmath>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

double read(const std::string& text, Dimension dimension) {
    const Reading reading = read_quantity(text, dimension);
    EXPECT_TRUE(reading.value.has_value()) << text << ": " << reading.advice;
    return reading.value.value_or(std::nan(""));
}

struct Printed {
    const char* text;
    Dimension dimension;
    double si;
    double tolerance; ///< half a unit of the last digit printed; 0 where exact
    const char* source;
};

/// Factors printed in the tables of NIST Special Publication 811 (2008), appendix B.8 and B.9, to
/// seven digits (exact ones in bold there), and in NIST Handbook 44, appendix C; written down from
/// memory.
const std::vector<Printed> printed_factors{
    {"1 lb", Dimension::mass, 0.4535924, 5e-8, "SP 811 B.8, pound (avoirdupois)"},
    {"1 oz", Dimension::mass, 0.02834952, 5e-9, "SP 811 B.8, ounce (avoirdupois)"},
    {"1 st", Dimension::mass, 6.350293, 5e-7, "SP 811 B.8: 14 lb, stone"},
    {"1 ft", Dimension::length, 0.3048, 0.0, "SP 811 B.8, foot, exact"},
    {"1 in", Dimension::length, 0.0254, 0.0, "SP 811 B.8, inch, exact"},
    {"1 yd", Dimension::length, 0.9144, 0.0, "SP 811 B.8, yard, exact"},
    {"1 mi", Dimension::length, 1609.344, 0.0, "SP 811 B.8, mile, exact"},
    {"1 rod", Dimension::length, 5.0292, 0.0, "HB 44 C: 16.5 ft, 5.0292 m with the exact foot"},
    {"320 rods", Dimension::length, 1609.344, 1e-9, "HB 44 C: a mile is 320 rods"},
    {"1 nautical mile", Dimension::length, 1852.0, 0.0, "SP 811 B.8, exact"},
    {"1 kn", Dimension::speed, 0.5144444, 5e-8, "SP 811 B.8, knot"},
    {"1 mph", Dimension::speed, 0.44704, 1e-15, "SP 811 B.8, mile per hour, exact"},
    {"1 km/h", Dimension::speed, 0.2777778, 5e-8, "SP 811 B.8, kilometer per hour"},
    {"1 ft/s", Dimension::speed, 0.3048, 0.0, "SP 811 B.8, foot per second, exact"},
    {"1 gal", Dimension::volume, 3.785412, 5e-7, "SP 811 B.8, gallon (US), liter"},
    {"1 qt", Dimension::volume, 0.9463529, 5e-8, "SP 811 B.8, quart (US liquid), liter"},
    {"1 pt", Dimension::volume, 0.4731765, 5e-8, "SP 811 B.8, pint (US liquid), liter"},
    {"1 cup", Dimension::volume, 0.2365882, 5e-8, "SP 811 B.8, cup (US), liter"},
    {"1 fl oz", Dimension::volume, 0.02957353, 5e-9, "SP 811 B.8, ounce (US fluid), 29.57353 mL"},
    {"1 imp gal", Dimension::volume, 4.54609, 0.0, "SP 811 B.8, gallon (imperial), exact"},
    {"1 kcal", Dimension::energy, 4184.0, 0.0, "SP 811 B.8, kilocalorie (thermochemical), exact"},
    {"1 cfs", Dimension::flow, 0.02831685, 5e-9, "SP 811 B.8, cubic foot per second"},
    {"1 ft2", Dimension::area, 0.09290304, 1e-16, "SP 811 B.8, square foot, exact"},
    {"32 F", Dimension::temperature, 0.0, 1e-12, "SP 811 B.9: t/C = (t/F - 32)/1.8"},
    {"212 F", Dimension::temperature, 100.0, 1e-12, "SP 811 B.9"},
    {"-40 F", Dimension::temperature, -40.0, 1e-12, "SP 811 B.9"},
    {"273.15 K", Dimension::temperature, 0.0, 0.0, "SP 811 B.9: t/C = T/K - 273.15"},
};

class PrintedUnit : public testing::TestWithParam<Printed> {};

TEST_P(PrintedUnit, AgreesWithTheTable) {
    const Printed& row = GetParam();
    EXPECT_NEAR(read(row.text, row.dimension), row.si, row.tolerance) << row.source;
}

INSTANTIATE_TEST_SUITE_P(Published, PrintedUnit, testing::ValuesIn(printed_factors));

TEST(Units, AddsUpLargeAndSmall) {
    EXPECT_NEAR(read("7 lb 4 oz", Dimension::mass), 7.25 * kg_per_pound, 1e-15);
    EXPECT_EQ(read("1 h 30 min", Dimension::duration), 5400.0);
    EXPECT_EQ(read("1h30min", Dimension::duration), 5400.0);
    EXPECT_NEAR(read("5 ft 7 in", Dimension::length), 1.7018, 1e-12);
    EXPECT_EQ(read("1 h 5 min 10 s", Dimension::duration), 3910.0);
    EXPECT_NEAR(read("1 kg 200 g", Dimension::mass), 1.2, 1e-12);
}

TEST(Units, ReadsWhatPeopleWrite) {
    EXPECT_NEAR(read("970g", Dimension::mass), 0.97, 1e-12);
    EXPECT_EQ(read("  2  KG ", Dimension::mass), 2.0);
    EXPECT_EQ(read(".5 kg", Dimension::mass), 0.5);
    EXPECT_EQ(read("1.5 l", Dimension::volume), 1.5);
    EXPECT_EQ(read("18 \u00b0C", Dimension::temperature), 18.0);
    EXPECT_EQ(read("\u22123 C", Dimension::temperature), -3.0);
    EXPECT_EQ(read("2\u00a0kg", Dimension::mass), 2.0);
    EXPECT_EQ(read("10 m\u00b3/s", Dimension::flow), 10.0);
    EXPECT_EQ(read("12 river miles", Dimension::length), 12.0 * m_per_mile);
    EXPECT_EQ(read("+2 km", Dimension::length), 2000.0);
    EXPECT_DOUBLE_EQ(read("15 min/km", Dimension::speed), 4.0 / 3.6);
    EXPECT_DOUBLE_EQ(read("4.4 kcal/g", Dimension::energy_density), 4.4e3 * 4184.0);
    EXPECT_DOUBLE_EQ(read("440 kcal/100 g", Dimension::energy_density), 4.4e3 * 4184.0);
    EXPECT_DOUBLE_EQ(read("12 g", Dimension::mass_per_volume), 0.012);
    EXPECT_DOUBLE_EQ(read("0.5 L/h", Dimension::drinking), 0.5 / 3600.0);
    EXPECT_DOUBLE_EQ(read("2.5 L/kg", Dimension::volume_per_mass), 2.5);
}

TEST(Units, RefusesWhatIsNoQuantity) {
    for (const char* text : {"",
                             " ",
                             "kg",
                             "1.9",
                             "1,9 kg",
                             "1.900,5 kg",
                             "1.2.3 kg",
                             "1 kg 2",
                             "1 kg kg",
                             "4 oz 7 lb",
                             "1 lb 1 lb",
                             "1 lb -4 oz",
                             "nan kg",
                             "inf kg",
                             "-inf kg",
                             "0x10 kg",
                             "1e400 kg",
                             "1 km",
                             "1 kgs of bread",
                             "one kg",
                             "--1 kg",
                             "+-1 kg",
                             "1 \xF0\x9F\x8D\x9E"}) {
        const Reading reading = read_quantity(text, Dimension::mass);
        EXPECT_FALSE(reading.value.has_value()) << text;
        EXPECT_EQ(reading.expected, "a mass with a unit (g, kg, oz, lb)") << text;
        EXPECT_FALSE(reading.advice.empty()) << text;
    }
    EXPECT_FALSE(read_quantity("0 min/km", Dimension::speed).value.has_value());
    EXPECT_EQ(read_quantity("0 min/km", Dimension::speed).advice, "a pace is more than 0");
}

TEST(Units, SuggestsTheNearestUnit) {
    EXPECT_EQ(read_quantity("1.9 kgs", Dimension::mass).advice, "write \"1.9 kg\"");
    EXPECT_EQ(read_quantity("10 gm", Dimension::mass).advice, "write \"10 g\"");
    EXPECT_EQ(read_quantity("25 m", Dimension::duration).advice, "write \"25 min\"");
    EXPECT_EQ(read_quantity("5 km", Dimension::speed).advice, "write \"5 km/h\"");
    EXPECT_EQ(read_quantity("1.9", Dimension::mass).advice, "write \"1.9 kg\"");
}

TEST(Units, BareNumbersAreGivenTheUnitThatMakesSense) {
    EXPECT_EQ(with_unit(1.9, Dimension::mass, {.lowest = 0.0, .highest = 100.0}), "1.9 kg");
    EXPECT_EQ(with_unit(970.0, Dimension::mass, {.lowest = 0.0, .highest = 100.0}), "970 g");
    EXPECT_EQ(with_unit(171.0, Dimension::length, {.lowest = 0.8, .highest = 2.6}), "171 cm");
    EXPECT_EQ(with_unit(64.0, Dimension::temperature, {.lowest = -60.0, .highest = 60.0}), "64 F");
}

TEST(Units, EverySpellingIsRead) {
    for (int i = 0; i <= static_cast<int>(Dimension::flow); ++i) {
        const auto dimension = static_cast<Dimension>(i);
        for (const std::string& name : unit_names(dimension)) {
            EXPECT_TRUE(read_quantity("2 " + name, dimension).value.has_value()) << name;
            EXPECT_TRUE(read_quantity("2" + name, dimension).value.has_value()) << name;
        }
    }
}

TEST(Units, TakeAPointInEveryLocale) {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    for (const char* name : {"nb_NO.UTF-8", "de_DE.UTF-8", "fr_FR.UTF-8"}) {
        if (std::setlocale(LC_ALL, name) == nullptr)
            continue; // not installed here
        EXPECT_EQ(read("1.5 kg", Dimension::mass), 1.5);
        EXPECT_EQ(show_mass(1.5, UnitSystem::metric), "1.5 kg");
    }
    std::setlocale(LC_ALL, before.c_str());
}

TEST(Units, NumbersComeBackAsWritten) {
    EXPECT_TRUE(rc::check("a number with a unit is read as from_chars reads the number", [] {
        const double number = *rc::gen::inRange(-1'000'000, 1'000'000) / 1000.0;
        const Reading reading = read_quantity(fmt::format("{} kg", number), Dimension::mass);
        RC_ASSERT(reading.value.has_value());
        RC_ASSERT(*reading.value == number);
    }));
}

TEST(Units, EveryUnitTurnsBackIntoItself) {
    EXPECT_TRUE(rc::check(
        "twice the number is twice the quantity, in any unit but temperatures and paces", [] {
            const auto dimension =
                static_cast<Dimension>(*rc::gen::inRange(0, static_cast<int>(Dimension::flow) + 1));
            const auto names = unit_names(dimension);
            const std::string name = *rc::gen::elementOf(names);
            RC_PRE(dimension != Dimension::temperature && !name.starts_with("min/"));
            const double number = *rc::gen::inRange(1, 1'000'000) / 1000.0;
            const auto si = read_quantity(fmt::format("{} {}", number, name), dimension).value;
            const auto twice =
                read_quantity(fmt::format("{} {}", 2.0 * number, name), dimension).value;
            RC_ASSERT(si.has_value());
            RC_ASSERT(twice.has_value());
            RC_ASSERT(std::abs(*twice - 2.0 * *si) <= 1e-12 * *twice);
        }));
}

TEST(Units, NeverFailOnAnyText) {
    EXPECT_TRUE(rc::check("any text is read or refused with a reason", [](const std::string& text) {
        const auto dimension =
            static_cast<Dimension>(*rc::gen::inRange(0, static_cast<int>(Dimension::flow) + 1));
        const Reading reading = read_quantity(text, dimension);
        if (reading.value)
            RC_ASSERT(std::isfinite(*reading.value));
        else
            RC_ASSERT(!reading.expected.empty());
    }));
}

TEST(Units, WhatIsShownReadsBackWithinTheRounding) {
    EXPECT_TRUE(rc::check("masses, speeds and temperatures come back", [] {
        const double mass_kg = *rc::gen::inRange(0, 200'000) / 1000.0;
        const double speed_mps = *rc::gen::inRange(0, 10'000) / 1000.0;
        const double temperature_c = *rc::gen::inRange(-600, 600) / 10.0;
        for (const UnitSystem system : {UnitSystem::metric, UnitSystem::imperial}) {
            const auto mass = read_quantity(show_mass(mass_kg, system), Dimension::mass);
            RC_ASSERT(mass.value.has_value());
            RC_ASSERT(std::abs(*mass.value - mass_kg) <= 0.051);
            const auto speed = read_quantity(show_speed(speed_mps, system), Dimension::speed);
            RC_ASSERT(speed.value.has_value());
            RC_ASSERT(std::abs(*speed.value - speed_mps) <= 0.025);
            const auto warmth =
                read_quantity(show_temperature(temperature_c, system), Dimension::temperature);
            RC_ASSERT(warmth.value.has_value());
            RC_ASSERT(std::abs(*warmth.value - temperature_c) <= 0.51);
        }
    }));
}

TEST(UnitsShown, InBothSystems) {
    const auto metric = UnitSystem::metric;
    const auto imperial = UnitSystem::imperial;
    EXPECT_EQ(show_mass(18.6, metric), "18.6 kg");
    EXPECT_EQ(show_mass(18.6, imperial), "41.0 lb");
    EXPECT_EQ(show_mass(0.97, metric), "970 g");
    EXPECT_EQ(show_mass(0.97, imperial), "2.1 lb");
    EXPECT_EQ(show_mass(0.9996, metric), "1.0 kg");
    EXPECT_EQ(show_mass(0.012, metric), "12 g");
    EXPECT_EQ(show_mass(0.1, imperial), "3.5 oz");
    EXPECT_EQ(show_mass(0.0, metric), "0 g");
    EXPECT_EQ(show_distance(12'340.0, metric), "12.3 km");
    EXPECT_EQ(show_distance(12'340.0, imperial), "7.7 mi");
    EXPECT_EQ(show_distance(643.0, metric), "640 m");
    EXPECT_EQ(show_distance(996.0, metric), "1.0 km");
    EXPECT_EQ(show_distance(643.0, imperial), "700 yd");
    EXPECT_EQ(show_portage(620.0, metric), "620 m");
    EXPECT_EQ(show_portage(620.0, imperial), "123 rods");
    EXPECT_EQ(show_portage(1240.0, metric), "1.24 km");
    EXPECT_EQ(show_height(832.0, metric), "830 m");
    EXPECT_EQ(show_height(830.0, imperial), "2720 ft");
    EXPECT_EQ(show_speed(1.2, metric), "4.3 km/h");
    EXPECT_EQ(show_speed(1.2, imperial), "2.7 mph");
    EXPECT_EQ(show_volume(1.5, metric), "1.5 L");
    EXPECT_EQ(show_volume(1.5, imperial), "1.6 qt");
    EXPECT_EQ(show_volume(0.25, metric), "250 ml");
    EXPECT_EQ(show_volume(0.25, imperial), "8 fl oz");
    EXPECT_EQ(show_length(0.1524, metric), "15 cm");
    EXPECT_EQ(show_length(0.1524, imperial), "6.0 in");
    EXPECT_EQ(show_carried(27.12, metric), "27.1 kg km");
    EXPECT_EQ(show_carried(27.12, imperial), "37.2 lb mi"); // 27.12 x 2.20462 x 0.621371
    EXPECT_EQ(show_carried(1240.4, metric), "1240 kg km");
    EXPECT_EQ(show_climbed(896.0, metric), "900 kg m");
    EXPECT_EQ(show_climbed(896.0, imperial), "6480 lb ft"); // 896 x 2.20462 x 3.28084
    EXPECT_EQ(show_temperature(9.0, metric), "9 C");
    EXPECT_EQ(show_temperature(9.0, imperial), "48 F");
    EXPECT_EQ(show_temperature(-0.4, metric), "0 C");
    EXPECT_EQ(show_energy(3238.0 * 4184.0), "3240 kcal");
    EXPECT_EQ(show_gradient(0.0023, metric), "2.3 m/km");
    EXPECT_EQ(show_gradient(0.0023, imperial), "12 ft/mi"); // 2.3 m/km is 12 ft per mile
    EXPECT_EQ(show_gradient(0.1, imperial), "528 ft/mi");   // a tenth of 5280 ft
}

TEST(UnitsShown, DurationsAndClocks) {
    EXPECT_EQ(show_duration(17'820.0), "4 h 57 min");
    EXPECT_EQ(show_duration(2'100.0), "35 min");
    EXPECT_EQ(show_duration(3'599.0), "1 h 00 min");
    EXPECT_EQ(show_duration(0.0), "0 min");
    EXPECT_EQ(show_duration(-5'400.0), "-1 h 30 min");
    EXPECT_EQ(show_time_of_day(std::chrono::hours(18) + std::chrono::minutes(5)), "18:05");
    EXPECT_EQ(show_time_of_day(std::chrono::seconds(86'399)), "00:00");
    EXPECT_EQ(show_date(std::chrono::year(2027) / 6 / 18), "2027-06-18");
}

TEST(Units, TimesOfDay) {
    EXPECT_EQ(read_time_of_day("08:00"), std::chrono::hours(8));
    EXPECT_EQ(read_time_of_day("8:05"), std::chrono::minutes(485));
    EXPECT_EQ(read_time_of_day("23:59"), std::chrono::minutes(1439));
    for (const char* text : {"",
                             "24:00",
                             "08:60",
                             "8",
                             "0800",
                             "08:0",
                             "08:000",
                             "-1:00",
                             ":30",
                             "ab:cd",
                             "8.00",
                             "18:05:00",
                             "+8:00",
                             "123:00"})
        EXPECT_FALSE(read_time_of_day(text).has_value()) << text;
}

TEST(Units, Dates) {
    using std::chrono::year;
    EXPECT_EQ(read_date("2027-06-18"), year(2027) / 6 / 18);
    EXPECT_EQ(read_date("2028-02-29"), year(2028) / 2 / 29);
    for (const char* text : {"",
                             "2027-02-29",
                             "2027-13-01",
                             "2027-00-10",
                             "2027-6-18",
                             "18.06.2027",
                             "0000-01-01",
                             "2027-06-18T00:00",
                             "20270618",
                             "2027-06-31",
                             "1899-01-01",
                             "2027-+6-18",
                             "2027/06/18"})
        EXPECT_FALSE(read_date(text).has_value()) << text;
}

} // namespace
} // namespace tumpline::planner

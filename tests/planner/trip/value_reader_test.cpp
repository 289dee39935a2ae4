#include "planner/trip/value_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// What a reading function answers of one value, and what it complains of.
template <class Answer> struct Read {
    std::optional<Answer> answer;
    std::vector<std::string> problems;
};

template <class Answer>
Read<Answer> read(const std::string& json,
                  const std::function<std::optional<Answer>(const TripValue&)>& how) {
    const JsonValue value = read_json(json, "t.json");
    Problems problems("t.json");
    Read<Answer> result{how(TripValue(value, "/key", problems)), {}};
    for (const geo::Problem& problem : problems.take())
        result.problems.push_back(to_string(problem));
    return result;
}

Read<double> mass(const std::string& json) {
    return read<double>(json, [](const TripValue& value) {
        return value.quantity({Dimension::mass, 0.5, 20.0});
    });
}

TEST(ValueReader, AQuantityIsReadInSiBetweenItsBounds) {
    EXPECT_DOUBLE_EQ(mass(R"("750 g")").answer.value(), 0.75);
    EXPECT_DOUBLE_EQ(mass(R"("20 kg")").answer.value(), 20.0);
    EXPECT_FALSE(mass(R"("20.01 kg")").answer);
    EXPECT_THAT(mass(R"("499 g")").problems,
                ElementsAre("t.json: /key: found \"499 g\", expected a mass from 500 g to 20 kg"));
    EXPECT_THAT(mass("3").problems,
                ElementsAre("t.json: /key: found 3, expected a mass with a unit (g, kg, oz, lb); "
                            "write \"3 kg\""));
    EXPECT_THAT(mass("true").problems, ElementsAre(testing::HasSubstr("found true")));
}

TEST(ValueReader, NumbersAreBareAndBounded) {
    const auto number = [](const std::string& json) {
        return read<double>(json, [](const TripValue& value) { return value.number({0.2, 3.0}); });
    };
    EXPECT_EQ(number("0.2").answer, 0.2);
    EXPECT_EQ(number("3").answer, 3.0);
    EXPECT_THAT(number("3.001").problems,
                ElementsAre("t.json: /key: found 3.001, expected a number from 0.2 to 3"));
    EXPECT_THAT(number(R"("1")").problems,
                ElementsAre("t.json: /key: found \"1\", expected a number from 0.2 to 3; write it "
                            "without quotation marks"));
}

TEST(ValueReader, WholeNumbersHaveNoFraction) {
    const auto whole = [](const std::string& json) {
        return read<int>(json, [](const TripValue& value) { return value.whole_number({1, 9}); });
    };
    EXPECT_EQ(whole("9").answer, 9);
    EXPECT_EQ(whole("4.0").answer, 4);
    EXPECT_THAT(whole("4.5").problems,
                ElementsAre("t.json: /key: found 4.5, expected a whole number from 1 to 9"));
    EXPECT_FALSE(whole("10").answer);
    EXPECT_FALSE(whole("0").answer);
}

TEST(ValueReader, NamesAreOneLineWithoutBlanksAroundThem) {
    const auto name = [](const std::string& json) {
        return read<std::string>(json, [](const TripValue& value) { return value.name(); });
    };
    EXPECT_EQ(name(R"("  red boat ")").answer, "red boat");
    EXPECT_FALSE(name(R"("   ")").answer);
    EXPECT_FALSE(name(R"("two\nlines")").answer);
    EXPECT_FALSE(name(R"("bell\u0007")").answer);
    EXPECT_EQ(name("\"" + std::string(200, 'n') + "\"").answer, std::string(200, 'n'));
    EXPECT_THAT(name("\"" + std::string(201, 'n') + "\"").problems,
                ElementsAre(testing::HasSubstr("a name of at most 200 bytes; shorten it")));
    EXPECT_THAT(name("7").problems, ElementsAre(testing::HasSubstr("write \"7\"")));
}

TEST(ValueReader, TextsMayHaveSeveralLines) {
    const auto text = [](const std::string& json) {
        return read<std::string>(json, [](const TripValue& value) { return value.text(); });
    };
    EXPECT_EQ(text(R"("two\nlines")").answer, "two\nlines");
    EXPECT_EQ(text(R"("")").answer, "");
    EXPECT_FALSE(text(R"("bell\u0007")").answer);
}

TEST(ValueReader, TimesDurationsAndDatesAreOfTheCalendarAndTheClock) {
    const auto time = [](const std::string& json) {
        return read<std::chrono::seconds>(
            json, [](const TripValue& value) { return value.time_of_day(); });
    };
    EXPECT_EQ(time(R"("07:05")").answer, std::chrono::minutes{425}); // 7 x 60 + 5
    EXPECT_FALSE(time(R"("25:00")").answer);
    EXPECT_FALSE(time("7").answer);
    const auto lasts = [](const std::string& json) {
        return read<std::chrono::seconds>(json, [](const TripValue& value) {
            return value.duration({0.0, 12.0});
        });
    };
    EXPECT_EQ(lasts(R"("90 min")").answer, std::chrono::minutes{90});
    EXPECT_FALSE(lasts(R"("13 h")").answer);
    const auto date = [](const std::string& json) {
        return read<Date>(json, [](const TripValue& value) { return value.date(); });
    };
    EXPECT_EQ(date(R"("2028-02-29")").answer, Date{std::chrono::year{2028} / 2 / 29});
    EXPECT_FALSE(date(R"("2027-02-29")").answer);
}

TEST(ValueReader, AWordIsOneOfItsSetAndANearOneIsProposed) {
    const auto word = [](const std::string& json) {
        return read<std::string_view>(json, [](const TripValue& value) {
            return value.one_of({"lake", "river", "sea"});
        });
    };
    EXPECT_EQ(word(R"("river")").answer, "river");
    EXPECT_THAT(word(R"("rivr")").problems,
                ElementsAre("t.json: /key: found \"rivr\", expected lake, river or sea; "
                            "write \"river\""));
}

TEST(ValueReader, ItemsOfAListHaveTheirPlaces) {
    const JsonValue value = read_json(R"(["a", "b"])", "t.json");
    Problems problems("t.json");
    const std::vector<TripValue> items = TripValue(value, "/kit", problems).items("a name");
    ASSERT_EQ(items.size(), 2U);
    EXPECT_EQ(items[1].place(), "/kit/1");
    EXPECT_EQ(items[1].name(), "b");
    EXPECT_TRUE(problems.none());
}

TEST(ValueReader, AHundredProblemsAreKeptAndTheRestCounted) {
    Problems problems("t.json");
    for (int i = 0; i < 103; ++i)
        problems.add("/key", {.found = "x", .expected = "y", .advice = {}});
    EXPECT_TRUE(problems.told_of("/key"));
    EXPECT_FALSE(problems.told_of("/key/0"));
    const std::vector<geo::Problem> kept = problems.take();
    ASSERT_EQ(kept.size(), 101U);
    EXPECT_EQ(kept.back().found, "3 more problems");
}

struct Thing {
    std::string name;
    int count = 0;
};

TEST(ValueReader, ASectionReadsItsKeysAndAnswersOthers) {
    const Section<Thing> section{
        "thing",
        "a thing",
        {{"name", Need::must, [](const TripValue& v, Thing& t) { put(t.name, v.name()); }},
         {"count", Need::may, [](const TripValue& v, Thing& t) {
              put(t.count, v.whole_number({1, 9}));
          }}}};
    const auto thing = [&](const std::string& json) {
        return read<Thing>(json, [&](const TripValue& value) {
            Thing read;
            read_section(value, section, read);
            return std::optional(read);
        });
    };
    const Read<Thing> good = thing(R"({"name": "rope", "count": 3})");
    EXPECT_EQ(good.answer->name, "rope");
    EXPECT_EQ(good.answer->count, 3);
    EXPECT_THAT(good.problems, IsEmpty());
    EXPECT_THAT(thing(R"({"count": 3})").problems,
                ElementsAre("t.json: /key: found no \"name\", expected a thing to have one"));
    EXPECT_THAT(thing(R"({"name": "rope", "coumt": 3})").problems,
                ElementsAre("t.json: /key/coumt: found an unknown key, expected a key of a thing; "
                            "write \"count\""));
    // A needed key that is spelled wrongly is one problem.
    EXPECT_THAT(thing(R"({"nane": "rope"})").problems, testing::SizeIs(1));
}

} // namespace
} // namespace tumpline::planner

#include "planner/trip/name_references.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> texts_of(Problems& problems) {
    std::vector<std::string> texts;
    for (const geo::Problem& problem : problems.take())
        texts.push_back(to_string(problem));
    return texts;
}

TEST(NameReferences, AnUnknownNameIsOneProblemHoweverOftenItStands) {
    Problems problems("t.json");
    References references(problems);
    const Names known{"Ada", "Ben"};
    references.check("Ada", known, "/kit/0/for", "an owner");
    for (const char* place : {"/kit/1/for", "/kit/4/for", "/kit/7/for"})
        references.check("Adda", known, place, "an owner");
    references.report();
    EXPECT_THAT(texts_of(problems),
                ElementsAre("t.json: /kit/1/for: found \"Adda\" (and at 2 more places), expected "
                            "an owner (Ada or Ben); write \"Ada\""));
}

TEST(NameReferences, AThingWhoseNameCouldNotBeReadMayBeMeant) {
    Problems problems("t.json");
    References references(problems);
    references.check("Adda", {"Ada", ""}, "/kit/1/for", "an owner");
    references.check("", {"Ada"}, "/kit/2/for", "an owner");
    references.report();
    EXPECT_THAT(texts_of(problems), IsEmpty());
}

TEST(NameReferences, OneOfTwoOfAKindIsASlipWhateverTheirCase) {
    Problems problems("t.json");
    check_once({"red boat", "blue boat", "Red Boat", "", ""}, {"/craft", "name"}, problems);
    EXPECT_THAT(texts_of(problems),
                ElementsAre("t.json: /craft/2/name: found \"Red Boat\", expected another name than "
                            "/craft/0's"));
}

} // namespace
} // namespace tumpline::planner

#include "cli/drawing/map_letters.h"

#include "cli/drawing/map_labels.h"
#include "cli/words/markup.h"
#include "geo/ground/map_projection.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>
#include <set>

namespace tumpline::cli {
namespace {

using planner::PlaceKind;
using testing::HasSubstr;
using testing::Not;

/// The box that a text takes, guessed as the drawings guess it.
struct TextBox {
    std::string words;
    double left, right, top, foot;
};

std::vector<TextBox> boxes(const std::string& markup) {
    static const std::regex text(
        R"re(<text(?: class="([a-z -]*)")? x="([-0-9.]+)" y="([-0-9.]+)" font-size="([0-9.]+)">([^<]*)</text>)re");
    std::vector<TextBox> all;
    for (auto at = std::sregex_iterator(markup.begin(), markup.end(), text);
         at != std::sregex_iterator();
         ++at) {
        const std::string style = (*at)[1];
        if (style == "number")
            continue; // on its own disc
        const double size = std::stod((*at)[4]);
        const double wide = size * width_em((*at)[5].str());
        const double x = std::stod((*at)[2]);
        const double y = std::stod((*at)[3]);
        const double left = style.ends_with("mid")   ? x - wide / 2.0
                            : style.ends_with("end") ? x - wide
                                                     : x;
        all.push_back({(*at)[5], left, left + wide, y - 0.75 * size, y + 0.1 * size});
    }
    return all;
}

std::vector<std::string> lying_on_each_other(const std::vector<TextBox>& all) {
    std::vector<std::string> found;
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (all[i].left < all[j].right - 0.1 && all[j].left < all[i].right - 0.1 &&
                all[i].top < all[j].foot - 0.1 && all[j].top < all[i].foot - 0.1)
                found.push_back(all[i].words + " on " + all[j].words);
    return found;
}

std::size_t times(const std::vector<TextBox>& all, const std::string& words) {
    return static_cast<std::size_t>(
        std::ranges::count_if(all, [&](const TextBox& box) { return box.words == words; }));
}

/// A map of 16 by 8 km about 47° N 8° E without ground, 700 by 350 pixels.
class LettersOfAMap : public testing::Test {
  protected:
    [[nodiscard]] MapLetters letters(std::vector<Mark> marks) const {
        return map_letters({.projection = projection_,
                            .frame = {700.0, 350.0, 700.0 / 16e3},
                            .line = line_,
                            .marks = std::move(marks),
                            .day = &day_,
                            .ground = {.projection = projection_,
                                       .pixels_per_m = 700.0 / 16e3,
                                       .width = 700.0,
                                       .height = 350.0,
                                       .window = {0.0, 0.0, 700.0, 350.0},
                                       .id = "g"},
                            .pictures = {}},
                           {.width = 700.0, .text = 12.0, .id = "m"},
                           shown_);
    }

    geo::MapProjection projection_{std::vector<geo::Position>{{46.95, 7.9}, {47.05, 8.1}}};
    std::vector<DrawnPoint> line_{{50.0, 175.0, 0.0}, {650.0, 175.0, 12e3}, {50.0, 175.0, 24e3}};
    planner::PlanDay day_ = [] {
        planner::PlanDay day;
        day.to_m = 24e3;
        return day;
    }();
    Figures shown_{planner::UnitSystem::metric, "UTC", Blank::kept};
};

TEST_F(LettersOfAMap, NameAPlaceOnceThoughTheRouteComesByTwice) {
    // Night 1 and its landing on the way out, the landing again on the way back, and a second
    // night.
    const MapLetters drawn = letters({{{300.0, 175.0, 5e3}, "Mill", PlaceKind::camp, 1},
                                      {{304.0, 176.0, 19e3}, "Mill", PlaceKind::camp, 3},
                                      {{302.0, 175.0, 5100.0}, "Mill", PlaceKind::landing, 0},
                                      {{318.0, 178.0, 19200.0}, "Mill", PlaceKind::exit, 0},
                                      {{500.0, 175.0, 9e3}, "Mill", PlaceKind::landing, 0}});
    // 18 pixels from the night: the same place; 200 pixels from it: another of that name.
    EXPECT_EQ(times(boxes(drawn.names), "Mill"), 2U);
    EXPECT_THAT(drawn.names, HasSubstr(">1, 3</text>")) << "neither night hides the other";
    EXPECT_THAT(drawn.names, HasSubstr("class=\"road\"")) << "the way out keeps its sign";
}

TEST_F(LettersOfAMap, JoinNightsOfOnePlaceAlone) {
    // 20 pixels apart: of one name one place (2.5 heights of 12 are 30), of two names two.
    EXPECT_EQ(one_per_place({{{300.0, 175.0, 5e3}, "Mill", PlaceKind::camp, 1},
                             {{320.0, 175.0, 6e3}, "Mill", PlaceKind::camp, 2},
                             {{340.0, 175.0, 7e3}, "Weir", PlaceKind::camp, 3},
                             {{302.0, 175.0, 8e3}, "Road", PlaceKind::camp, 4}}, // 2 pixels from 1
                            12.0)
                  .size(),
              2U);
}

TEST_F(LettersOfAMap, StandClearOfAWideSign) {
    Labels labels({700.0, 350.0, 1.0}, {});
    // 20 pixels to its side and a tenth of the letters; of a small one 0.9 of the letters.
    EXPECT_THAT(labels.beside({300.0, 175.0, 0.0}, "Mill", 12.0, "name", 20.0),
                HasSubstr(R"(class="name from" x="321.2")"));
    EXPECT_THAT(labels.beside({300.0, 275.0, 0.0}, "Weir", 12.0, "name"),
                HasSubstr(R"(class="name from" x="310.8")"));
}

TEST_F(LettersOfAMap, DoNotSayWhatThePlaceIsCalledOnceMore) {
    Labels labels({700.0, 350.0, 1.0}, {});
    EXPECT_NE(labels.once_beside({300.0, 175.0, 0.0}, "Ledge", 12.0, "name"), "");
    EXPECT_EQ(labels.once_beside({310.0, 175.0, 0.0}, "Ledge: rapid", 12.0, "name"), "");
    EXPECT_NE(labels.once_beside({310.0, 175.0, 0.0}, "Led", 12.0, "name"), "");
    EXPECT_NE(labels.once_beside({360.0, 175.0, 0.0}, "Ledge: rapid", 12.0, "name"), "");
}

TEST_F(LettersOfAMap, TellTheNightsOfOnePlaceShort) {
    const Mark four{{300.0, 175.0, 5e3}, "Mill", PlaceKind::camp, 1, {4, 6, 9}};
    EXPECT_THAT(mark_markup(four, 12.0), HasSubstr(">1 … 9</text>"));
    EXPECT_THAT(mark_markup({{300.0, 175.0, 5e3}, "Mill", PlaceKind::camp, 1, {4, 6}}, 12.0),
                HasSubstr(">1, 4, 6</text>"));
}

TEST_F(LettersOfAMap, KeepNamesAndTheGridsFiguresOffEachOther) {
    // Places along the edges, where the figures of both grids stand.
    std::vector<Mark> marks;
    for (int i = 0; i < 24; ++i) {
        const double x = 10.0 + 29.0 * i;
        marks.push_back({{x, 342.0, 1e3 * i}, "Low " + std::to_string(i), PlaceKind::landing, 0});
        marks.push_back({{x, 12.0, 1e3 * i}, "Top " + std::to_string(i), PlaceKind::landing, 0});
        marks.push_back({{8.0 + (i % 2) * 680.0, 14.0 * i + 10.0, 1e3 * i},
                         "Side " + std::to_string(i),
                         PlaceKind::landing,
                         0});
    }
    const MapLetters bare = letters({});
    const MapLetters full = letters(marks);
    EXPECT_GE(boxes(bare.degrees).size(), 4U);
    for (const MapLetters* one : {&bare, &full}) {
        std::vector<TextBox> all = boxes(one->degrees);
        const std::vector<TextBox> over = boxes(one->names);
        all.insert(all.end(), over.begin(), over.end());
        EXPECT_THAT(lying_on_each_other(all), testing::IsEmpty());
    }
    EXPECT_GT(boxes(full.names).size(), 20U) << "some of them are named";
}

TEST_F(LettersOfAMap, LeaveAFigureOfTheGridOutUnderASymbol) {
    const std::vector<TextBox> bare = boxes(letters({}).degrees);
    ASSERT_FALSE(bare.empty());
    const TextBox& first = bare.front();
    const double x = (first.left + first.right) / 2.0;
    const double y = (first.top + first.foot) / 2.0;
    const MapLetters drawn = letters({{{x, y, 5e3}, "", PlaceKind::hazard, 0}});
    EXPECT_EQ(times(boxes(drawn.degrees), first.words), 0U);
    EXPECT_EQ(boxes(drawn.degrees).size(), bare.size() - 1);
}

TEST_F(LettersOfAMap, AreNineOrMorePointsHigh) {
    const MapLetters drawn = letters({{{300.0, 175.0, 5e3}, "Mill", PlaceKind::camp, 1}});
    static const std::regex size(R"re(font-size="([0-9.]+)")re");
    std::set<double> sizes;
    for (const std::string& markup : {drawn.degrees, drawn.names})
        for (auto at = std::sregex_iterator(markup.begin(), markup.end(), size);
             at != std::sregex_iterator();
             ++at)
            sizes.insert(std::stod((*at)[1]));
    EXPECT_THAT(sizes, testing::ElementsAre(12.0)); // all as high as the drawing's letters
}

} // namespace
} // namespace tumpline::cli

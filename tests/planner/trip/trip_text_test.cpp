#include "planner/trip/trip_text.h"

#include "geo/input_error.h"
#include "tests/support/random_draws.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

namespace {

using Way = Edit::Way;
using test::Draws;

std::string edited(std::string_view text, const Edit& edit) {
    return edited_text(text, "trip.json", {edit});
}

/// A text's lines, each with its end.
std::vector<std::string> lines_with_ends(const std::string& text) {
    std::vector<std::string> lines(1);
    for (const char letter : text) {
        lines.back().push_back(letter);
        if (letter == '\n')
            lines.emplace_back();
    }
    return lines;
}

/// Two lines are the same but for one comma that one has more.
bool same_but_for_a_comma(const std::string& a, const std::string& b) {
    const std::string& longer = a.size() > b.size() ? a : b;
    const std::string& shorter = a.size() > b.size() ? b : a;
    if (longer.size() != shorter.size() + 1)
        return a == b;
    const auto [left, right] = std::mismatch(shorter.begin(), shorter.end(), longer.begin());
    return *right == ',' && std::equal(left, shorter.end(), right + 1);
}

/// How many lines of `before` are not found again from the start on nor from the end on.
std::size_t lines_touched(const std::string& before, const std::string& after) {
    const std::vector<std::string> old_lines = lines_with_ends(before);
    const std::vector<std::string> new_lines = lines_with_ends(after);
    const std::size_t most = std::min(old_lines.size(), new_lines.size());
    std::size_t first = 0;
    while (first < most && same_but_for_a_comma(old_lines[first], new_lines[first]))
        ++first;
    std::size_t last = 0;
    while (last < most - first && same_but_for_a_comma(old_lines[old_lines.size() - 1 - last],
                                                       new_lines[new_lines.size() - 1 - last]))
        ++last;
    return old_lines.size() - first - last;
}

/// Writes random JSON as people do: entries in one line or each on its own, remarks, blanks.
class RandomText {
  public:
    explicit RandomText(std::uint64_t seed) : draws_(seed) {}

    std::string whole() {
        line_end_ = draws_.chance(0.3) ? "\r\n" : "\n";
        const std::string head = draws_.chance(0.2) ? "\xEF\xBB\xBF" : "";
        return head + remark_lines("") + holder("", 0, true) + line_end_;
    }

    /// An edit of something that is there, or of something next to it.
    Edit edit_of(const JsonValue& document) {
        Edit edit{.pointer = {}, .value = draws_.one_of(values)};
        const JsonValue* at = &document;
        do {
            const bool list = at->kind == JsonValue::Kind::list;
            const std::size_t count = list ? at->items.size() : at->members.size();
            if (count == 0 || draws_.chance(0.15)) {
                edit.way = draws_.chance(0.5) ? Way::add : Way::set;
                edit.pointer += list ? "/-" : draws_.chance(0.3) ? "/new/deep/er" : "/new";
                return edit;
            }
            const auto index =
                static_cast<std::size_t>(draws_.whole(0, static_cast<int>(count) - 1));
            edit.pointer =
                pointer_to(edit.pointer, list ? fmt::format("{}", index) : at->members[index].key);
            at = list ? &at->items[index] : &at->members[index].value;
        } while (at->kind >= JsonValue::Kind::list && draws_.chance(0.7));
        edit.way = draws_.one_of(std::vector{Way::set, Way::add, Way::replace, Way::remove});
        return edit;
    }

  private:
    std::string blanks() { return draws_.chance(0.2) ? "  " : draws_.chance(0.2) ? "\t" : ""; }

    std::string remark_lines(const std::string& indent) {
        std::string text;
        while (draws_.chance(0.2))
            text += indent + "// a remark, with a {\" bracket" + line_end_;
        return text;
    }

    std::string remark_behind() {
        return draws_.chance(0.3) ? " // \"behind\", it" : draws_.chance(0.1) ? " /* , */" : "";
    }

    // NOLINTNEXTLINE(misc-no-recursion): five levels at most
    std::string value(const std::string& indent, int depth) {
        if (depth < 4 && draws_.chance(0.45))
            return holder(indent, depth, draws_.chance(0.5));
        return draws_.one_of(values);
    }

    // NOLINTNEXTLINE(misc-no-recursion): five levels at most
    std::string holder(const std::string& indent, int depth, bool object) {
        const bool in_lines = draws_.chance(0.6);
        const int count = draws_.whole(0, 4);
        const std::string within = indent + "  ";
        std::string text = object ? "{" : "[";
        if (in_lines)
            text += remark_behind() + line_end_;
        for (int i = 0; i < count; ++i) {
            text += in_lines ? remark_lines(within) + within : blanks();
            if (object)
                text += fmt::format("\"k{}~/\\\"é\"{}:{}", i, blanks(), blanks());
            text += value(within, depth + 1) + (i + 1 < count ? blanks() + "," : "");
            text += in_lines ? remark_behind() + line_end_ : blanks();
        }
        text += in_lines ? remark_lines(within) + indent : "";
        return text + (object ? "}" : "]");
    }

    inline static const std::vector<std::string> values{"1",
                                                        "-2.50",
                                                        "1e3",
                                                        "true",
                                                        "null",
                                                        "\"a // b\"",
                                                        "\"{,}\"",
                                                        "\"\\\"q\\\\\"",
                                                        "\"\u00e9\\n\"",
                                                        "[1, 2]",
                                                        "{\"x\": {\"y\": 3}}"};

    Draws draws_;
    std::string line_end_;
};

/// On how many lines the value at a pointer stands.
std::size_t lines_of(const std::string& text, const std::string& pointer) {
    // as if each bracket of it stood on a line of its own: from its line to the next that is not
    // its
    const JsonValue document = read_json(text, "trip.json");
    const JsonValue* at = find_at(document, pointer);
    if (at == nullptr)
        return 1;
    std::size_t last = at->line;
    std::size_t closers = 0;
    while (at->kind >= JsonValue::Kind::list && !(at->items.empty() && at->members.empty())) {
        at = at->kind == JsonValue::Kind::list ? &at->items.back() : &at->members.back().value;
        ++closers;
    }
    last = std::max(last, at->line);
    const std::vector<std::string> lines = lines_with_ends(text);
    std::size_t end = last; // the closing brackets, remarks before them passed over
    for (closers += at->kind >= JsonValue::Kind::list ? 1U : 0U; closers > 0 && end < lines.size();
         ++end)
        if (lines[end].find_first_of("}]") != std::string::npos)
            --closers;
    return end - find_at(document, pointer)->line + 1;
}

TEST(TripText, OneValueChangesAndNothingElse) {
    const std::string text = "{ // trip\r\n  \"days\": {\"set_off\": \"08:00\", /* early */ "
                             "\"hours\": 8},\r\n  \"party\" : [] // nobody\r\n}\r\n";
    EXPECT_EQ(edited(text, {Way::set, "/days/set_off", "07:00"}),
              "{ // trip\r\n  \"days\": {\"set_off\": \"07:00\", /* early */ \"hours\": 8},\r\n  "
              "\"party\" : [] // nobody\r\n}\r\n");
}

TEST(TripText, ANewEntryStandsAsItsNeighbourDoes) {
    EXPECT_EQ(edited("{\"a\": 1}", {Way::add, "/b", "2"}), "{\"a\": 1, \"b\": 2}");
    EXPECT_EQ(edited("{\n    \"a\": 1 // one\n    // end\n}", {Way::add, "/b", "2"}),
              "{\n    \"a\": 1, // one\n    \"b\": 2\n    // end\n}");
    EXPECT_EQ(edited("[\n\t1,\n\t2\n]", {Way::add, "/1", "9"}), "[\n\t1,\n\t9,\n\t2\n]");
    EXPECT_EQ(edited("[\n\t1,\n\t2\n]", {Way::add, "/0", "9"}), "[\n\t9,\n\t1,\n\t2\n]");
    EXPECT_EQ(edited("[1, 2]", {Way::add, "/1", "9"}), "[1, 9, 2]");
    EXPECT_EQ(edited("[]", {Way::add, "/-", "{\"a\":1}"}), "[{\"a\": 1}]");
}

TEST(TripText, WhatLacksOnTheWayIsMade) {
    EXPECT_EQ(edited("{\"a\": 1}", {Way::set, "/days/nights/0", "x"}),
              "{\"a\": 1, \"days\": {\"nights\": {\"0\": \"x\"}}}");
    EXPECT_EQ(edited("{\"days\": null}", {Way::add, "/days/hours", "8"}),
              "{\"days\": {\"hours\": 8}}");
}

TEST(TripText, AnEntryThatGoesTakesItsLineAndItsComma) {
    const std::string text = "{\n  // of a\n  \"a\": 1, // one\n  \"b\": 2 // two\n}\n";
    EXPECT_EQ(edited(text, {Way::remove, "/a", {}}), "{\n  // of a\n  \"b\": 2 // two\n}\n");
    EXPECT_EQ(edited(text, {Way::remove, "/b", {}}), "{\n  // of a\n  \"a\": 1 // one\n}\n");
    EXPECT_EQ(edited("[1, 2, 3]", {Way::remove, "/1", {}}), "[1, 3]");
    EXPECT_EQ(edited("[1, 2, 3]", {Way::remove, "/2", {}}), "[1, 2]");
    EXPECT_EQ(edited("[1]", {Way::remove, "/0", {}}), "[]");
}

TEST(TripText, AnEditThatFitsNowhereIsToldWithItsPointer) {
    for (const Edit& edit : {Edit{Way::replace, "/b", "1"},
                             Edit{Way::remove, "/a/0", {}},
                             Edit{Way::add, "/list/7", "1"},
                             Edit{Way::set, "no pointer", "1"}}) {
        try {
            (void)edited("{\"a\": 1, \"list\": []}", edit);
            FAIL() << edit.pointer;
        } catch (const geo::InputError& error) {
            ASSERT_EQ(error.problems().size(), 1U);
            EXPECT_EQ(error.problems()[0].place, edit.pointer);
            EXPECT_FALSE(error.problems()[0].expected.empty());
        }
    }
    EXPECT_THROW((void)edited("{}", {Way::add, "/a", "{"}), geo::InputError);
}

TEST(TripText, TheTextSaysWhatTheEditedDocumentSaysAndOtherLinesStay) {
    std::size_t tried = 0;
    for (std::uint64_t seed = 1; seed <= 4000; ++seed) {
        RandomText random(seed);
        const std::string text = random.whole();
        JsonValue document = read_json(text, "trip.json");
        const Edit edit = random.edit_of(document);
        const std::size_t may_change = lines_of(text, edit.pointer);
        if (!edit_at(document, edit).empty())
            continue;
        const std::string after = edited(text, edit);
        EXPECT_TRUE(same_json(read_json(after, "trip.json"), document))
            << text << edit_words(edit) << "\n"
            << after;
        EXPECT_LE(lines_touched(text, after), may_change) << seed << "\n"
                                                          << text << edit_words(edit) << "\n"
                                                          << after;
        EXPECT_EQ(text.starts_with("\xEF\xBB\xBF"), after.starts_with("\xEF\xBB\xBF"));
        if (text.find('\r') != std::string::npos) {
            for (const std::string& line : lines_with_ends(after))
                EXPECT_TRUE(line.empty() || line.ends_with("\r\n")) << seed << "\n" << after;
        }
        ++tried;
        if (HasFailure())
            return;
    }
    EXPECT_GT(tried, 2000U);
}

} // namespace

} // namespace tumpline::planner

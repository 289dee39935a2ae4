#include "planner/models/catalogue.h"

#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/resting_energy.h"
#include "planner/models/walking_speed.h"
#include "tests/support/source_tree.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

// Holds code, check rows, documents and catalogue together: what one of them names, the others
// know.

namespace tumpline::planner {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using test::lines_of;
using test::root;
using test::text_of;

/// Keys of docs/references.md, in its order.
std::vector<std::string> reference_keys() {
    static const std::regex entry(R"(^- \*\*\[([A-Za-z0-9]+)\]\*\*)");
    std::vector<std::string> keys;
    for (const std::string& line : lines_of(text_of(root / "docs/references.md"))) {
        std::smatch match;
        if (std::regex_search(line, match, entry))
            keys.push_back(match[1]);
    }
    return keys;
}

std::set<std::string> known_keys() {
    const std::vector<std::string> keys = reference_keys();
    return {keys.begin(), keys.end()};
}

/// The page below docs/models about the family of an entry.
fs::path page_of(std::string_view family) {
    static const std::map<std::string_view, std::string> others = {
        {"walking", "walking_speed"},
        {"energy", "load_carriage"},
        {"energy_check", "load_carriage"},
        {"resting", "resting_energy"}};
    const auto found = others.find(family);
    const std::string name = found == others.end() ? std::string(family) : found->second;
    return root / "docs/models" / (name + ".md");
}

/// What follows "- `name`: " in the section "Check rows" of a page; empty if nothing does.
std::string check_rows_line(const std::string& page, const std::string& name) {
    bool inside = false;
    for (const std::string& line : lines_of(page)) {
        if (line.starts_with("## "))
            inside = line == "## Check rows";
        const std::string head = "- `" + name + "`: ";
        if (inside && line.starts_with(head))
            return line.substr(head.size());
    }
    return {};
}

struct RowCount {
    int rows = 0;
    int printed = 0;
};

/// Rows of every file of tests/published by the key `model`.
const std::map<std::string, RowCount>& rows_by_model() {
    static const std::map<std::string, RowCount> counts = [] {
        std::map<std::string, RowCount> by_model;
        for (const fs::directory_entry& file : fs::directory_iterator(root / "tests/published")) {
            if (file.path().extension() != ".json")
                continue;
            const json document = json::parse(text_of(file.path()));
            for (const json& row : document.is_array() ? document : document.at("checks")) {
                RowCount& count = by_model[row.value("model", std::string())];
                ++count.rows;
                count.printed += row.at("published").get<bool>() ? 1 : 0;
            }
        }
        return by_model;
    }();
    return counts;
}

/// Whether a row has this model, or an id that begins so.
bool has_row(const std::string& name) {
    if (rows_by_model().contains(name))
        return true;
    for (const fs::directory_entry& file : fs::directory_iterator(root / "tests/published"))
        if (file.path().extension() == ".json" &&
            text_of(file.path()).find("\"id\": \"" + name) != std::string::npos)
            return true;
    return false;
}

TEST(References, StandInOrderWithoutDoublesAndSayWhatWasSeen) {
    const std::vector<std::string> keys = reference_keys();
    ASSERT_GT(keys.size(), 40U);
    const auto lower = [](std::string key) {
        std::transform(key.begin(), key.end(), key.begin(), [](unsigned char letter) {
            return static_cast<char>(std::tolower(letter));
        });
        return key;
    };
    for (std::size_t i = 1; i < keys.size(); ++i)
        EXPECT_LT(lower(keys[i - 1]), lower(keys[i]));

    const std::string text = text_of(root / "docs/references.md");
    std::size_t entry = text.find("\n- **[") + 1;
    while (entry != std::string::npos) {
        const std::size_t next = text.find("\n- **[", entry + 1);
        const std::string paragraph = text.substr(entry, next - entry);
        const bool no_source = paragraph.starts_with("- **[Arithmetic]") ||
                               paragraph.starts_with("- **[CommonPractice]") ||
                               paragraph.starts_with("- **[EqualEffort]");
        EXPECT_TRUE(no_source || paragraph.find("Seen:") != std::string::npos) << paragraph;
        entry = next == std::string::npos ? next : next + 1;
    }
}

TEST(References, KnowEveryKeyOfTheCode) {
    const std::set<std::string> known = known_keys();
    static const std::regex key(R"(\[([A-Z][A-Za-z]{2,}[0-9]*)\])");
    for (const char* const room : {"geo", "planner", "cli"})
        for (const fs::directory_entry& file : fs::recursive_directory_iterator(root / room)) {
            if (file.path().extension() != ".h" && file.path().extension() != ".cpp")
                continue;
            for (const std::string& line : lines_of(text_of(file.path()))) {
                const std::size_t comment = line.find("//");
                if (comment == std::string::npos)
                    continue;
                const std::string said = line.substr(comment);
                for (std::sregex_iterator it(said.begin(), said.end(), key), end; it != end; ++it)
                    EXPECT_TRUE(known.contains((*it)[1])) << (*it)[1] << " in " << file.path();
            }
        }
}

TEST(References, KnowEveryKeyOfTheModelPages) {
    const std::set<std::string> known = known_keys();
    static const std::regex key(R"(\[([A-Z][A-Za-z]{2,}[0-9]*)\](?!\())");
    for (const fs::directory_entry& file : fs::directory_iterator(root / "docs/models")) {
        if (file.path().extension() != ".md")
            continue;
        const std::string text = text_of(file.path());
        for (std::sregex_iterator it(text.begin(), text.end(), key), end; it != end; ++it)
            EXPECT_TRUE(known.contains((*it)[1])) << (*it)[1] << " in " << file.path();
    }
}

TEST(Catalogue, NamesSourceRangeAndReasonOfEveryModel) {
    const std::set<std::string> known = known_keys();
    std::set<std::string> seen;
    for (const ModelEntry& entry : model_catalogue()) {
        const std::string name = std::string(entry.family) + "/" + std::string(entry.name);
        EXPECT_TRUE(seen.insert(name).second) << name << " stands twice";
        EXPECT_TRUE(known.contains(std::string(entry.source))) << entry.source << " of " << name;
        EXPECT_FALSE(entry.answers.empty()) << name;
        EXPECT_FALSE(entry.covers.empty()) << name;
        EXPECT_FALSE(entry.why.empty()) << name;
    }
}

TEST(Catalogue, EveryChoiceOfATripHasOneDefault) {
    std::map<std::string_view, int> defaults;
    for (const ModelEntry& entry : model_catalogue())
        defaults[entry.family] += entry.is_default ? 1 : 0;
    for (const std::string_view family :
         {"walking", "load_effect", "energy", "resting", "paddling"})
        EXPECT_EQ(defaults[family], 1) << family;
}

TEST(Catalogue, NamesTheModelsThatTripsMayChoose) {
    for (const ModelEntry& entry : model_catalogue()) {
        if (entry.family == "walking") {
            EXPECT_TRUE(walking_model(entry.name).has_value()) << entry.name;
        } else if (entry.family == "load_effect") {
            EXPECT_TRUE(load_effect(entry.name).has_value()) << entry.name;
        } else if (entry.family == "energy") {
            EXPECT_TRUE(carriage_model(entry.name).has_value()) << entry.name;
        } else if (entry.family == "resting") {
            EXPECT_TRUE(resting_model(entry.name).has_value()) << entry.name;
        }
    }
}

TEST(ModelHeaders, SayWhatTheyCoverAndWhereTheyAreKnownToErr) {
    for (const ModelEntry& entry : model_catalogue()) {
        const fs::path header =
            root / "planner/models" / page_of(entry.family).filename().replace_extension(".h");
        const std::string text = text_of(header);
        static const std::regex bias("Known\\s+(///\\s+)?bias:");
        EXPECT_NE(text.find("Covers:"), std::string::npos) << header;
        EXPECT_TRUE(std::regex_search(text, bias)) << header << " lacks \"Known bias:\"";
    }
}

TEST(ModelPages, KeepToTheTemplate) {
    for (const ModelEntry& entry : model_catalogue()) {
        const std::string page = text_of(page_of(entry.family));
        std::size_t at = 0;
        for (const char* const section : {"\n## What it answers\n",
                                          "\n## Equation\n",
                                          "\n## Range\n",
                                          "\n## Plot\n",
                                          "\n## Check rows\n",
                                          "\n## When to choose another\n"}) {
            const std::size_t found = page.find(section, at);
            EXPECT_NE(found, std::string::npos) << page_of(entry.family) << " lacks" << section;
            at = found == std::string::npos ? at : found;
        }
        EXPECT_NE(page.find("`" + std::string(entry.name) + "`"), std::string::npos)
            << entry.name << " is not on " << page_of(entry.family);
    }
}

TEST(ModelPages, ShowPlotsThatAreThere) {
    static const std::regex image(R"(!\[[^\]]+\]\(([^)]+)\))");
    for (const fs::directory_entry& file : fs::directory_iterator(root / "docs/models")) {
        if (file.path().extension() != ".md")
            continue;
        const std::string text = text_of(file.path());
        for (std::sregex_iterator it(text.begin(), text.end(), image), end; it != end; ++it)
            EXPECT_TRUE(fs::exists(file.path().parent_path() / (*it)[1].str())) << (*it)[1];
    }
}

TEST(ModelPages, CountTheCheckRowsOfEveryModel) {
    static const std::regex counted(R"(^([0-9]+) rows?, ([0-9]+) printed)");
    static const std::regex word("`([^`]+)`");
    for (const ModelEntry& entry : model_catalogue()) {
        const std::string name(entry.name);
        const std::string line = check_rows_line(text_of(page_of(entry.family)), name);
        std::smatch match;
        if (std::regex_search(line, match, counted)) {
            const auto found = rows_by_model().find(name);
            const RowCount count = found == rows_by_model().end() ? RowCount{} : found->second;
            EXPECT_EQ(match[1], std::to_string(count.rows)) << name;
            EXPECT_EQ(match[2], std::to_string(count.printed)) << name;
        } else if (line.starts_with("rows of `")) {
            const std::string list = line.substr(0, line.find(';'));
            for (std::sregex_iterator it(list.begin(), list.end(), word), end; it != end; ++it)
                EXPECT_TRUE(has_row((*it)[1])) << (*it)[1] << ", named for " << name;
        } else {
            EXPECT_THAT(line, testing::StartsWith("no rows: ")) << name;
            EXPECT_GT(line.size(), 20U) << "the reason for " << name << " is missing";
        }
    }
}

} // namespace
} // namespace tumpline::planner

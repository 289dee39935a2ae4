#include "cli/export/csv.h"

#include "cli/export/plan_csv.h"
#include "tests/support/hand_built_plan.h"

#include <gtest/gtest.h>

#include <charconv>
#include <limits>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

/// Records as RFC 4180 reads them, written down here once more so that nothing of ours checks
/// itself.
std::vector<std::vector<std::string>> read_csv(const std::string& text) {
    std::vector<std::vector<std::string>> records;
    std::vector<std::string> record;
    std::string field;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (quoted && text[i] == '"' && i + 1 < text.size() && text[i + 1] == '"')
            field.push_back(text[i++]);
        else if (text[i] == '"')
            quoted = !quoted;
        else if (!quoted && text[i] == ',')
            record.push_back(std::exchange(field, {}));
        else if (!quoted && text.compare(i, 2, "\r\n") == 0) {
            record.push_back(std::exchange(field, {}));
            records.push_back(std::exchange(record, {}));
            ++i;
        } else
            field.push_back(text[i]);
    }
    EXPECT_TRUE(field.empty() && record.empty()) << "the last record has no end";
    return records;
}

TEST(Csv, QuotesAsTheRfcSays) { // RFC 4180, section 2, rules 5 to 7 and their examples
    EXPECT_EQ(csv_record({"aaa", "bbb", "ccc"}), "aaa,bbb,ccc\r\n");
    EXPECT_EQ(csv_record({"aaa", "b\r\nbb", "ccc"}), "aaa,\"b\r\nbb\",ccc\r\n");
    EXPECT_EQ(csv_record({"aaa", "b\"bb", "ccc"}), "aaa,\"b\"\"bb\",ccc\r\n");
    EXPECT_EQ(csv_record({""}), "\r\n");
}

TEST(Csv, ASpreadsheetRunsNoName) {
    for (const char* text : {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"})
        EXPECT_EQ(csv_text(text), std::string("'") + text);
    for (const char* text : {"\u00a0=1", "\u200b=1", "\ufeff=1", " \u00a0\u200b+1", "\uff1d1"})
        EXPECT_EQ(csv_text(text), std::string("'") + text);
    EXPECT_EQ(csv_text("\u00a0Upper"), "\u00a0Upper");
    EXPECT_EQ(csv_text("Upper river"), "Upper river");
    EXPECT_EQ(csv_text(""), "");
}

TEST(Csv, NumbersKeepAllTheirDigits) {
    for (const double number : {0.1, 1.0 / 3.0, -2.5, 1e-9, 123456.789, 6.02e23}) {
        const std::string text = csv_number(number);
        double read = 0.0;
        std::from_chars(text.data(), text.data() + text.size(), read);
        EXPECT_EQ(read, number) << text;
    }
    EXPECT_EQ(csv_number(std::numeric_limits<double>::quiet_NaN()), "");
}

TEST(PlanCsv, HasALinePerLegAndThreeColumnsPerMember) {
    planner::Plan plan = test::hand_built_plan();
    plan.legs[0].name = "=cmd, \"quoted\"";
    const auto records = read_csv(plan_csv(plan));
    ASSERT_EQ(records.size(), plan.legs.size() + 1);
    for (const auto& record : records)
        EXPECT_EQ(record.size(), records.front().size());
    EXPECT_EQ(records[0][4], "name");
    EXPECT_EQ(records[1][4], "'=cmd, \"quoted\"");
    EXPECT_EQ(records[0][records[0].size() - 3], "Björn pack_start_kg");
    EXPECT_EQ(records[1].back(), csv_number(plan.legs[0].loads[1].pack_max_kg));
    EXPECT_EQ(records[4][1], "1"); // the river, cut by the night
    EXPECT_EQ(records[5][1], "2");
    EXPECT_EQ(records[1][16], "2027-06-18T08:00:00+02:00");
}

} // namespace
} // namespace tumpline::cli

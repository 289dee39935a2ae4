#include "cli/text/text_page.h"
#include "cli/words/choice_words.h"
#include "cli/words/table.h"

#include <string>
#include <vector>

namespace tumpline::cli {

void add_remedies(TextPage& page) {
    const std::vector<std::string> lines = remedy_lines(page.plan(), page.units());
    if (lines.empty())
        return;
    page.heading("Packs over their limits, and what could be done");
    for (const std::string& line : lines)
        page.item(line);
}

void add_other_ways(TextPage& page) {
    const WaysTable ways = ways_table(page.plan(), page.units());
    if (ways.rows.empty())
        return;
    page.heading("Route alternatives");
    Table table({{"Alternative", false, true},
                 {"Length", true},
                 {"On foot", true},
                 {"Up", true},
                 {"Under way", true},
                 {"Days", true},
                 {"Energy", true},
                 {"Heaviest", true},
                 {"Of limit", true},
                 {"Load × distance", true}});
    for (const WaysTable::Row& row : ways.rows)
        table.row({row.name,
                   row.length,
                   row.on_foot,
                   row.ascent,
                   row.under_way,
                   std::to_string(row.days),
                   row.energy,
                   row.heaviest,
                   row.of_limit,
                   row.borne});
    page.add(table);
    for (const std::string& remark : ways.remarks)
        page.item(remark);
    page.item("Load × distance: every pack of the party times the distance it is carried.");
}

} // namespace tumpline::cli

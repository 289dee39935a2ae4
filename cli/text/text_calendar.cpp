#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/table.h"

#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

void add_connections(TextPage& page) {
    const std::vector<ConnectionWords> all = connection_words(page.plan(), page);
    if (all.empty())
        return;
    page.heading("Connections");
    for (const ConnectionWords& words : all) {
        page.item(words.head);
        if (!words.if_missed.empty())
            page.hang("      ", words.if_missed);
        for (const std::string& line : words.lines)
            page.hang("      ", line);
    }
    page.item("Times are those of the trip file: ask whoever runs it shortly before you go.");
}

void add_permits(TextPage& page) {
    const PermitWords permits = permit_words(page.plan(), page);
    if (permits.rows.empty() && permits.remarks.empty())
        return;
    page.heading("To book");
    Table table({{"What", false, true}, {"When"}, {"For"}, {"A day later", false, true}});
    for (const BookingWords& row : permits.rows)
        table.row({row.where, row.when, row.people, row.late});
    if (!table.empty())
        page.add(table);
    for (const std::string& remark : permits.remarks)
        page.item(remark);
}

} // namespace tumpline::cli

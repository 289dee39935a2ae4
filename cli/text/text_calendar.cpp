#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/table.h"

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

/// Each connection with what it costs to miss it; `more` may add to it. Answers whether there is
/// any.
template <class More> bool list_connections(TextPage& page, const More& more) {
    const std::vector<ConnectionWords> all = connection_words(page.plan(), page);
    if (all.empty())
        return false;
    page.heading("Connections");
    for (const ConnectionWords& words : all) {
        page.item(words.head);
        if (!words.if_missed.empty())
            page.hang("      ", words.if_missed);
        more(words);
    }
    return true;
}

} // namespace

void add_connections_briefly(TextPage& page) {
    (void)list_connections(page, [](const ConnectionWords&) {});
}

void add_connections(TextPage& page) {
    const bool any = list_connections(page, [&](const ConnectionWords& words) {
        for (const std::string& line : words.lines)
            page.hang("      ", line);
    });
    if (any)
        page.item("Times are those of the trip file: ask whoever runs it shortly before you go.");
}

void add_permits_briefly(TextPage& page) {
    const PermitWords permits = permit_words(page.plan(), page);
    if (permits.rows.empty())
        return;
    page.heading("To book");
    for (const BookingWords& row : permits.rows)
        page.item(fmt::format("{}, {}, {}.", row.where, row.when, row.people));
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

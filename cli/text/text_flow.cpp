#include "cli/text/text_page.h"
#include "cli/words/flow_words.h"
#include "cli/words/table.h"

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

void add_flow(TextPage& page) {
    add_flow_table(page);
    const std::vector<CardWords> cards = card_words(page.plan(), page);
    if (cards.empty())
        return;
    page.heading("Decision cards: when not to go on");
    for (const CardWords& card : cards) {
        page.item(card.head);
        for (const std::string& line : card.lines)
            page.hang("      ", line);
    }
    page.item("The river, local people and the authority go before any card.");
}

void add_flow_table(TextPage& page) {
    const FlowTable flow = flow_table(page.plan(), page);
    if (flow.rows.empty())
        return;
    page.heading("The rivers at each level");
    std::vector<Column> columns{{"", false, true}};
    for (const std::string& level : flow.levels)
        columns.push_back({level, false});
    Table table(std::move(columns));
    for (const FlowTable::Row& row : flow.rows) {
        std::vector<std::string> cells{row.what};
        cells.insert(cells.end(), row.cells.begin(), row.cells.end());
        table.row(std::move(cells));
    }
    page.add(table);
    for (const std::string& remark : flow.remarks)
        page.item(remark);
}

} // namespace tumpline::cli

#include "cli/words/markup.h"

#include "cli/words/text_width.h"

namespace tumpline::cli {

std::string escaped(std::string_view text) {
    std::string markup;
    for (const char c : one_line(text)) {
        switch (c) {
        case '&':
            markup += "&amp;";
            break;
        case '<':
            markup += "&lt;";
            break;
        case '>':
            markup += "&gt;";
            break;
        case '"':
            markup += "&quot;";
            break;
        case '\'':
            markup += "&#39;";
            break;
        default:
            markup += c;
        }
    }
    return markup;
}

double width_em(std::string_view utf8) {
    constexpr std::string_view broad = "MWmw@%&";
    constexpr std::string_view capitals = "ABCDEFGHIJKLNOPQRSTUVXYZ";
    double width = 0.63 * static_cast<double>(columns_of(utf8));
    for (const char c : utf8) {
        if (broad.find(c) != std::string_view::npos)
            width += 0.42;
        else if (capitals.find(c) != std::string_view::npos)
            width += 0.16;
    }
    return width;
}

} // namespace tumpline::cli

#include "cli/live/line_difference.h"

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

using Lines = std::vector<std::string>;

Lines text_lines(const std::string& text) {
    Lines lines(1);
    for (const char letter : text)
        if (letter == '\n')
            lines.emplace_back();
        else if (letter != '\r')
            lines.back().push_back(letter);
    return lines;
}

/// Two texts without what they begin and end with in common.
struct Middles {
    Lines before;
    Lines after;
    std::size_t first = 0; ///< lines in common before them
};

Middles middles_of(Lines before, Lines after) {
    const auto [from, from_after] =
        std::mismatch(before.begin(), before.end(), after.begin(), after.end());
    const auto first = from - before.begin();
    const auto [to, to_after] =
        std::mismatch(before.rbegin(), before.rend() - first, after.rbegin(), after.rend() - first);
    return {.before = Lines(before.begin() + first, to.base()),
            .after = Lines(after.begin() + first, to_after.base()),
            .first = static_cast<std::size_t>(first)};
}

/// For each pair of lines, how many lines the texts have in common from there on.
std::vector<std::vector<std::size_t>> common_lines(const Middles& texts) {
    const std::size_t rows = texts.before.size();
    const std::size_t columns = texts.after.size();
    std::vector<std::vector<std::size_t>> common(rows + 1,
                                                 std::vector<std::size_t>(columns + 1, 0));
    for (std::size_t i = rows; i-- > 0;)
        for (std::size_t j = columns; j-- > 0;)
            common[i][j] = texts.before[i] == texts.after[j]
                               ? common[i + 1][j + 1] + 1
                               : std::max(common[i + 1][j], common[i][j + 1]);
    return common;
}

} // namespace

std::vector<DifferentLine> line_difference(const std::string& before, const std::string& after) {
    constexpr std::size_t most_pairs = 4'000'000;
    const Middles texts = middles_of(text_lines(before), text_lines(after));
    const bool compare = texts.before.size() * texts.after.size() <= most_pairs;
    const std::vector<std::vector<std::size_t>> common =
        compare ? common_lines(texts) : std::vector<std::vector<std::size_t>>();
    std::vector<DifferentLine> lines;
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < texts.before.size() || j < texts.after.size()) {
        const bool old_left = i < texts.before.size();
        const bool new_left = j < texts.after.size();
        if (compare && old_left && new_left && texts.before[i] == texts.after[j]) {
            ++i;
            ++j;
        } else if (old_left && (!new_left || !compare || common[i + 1][j] >= common[i][j + 1])) {
            lines.push_back({false, texts.first + i + 1, texts.before[i]});
            ++i;
        } else {
            lines.push_back({true, texts.first + j + 1, texts.after[j]});
            ++j;
        }
    }
    return lines;
}

} // namespace tumpline::cli

#include "planner/quantities/spelling.h"

#include <algorithm>
#include <numeric>

namespace tumpline::planner {

namespace {

/// Words in messages are short; what is longer was never meant to be one of them.
constexpr std::size_t longest_word = 80;

char fold(char letter) {
    if (letter >= 'A' && letter <= 'Z')
        return static_cast<char>(letter - 'A' + 'a');
    return letter == '_' || letter == ' ' ? '-' : letter;
}

} // namespace

std::size_t edit_distance(std::string_view one, std::string_view other) {
    std::vector<std::size_t> before_last(other.size() + 1);
    std::vector<std::size_t> last(other.size() + 1);
    std::vector<std::size_t> row(other.size() + 1);
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= one.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= other.size(); ++j) {
            const bool same = fold(one[i - 1]) == fold(other[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0U : 1U)});
            if (i > 1 && j > 1 && fold(one[i - 1]) == fold(other[j - 2]) &&
                fold(one[i - 2]) == fold(other[j - 1]))
                row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
        before_last.swap(last);
        last.swap(row);
    }
    return last[other.size()];
}

std::string nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
    if (word.empty() || word.size() > longest_word)
        return {};
    std::string_view nearest;
    std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
    for (const std::string_view candidate : known) {
        if (candidate.empty() || candidate.size() > longest_word)
            continue;
        const std::size_t distance = edit_distance(word, candidate);
        if (distance < least && distance < std::max(word.size(), candidate.size())) {
            least = distance;
            nearest = candidate;
        }
    }
    if (!nearest.empty())
        return std::string(nearest);
    std::size_t begin_with_it = 0;
    for (const std::string_view candidate : known) {
        if (candidate.size() > word.size() &&
            edit_distance(word, candidate.substr(0, word.size())) == 0) {
            ++begin_with_it;
            nearest = candidate;
        }
    }
    return begin_with_it == 1 ? std::string(nearest) : std::string();
}

std::string either(const std::vector<std::string_view>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0)
            text.append(i + 1 == words.size() ? " or " : ", ");
        text.append(words[i]);
    }
    return text;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0)
            text.append(i + 1 == words.size() ? " and " : ", ");
        text.append(words[i]);
    }
    return text;
}

} // namespace tumpline::planner

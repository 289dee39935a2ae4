#pragma once

#include <sstream>
#include <string>
#include <vector>

namespace tumpline::test {

/// The lines of a text, without their ends.
[[nodiscard]] inline std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

/// A text with its runs of blanks made one.
[[nodiscard]] inline std::string squeezed(const std::string& text) {
    std::string made;
    for (const char letter : text)
        if (letter != ' ' || made.empty() || made.back() != ' ')
            made.push_back(letter);
    return made;
}

} // namespace tumpline::test

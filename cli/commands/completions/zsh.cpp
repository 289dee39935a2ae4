#include "cli/commands/completions/completions.h"

#include <fmt/format.h>

#include <string_view>

namespace tumpline::cli {

namespace {

/// `text` with a backslash before each of `signs`, as a part of a word in single quotes.
std::string kept(std::string_view text, std::string_view signs) {
    std::string result;
    for (const char sign : text) {
        if (signs.find(sign) != std::string_view::npos)
            result += '\\';
        result += sign == '\'' ? std::string("'\\''") : std::string(1, sign);
    }
    return result;
}

/// How the value of an option is completed; ":" and what it is called, ":" and where from.
std::string value_of(const OptionEntry& option) {
    std::string called = kept(option.value, ":\\");
    switch (option.takes) {
    case Takes::nothing:
        return {};
    case Takes::one_of_words:
        return fmt::format(":{}:({})", option.names.back().substr(2), fmt::join(option.words, " "));
    case Takes::folder:
        return fmt::format(":{}:_files -/", called);
    case Takes::file:
        return fmt::format(":{}:_files", called);
    case Takes::free_text:
        return fmt::format(":{}: ", called);
    }
    return {};
}

/// "'--units[what people read]:units:(metric imperial)'" and the like.
std::string specification(const OptionEntry& option) {
    const std::string tail = fmt::format("[{}]{}'", kept(option.help, "[]\\"), value_of(option));
    if (option.names.size() == 1)
        return fmt::format("'{}{}{}", option.again ? "*" : "", option.names[0], tail);
    if (option.again)
        return fmt::format("'*'{{{}}}'{}", fmt::join(option.names, ","), tail);
    return fmt::format(
        "'({})'{{{}}}'{}", fmt::join(option.names, " "), fmt::join(option.names, ","), tail);
}

std::string lines(const std::vector<OptionEntry>& options, std::string_view indent) {
    std::string text;
    for (const OptionEntry& option : options)
        text += fmt::format("{}{} \\\n", indent, specification(option));
    return text;
}

} // namespace

std::string zsh_completion(const CommandTable& table) {
    std::string text = "#compdef tumpline\n# Made by the build of tumpline.\n_tumpline() {\n"
                       "    local context state state_descr line\n    typeset -A opt_args\n"
                       "    local -a commands=(\n";
    for (const CommandEntry& command : table.commands)
        text += fmt::format("        '{}:{}'\n", command.name, kept(command.help, ":\\"));
    text += "    )\n    _arguments -C \\\n";
    text += lines(table.options, "        ");
    text += "        '1:command:->command' \\\n        '*::argument:->argument'\n"
            "    case $state in\n"
            "    command) _describe -t commands command commands ;;\n"
            "    argument)\n        case $words[1] in\n";
    for (const CommandEntry& command : table.commands) {
        text += fmt::format("        {})\n            _arguments \\\n", command.name);
        text += lines(command.options, "                ");
        if (!command.value.empty())
            text += fmt::format(
                "                '{}:{}:_files' \\\n", command.several ? "*" : "1", command.value);
        text += "                && return\n            ;;\n";
    }
    text += "        esac\n        ;;\n    esac\n}\n"
            "if [ \"$funcstack[1]\" = _tumpline ]; then\n    _tumpline \"$@\"\nelse\n"
            "    compdef _tumpline tumpline\nfi\n";
    return text;
}

} // namespace tumpline::cli

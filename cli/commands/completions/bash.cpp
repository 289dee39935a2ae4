#include "cli/commands/completions/completions.h"

#include <fmt/format.h>

#include <string_view>

namespace tumpline::cli {

namespace {

/// What leads to the script's cases: which command it is, and which word stands before.
constexpr std::string_view head = R"(# bash completion for tumpline, made by its build
_tumpline() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command='' other
    # bash makes three words of --format=json
    if [[ $word == = ]]; then
        word=''
    elif [[ $before == = ]]; then
        before=${COMP_WORDS[COMP_CWORD-2]}
    fi
    for other in "${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
        case $other in
        COMMANDS)
            command=$other
            break
            ;;
        esac
    done
    local words=''
    COMPREPLY=()
    case "$command $before" in
)";

constexpr std::string_view middle = R"(    *)
        case "$command $word" in
)";

constexpr std::string_view tail = R"(        *)
            compopt -o default 2>/dev/null
            return
            ;;
        esac
        ;;
    esac
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
}
complete -F _tumpline tumpline
)";

std::string replaced(std::string_view text, std::string_view what, const std::string& with) {
    std::string result(text);
    result.replace(result.find(what), what.size(), with);
    return result;
}

/// "'plan --format' | 'plan -f'", a pattern for the command and any of the option's names.
std::string pattern(const std::string& command, const OptionEntry& option) {
    std::vector<std::string> words;
    for (const std::string& name : option.names)
        words.push_back(fmt::format("'{} {}'", command, name));
    return fmt::format("{}", fmt::join(words, " | "));
}

/// What follows an option: words, folders, nothing that the shell could know, or files.
std::string after(const std::string& command, const OptionEntry& option) {
    std::string does;
    switch (option.takes) {
    case Takes::nothing:
        return {};
    case Takes::one_of_words:
        does = fmt::format("words='{}'", fmt::join(option.words, " "));
        break;
    case Takes::folder:
        does = "compopt -o dirnames 2>/dev/null\n        return";
        break;
    case Takes::file:
        does = "compopt -o default 2>/dev/null\n        return";
        break;
    case Takes::free_text:
        does = "return";
        break;
    }
    return fmt::format("    {})\n        {}\n        ;;\n", pattern(command, option), does);
}

/// What may begin with a dash, or what may not.
std::string names(const std::string& of, const std::vector<std::string>& words) {
    return fmt::format(
        "        {})\n            words='{}'\n            ;;\n", of, fmt::join(words, " "));
}

std::vector<std::string> option_words(const std::vector<OptionEntry>& options) {
    std::vector<std::string> words;
    for (const OptionEntry& option : options)
        words.insert(words.end(), option.names.begin(), option.names.end());
    return words;
}

} // namespace

std::string bash_completion(const CommandTable& table) {
    std::vector<std::string> commands;
    for (const CommandEntry& command : table.commands)
        commands.push_back(command.name);
    std::string text = replaced(head, "COMMANDS", fmt::format("{}", fmt::join(commands, " | ")));
    for (const OptionEntry& option : table.options)
        text += after({}, option);
    for (const CommandEntry& command : table.commands)
        for (const OptionEntry& option : command.options)
            text += after(command.name, option);
    text += middle;
    text += names("' -'*", option_words(table.options));
    text += names("' '*", commands);
    for (const CommandEntry& command : table.commands) {
        text += names(fmt::format("'{} -'*", command.name), option_words(command.options));
        if (command.value.empty())
            text += names(fmt::format("'{} '*", command.name), {});
    }
    text += tail;
    return text;
}

} // namespace tumpline::cli

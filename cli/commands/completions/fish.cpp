#include "cli/commands/completions/completions.h"

#include <fmt/format.h>

#include <string_view>

namespace tumpline::cli {

namespace {

/// `text` in single quotes as fish reads them.
std::string in_single_quotes(std::string_view text) {
    std::string result = "'";
    for (const char sign : text) {
        if (sign == '\'' || sign == '\\')
            result += '\\';
        result += sign;
    }
    return result + "'";
}

std::string_view value_of(Takes takes) {
    switch (takes) {
    case Takes::nothing:
        return "";
    case Takes::one_of_words:
    case Takes::free_text:
        return " -x";
    case Takes::folder:
        return " -x -a '(__fish_complete_directories)'";
    case Takes::file:
        return " -r -F";
    }
    return "";
}

std::string line(std::string_view when, const OptionEntry& option) {
    std::string text = fmt::format("complete -c tumpline -n {}", in_single_quotes(when));
    for (const std::string& name : option.names)
        text += name.starts_with("--") ? fmt::format(" -l {}", name.substr(2))
                                       : fmt::format(" -s {}", name.substr(1));
    text += value_of(option.takes);
    if (!option.words.empty())
        text += fmt::format(" -a {}",
                            in_single_quotes(fmt::format("{}", fmt::join(option.words, " "))));
    return text + fmt::format(" -d {}\n", in_single_quotes(option.help));
}

} // namespace

std::string fish_completion(const CommandTable& table) {
    std::string text = "# Made by the build of tumpline.\ncomplete -c tumpline -f\n";
    for (const OptionEntry& option : table.options)
        text += line("__fish_use_subcommand", option);
    for (const CommandEntry& command : table.commands)
        text += fmt::format("complete -c tumpline -n __fish_use_subcommand -a {} -d {}\n",
                            command.name,
                            in_single_quotes(command.help));
    for (const CommandEntry& command : table.commands) {
        const std::string when = fmt::format("__fish_seen_subcommand_from {}", command.name);
        if (!command.value.empty())
            text += fmt::format("complete -c tumpline -n {} -F\n", in_single_quotes(when));
        for (const OptionEntry& option : command.options)
            text += line(when, option);
    }
    return text;
}

} // namespace tumpline::cli

#include "cli/commands/completions/command_table.h"

#include "cli/words/sections.h"
#include "planner/trip/sections.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <string_view>

namespace tumpline::cli {

namespace {

std::vector<std::string> split_at_bars(const std::string& words) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t bar = words.find('|'); bar != std::string::npos;
         bar = words.find('|', from = bar + 1))
        parts.push_back(words.substr(from, bar - from));
    parts.push_back(words.substr(from));
    return parts;
}

/// What the name of a value says of it.
void tell_value(OptionEntry& entry, const std::string& command) {
    static constexpr std::string_view files[] = {"FILE", "TRIP", "DEM", "BOOK.html"};
    if (entry.value.find('|') != std::string::npos) {
        entry.takes = Takes::one_of_words;
        entry.words = split_at_bars(entry.value);
    } else if (entry.value == "MODEL") {
        entry.takes = Takes::one_of_words;
        for (const std::string_view word : planner::model_words("walking"))
            entry.words.emplace_back(word);
    } else if (entry.value == "SECTION,...") {
        entry.takes = Takes::one_of_words;
        for (const Section section : sections_of(command))
            entry.words.emplace_back(word(section));
        entry.words.emplace_back("all");
    } else if (entry.value == "FOLDER") {
        entry.takes = Takes::folder;
    } else if (std::find(std::begin(files), std::end(files), entry.value) != std::end(files)) {
        entry.takes = Takes::file;
    } else {
        entry.takes = Takes::free_text;
    }
}

std::vector<OptionEntry> options_of(const CLI::App& app) {
    std::vector<OptionEntry> entries;
    for (const CLI::Option* option : app.get_options()) {
        if (option->get_positional())
            continue;
        OptionEntry entry;
        for (const std::string& name : option->get_snames())
            entry.names.push_back("-" + name);
        for (const std::string& name : option->get_lnames())
            entry.names.push_back("--" + name);
        entry.help = option->get_description();
        entry.again = option->get_expected_max() > 1 ||
                      option->get_multi_option_policy() == CLI::MultiOptionPolicy::TakeAll;
        entry.value = option->get_type_name();
        if (!entry.value.empty())
            tell_value(entry, app.get_name());
        entries.push_back(std::move(entry));
    }
    return entries;
}

bool has(const std::vector<OptionEntry>& options, const OptionEntry& one) {
    return std::any_of(options.begin(), options.end(), [&](const OptionEntry& option) {
        return option.names == one.names;
    });
}

} // namespace

CommandTable command_table(const CLI::App& app) {
    CommandTable table{.commands = {}, .options = options_of(app)};
    for (const CLI::App* command : app.get_subcommands({})) {
        CommandEntry entry{.name = command->get_name(),
                           .help = command->get_description(),
                           .value = {},
                           .several = false,
                           .options = options_of(*command)};
        for (const CLI::Option* option : command->get_options())
            if (option->get_positional()) {
                entry.value = option->get_name(true);
                entry.several = option->get_expected_max() > 1;
            }
        for (const OptionEntry& option : table.options)
            if (!has(entry.options, option) && option.names.back() != "--version")
                entry.options.push_back(option);
        table.commands.push_back(std::move(entry));
    }
    return table;
}

} // namespace tumpline::cli

#include "cli/words/usage.h"

#include "cli/words/text_width.h"
#include "geo/input_error.h"
#include "planner/quantities/spelling.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

namespace {

/// Where the descriptions of a list begin.
constexpr std::size_t description_column = 32;

/// "  --format text|json   how it is printed", the description broken into lines.
std::string entry(std::string_view name, std::string_view description, std::size_t columns) {
    std::string text = fmt::format("  {}", name);
    if (columns_of(text) + 2 > description_column)
        text += "\n" + std::string(description_column, ' ');
    else
        text.append(description_column - columns_of(text), ' ');
    bool first = true;
    for (const std::string& line : wrapped(description, columns - description_column)) {
        if (!first)
            text.append(description_column, ' ');
        first = false;
        text += line + "\n";
    }
    return text;
}

/// "TRIP" or "DEM..." after an option's name; empty if it takes none.
std::string value_after(const CLI::Option& option) {
    std::string value;
    if (!option.get_positional() && !option.get_type_name().empty())
        value = " " + option.get_type_name();
    if (option.get_expected_max() > 1)
        value += "...";
    return value;
}

/// Every way of writing an option: "-o", "--output".
std::vector<std::string> spellings(const CLI::Option& option) {
    std::vector<std::string> names;
    if (option.get_positional())
        return {option.get_name(true)};
    for (const std::string& letter : option.get_snames())
        names.push_back("-" + letter);
    for (const std::string& word : option.get_lnames())
        names.push_back("--" + word);
    return names;
}

/// "-o TRIP", as one writes it.
std::string option_name(const CLI::Option& option) {
    return spellings(option).front() + value_after(option);
}

/// "-o, --output TRIP", as a list shows it.
std::string listed_name(const CLI::Option& option) {
    return fmt::format("{}{}", fmt::join(spellings(option), ", "), value_after(option));
}

std::vector<const CLI::Option*> options_of(const CLI::App& app, bool positional) {
    return app.get_options([positional](const CLI::Option* option) {
        return option->get_positional() == positional && !option->get_group().empty();
    });
}

std::vector<std::string> command_names(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::App* command : app.get_subcommands({}))
        names.push_back(command->get_name());
    return names;
}

/// Every "--name" that may be written after this command, its own before those of the program.
std::vector<std::string> option_names(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::App* level = &app; level != nullptr; level = level->get_parent())
        for (const CLI::Option* option : options_of(*level, false))
            for (const std::string& name : option->get_lnames())
                names.push_back("--" + name);
    std::vector<std::string> once;
    for (const std::string& name : names)
        if (std::find(once.begin(), once.end(), name) == once.end())
            once.push_back(name);
    return once;
}

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
    return planner::nearest_word(word, {known.begin(), known.end()});
}

std::string in_quotes(std::string_view word) {
    return fmt::format("\"{}\"", fitted(one_line(word), 60));
}

std::string usage(const CLI::App& app) {
    std::string text = fmt::format("Usage: {}", command_name(app));
    if (app.get_parent() == nullptr)
        return text + " COMMAND [options]\n";
    for (const CLI::Option* option : options_of(app, true))
        text += option->get_required() ? " " + option_name(*option)
                                       : fmt::format(" [{}]", option_name(*option));
    for (const CLI::Option* option : options_of(app, false))
        if (option->get_required())
            text += fmt::format(" {}", option_name(*option));
    return text + " [options]\n";
}

const CLI::App& root_of(const CLI::App& app) {
    const CLI::App* root = &app;
    while (root->get_parent() != nullptr)
        root = root->get_parent();
    return *root;
}

std::string of_file(const CLI::App& app, geo::Problem problem) {
    problem.file = command_name(app);
    return to_string(problem);
}

std::string unknown_command(const CLI::App& app, const std::string& word) {
    const std::vector<std::string> names = command_names(app);
    const std::string near = nearest(word, names);
    return of_file(app,
                   {.file = {},
                    .place = {},
                    .found = in_quotes(word),
                    .expected = fmt::format("a command ({})", fmt::join(names, ", ")),
                    .advice = near.empty() ? std::string() : fmt::format("write \"{}\"", near)});
}

std::string unknown_option(const CLI::App& app, const std::string& word) {
    const std::string name = word.substr(0, word.find('='));
    const std::vector<std::string> names = option_names(app);
    const std::string near = nearest(name, names);
    return of_file(app,
                   {.file = {},
                    .place = {},
                    .found = in_quotes(word),
                    .expected = fmt::format("an option ({})", fmt::join(names, ", ")),
                    .advice = near.empty() ? std::string() : fmt::format("write \"{}\"", near)});
}

} // namespace

std::string command_name(const CLI::App& app) {
    return app.get_parent() == nullptr ? std::string("tumpline")
                                       : fmt::format("tumpline {}", app.get_name());
}

std::string help_text(const CLI::App& app, std::size_t columns) {
    std::string text;
    for (const std::string& line :
         wrapped(fmt::format("{}: {}", command_name(app), app.get_description()), columns))
        text += line + "\n";
    text += usage(app);
    const auto commands = app.get_subcommands({});
    if (!commands.empty())
        text += "\nCommands\n";
    for (const CLI::App* command : commands)
        text += entry(command->get_name(), command->get_description(), columns);
    text += "\n";
    for (const bool positional : {true, false})
        for (const CLI::Option* option : options_of(app, positional))
            text += entry(listed_name(*option), option->get_description(), columns);
    if (app.get_parent() != nullptr)
        for (const CLI::Option* option : options_of(root_of(app), false))
            if (!option->check_lname("help") && !option->check_lname("version"))
                text += entry(listed_name(*option), option->get_description(), columns);
    if (!root_of(app).get_footer().empty())
        text += "\n";
    for (const std::string& line : wrapped(root_of(app).get_footer(), columns))
        text += line + "\n";
    return text;
}

std::string misuse_text(const CLI::App& app, const CLI::ParseError& error) {
    const std::vector<CLI::App*> chosen = const_cast<CLI::App&>(app).get_subcommands();
    const CLI::App& command = chosen.empty() ? app : *chosen.back();
    for (const std::string& word : app.remaining(true)) {
        if (word.starts_with("-") && word != "-")
            return unknown_option(command, word);
        if (chosen.empty())
            return unknown_command(app, word);
        const std::string line = usage(command);
        return of_file(command,
                       {.file = {},
                        .place = {},
                        .found = fmt::format("one word too many, {}", in_quotes(word)),
                        .expected = {},
                        .advice = line.substr(0, line.size() - 1)});
    }
    if (chosen.empty() && dynamic_cast<const CLI::RequiredError*>(&error) != nullptr)
        return of_file(
            app,
            {.file = {},
             .place = {},
             .found = {},
             .expected = fmt::format("a command ({})", fmt::join(command_names(app), ", ")),
             .advice = "see tumpline --help"});
    if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr)
        for (const bool positional : {true, false})
            for (const CLI::Option* option : options_of(command, positional))
                if (option->get_required() && option->count() == 0)
                    return of_file(command,
                                   {.file = {},
                                    .place = {},
                                    .found = fmt::format("no {}", option_name(*option)),
                                    .expected = option->get_description(),
                                    .advice = fmt::format("see {} --help", command_name(command))});
    const std::string reported = one_line(error.what());
    const std::string name = reported.substr(0, reported.find(':'));
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr)
        for (const CLI::App* level : {&command, &app})
            if (const CLI::Option* option = level->get_option_no_throw(name))
                return of_file(*level,
                               {.file = {},
                                .place = name,
                                .found = "no value",
                                .expected = option->get_type_name(),
                                .advice = {}});
    return fmt::format("{}: {}", command_name(command), reported);
}

} // namespace tumpline::cli

#include "cli/commands/command_models.h"

#include "cli/words/json_values.h"
#include "cli/words/table.h"
#include "cli/words/version.h"
#include "planner/models/catalogue.h"

#include <fmt/ostream.h>

#include <string>
#include <string_view>

namespace tumpline::cli {

namespace {

using planner::ModelEntry;

void print_text(Console console) {
    std::string_view family;
    for (const ModelEntry& model : planner::model_catalogue()) {
        if (model.family != family) {
            fmt::print(console.out, "{}{}\n", family.empty() ? "" : "\n", model.family);
            family = model.family;
        }
        fmt::print(console.out, "  {}{}\n", model.name, model.is_default ? " (default)" : "");
        const auto print = [&](const char* what, std::string_view text) {
            if (!text.empty())
                console.out << hanging(
                    fmt::format("    {:<9}", what), std::string(text), console.columns);
        };
        print("answers", model.answers);
        print("source", model.source);
        print("covers", model.covers);
        print("choose", model.why);
    }
}

void print_json(Console console) {
    Json models = Json::array();
    for (const ModelEntry& model : planner::model_catalogue())
        models.push_back({{"family", model.family},
                          {"name", model.name},
                          {"answers", model.answers},
                          {"source", model.source},
                          {"covers", model.covers},
                          {"default", model.is_default},
                          {"why", model.why}});
    const Json json = {{"version", version()}, {"models", std::move(models)}};
    fmt::print(console.out, "{}", in_lines(json));
}

} // namespace

ExitCode models(const ModelsOptions& options, Console console) {
    switch (options.format) {
    case ModelsFormat::text:
        print_text(console);
        break;
    case ModelsFormat::json:
        print_json(console);
        break;
    }
    return ExitCode::done;
}

} // namespace tumpline::cli

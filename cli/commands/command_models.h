#pragma once

#include "cli/console.h"

namespace tumpline::cli {

enum class ModelsFormat { text, json };

struct ModelsOptions {
    ModelsFormat format = ModelsFormat::text;
};

/// Prints every model: what it answers, its source and range, which is the default and why.
[[nodiscard]] ExitCode models(const ModelsOptions& options, Console console);

} // namespace tumpline::cli

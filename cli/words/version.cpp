#include "cli/words/version.h"

namespace tumpline::cli {

std::string_view version() {
    return TUMPLINE_VERSION;
}

} // namespace tumpline::cli

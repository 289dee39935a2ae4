#include "cli/console.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <optional>
#include <string>
#include <utility>

namespace tumpline::cli {
namespace {

/// COLUMNS in the environment, as long as it lives.
class ColumnsSet {
  public:
    explicit ColumnsSet(const char* value) {
        if (const char* const old = std::getenv("COLUMNS"))
            before_ = old;
        ::setenv("COLUMNS", value, 1);
    }

    ColumnsSet(const ColumnsSet&) = delete;
    ColumnsSet& operator=(const ColumnsSet&) = delete;

    ~ColumnsSet() {
        if (before_)
            ::setenv("COLUMNS", before_->c_str(), 1);
        else
            ::unsetenv("COLUMNS");
    }

  private:
    std::optional<std::string> before_;
};

TEST(Console, LinesAreAsWideAsColumnsSaysWithinBounds) {
    for (const auto& [said, wide] : {std::pair{"80", 80U},
                                     std::pair{"72", 72U},
                                     std::pair{"40", 72U},
                                     std::pair{"120", 120U},
                                     std::pair{"400", 120U}}) {
        const ColumnsSet set(said);
        EXPECT_EQ(process_console().columns, wide) << said;
    }
}

TEST(Console, ColumnsThatAreNoNumberDoNotCount) {
    std::size_t without = 0;
    {
        const ColumnsSet set("");
        without = process_console().columns;
    }
    for (const char* said : {"wide", "80x", "-5", "0"}) {
        const ColumnsSet set(said);
        EXPECT_EQ(process_console().columns, without) << said;
    }
}

} // namespace
} // namespace tumpline::cli

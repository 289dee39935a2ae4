#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace tumpline::test {

std::string text_of(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    EXPECT_TRUE(in.good()) << "cannot read " << file;
    return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace tumpline::test

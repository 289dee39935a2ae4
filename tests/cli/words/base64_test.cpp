#include "cli/words/base64.h"

#include <gtest/gtest.h>

namespace tumpline::cli {

// [RFC4648, section 10]
TEST(Base64, IsThatOfTheStandardsOwnExamples) {
    EXPECT_EQ(base64(""), "");
    EXPECT_EQ(base64("f"), "Zg==");
    EXPECT_EQ(base64("fo"), "Zm8=");
    EXPECT_EQ(base64("foo"), "Zm9v");
    EXPECT_EQ(base64("foob"), "Zm9vYg==");
    EXPECT_EQ(base64("fooba"), "Zm9vYmE=");
    EXPECT_EQ(base64("foobar"), "Zm9vYmFy");
    EXPECT_EQ(base64(std::string("\xFF\x00\xFE", 3)), "/wD+");
}

} // namespace tumpline::cli

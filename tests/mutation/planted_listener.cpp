// Joins the test program of a planted copy: with TUMPLINE_PASSED it writes which faults each test
// passes and how long it takes, with TUMPLINE_KILLED the first assertion that fails, and ends
// there.
#include "tests/mutation/planted.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <cstring>
#include <string>

namespace {

class PlantedListener : public testing::EmptyTestEventListener {
  public:
    PlantedListener()
        : passed_(std::getenv("TUMPLINE_PASSED")), killed_(std::getenv("TUMPLINE_KILLED")) {}

    /// Constants are made before the first test, for all of them.
    void OnTestProgramStart(const testing::UnitTest&) override {
        std::memcpy(at_start_, passed_faults, sizeof passed_faults);
    }

    void OnTestStart(const testing::TestInfo& test) override {
        // kept here: while a result is told the library's own lock is held, and may not be asked
        name_ = std::string(test.test_suite_name()) + "." + test.name();
        std::memset(passed_faults, 0, sizeof passed_faults);
    }

    void OnTestPartResult(const testing::TestPartResult& result) override {
        if (!result.failed() || killed_ == nullptr)
            return;
        if (std::FILE* file = std::fopen(killed_, "w")) {
            std::fprintf(file,
                         "%s\t%s:%d\n",
                         name_.c_str(),
                         result.file_name() ? result.file_name() : "",
                         result.line_number());
            std::fclose(file);
        }
        _exit(1);
    }

    void OnTestEnd(const testing::TestInfo& test) override {
        if (passed_ == nullptr)
            return;
        std::FILE* file = std::fopen(passed_, "a");
        if (file == nullptr)
            return;
        std::fprintf(file,
                     "%s.%s\t%s\t%lld\t%d\t",
                     test.test_suite_name(),
                     test.name(),
                     test.file(),
                     static_cast<long long>(test.result()->elapsed_time()),
                     test.result()->Passed() ? 1 : 0);
        for (int number = 0; number < most_planted; ++number)
            if (passed_faults[number] != 0 || at_start_[number] != 0)
                std::fprintf(file, "%d ", number);
        std::fprintf(file, "\n");
        std::fclose(file);
    }

  private:
    const char* passed_;
    const char* killed_;
    std::string name_;
    unsigned char at_start_[most_planted] = {};
};

[[maybe_unused]] const bool listens = [] {
    testing::UnitTest::GetInstance()->listeners().Append(new PlantedListener);
    return true;
}();

} // namespace

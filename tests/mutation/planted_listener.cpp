// Joins the test program of a planted copy: with TUMPLINE_PASSED it writes which faults each test
// passes and how long it takes, and under the name "constants" those passed before the first test;
// with TUMPLINE_KILLED the first assertion that fails, and ends there; with TUMPLINE_RUNNING the
// test that runs.
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
        : passed_(std::getenv("TUMPLINE_PASSED")), killed_(std::getenv("TUMPLINE_KILLED")),
          running_(std::getenv("TUMPLINE_RUNNING")) {}

    /// Constants are made before the first test: which of the tests use them is not seen.
    void OnTestProgramStart(const testing::UnitTest&) override {
        write_passed("constants\t-\t0\t1\t");
    }

    void OnTestStart(const testing::TestInfo& test) override {
        // kept here: while a result is told the library's own lock is held, and may not be asked
        name_ = std::string(test.test_suite_name()) + "." + test.name();
        std::memset(passed_faults, 0, sizeof passed_faults);
        if (running_ == nullptr)
            return;
        if (std::FILE* file = std::fopen(running_, "w")) {
            std::fprintf(file, "%s\n", name_.c_str());
            std::fclose(file);
        }
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
        write_passed(name_ + "\t" + test.file() + "\t" +
                     std::to_string(test.result()->elapsed_time()) +
                     (test.result()->Passed() ? "\t1\t" : "\t0\t"));
    }

  private:
    void write_passed(const std::string& head) const {
        if (passed_ == nullptr)
            return;
        std::FILE* file = std::fopen(passed_, "a");
        if (file == nullptr)
            return;
        std::fprintf(file, "%s", head.c_str());
        for (int number = 0; number < most_planted; ++number)
            if (passed_faults[number] != 0)
                std::fprintf(file, "%d ", number);
        std::fprintf(file, "\n");
        std::fclose(file);
    }

    const char* passed_;
    const char* killed_;
    const char* running_;
    std::string name_;
};

[[maybe_unused]] const bool listens = [] {
    testing::UnitTest::GetInstance()->listeners().Append(new PlantedListener);
    return true;
}();

} // namespace

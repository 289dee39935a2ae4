#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace tumpline::geo {

/// One thing wrong with what the user gave us, told so that it can be put right.
struct Problem {
    std::string file;     ///< as the user named it
    std::string place;    ///< "line 12", "/kit/3/mass", "band 1"; empty: the file as a whole
    std::string found;    ///< what stands there
    std::string expected; ///< what may stand there
    std::string advice;   ///< what to write instead; may be empty
};

/// "FILE: PLACE: found FOUND, expected EXPECTED; ADVICE", leaving out what is empty.
[[nodiscard]] std::string to_string(const Problem& problem);

/// Input that cannot be used. Holds every problem found, in the order in which they stand.
class InputError : public std::runtime_error {
  public:
    explicit InputError(std::vector<Problem> problems);

    [[nodiscard]] const std::vector<Problem>& problems() const noexcept { return problems_; }

  private:
    std::vector<Problem> problems_;
};

} // namespace tumpline::geo

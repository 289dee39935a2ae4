#pragma once

#include "planner/trip/value_reader.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Names in a trip file that mean something elsewhere in it.
namespace tumpline::planner {

using Names = std::vector<std::string_view>;

[[nodiscard]] std::string in_quotes(std::string_view text);

/// References to things by name; each unknown name is one problem, however often it stands.
class References {
  public:
    explicit References(Problems& problems) : problems_(problems) {}

    /// `noun` is what the name should be of.
    void check(std::string_view name,
               const Names& known,
               const std::string& place,
               std::string_view noun);

    /// Notes the problems. The names themselves are shown if they are few.
    void report();

  private:
    /// A name that nothing has, and where it stands.
    struct UnknownName {
        std::string name;
        std::string noun;
        Names known;
        std::vector<std::string> places;
    };

    Problems& problems_;
    std::vector<UnknownName> unknown_;
};

/// Where a list of names stands, and by which key.
struct NameList {
    std::string_view list; ///< "/party"
    std::string_view key;
};

/// Notes names that stand twice; case does not make two of one.
void check_once(const Names& names, const NameList& where, Problems& problems);

template <class Things> [[nodiscard]] Names names_of(const Things& things) {
    Names names;
    for (const auto& thing : things)
        names.push_back(thing.name);
    return names;
}

} // namespace tumpline::planner

#pragma once

#include "planner/trip/json_pointer.h"
#include "planner/trip/trip.h"

#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::planner {

/// One key of the trip file set from outside: a JSON pointer (RFC 6901) and the new value, JSON or
/// else taken as a string ("/days/set_off=07:00").
struct Setting {
    std::string pointer;
    std::string value;
};

/// Reads a trip file (JSON with comments; docs/trip-file.md), `settings` applied on top.
/// Throws: geo::InputError with every problem found, each with its JSON pointer, or line and column
/// for a syntax error.
[[nodiscard]] Trip read_trip(const std::filesystem::path& file,
                             const std::vector<Setting>& settings = {});

/// The same from text; `file` names it in messages and anchors relative paths.
[[nodiscard]] Trip read_trip_text(const std::string& text,
                                  const std::filesystem::path& file,
                                  const std::vector<Setting>& settings = {});

/// The text of a trip file, as it stands. Throws: geo::InputError if it cannot be read.
[[nodiscard]] std::string trip_file_text(const std::filesystem::path& file);

/// The trip that `text` says with `edits` made; throws as `read_trip`.
[[nodiscard]] Trip edited_trip(const std::string& text,
                               const std::filesystem::path& file,
                               const std::vector<Edit>& edits);

} // namespace tumpline::planner

#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tumpline::cli {

/// One record of comma-separated values: quoted where needed, ended by CR LF. Source: [RFC4180].
[[nodiscard]] std::string csv_record(const std::vector<std::string>& fields);

/// People's own text as a field: an apostrophe goes before a text that a spreadsheet would run as a
/// formula (= + - @, their wide forms, tab or line end at its start, also behind blanks that do not
/// show: no-break and zero-width ones, a byte order mark). Quoting is left to `csv_record`.
[[nodiscard]] std::string csv_text(std::string_view text);

/// A number with all its digits, a point as decimal sign.
[[nodiscard]] std::string csv_number(double number);

} // namespace tumpline::cli

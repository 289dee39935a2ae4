#pragma once

#include "geo/tracks/track.h"

#include <optional>
#include <string_view>

namespace tumpline::geo {

/// The decimal number that `text` is, blanks around it allowed; empty if it is anything else, is
/// too large for a double, or is not finite.
[[nodiscard]] std::optional<double> to_number(std::string_view text);

/// The instant that an XML Schema dateTime names ("2027-06-18T08:00:00.25+02:00"). Without an
/// offset it is taken as UTC, as GPX says. Empty if it is no such text or no such day.
[[nodiscard]] std::optional<Instant> to_instant(std::string_view text);

} // namespace tumpline::geo

#pragma once

#include "planner/trip/json_document.h"

#include <string>
#include <string_view>

namespace tumpline::planner {

/// The value at an RFC 6901 pointer; null if there is none, or if the pointer is empty.
[[nodiscard]] const JsonValue* find_at(const JsonValue& document, std::string_view pointer);

/// Sets the value at an RFC 6901 pointer, making objects on the way; "-" appends to a list.
/// `value` is JSON, or else taken as a text. Returns what may stand there instead of this pointer,
/// or "" if all is well; on a bad pointer the document stays as it was.
[[nodiscard]] std::string
set_at(JsonValue& document, std::string_view pointer, const std::string& value);

} // namespace tumpline::planner

#pragma once

#include "planner/trip/json_document.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// One change of a document, as a JSON Patch (RFC 6902) words it; `set` is what --set does: it
/// replaces what is there and adds what is not. Other than the standard's, `add` makes the objects
/// that lack on the way to its place.
struct Edit {
    enum class Way { set, add, replace, remove };

    Way way = Way::set;
    std::string pointer;
    std::string value{}; ///< JSON; of `set` also a text without quotation marks
};

/// "replace /days/set_off", for messages.
[[nodiscard]] std::string edit_words(const Edit& edit);

/// The parts of an RFC 6901 pointer, '~1' and '~0' turned back; empty if it is none.
[[nodiscard]] std::optional<std::vector<std::string>> pointer_parts(std::string_view pointer);

/// A part that counts in a list: digits without a leading zero.
[[nodiscard]] std::optional<std::size_t> list_index(const std::string& part);

/// The value of an edit. Throws: geo::InputError if it must be JSON and is none.
[[nodiscard]] JsonValue edit_value(const Edit& edit);

/// Makes the change. Returns what may stand there instead of this edit's pointer, or "" if all is
/// well; otherwise the document stays as it was. Throws: geo::InputError as `edit_value`.
[[nodiscard]] std::string edit_at(JsonValue& document, const Edit& edit);

/// The value at an RFC 6901 pointer; null if there is none, or if the pointer is empty.
[[nodiscard]] const JsonValue* find_at(const JsonValue& document, std::string_view pointer);

/// Sets the value at an RFC 6901 pointer, making objects on the way; "-" appends to a list.
/// `value` is JSON, or else taken as a text. Returns what may stand there instead of this pointer,
/// or "" if all is well; on a bad pointer the document stays as it was.
[[nodiscard]] std::string
set_at(JsonValue& document, std::string_view pointer, const std::string& value);

} // namespace tumpline::planner

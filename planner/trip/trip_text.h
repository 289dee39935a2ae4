#pragma once

#include "planner/trip/json_document.h"
#include "planner/trip/json_pointer.h"

#include <string>
#include <string_view>
#include <vector>

/// Changes of a trip file's text that leave alone what they do not change: comments, order,
/// quotation marks, line ends and a byte order mark stay.
namespace tumpline::planner {

/// A value as JSON in one line.
[[nodiscard]] std::string json_text(const JsonValue& value);

/// Whether two values are the same, wherever they stand.
[[nodiscard]] bool same_json(const JsonValue& a, const JsonValue& b);

/// The text with the edits made in their order. What it says is what `edit_at` makes of the
/// document; every line that no edit touches stays as it is, byte for byte, but for a comma that a
/// neighbour added or taken away needs. A new entry stands behind its neighbour as that one does:
/// on a line of its own or in the same one. An entry alone on its line goes with the line, its
/// remark behind it too; remarks on lines of their own stay. Throws: geo::InputError naming `file`
/// for what is not JSON and for an edit that cannot be made.
[[nodiscard]] std::string
edited_text(std::string_view text, const std::string& file, const std::vector<Edit>& edits);

} // namespace tumpline::planner

#pragma once

#include <string>
#include <string_view>

/// Text in markup and in drawings.
namespace tumpline::cli {

/// `one_line` of text with & < > " ' as entities: for markup that we write ourselves (the template
/// library escapes what goes through a template).
[[nodiscard]] std::string escaped(std::string_view text);

/// About how wide text is set, in heights of its letters; errs to the wide side.
[[nodiscard]] double width_em(std::string_view utf8);

} // namespace tumpline::cli

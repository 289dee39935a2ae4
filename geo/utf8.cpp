#include "geo/utf8.h"

#include <utf8proc.h>

namespace tumpline::geo {

std::optional<Utf8Character> first_character(std::string_view text) {
    if (text.empty())
        return std::nullopt;
    utf8proc_int32_t code = 0;
    const utf8proc_ssize_t bytes =
        utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                         static_cast<utf8proc_ssize_t>(text.size()),
                         &code);
    if (bytes <= 0)
        return std::nullopt;
    return Utf8Character{static_cast<char32_t>(code), static_cast<std::size_t>(bytes)};
}

} // namespace tumpline::geo

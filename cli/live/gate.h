#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// Who may ask the live page's server for what (docs/live.md, "Nobody else gets in").
namespace tumpline::cli {

/// What of a request decides; what it does not have is empty.
struct Asked {
    std::string method;
    std::string path;
    std::string host;
    std::string origin;
    std::string authorization;
    std::string content_encoding;
    std::string transfer_encoding;
    std::string content_length;
    bool wants_part = false; ///< a Range
};

struct Refusal {
    int status = 0;
    std::string_view why;
};

struct Gate {
    std::string key; ///< that every request for the trip brings along
    int port = 0;
};

/// The longest body that is read.
inline constexpr std::size_t longest_body = std::size_t{1024} * 1024;

/// Why a request is refused before its body is read; empty if it may pass.
[[nodiscard]] std::optional<Refusal> refused(const Asked& asked, const Gate& gate);

/// 128 bits of the system's own chance, in hexadecimal digits.
[[nodiscard]] std::string new_key();

} // namespace tumpline::cli

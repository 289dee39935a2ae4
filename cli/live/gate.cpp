#include "cli/live/gate.h"

#include <fmt/format.h>

#include <charconv>
#include <random>

namespace tumpline::cli {

namespace {

/// Compares all of both, so that the time taken tells nothing of where they differ.
bool same_key(std::string_view given, std::string_view wanted) {
    if (given.size() != wanted.size())
        return false;
    unsigned differing = 0;
    for (std::size_t i = 0; i < given.size(); ++i)
        differing |= static_cast<unsigned>(given[i] ^ wanted[i]);
    return differing == 0;
}

bool too_long(const std::string& content_length) {
    if (content_length.empty())
        return false;
    std::size_t bytes = 0;
    const char* const end = content_length.data() + content_length.size();
    const auto [stop, error] = std::from_chars(content_length.data(), end, bytes);
    return error != std::errc() || stop != end || bytes > longest_body;
}

} // namespace

std::optional<Refusal> refused(const Asked& asked, const Gate& gate) {
    const std::string here = fmt::format("127.0.0.1:{}", gate.port);
    const std::string named = fmt::format("localhost:{}", gate.port);
    if (asked.host != here && asked.host != named)
        return Refusal{403, "this server answers under its own address only"};
    if (!asked.origin.empty() && asked.origin != "http://" + asked.host)
        return Refusal{403, "another page may not ask"};
    if (asked.path.starts_with("/api/") && !same_key(asked.authorization, "Bearer " + gate.key))
        return Refusal{401, "the key of the address lacks"};
    if (asked.method != "GET" && asked.method != "HEAD" && asked.method != "POST")
        return Refusal{405, "only GET and POST are answered"};
    if (!asked.transfer_encoding.empty() ||
        (asked.method == "POST" && asked.content_length.empty()))
        return Refusal{411, "a body needs its length beforehand"};
    if (!asked.content_encoding.empty())
        return Refusal{415, "a body must be plain JSON"};
    if (too_long(asked.content_length))
        return Refusal{413, "a body is at most 1 MiB long"};
    if (asked.wants_part)
        return Refusal{416, "no parts of a file are sent"};
    return std::nullopt;
}

std::string new_key() {
    std::random_device chance;
    std::string key;
    for (int word = 0; word < 4; ++word)
        key += fmt::format("{:08x}", static_cast<unsigned>(chance()) & 0xFFFFFFFFU);
    return key;
}

} // namespace tumpline::cli

#include "geo/gate/plain_file.h"

#include "geo/gate/regular_file.h"
#include "geo/input_error.h"

#include <cstdio>
#include <memory>
#include <system_error>

namespace tumpline::geo {

namespace {

/// What is wrong with a file as a whole.
struct WholeFault {
    std::string_view found;
    std::string_view expected;
    std::string_view advice;
};

[[noreturn]] void refuse_file(const std::filesystem::path& file, const WholeFault& fault) {
    throw InputError({{.file = file.string(),
                       .place = "",
                       .found = std::string(fault.found),
                       .expected = std::string(fault.expected),
                       .advice = std::string(fault.advice)}});
}

bool is_packed(std::string_view bytes) {
    return bytes.starts_with("PK\x03\x04") || bytes.starts_with("\x1F\x8B");
}

} // namespace

std::string require_plain_file(const std::filesystem::path& file, const Wanted& wanted) {
    const std::string name = file.string();
    if (name.starts_with("/vsi") || name.find("://") != std::string::npos)
        refuse_file(file,
                    {.found = "an address",
                     .expected = "a file on this machine",
                     .advice = "download it first: nothing is fetched from the network"});
    const auto fail = [&](std::string_view found, std::string_view advice) {
        refuse_file(file, {.found = found, .expected = wanted.what, .advice = advice});
    };
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(file, error);
    if (!std::filesystem::exists(status))
        fail("no such file", wanted.missing);
    if (std::filesystem::is_directory(status))
        fail("a folder", "name a file in it");
    if (!std::filesystem::is_regular_file(status))
        fail("a device or pipe", "copy what it gives into a file first");
    const std::unique_ptr<std::FILE, decltype(&std::fclose)> in(open_regular_file(file),
                                                                std::fclose);
    if (!in)
        fail("a file that may not be read", "check its permissions");
    std::string bytes(4096, '\0');
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), in.get()));
    if (bytes.empty())
        fail("an empty file", "export or copy it again");
    if (is_packed(bytes))
        fail("a packed file", "unpack it first");
    return bytes;
}

} // namespace tumpline::geo

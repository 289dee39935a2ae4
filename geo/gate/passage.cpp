#include "geo/gate/passage.h"

#include "geo/gate/regular_file.h"

#include <cpl_string.h>
#include <cpl_vsi.h>
#include <cpl_vsi_virtual.h>
#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstring>
#include <deque>
#include <memory>
#include <string_view>
#include <system_error>
#include <utility>

namespace tumpline::geo {

namespace {

thread_local const Folders* open_folders = nullptr; ///< of the innermost Passage

bool is_within(const std::filesystem::path& canonical, const std::filesystem::path& folder) {
    return std::mismatch(folder.begin(), folder.end(), canonical.begin(), canonical.end()).first ==
           folder.end();
}

/// Files that GDAL looks for beside a raster: overviews and masks may be of any format and lead
/// anywhere. For GDAL there are none.
bool is_company(const std::filesystem::path& path) {
    constexpr std::array<std::string_view, 4> company{".ovr", ".msk", ".rrd", ".aux"};
    return std::ranges::find(company, path.extension().string()) != company.end();
}

/// The file that GDAL may read under this name; empty if it may not.
std::filesystem::path admitted(const char* name) {
    if (open_folders == nullptr || is_company(name))
        return {};
    std::error_code error;
    std::filesystem::path canonical = std::filesystem::canonical(name, error);
    const bool inside = !error && std::ranges::any_of(*open_folders, [&](const auto& folder) {
        return is_within(canonical, folder);
    });
    return inside ? std::move(canonical) : std::filesystem::path();
}

// GDAL's file system for names without a prefix, in its plug-in interface of C functions.

void* on_open(void* /*user*/, const char* name, const char* access) {
    if (std::strpbrk(access, "wa+") != nullptr)
        return nullptr;
    const std::filesystem::path file = admitted(name);
    return file.empty() ? nullptr : open_regular_file(file);
}

int on_stat(void* /*user*/, const char* name, VSIStatBufL* status, int /*flags*/) {
    const std::filesystem::path file = admitted(name);
    if (file.empty() || ::stat64(file.c_str(), status) != 0)
        return -1;
    return S_ISREG(status->st_mode) || S_ISDIR(status->st_mode) ? 0 : -1;
}

std::FILE* stream(void* file) {
    return static_cast<std::FILE*>(file);
}

vsi_l_offset on_tell(void* file) {
    return static_cast<vsi_l_offset>(::ftello(stream(file)));
}

int on_seek(void* file, vsi_l_offset offset, int whence) {
    return ::fseeko(stream(file), static_cast<off_t>(offset), whence);
}

std::size_t on_read(void* file, void* buffer, std::size_t size, std::size_t count) {
    return std::fread(buffer, size, count, stream(file));
}

int on_eof(void* file) {
    return std::feof(stream(file));
}

int on_close(void* file) {
    return std::fclose(stream(file));
}

// The same for names that are shut altogether.

void* never_open(void* /*user*/, const char* /*name*/, const char* /*access*/) {
    return nullptr;
}

int never_stat(void* /*user*/, const char* /*name*/, VSIStatBufL* /*status*/, int /*flags*/) {
    return -1;
}

using Callbacks = std::unique_ptr<VSIFilesystemPluginCallbacksStruct,
                                  decltype(&VSIFreeFilesystemPluginCallbacksStruct)>;

Callbacks callbacks() {
    Callbacks made(VSIAllocFilesystemPluginCallbacksStruct(),
                   VSIFreeFilesystemPluginCallbacksStruct);
    made->open = never_open;
    made->stat = never_stat;
    made->tell = on_tell;
    made->seek = on_seek;
    made->read = on_read;
    made->eof = on_eof;
    made->close = on_close;
    return made;
}

/// Puts another file system in the place of GDAL's own, which is kept: others may point to it. So
/// is the prefix: GDAL's plug-in keeps the pointer that it is given, and compares with it later.
void replace(const char* prefix, const VSIFilesystemPluginCallbacksStruct& by) {
    static auto* const replaced = new std::vector<VSIFilesystemHandler*>; // to the very end
    static auto* const prefixes = new std::deque<std::string>;            // likewise
    replaced->push_back(VSIFileManager::GetHandler(prefix));
    VSIInstallPluginHandler(prefixes->emplace_back(prefix).c_str(), &by);
}

} // namespace

Folders folders_around(const std::filesystem::path& file, const std::filesystem::path& more) {
    Folders folders;
    const auto add = [&](const std::filesystem::path& folder) {
        std::error_code error;
        std::filesystem::path canonical = std::filesystem::canonical(folder, error);
        if (!error && std::ranges::find(folders, canonical) == folders.end())
            folders.push_back(std::move(canonical));
    };
    std::error_code error;
    const std::filesystem::path absolute = std::filesystem::absolute(file, error);
    add(absolute.parent_path());
    if (const auto target = std::filesystem::canonical(absolute, error); !error)
        add(target.parent_path());
    if (!more.empty())
        add(more);
    return folders;
}

bool is_plain_file_within(const std::filesystem::path& path, const Folders& folders) {
    std::error_code error;
    const std::filesystem::path canonical = std::filesystem::canonical(path, error);
    return !error && std::filesystem::is_regular_file(canonical, error) &&
           std::ranges::any_of(folders,
                               [&](const auto& folder) { return is_within(canonical, folder); });
}

void install_file_gate() {
    const Callbacks shut = callbacks();
    const CPLStringList prefixes(VSIGetFileSystemsPrefixes());
    for (int index = 0; index < prefixes.size(); ++index)
        if (std::string_view(prefixes[index]) != "/vsimem/")
            replace(prefixes[index], *shut);
    const Callbacks plain = callbacks();
    plain->open = on_open;
    plain->stat = on_stat;
    replace("", *plain);
}

Passage::Passage(const Folders& folders) : outer_(std::exchange(open_folders, &folders)) {}

Passage::~Passage() {
    open_folders = outer_;
}

} // namespace tumpline::geo

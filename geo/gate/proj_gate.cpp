#include "geo/gate/proj_gate.h"

#include "geo/gate/passage.h"
#include "geo/gate/quiet_gdal.h"
#include "geo/gate/regular_file.h"

#include <ogr_spatialref.h>
#include <proj.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <mutex>
#include <string>
#include <string_view>

namespace tumpline::geo {

namespace {

/// PROJ's own folders, as PROJ itself looks for them: the environment, the system's.
const Folders& proj_folders() {
    static const Folders folders = [] {
        Folders found;
        std::string_view rest = proj_info().searchpath;
        while (!rest.empty()) {
            const std::string_view folder = rest.substr(0, rest.find(':'));
            std::error_code error;
            if (auto canonical = std::filesystem::canonical(folder, error); !error)
                found.push_back(std::move(canonical));
            rest.remove_prefix(std::min(folder.size() + 1, rest.size()));
        }
        return found;
    }();
    return folders;
}

// PROJ's files, in its interface of C functions.

std::FILE* stream_of(PROJ_FILE_HANDLE* file) {
    return reinterpret_cast<std::FILE*>(file);
}

PROJ_FILE_HANDLE*
on_proj_open(PJ_CONTEXT* /*context*/, const char* name, PROJ_OPEN_ACCESS access, void* /*user*/) {
    if (access != PROJ_OPEN_ACCESS_READ_ONLY || !is_plain_file_within(name, proj_folders()))
        return nullptr;
    return reinterpret_cast<PROJ_FILE_HANDLE*>(open_regular_file(name));
}

std::size_t on_proj_read(PJ_CONTEXT* /*context*/,
                         PROJ_FILE_HANDLE* file,
                         void* buffer,
                         std::size_t size,
                         void* /*user*/) {
    return std::fread(buffer, 1, size, stream_of(file));
}

std::size_t on_proj_write(PJ_CONTEXT* /*context*/,
                          PROJ_FILE_HANDLE* /*file*/,
                          const void* /*buffer*/,
                          std::size_t /*size*/,
                          void* /*user*/) {
    return 0;
}

int on_proj_seek(
    PJ_CONTEXT* /*context*/, PROJ_FILE_HANDLE* file, long long offset, int whence, void* /*user*/) {
    return ::fseeko(stream_of(file), static_cast<off_t>(offset), whence) == 0 ? 1 : 0;
}

unsigned long long on_proj_tell(PJ_CONTEXT* /*context*/, PROJ_FILE_HANDLE* file, void* /*user*/) {
    return static_cast<unsigned long long>(::ftello(stream_of(file)));
}

void on_proj_close(PJ_CONTEXT* /*context*/, PROJ_FILE_HANDLE* file, void* /*user*/) {
    std::fclose(stream_of(file));
}

int on_proj_exists(PJ_CONTEXT* /*context*/, const char* name, void* /*user*/) {
    return is_plain_file_within(name, proj_folders()) ? 1 : 0;
}

int change_nothing(PJ_CONTEXT* /*context*/, const char* /*name*/, void* /*user*/) {
    return 0;
}

int rename_nothing(PJ_CONTEXT* /*context*/,
                   const char* /*from*/,
                   const char* /*to*/,
                   void* /*user*/) {
    return 0;
}

void hold(PJ_CONTEXT* context) {
    PROJ_FILE_API files{};
    files.version = 1;
    files.open_cbk = on_proj_open;
    files.read_cbk = on_proj_read;
    files.write_cbk = on_proj_write;
    files.seek_cbk = on_proj_seek;
    files.tell_cbk = on_proj_tell;
    files.close_cbk = on_proj_close;
    files.exists_cbk = on_proj_exists;
    files.mkdir_cbk = change_nothing;
    files.unlink_cbk = change_nothing;
    files.rename_cbk = rename_nothing;
    proj_context_set_fileapi(context, &files, nullptr);
}

/// GDAL hands its contexts to nobody, but PROJ asks this function with them where a file is, the
/// database first. New contexts inherit it from the default one.
const char* on_proj_find(PJ_CONTEXT* context, const char* /*name*/, void* /*user*/) {
    hold(context);
    return nullptr; // as if not asked
}

} // namespace

void DestroyProjContext::operator()(pj_ctx* context) const {
    proj_context_destroy(context);
}

ProjContext make_proj_context() {
    ProjContext context(proj_context_create());
    proj_log_level(context.get(), PJ_LOG_NONE);
    hold(context.get());
    proj_context_set_enable_network(context.get(), 0);
    return context;
}

bool close_gdals_proj() {
    static std::once_flag once;
    std::call_once(once, [] {
        static_cast<void>(proj_folders());
        proj_context_set_file_finder(nullptr, on_proj_find, nullptr);
    });
    thread_local const bool found = [] {
        const QuietGdal quiet;
        OGRSpatialReference any;
        return any.importFromEPSG(4326) == OGRERR_NONE;
    }();
    return found;
}

} // namespace tumpline::geo

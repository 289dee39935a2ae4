// Loaded before the libraries of a program (LD_PRELOAD): lets the n-th call of one kind fail, once.
//   TUMPLINE_FAULT=KIND:N   KIND is one of the names in `kinds` below, N counts from 1
//   TUMPLINE_CALLS=FILE     the number of calls of each kind is written there when the program ends
// Calls are counted from main on: what the loader and the libraries do before is not ours.
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <new>

namespace {

enum Kind {
    memory,
    from_new,
    open_eio,
    read_eio,
    read_short,
    read_eintr,
    write_enospc,
    write_eio,
    write_eintr,
    write_short,
    sync_eio,
    close_eio,
    rename_eio,
    make_enospc,
    last_kind
};

struct Fault {
    const char* name;
    long count;
};

Fault kinds[last_kind] = {{"malloc", 0},
                          {"new", 0},
                          {"open:EIO", 0},
                          {"read:EIO", 0},
                          {"read:short", 0},
                          {"read:EINTR", 0},
                          {"write:ENOSPC", 0},
                          {"write:EIO", 0},
                          {"write:EINTR", 0},
                          {"write:short", 0},
                          {"fsync:EIO", 0},
                          {"close:EIO", 0},
                          {"rename:EIO", 0},
                          {"make:ENOSPC", 0}};

bool counting = false;
int chosen = -1;
long chosen_number = 0;

/// Counts a call; whether this is the one that fails.
bool fails(Kind kind) {
    if (!counting)
        return false;
    const long number = __atomic_add_fetch(&kinds[kind].count, 1, __ATOMIC_RELAXED);
    return kind == chosen && number == chosen_number;
}

/// The same, and why.
bool fails_with(Kind kind, int error) {
    if (!fails(kind))
        return false;
    errno = error;
    return true;
}

template <class Function> Function real(const char* name) {
    return reinterpret_cast<Function>(dlsym(RTLD_NEXT, name));
}

void read_settings() {
    const char* text = std::getenv("TUMPLINE_FAULT");
    const char* colon = text ? std::strrchr(text, ':') : nullptr;
    if (colon == nullptr)
        return;
    for (int kind = 0; kind < last_kind; ++kind)
        if (std::strlen(kinds[kind].name) == static_cast<std::size_t>(colon - text) &&
            std::strncmp(kinds[kind].name, text, static_cast<std::size_t>(colon - text)) == 0)
            chosen = kind;
    chosen_number = std::atol(colon + 1);
}

/// The counts so far, written with the plainest of calls.
void tell_counts() {
    counting = false;
    const char* file = std::getenv("TUMPLINE_CALLS");
    if (file == nullptr)
        return;
    const int out = ::open(file, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    if (out < 0)
        return;
    for (const Fault& kind : kinds)
        ::dprintf(out, "%s %ld\n", kind.name, kind.count);
    ::close(out);
}

int (*program_main)(int, char**, char**);

int counted_main(int count, char** words, char** environment) {
    read_settings();
    std::atexit(tell_counts);
    counting = true;
    const int code = program_main(count, words, environment);
    counting = false; // what runs when the program has given its answer is not stepped through
    return code;
}

} // namespace

extern "C" {

void* __libc_malloc(std::size_t);
void* __libc_calloc(std::size_t, std::size_t);
void* __libc_realloc(void*, std::size_t);

int __libc_start_main(int (*main)(int, char**, char**),
                      int count,
                      char** words,
                      void (*init)(),
                      void (*fini)(),
                      void (*loader_fini)(),
                      void* stack_end) {
    program_main = main;
    using Start = int (*)(
        int (*)(int, char**, char**), int, char**, void (*)(), void (*)(), void (*)(), void*);
    return real<Start>("__libc_start_main")(
        counted_main, count, words, init, fini, loader_fini, stack_end);
}

void* malloc(std::size_t size) {
    if (fails_with(memory, ENOMEM))
        return nullptr;
    return __libc_malloc(size);
}

void* calloc(std::size_t count, std::size_t size) {
    if (fails_with(memory, ENOMEM))
        return nullptr;
    return __libc_calloc(count, size);
}

void* realloc(void* old, std::size_t size) {
    if (fails_with(memory, ENOMEM))
        return nullptr;
    return __libc_realloc(old, size);
}

ssize_t read(int file, void* to, std::size_t size) {
    static const auto real_read = real<ssize_t (*)(int, void*, std::size_t)>("read");
    if (fails_with(read_eio, EIO) || fails_with(read_eintr, EINTR))
        return -1;
    if (size > 1 && fails(read_short))
        size = (size + 1) / 2;
    return real_read(file, to, size);
}

std::size_t fread(void* to, std::size_t size, std::size_t count, FILE* file) {
    static const auto real_fread =
        real<std::size_t (*)(void*, std::size_t, std::size_t, FILE*)>("fread");
    if (fails(read_eio)) {
        errno = EIO;
        file->_flags |= 0x20; // as the library marks an error of reading
        return 0;
    }
    return real_fread(to, size, count, file);
}

ssize_t pread64(int file, void* to, std::size_t size, off64_t at) {
    static const auto real_pread = real<ssize_t (*)(int, void*, std::size_t, off64_t)>("pread64");
    if (fails_with(read_eio, EIO) || fails_with(read_eintr, EINTR))
        return -1;
    if (size > 1 && fails(read_short))
        size = (size + 1) / 2;
    return real_pread(file, to, size, at);
}

ssize_t write(int file, const void* from, std::size_t size) {
    static const auto real_write = real<ssize_t (*)(int, const void*, std::size_t)>("write");
    if (fails_with(write_enospc, ENOSPC) || fails_with(write_eio, EIO) ||
        fails_with(write_eintr, EINTR))
        return -1;
    if (size > 1 && fails(write_short))
        size /= 2;
    return real_write(file, from, size);
}

int fsync(int file) {
    static const auto real_fsync = real<int (*)(int)>("fsync");
    if (fails_with(sync_eio, EIO))
        return -1;
    return real_fsync(file);
}

int close(int file) {
    static const auto real_close = real<int (*)(int)>("close");
    if (fails(close_eio)) { // the descriptor is gone all the same, as Linux has it
        real_close(file);
        errno = EIO;
        return -1;
    }
    return real_close(file);
}

int rename(const char* from, const char* to) {
    static const auto real_rename = real<int (*)(const char*, const char*)>("rename");
    if (fails_with(rename_eio, EIO))
        return -1;
    return real_rename(from, to);
}

int mkostemps(char* name, int suffix, int flags) {
    static const auto real_make = real<int (*)(char*, int, int)>("mkostemps");
    if (fails_with(make_enospc, ENOSPC))
        return -1;
    return real_make(name, suffix, flags);
}

static int open_with(const char* entry, const char* name, int flags, mode_t mode) {
    if (fails((flags & O_CREAT) != 0 ? make_enospc : open_eio)) {
        errno = (flags & O_CREAT) != 0 ? ENOSPC : EIO;
        return -1;
    }
    return real<int (*)(const char*, int, ...)>(entry)(name, flags, mode);
}

int open(const char* name, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return open_with("open", name, flags, mode);
}

int open64(const char* name, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return open_with("open64", name, flags, mode);
}

FILE* fopen(const char* name, const char* how) {
    static const auto real_fopen = real<FILE* (*)(const char*, const char*)>("fopen");
    if (fails_with(open_eio, EIO))
        return nullptr;
    return real_fopen(name, how);
}

FILE* fopen64(const char* name, const char* how) {
    static const auto real_fopen = real<FILE* (*)(const char*, const char*)>("fopen64");
    if (fails_with(open_eio, EIO))
        return nullptr;
    return real_fopen(name, how);
}

} // extern "C"

void* operator new(std::size_t size) {
    if (fails(from_new))
        throw std::bad_alloc();
    if (void* at = __libc_malloc(size == 0 ? 1 : size))
        return at;
    throw std::bad_alloc();
}

void* operator new[](std::size_t size) {
    return operator new(size);
}

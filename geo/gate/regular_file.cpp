#include "geo/gate/regular_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tumpline::geo {

std::FILE* open_regular_file(const std::filesystem::path& path) {
    struct stat status {};

    if (::stat(path.c_str(), &status) != 0 || !S_ISREG(status.st_mode))
        return nullptr;
    // looked at again when it is open: it may have been changed for a pipe in between
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
    if (descriptor < 0)
        return nullptr;
    std::FILE* file = ::fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode)
                          ? ::fdopen(descriptor, "rb")
                          : nullptr;
    if (file == nullptr)
        ::close(descriptor);
    return file;
}

} // namespace tumpline::geo

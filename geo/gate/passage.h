#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::geo {

/// Folders in and below which GDAL may read, as canonical paths.
using Folders = std::vector<std::filesystem::path>;

/// The folder that `file` stands in, also where a link leads to, and `more`, if it is a folder.
[[nodiscard]] Folders folders_around(const std::filesystem::path& file,
                                     const std::filesystem::path& more = {});

/// Whether `path` leads to a regular file in or below one of the folders, links followed.
[[nodiscard]] bool is_plain_file_within(const std::filesystem::path& path, const Folders& folders);

/// Takes GDAL's file systems out of its hands, once and for the whole program: those that fetch,
/// unpack or start something are shut for good, and files of this machine are opened where a
/// Passage lets them, for reading only, if they are regular files. Memory ("/vsimem/") stays open.
void install_file_gate();

/// While it lives, GDAL may read in and below some folders in this thread; without one it reads
/// nothing. The innermost counts.
class Passage {
  public:
    /// `folders` must outlive it.
    explicit Passage(const Folders& folders);
    ~Passage();
    Passage(const Passage&) = delete;
    Passage& operator=(const Passage&) = delete;
    Passage(Passage&&) = delete;
    Passage& operator=(Passage&&) = delete;

  private:
    const Folders* outer_;
};

} // namespace tumpline::geo

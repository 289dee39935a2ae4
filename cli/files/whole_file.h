#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::cli {

/// An output file and the files that it must not replace.
struct OutputFile {
    std::filesystem::path file;
    std::vector<std::filesystem::path> inputs; ///< everything that was read for it
    bool overwrite = false; ///< replace whatever stands there, not only what tumpline wrote
};

/// Writes a file whole or not at all: into a new file in the same folder, flushed to the disk and
/// then renamed, so that a reader finds the old content or the new, never half of it. What stood
/// there before is replaced if tumpline wrote it and nobody changed it (output_mark.h), or if
/// `overwrite` says so; its permissions are kept. A symbolic link is followed.
/// Throws: geo::InputError if `file` is one of the inputs (by identity, not by name), somebody
/// else's, a folder, a device or a link that leads nowhere, or if its folder is missing, cannot be
/// written to, or the disk is full. Nothing is left behind then, nor if a signal stops the program.
void write_whole(const OutputFile& output, std::string_view content);

/// A file and what is to stand in it.
struct WholeFile {
    OutputFile output;
    std::string content;
};

/// The same for several files, all of them or none: each lies on the disk whole, under another
/// name, before the first takes its place; if one cannot, those before it are put back.
void write_all_whole(const std::vector<WholeFile>& files);

/// The same for a file that must not be there yet; not even one that appears meanwhile is replaced.
/// Throws: geo::InputError as `write_whole`, and if something of that name is there.
void write_new(const OutputFile& output, std::string_view content);

/// The same for a library that insists on writing to a path of its own: `write` is given the name
/// of an empty temporary file in the same folder, with the same suffix. What `write` throws is
/// passed on after the temporary file is removed.
void write_whole_with(const OutputFile& output,
                      const std::function<void(const std::filesystem::path&)>& write);

/// Everything of `write_whole` that can be known before the content is: call it before a long
/// computation, so that a wrong name is told at once.
void check_writable(const OutputFile& output);

} // namespace tumpline::cli

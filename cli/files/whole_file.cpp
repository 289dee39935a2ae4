#include "cli/files/whole_file.h"

#include "cli/files/output_mark.h"
#include "cli/files/temporary_names.h"
#include "geo/input_error.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <memory>
#include <string>
#include <system_error>
#include <utility>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse_to_write(const fs::path& file, std::string found, std::string advice) {
    throw geo::InputError({{.file = file.string(),
                            .place = {},
                            .found = std::move(found),
                            .expected = "a file that can be written",
                            .advice = std::move(advice)}});
}

[[noreturn]] void refuse_errno(const fs::path& file, int error) {
    std::string advice;
    if (error == ENOSPC || error == EDQUOT)
        advice = "make room on the disk, or write elsewhere; nothing was changed";
    else if (error == EFBIG)
        advice = "write elsewhere: this place takes no file of that size; nothing was changed";
    else if (error == EACCES || error == EPERM || error == EROFS)
        advice = "choose a folder that you may write to";
    else if (error == ENOENT)
        advice = "make the folder first";
    else if (error == ENAMETOOLONG)
        advice = "choose a shorter name";
    refuse_to_write(file, std::generic_category().message(error), std::move(advice));
}

/// A temporary file beside its target; removed unless it was renamed.
class Temporary {
  public:
    explicit Temporary(const fs::path& target) : target_(target), folder_(target.parent_path()) {
        const std::string suffix = target.extension().string();
        std::string name = (folder_ / fmt::format(".tumpline-XXXXXX{}", suffix)).string();
        const SignalsHeld held;
        file_ = ::mkostemps(name.data(), static_cast<int>(suffix.size()), O_CLOEXEC);
        if (file_ < 0)
            refuse_errno(target, errno);
        try {
            name_ = name;
            old_name_ = name + ".old";
            listed_ = list_temporary(name);
        } catch (...) { // no memory for the names: nobody else would remove it
            ::close(file_);
            ::unlink(name.c_str());
            throw;
        }
    }

    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;

    ~Temporary() {
        if (file_ >= 0)
            ::close(file_);
        const SignalsHeld held;
        if (!name_.empty())
            ::unlink(name_.c_str());
        forget_old();
        forget_temporary(listed_);
    }

    [[nodiscard]] const fs::path& name() const noexcept { return name_; }

    void write(std::string_view content) const {
        while (!content.empty()) {
            const ssize_t written = ::write(file_, content.data(), content.size());
            if (written < 0 && errno == EINTR)
                continue;
            if (written < 0)
                refuse_errno(target_, errno);
            content.remove_prefix(static_cast<std::size_t>(written));
        }
    }

    /// Makes the content last, under its temporary name still: what can fail for want of room has
    /// failed after this.
    void settle() {
        // A library may have replaced the file under its name: it is the name that is renamed, so
        // it is the name that is opened and flushed.
        ::close(file_);
        file_ = ::open(name_.c_str(), O_RDWR | O_CLOEXEC);
        if (file_ < 0)
            refuse_errno(target_, errno);

        struct stat old {};

        const bool replaces = ::stat(target_.c_str(), &old) == 0;
        const mode_t mask = ::umask(0);
        ::umask(mask);
        const mode_t mode = replaces ? (old.st_mode & 0777U) : (0666U & ~mask);
        if (::fchmod(file_, mode) != 0 || ::fsync(file_) != 0)
            refuse_errno(target_, errno);
        if (::close(std::exchange(file_, -1)) != 0)
            refuse_errno(target_, errno);
    }

    /// Puts the settled file in the target's place.
    void keep() {
        if (::rename(name_.c_str(), target_.c_str()) != 0)
            refuse_errno(target_, errno);
        name_.clear();
        flush_folder();
    }

    /// The same, so that it can be undone until this object goes: what stood there keeps a second
    /// name meanwhile.
    void keep_for_now() {
        kept_ = ::link(target_.c_str(), old_name_.c_str()) == 0;
        if (!kept_ && errno != ENOENT) // a file system without links
            kept_ = ::rename(target_.c_str(), old_name_.c_str()) == 0;
        const int renamed = ::rename(name_.c_str(), target_.c_str());
        const int error = errno;
        if (renamed != 0) {
            put_back();
            refuse_errno(target_, error);
        }
        placed_ = true;
        name_.clear();
        flush_folder();
    }

    /// Makes `keep_for_now` last.
    void forget_old() {
        if (kept_)
            ::unlink(old_name_.c_str());
        kept_ = false;
    }

    /// Undoes `keep_for_now`.
    void put_back() {
        if (kept_) {
            ::rename(old_name_.c_str(), target_.c_str());
            ::unlink(old_name_.c_str()); // two names of one file: renaming leaves both
        } else if (placed_) {
            ::unlink(target_.c_str());
        }
        kept_ = placed_ = false;
    }

  private:
    /// Makes the new name itself last a power cut; where a file system cannot do that, the file is
    /// there all the same.
    void flush_folder() const {
        const int opened = ::open(folder_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (opened < 0)
            return;
        ::fsync(opened);
        ::close(opened);
    }

    fs::path target_;
    fs::path folder_;
    fs::path name_;
    std::string old_name_; ///< of what stood there, while this may be undone
    ListedName* listed_ = nullptr;
    bool kept_ = false;   ///< what stood there has its second name
    bool placed_ = false; ///< the new file stands there
    int file_ = -1;
};

[[noreturn]] void refuse_to_replace(const fs::path& file, Authorship whose) {
    throw geo::InputError(
        {{.file = file.string(),
          .place = {},
          .found = whose == Authorship::changed
                       ? "a file that was changed since tumpline wrote it"
                       : "a file that tumpline did not write, or whose format keeps no mark of it",
          .expected = "a new name, or a file as tumpline wrote it",
          .advice = "choose another name, or replace it with --overwrite"}});
}

/// Where the bytes will stand: absolute, links followed.
fs::path target_of(const OutputFile& output) {
    if (output.file.empty())
        refuse_to_write(output.file, "no file name", "name the file to write");
    std::error_code error;
    const fs::file_status status = fs::status(output.file, error);
    if (!fs::exists(status) && fs::is_symlink(fs::symlink_status(output.file, error)))
        refuse_to_write(
            output.file, "a link that leads nowhere", "remove the link, or name a file");
    if (status.type() == fs::file_type::directory)
        refuse_to_write(output.file, "a folder", "name a file in it");
    if (fs::exists(status) && status.type() != fs::file_type::regular)
        refuse_to_write(output.file, "something that is no plain file", "name a plain file");
    for (const fs::path& input : output.inputs)
        if (fs::equivalent(output.file, input, error))
            refuse_to_write(output.file,
                            fmt::format("\"{}\", which this command reads", input.string()),
                            "choose another name; inputs are never written over");
    // Made absolute first: a name alone that is not there yet stays a name alone otherwise.
    const fs::path target = fs::weakly_canonical(fs::absolute(output.file), error);
    fs::path absolute = error || target.empty() ? fs::absolute(output.file) : target;
    const fs::path folder = absolute.parent_path();
    if (!fs::is_directory(folder, error))
        refuse_to_write(output.file,
                        fmt::format("no folder \"{}\"", output.file.parent_path().string()),
                        "make the folder first");
    return absolute;
}

/// The same, and what stands there may be replaced.
fs::path replaceable_target_of(const OutputFile& output) {
    fs::path target = target_of(output);
    if (!output.overwrite) {
        const Authorship whose = authorship_of(target);
        if (whose == Authorship::changed || whose == Authorship::other)
            refuse_to_replace(output.file, whose);
    }
    return target;
}

} // namespace

void write_whole(const OutputFile& output, std::string_view content) {
    Temporary temporary(replaceable_target_of(output));
    temporary.write(content);
    temporary.settle();
    temporary.keep();
}

void write_all_whole(const std::vector<WholeFile>& files) {
    std::vector<std::unique_ptr<Temporary>> temporaries;
    for (const WholeFile& file : files) {
        temporaries.push_back(std::make_unique<Temporary>(replaceable_target_of(file.output)));
        temporaries.back()->write(file.content);
        temporaries.back()->settle();
    }
    const SignalsHeld held; // from here on all of them or none
    try {
        for (const std::unique_ptr<Temporary>& temporary : temporaries)
            temporary->keep_for_now();
    } catch (...) {
        for (const std::unique_ptr<Temporary>& temporary : temporaries)
            temporary->put_back(); // where it was put in place
        throw;
    }
    for (const std::unique_ptr<Temporary>& temporary : temporaries)
        temporary->forget_old();
}

void write_new(const OutputFile& output, std::string_view content) {
    const fs::path target = target_of(output);
    Temporary temporary(target);
    temporary.write(content);
    temporary.settle();
    const SignalsHeld held; // an empty file does not stay behind
    // The name is taken first, with an empty file, so that two who write at once cannot both win.
    const int taken = ::open(target.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (taken < 0 && errno == EEXIST)
        refuse_to_write(output.file,
                        "a file that is there already",
                        "choose another name; this command replaces nothing");
    if (taken < 0)
        refuse_errno(output.file, errno);
    ::close(taken);
    try {
        temporary.keep();
    } catch (...) {
        ::unlink(target.c_str());
        throw;
    }
}

void write_whole_with(const OutputFile& output,
                      const std::function<void(const std::filesystem::path&)>& write) {
    Temporary temporary(replaceable_target_of(output));
    write(temporary.name());
    temporary.settle();
    temporary.keep();
}

void check_writable(const OutputFile& output) {
    const Temporary temporary(replaceable_target_of(output));
}

} // namespace tumpline::cli

#pragma once

#include <filesystem>
#include <fstream>
#include <random>
#include <stdexcept>
#include <string>
#include <string_view>

namespace tumpline::test {

/// A folder of its own for one test, removed with all it holds.
class TempFolder {
  public:
    TempFolder() {
        std::random_device draw;
        for (int attempt = 0; attempt < 100; ++attempt) {
            path_ = std::filesystem::temp_directory_path() /
                    ("tumpline-test-" + std::to_string(draw()));
            if (std::filesystem::create_directory(path_))
                return;
        }
        throw std::runtime_error("cannot make a folder for the test");
    }

    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

    /// Writes `text` to the file `name` in the folder; returns where it is.
    std::filesystem::path write(const std::string& name, std::string_view text) const {
        const std::filesystem::path file = path_ / name;
        std::ofstream out(file, std::ios::binary);
        out.write(text.data(), static_cast<std::streamsize>(text.size()));
        out.close();
        if (!out)
            throw std::runtime_error("cannot write " + file.string());
        return file;
    }

  private:
    std::filesystem::path path_;
};

} // namespace tumpline::test

// Hands every file of the corpora, and the spoilt files of the same kind, to its fuzz target once:
//     replay_corpora TESTS
// A target aborts where something is wrong; the last file that was named is the one.
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace {

struct Target {
    std::string_view name;
    int (*take)(const std::uint8_t*, std::size_t);
};

} // namespace

#include "replay_targets.inc"

/// The mutator of a target asks libFuzzer for this; nothing is mutated here.
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t*, std::size_t size, std::size_t) {
    return size;
}

namespace {

namespace fs = std::filesystem;

/// The files that a target reads: its corpus, and what the tests keep of that kind.
std::vector<fs::path> files_of(const fs::path& tests, std::string_view target) {
    std::vector<fs::path> files;
    const auto add = [&](const fs::path& folder, std::string_view extension) {
        if (!fs::is_directory(folder))
            return;
        for (const fs::directory_entry& entry : fs::directory_iterator(folder))
            if (entry.is_regular_file() &&
                (extension.empty() || entry.path().extension() == extension))
                files.push_back(entry.path());
    };
    add(tests / "fuzz/corpus" / target, "");
    if (target == "gpx")
        add(tests / "spoilt", ".gpx");
    if (target == "geojson")
        add(tests / "spoilt", ".geojson");
    if (target == "trip_text")
        add(tests / "spoilt/trip", "");
    return files;
}

} // namespace

int main(int count, char** words) {
    if (count != 2) {
        std::cerr << "usage: replay_corpora TESTS\n";
        return 2;
    }
    for (const Target& target : targets) {
        const std::vector<fs::path> files = files_of(words[1], target.name);
        if (files.empty()) {
            std::cerr << target.name << " has no corpus\n";
            return 1;
        }
        for (const fs::path& file : files) {
            std::ifstream in(file, std::ios::binary);
            const std::string text(std::istreambuf_iterator<char>(in), {});
            std::cout << target.name << " " << file.filename().string() << std::endl;
            (void)target.take(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
        }
    }
}

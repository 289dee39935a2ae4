// Writes the completions of bash, zsh and fish into a folder, under the names by which the shells
// look for them; called by the build.

#include "cli/commands/command_line.h"
#include "cli/commands/completions/completions.h"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>

namespace {

using namespace tumpline;

bool write(const std::filesystem::path& file, const std::string& text) {
    std::ofstream out(file, std::ios::binary);
    out << text;
    out.close();
    if (!out)
        std::cerr << file << " cannot be written\n";
    return static_cast<bool>(out);
}

} // namespace

int main(int count, char** words) {
    if (count != 2) {
        std::cerr << "usage: write_completions FOLDER\n";
        return 2;
    }
    const std::filesystem::path folder = words[1];
    cli::CommandLine line;
    const cli::CommandTable table = cli::command_table(line.app());
    const bool written = write(folder / "tumpline", cli::bash_completion(table)) &&
                         write(folder / "_tumpline", cli::zsh_completion(table)) &&
                         write(folder / "tumpline.fish", cli::fish_completion(table));
    return written ? 0 : 1;
}

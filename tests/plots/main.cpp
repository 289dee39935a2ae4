#include "tests/plots/chart.h"
#include "tests/plots/standard_route.h"

#include <fmt/format.h>

#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace tumpline;

std::string read(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void write(const std::filesystem::path& file, const std::string& text) {
    std::ofstream out(file, std::ios::binary);
    out << text;
    if (!out.flush())
        throw std::runtime_error(fmt::format("cannot write {}", file.string()));
}

/// Every file below docs/models that is drawn or reckoned, by its path there.
std::map<std::string, std::string> files() {
    std::map<std::string, std::string> all;
    for (const std::vector<plots::Chart>& charts :
         {plots::charts_of_heights(), plots::charts_on_foot(), plots::charts_on_water()})
        for (const plots::Chart& chart : charts)
            all["plots/" + chart.name + ".svg"] = plots::to_svg(chart);
    all["standard-route.md"] = plots::standard_route_page();
    return all;
}

int run(int argc, char** argv) {
    const bool check = argc == 3 && std::string(argv[1]) == "--check";
    if (argc != 2 && !check) {
        fmt::print(stderr, "usage: tumpline_plots [--check] FOLDER\n");
        return 2;
    }
    const std::filesystem::path folder = argv[argc - 1];
    int stale = 0;
    for (const auto& [name, text] : files()) {
        if (!check) {
            write(folder / name, text);
        } else if (read(folder / name) != text) {
            fmt::print(stderr, "{} is not what the models say now\n", (folder / name).string());
            stale = 1;
        }
    }
    return stale;
}

} // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& error) {
        fmt::print(stderr, "tumpline_plots: {}\n", error.what());
        return 1;
    }
}

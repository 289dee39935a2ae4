#include "geo/gate/geopackage.h"

#include "geo/input_error.h"
#include "geo/one_line.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <array>
#include <cctype>
#include <fstream>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace tumpline::geo {

namespace {

struct CloseDatabase {
    void operator()(sqlite3* database) const { sqlite3_close(database); }
};

struct FinishStatement {
    void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
};

[[noreturn]] void refuse_database(const std::filesystem::path& file, Problem problem) {
    problem.file = file.string();
    throw InputError({std::move(problem)});
}

/// The file as SQLite's address: immutable, so that nothing is made beside it.
std::string address(const std::filesystem::path& file) {
    std::string text = "file:";
    for (const char letter : std::filesystem::absolute(file).string()) {
        const auto byte = static_cast<unsigned char>(letter);
        if (std::isalnum(byte) != 0 || letter == '/' || letter == '.' || letter == '-')
            text += letter;
        else
            text += fmt::format("%{:02X}", byte);
    }
    return text + "?immutable=1";
}

/// The name of the first view; empty without one. No value: no database that can be read.
std::optional<std::string> first_view(const std::filesystem::path& file) {
    sqlite3* opened = nullptr;
    const int result = sqlite3_open_v2(
        address(file).c_str(), &opened, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, nullptr);
    const std::unique_ptr<sqlite3, CloseDatabase> database(opened);
    if (result != SQLITE_OK)
        return std::nullopt;
    sqlite3_stmt* prepared = nullptr;
    if (sqlite3_prepare_v2(database.get(),
                           "SELECT name FROM sqlite_master WHERE lower(type) = 'view' LIMIT 1",
                           -1,
                           &prepared,
                           nullptr) != SQLITE_OK)
        return std::nullopt;
    const std::unique_ptr<sqlite3_stmt, FinishStatement> statement(prepared);
    switch (sqlite3_step(statement.get())) {
    case SQLITE_DONE:
        return std::string();
    case SQLITE_ROW:
        if (const auto* name = sqlite3_column_text(statement.get(), 0))
            return "\"" + one_line(reinterpret_cast<const char*>(name)) + "\"";
        return std::string("without a name");
    default:
        return std::nullopt;
    }
}

/// Whether the database keeps a write-ahead log (file format, offsets 18 and 19).
bool has_log(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::array<char, 20> head{};
    in.read(head.data(), head.size());
    return head[18] == 2 || head[19] == 2;
}

} // namespace

bool is_sqlite(std::string_view first_bytes) {
    return first_bytes.starts_with("SQLite format 3");
}

void require_plain_tables(const std::filesystem::path& file) {
    if (has_log(file))
        refuse_database(file,
                        {.file = {},
                         .place = {},
                         .found = "a database with a write-ahead log",
                         .expected = "a GeoPackage that no program has open",
                         .advice = "close it there, or export the track as GeoJSON"});
    const std::optional<std::string> view = first_view(file);
    if (!view)
        refuse_database(file,
                        {.file = {},
                         .place = {},
                         .found = "a damaged database",
                         .expected = "a GeoPackage",
                         .advice = "export the track again"});
    if (!view->empty())
        refuse_database(file,
                        {.file = {},
                         .place = {},
                         .found = "the view " + *view,
                         .expected = "a GeoPackage of tables",
                         .advice = "export the layer into a file of its own"});
}

} // namespace tumpline::geo

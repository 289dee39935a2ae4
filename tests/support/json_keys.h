#pragma once

#include <nlohmann/json_fwd.hpp>

#include <filesystem>
#include <map>
#include <set>
#include <string>

namespace tumpline::test {

/// Keys of the objects of a JSON output, by where they stand: "legs[].loads[]".
using KeysByPlace = std::map<std::string, std::set<std::string>>;

/// Every key of `json`. Objects with a figure per member count as one value: their places are in
/// `by_member`.
[[nodiscard]] KeysByPlace keys_of(const nlohmann::json& json,
                                  const std::set<std::string>& by_member);

/// The keys that a page of docs lists: each heading of the second level names a place (the part
/// before a comma, without backquotes), the table under it a key per row in backquotes.
[[nodiscard]] KeysByPlace keys_in_page(const std::filesystem::path& page);

} // namespace tumpline::test

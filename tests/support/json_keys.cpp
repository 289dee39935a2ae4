#include "tests/support/json_keys.h"

#include <nlohmann/json.hpp>

#include <fstream>

namespace tumpline::test {

namespace {

void collect(const nlohmann::json& json,
             const std::string& place,
             const std::set<std::string>& by_member,
             KeysByPlace& keys) {
    if (json.is_array())
        for (const nlohmann::json& element : json)
            collect(element, place + "[]", by_member, keys);
    if (!json.is_object() || by_member.count(place) == 1)
        return;
    for (const auto& [key, value] : json.items()) {
        keys[place].insert(key);
        collect(value, place.empty() ? key : place + "." + key, by_member, keys);
    }
}

} // namespace

KeysByPlace keys_of(const nlohmann::json& json, const std::set<std::string>& by_member) {
    KeysByPlace keys;
    collect(json, {}, by_member, keys);
    return keys;
}

KeysByPlace keys_in_page(const std::filesystem::path& page) {
    KeysByPlace keys;
    std::ifstream lines(page);
    std::string place;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("## "))
            place = line.substr(3, line.find(',') - 3);
        if (line.starts_with("| `"))
            keys[place].insert(line.substr(3, line.find('`', 3) - 3));
    }
    return keys;
}

} // namespace tumpline::test

#include "tests/support/published_value.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <ostream>
#include <set>
#include <stdexcept>

namespace tumpline::test {

namespace {

using nlohmann::json;

template <class Value>
const Value&
find(const std::map<std::string, Value>& values, std::string_view key, const std::string& id) {
    const auto found = values.find(std::string(key));
    if (found == values.end())
        throw std::out_of_range(fmt::format("row {} has no input {}", id, key));
    return found->second;
}

std::string text_of(const json& row, const char* key, const char* other) {
    return row.value(row.contains(key) ? key : other, std::string());
}

PublishedValue read_row(const json& row) {
    PublishedValue value;
    value.id = row.at("id").get<std::string>();
    value.formula = text_of(row, "formula", "model");
    for (const auto& [key, input] : row.at("inputs").items()) {
        if (input.is_number())
            value.inputs[key] = input.get<double>();
        else if (input.is_boolean())
            value.inputs[key] = input.get<bool>() ? 1.0 : 0.0;
        else
            value.texts[key] = input.is_string() ? input.get<std::string>() : input.dump();
    }
    const json& expected = row.at("expected");
    if (expected.is_number())
        value.expected = expected.get<double>();
    else
        value.expected_text = expected.is_string() ? expected.get<std::string>() : expected.dump();
    value.unit = row.value("unit", std::string());
    if (row.contains("tolerance") && row["tolerance"].is_number())
        value.tolerance = row["tolerance"].get<double>();
    value.published = row.at("published").get<bool>();
    value.source = row.at("source").get<std::string>();
    value.note = text_of(row, "note", "why");
    if (value.formula.empty() || value.source.empty())
        throw std::runtime_error(fmt::format("row {} has no formula or no source", value.id));
    return value;
}

} // namespace

double PublishedValue::input(std::string_view key) const {
    return find(inputs, key, id);
}

std::optional<double> PublishedValue::input_if(std::string_view key) const {
    const auto found = inputs.find(std::string(key));
    return found == inputs.end() ? std::nullopt : std::optional(found->second);
}

const std::string& PublishedValue::text(std::string_view key) const {
    return find(texts, key, id);
}

std::ostream& operator<<(std::ostream& out, const PublishedValue& row) {
    return out << row.id << " [" << row.source << "]";
}

std::vector<PublishedValue> published(std::string_view family, std::string_view formula) {
    const std::filesystem::path file = std::filesystem::path(TUMPLINE_SOURCE_DIR) / "tests" /
                                       "published" / fmt::format("{}.json", family);
    std::ifstream in(file);
    if (!in)
        throw std::runtime_error(fmt::format("cannot read {}", file.string()));
    const json document = json::parse(in);
    std::vector<PublishedValue> rows;
    std::set<std::string> ids;
    for (const json& row : document.is_array() ? document : document.at("checks")) {
        PublishedValue value = read_row(row);
        if (!ids.insert(value.id).second)
            throw std::runtime_error(fmt::format("{}: {} stands twice", file.string(), value.id));
        if (formula.empty() || value.formula == formula)
            rows.push_back(std::move(value));
    }
    if (rows.empty())
        throw std::runtime_error(fmt::format("{}: no row with {}", file.string(), formula));
    return rows;
}

std::string row_name(const testing::TestParamInfo<PublishedValue>& row) {
    std::string name = row.param.id;
    for (char& letter : name)
        if (std::isalnum(static_cast<unsigned char>(letter)) == 0)
            letter = '_';
    return name;
}

} // namespace tumpline::test

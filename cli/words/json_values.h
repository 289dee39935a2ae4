#pragma once

#include "cli/words/leg_fields.h"
#include "planner/quantities/leg_number.h"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <type_traits>
#include <variant>

/// Legs of the route are written as they are counted; those of the plan by `place_or_null`.
template <> struct nlohmann::adl_serializer<tumpline::planner::LegNumber> {
    template <typename Json> static void to_json(Json& json, tumpline::planner::LegNumber leg) {
        json = leg.printed();
    }
};

/// What every JSON that the program prints is put together with.
namespace tumpline::cli {

using Json = nlohmann::ordered_json; ///< keys stay in the order of the documents

/// A leg of the plan as JSON names it: its place in `legs`, from 0.
[[nodiscard]] inline Json place_or_null(planner::PlanLegNumber leg) {
    return leg.none() ? Json(nullptr) : Json(leg.index());
}

template <typename Value> [[nodiscard]] Json or_null(const std::optional<Value>& value) {
    return value ? Json(*value) : Json(nullptr);
}

/// A figure, or null where it is not known.
[[nodiscard]] inline Json known_or_null(double value, bool known) {
    return known ? Json(value) : Json(nullptr);
}

/// A name, or null where there is none.
[[nodiscard]] inline Json name_or_null(const std::string& name) {
    return name.empty() ? Json(nullptr) : Json(name);
}

/// A figure of a leg.
[[nodiscard]] inline Json field_json(const FieldValue& value) {
    return std::visit(
        [](const auto& one) {
            if constexpr (std::is_same_v<std::decay_t<decltype(one)>, std::monostate>)
                return Json(nullptr);
            else
                return Json(one);
        },
        value);
}

/// An array of what `show` makes of each element.
template <typename List, typename Show>
[[nodiscard]] Json array_of(const List& list, const Show& show) {
    Json array = Json::array();
    for (const auto& element : list)
        array.push_back(show(element));
    return array;
}

/// As it is printed: in lines, with an end. Names may hold bytes that are no text; programs get
/// valid JSON all the same.
[[nodiscard]] inline std::string in_lines(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace tumpline::cli

#include "cli/live/live_request.h"

#include "planner/trip/trip_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Edit;
using planner::JsonValue;

constexpr std::size_t most_edits = 500;
constexpr std::size_t fewest_draws = 10;
constexpr std::size_t most_draws = 2000;

std::string text_at(const JsonValue& object, std::string_view key) {
    const JsonValue* value = object.find(key);
    if (value == nullptr || value->kind != JsonValue::Kind::text)
        throw BadRequest{fmt::format("\"{}\" must be a text", key)};
    return value->text;
}

Edit edit_of(const JsonValue& json) {
    using Way = Edit::Way;
    const std::string name = text_at(json, "op");
    const std::array ways{std::pair{"add", Way::add},
                          std::pair{"replace", Way::replace},
                          std::pair{"remove", Way::remove}};
    const auto* const way = std::find_if(
        ways.begin(), ways.end(), [&](const auto& known) { return name == known.first; });
    if (way == ways.end())
        throw BadRequest{"\"op\" must be add, replace or remove"};
    const JsonValue* value = json.find("value");
    if (value == nullptr && way->second != Way::remove)
        throw BadRequest{"add and replace need a \"value\""};
    return {.way = way->second,
            .pointer = text_at(json, "path"),
            .value = value != nullptr ? planner::json_text(*value) : std::string()};
}

std::vector<Edit> edits_at(const JsonValue& json, std::string_view key) {
    const JsonValue* edits = json.find(key);
    if (edits == nullptr || edits->kind != JsonValue::Kind::list ||
        edits->items.size() > most_edits)
        throw BadRequest{fmt::format("\"{}\" must be a list of at most {}", key, most_edits)};
    std::vector<Edit> list;
    for (const JsonValue& edit : edits->items)
        list.push_back(edit_of(edit));
    return list;
}

std::size_t draws_of(const JsonValue& json) {
    const double draws = json.kind == JsonValue::Kind::number ? json.number : 0.0;
    if (draws < static_cast<double>(fewest_draws) || draws > static_cast<double>(most_draws) ||
        draws != std::floor(draws))
        throw BadRequest{fmt::format(
            "\"draws\" must be a whole number from {} to {}", fewest_draws, most_draws)};
    return static_cast<std::size_t>(draws);
}

} // namespace

bool LiveRequest::wants(std::string_view part) const {
    if (want.empty())
        return part != "view";
    return std::find(want.begin(), want.end(), part) != want.end();
}

bool LiveRequest::has(std::string_view drawing) const {
    return std::find(have.begin(), have.end(), drawing) != have.end();
}

LiveRequest live_request(const std::string& body) {
    JsonValue json;
    try {
        json = planner::read_json(body, "the request");
    } catch (const geo::InputError& error) {
        throw BadRequest{to_string(error.problems().front())};
    }
    LiveRequest request;
    request.edits = edits_at(json, "edits");
    if (json.find("pinned") != nullptr)
        request.pinned = edits_at(json, "pinned");
    if (const JsonValue* want = json.find("want"))
        for (const JsonValue& part : want->items)
            request.want.push_back(part.text);
    if (const JsonValue* narrow = json.find("narrow"))
        request.narrow = narrow->flag;
    if (const JsonValue* draws = json.find("draws"))
        request.draws = draws_of(*draws);
    if (json.find("seen") != nullptr)
        request.seen = text_at(json, "seen");
    if (json.find("ground") != nullptr)
        request.ground = text_at(json, "ground");
    if (const JsonValue* have = json.find("have"))
        for (const JsonValue& drawing : have->items)
            request.have.push_back(drawing.text);
    return request;
}

Reply replied(const Json& json, int status) {
    Reply reply;
    reply.status = status;
    reply.body = json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
    return reply;
}

Json problems_json(const geo::InputError& error) {
    return {{"problems", array_of(error.problems(), [](const geo::Problem& problem) {
                 return Json{{"place", problem.place},
                             {"found", problem.found},
                             {"expected", problem.expected},
                             {"advice", problem.advice},
                             {"text", to_string(problem)}};
             })}};
}

} // namespace tumpline::cli

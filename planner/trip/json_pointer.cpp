#include "planner/trip/json_pointer.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

/// The parts of a pointer, '~1' and '~0' turned back; empty if it is none.
std::optional<std::vector<std::string>> parts_of(std::string_view pointer) {
    std::vector<std::string> parts;
    if (pointer.empty() || pointer.front() != '/')
        return std::nullopt;
    for (std::size_t i = 0; i < pointer.size(); ++i) {
        if (pointer[i] == '/') {
            parts.emplace_back();
        } else if (pointer[i] == '~') {
            const char code = i + 1 < pointer.size() ? pointer[i + 1] : ' ';
            if (code != '0' && code != '1')
                return std::nullopt;
            parts.back().push_back(code == '0' ? '~' : '/');
            ++i;
        } else {
            parts.back().push_back(pointer[i]);
        }
    }
    return parts;
}

/// RFC 6901: digits without a leading zero.
std::optional<std::size_t> index_of(const std::string& part) {
    std::size_t index = 0;
    const char* const end = part.data() + part.size();
    const auto [stop, error] = std::from_chars(part.data(), end, index);
    const bool plain = error == std::errc() && stop == end && (part.size() == 1 || part[0] != '0');
    return plain ? std::optional(index) : std::nullopt;
}

JsonValue json_or_text(const std::string& value) {
    try {
        return read_json(value, {});
    } catch (const geo::InputError&) { // not JSON: a text, as documented
        JsonValue text;
        text.kind = Kind::text;
        text.text = value;
        return text;
    }
}

/// The child of that name or number, made if an object lacks it or "-" asks for one more.
JsonValue* step_into(JsonValue& parent, const std::string& part, std::string& wrong) {
    if (parent.kind == Kind::object) {
        const auto found =
            std::find_if(parent.members.begin(),
                         parent.members.end(),
                         [&](const JsonValue::Member& member) { return member.key == part; });
        if (found != parent.members.end())
            return &found->value;
        return &parent.members.emplace_back(JsonValue::Member{.key = part, .value = {}}).value;
    }
    if (parent.kind == Kind::list) {
        if (part == "-")
            return &parent.items.emplace_back();
        const std::optional<std::size_t> index = index_of(part);
        if (index && *index < parent.items.size())
            return &parent.items[*index];
        wrong = parent.items.empty()
                    ? std::string("\"-\" (the list is empty)")
                    : fmt::format("a number up to {}, or \"-\" for one more, in place of \"{}\"",
                                  parent.items.size() - 1,
                                  part);
        return nullptr;
    }
    wrong = fmt::format("a pointer that ends before \"{}\" ({} has no keys)", part, shown(parent));
    return nullptr;
}

} // namespace

const JsonValue* find_at(const JsonValue& document, std::string_view pointer) {
    const std::optional<std::vector<std::string>> parts = parts_of(pointer);
    const JsonValue* at = parts ? &document : nullptr;
    for (std::size_t i = 0; at != nullptr && i < parts->size(); ++i) {
        if (at->kind == Kind::object) {
            at = at->find((*parts)[i]);
            continue;
        }
        const std::optional<std::size_t> index = index_of((*parts)[i]);
        const bool there = at->kind == Kind::list && index && *index < at->items.size();
        at = there ? &at->items[*index] : nullptr;
    }
    return at;
}

std::string set_at(JsonValue& document, std::string_view pointer, const std::string& value) {
    const std::optional<std::vector<std::string>> parts = parts_of(pointer);
    if (!parts || parts->size() > JsonLimits{}.deepest)
        return "a JSON pointer such as /days/set_off or /party/0/pace";
    JsonValue changed = document;
    JsonValue* at = &changed;
    std::string wrong;
    for (std::size_t i = 0; i < parts->size(); ++i) {
        const std::string& part = (*parts)[i];
        at = step_into(*at, part, wrong);
        if (at == nullptr)
            return wrong;
        if (i + 1 < parts->size() && at->kind == Kind::null)
            at->kind = Kind::object;
    }
    *at = json_or_text(value);
    document = std::move(changed);
    return {};
}

} // namespace tumpline::planner

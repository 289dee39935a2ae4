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
JsonValue*
step_into(JsonValue& parent, const std::string& path, const std::string& part, std::string& wrong) {
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
        const std::optional<std::size_t> index = list_index(part);
        if (index && *index < parent.items.size())
            return &parent.items[*index];
        if (!index && !parent.items.empty() && parent.items.front().kind == Kind::object) {
            wrong = fmt::format("{}/0/{} or another number: it is a list", path, part);
            return nullptr;
        }
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

/// The way to a place for `set` and `add`: everything that lacks on it is made.
JsonValue*
way_made(JsonValue& document, const std::vector<std::string>& parts, std::string& wrong) {
    JsonValue* at = &document;
    std::string path;
    for (const std::string& part : parts) {
        if (at->kind == Kind::null)
            at->kind = Kind::object;
        at = step_into(*at, path, part, wrong);
        if (at == nullptr)
            return nullptr;
        path = pointer_to(path, part);
    }
    return at;
}

/// Puts `value` before the entry of a list that `pointer` names, or behind the last.
std::string insert_into(JsonValue& list, const std::string& part, JsonValue value) {
    const std::optional<std::size_t> index =
        part == "-" ? std::optional(list.items.size()) : list_index(part);
    if (!index || *index > list.items.size())
        return fmt::format("a number up to {}, or \"-\" for one more, in place of \"{}\"",
                           list.items.size(),
                           part);
    list.items.insert(list.items.begin() + static_cast<std::ptrdiff_t>(*index), std::move(value));
    return {};
}

/// What is at `part` is taken away; false if there is nothing.
bool take_away(JsonValue& parent, const std::string& part) {
    if (parent.kind == Kind::object)
        return std::erase_if(parent.members, [&](const JsonValue::Member& member) {
                   return member.key == part;
               }) > 0;
    const std::optional<std::size_t> index = list_index(part);
    if (parent.kind != Kind::list || !index || *index >= parent.items.size())
        return false;
    parent.items.erase(parent.items.begin() + static_cast<std::ptrdiff_t>(*index));
    return true;
}

/// "/kit/3" of "/kit/3/mass".
std::string_view parent_pointer(std::string_view pointer) {
    return pointer.substr(0, pointer.rfind('/'));
}

JsonValue* there_at(JsonValue& document, std::string_view pointer) {
    if (pointer.empty())
        return &document;
    return const_cast<JsonValue*>(find_at(document, pointer)); // NOLINT: the document is not const
}

std::string edit_there(JsonValue& document, const Edit& edit, const std::string& last) {
    static const std::string nothing = "a pointer to something that is there";
    if (edit.way == Edit::Way::remove) {
        JsonValue* const parent = there_at(document, parent_pointer(edit.pointer));
        return parent != nullptr && take_away(*parent, last) ? std::string() : nothing;
    }
    JsonValue* const at = there_at(document, edit.pointer);
    if (at == nullptr)
        return nothing;
    *at = edit_value(edit);
    return {};
}

} // namespace

std::optional<std::vector<std::string>> pointer_parts(std::string_view pointer) {
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

std::optional<std::size_t> list_index(const std::string& part) {
    std::size_t index = 0;
    const char* const end = part.data() + part.size();
    const auto [stop, error] = std::from_chars(part.data(), end, index);
    const bool plain = error == std::errc() && stop == end && (part.size() == 1 || part[0] != '0');
    return plain ? std::optional(index) : std::nullopt;
}

std::string edit_words(const Edit& edit) {
    switch (edit.way) {
    case Edit::Way::set:
        return fmt::format("set {}", edit.pointer);
    case Edit::Way::add:
        return fmt::format("add {}", edit.pointer);
    case Edit::Way::replace:
        return fmt::format("replace {}", edit.pointer);
    case Edit::Way::remove:
        return fmt::format("remove {}", edit.pointer);
    }
    return {};
}

JsonValue edit_value(const Edit& edit) {
    return edit.way == Edit::Way::set ? json_or_text(edit.value)
                                      : read_json(edit.value, edit_words(edit));
}

const JsonValue* find_at(const JsonValue& document, std::string_view pointer) {
    const std::optional<std::vector<std::string>> parts = pointer_parts(pointer);
    const JsonValue* at = parts ? &document : nullptr;
    for (std::size_t i = 0; at != nullptr && i < parts->size(); ++i) {
        if (at->kind == Kind::object) {
            at = at->find((*parts)[i]);
            continue;
        }
        const std::optional<std::size_t> index = list_index((*parts)[i]);
        const bool there = at->kind == Kind::list && index && *index < at->items.size();
        at = there ? &at->items[*index] : nullptr;
    }
    return at;
}

std::string edit_at(JsonValue& document, const Edit& edit) {
    std::optional<std::vector<std::string>> parts = pointer_parts(edit.pointer);
    if (!parts || parts->size() > JsonLimits{}.deepest)
        return "a JSON pointer such as /days/set_off or /party/0/pace";
    const std::string last = parts->back();
    if (edit.way == Edit::Way::replace || edit.way == Edit::Way::remove)
        return edit_there(document, edit, last);
    JsonValue value = edit_value(edit);
    JsonValue changed = document;
    std::string wrong;
    if (edit.way == Edit::Way::add) {
        parts->pop_back();
        JsonValue* const parent = way_made(changed, *parts, wrong);
        if (parent != nullptr && parent->kind == Kind::list) {
            wrong = insert_into(*parent, last, std::move(value));
            if (wrong.empty())
                document = std::move(changed);
            return wrong;
        }
        parts->push_back(last);
        changed = document;
    }
    JsonValue* const at = way_made(changed, *parts, wrong);
    if (at == nullptr)
        return wrong;
    *at = std::move(value);
    document = std::move(changed);
    return {};
}

std::string set_at(JsonValue& document, std::string_view pointer, const std::string& value) {
    return edit_at(document,
                   {.way = Edit::Way::set, .pointer = std::string(pointer), .value = value});
}

} // namespace tumpline::planner

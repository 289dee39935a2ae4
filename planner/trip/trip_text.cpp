#include "planner/trip/trip_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <stdexcept>
#include <utility>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

/// From the first byte of something to one past its last.
struct Bytes {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Where a value stands in a text, and where its entries do: of a member from its key on.
struct Standing {
    struct Entry;

    Bytes bytes;
    Kind kind = Kind::null;
    std::vector<Entry> entries;
};

struct Standing::Entry {
    std::string key;
    Bytes bytes;
    Standing value;
};

bool is_blank(char letter) {
    return letter == ' ' || letter == '\t' || letter == '\r' || letter == '\n';
}

/// One past the comment that begins at `at`; `at` itself if none does. A line's end is not part of
/// it.
std::size_t past_comment(std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("//")) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        return end > at && text[end - 1] == '\r' ? end - 1 : end;
    }
    return rest.starts_with("/*") ? text.find("*/", at + 2) + 2 : at;
}

/// Where the next letter stands that is neither blank nor comment.
std::size_t next_ink(std::string_view text, std::size_t at) {
    while (at < text.size()) {
        const std::size_t past = past_comment(text, at);
        if (past == at && !is_blank(text[at]))
            break;
        at = past == at ? at + 1 : past;
    }
    return at;
}

std::size_t past_text(std::string_view text, std::size_t at) {
    ++at;
    while (text[at] != '"')
        at += text[at] == '\\' ? 2U : 1U;
    return at + 1;
}

/// Finds where everything stands in a text that is known to be JSON.
class Finder {
  public:
    explicit Finder(std::string_view text) : text_(text) {}

    // NOLINTNEXTLINE(misc-no-recursion): as deep as the reader lets a text be
    Standing value_at(std::size_t at) const {
        Standing found;
        found.bytes.begin = at;
        const char first = text_[at];
        if (first == '{' || first == '[') {
            found.kind = first == '{' ? Kind::object : Kind::list;
            found.bytes.end = entries_from(at + 1, found);
            return found;
        }
        if (first == '"') {
            found.kind = Kind::text;
            found.bytes.end = past_text(text_, at);
            return found;
        }
        found.kind = first == 'n' ? Kind::null : Kind::number; // or a truth: it has no entries
        while (at < text_.size() && !is_blank(text_[at]) && text_[at] != ',' && text_[at] != '}' &&
               text_[at] != ']' && text_[at] != '/')
            ++at;
        found.bytes.end = at;
        return found;
    }

  private:
    /// Reads the entries up to the bracket that closes them; answers one past it.
    // NOLINTNEXTLINE(misc-no-recursion): as deep as the reader lets a text be
    std::size_t entries_from(std::size_t at, Standing& holder) const {
        at = next_ink(text_, at);
        while (text_[at] != '}' && text_[at] != ']') {
            Standing::Entry entry;
            entry.bytes.begin = at;
            if (holder.kind == Kind::object) {
                const std::size_t end = past_text(text_, at);
                entry.key = read_json(text_.substr(at, end - at), {}).text;
                at = next_ink(text_, next_ink(text_, end) + 1); // past the colon
            }
            entry.value = value_at(at);
            entry.bytes.end = entry.value.bytes.end;
            at = next_ink(text_, entry.bytes.end);
            if (text_[at] == ',')
                at = next_ink(text_, at + 1);
            holder.entries.push_back(std::move(entry));
        }
        return at + 1;
    }

    std::string_view text_;
};

/// A stretch of text and what takes its place.
struct Change {
    Bytes bytes;
    std::string text;
};

std::string changed(std::string text, std::vector<Change> changes) {
    std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
        return a.bytes.begin > b.bytes.begin;
    });
    for (const Change& change : changes)
        text.replace(change.bytes.begin, change.bytes.end - change.bytes.begin, change.text);
    return text;
}

std::size_t line_start(std::string_view text, std::size_t at) {
    const std::size_t newline = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
    return newline == std::string_view::npos ? 0 : newline + 1;
}

/// Where the line's end begins if nothing but blanks and comments stands before it.
std::optional<std::size_t> line_end_after(std::string_view text, std::size_t at) {
    while (at < text.size() && text[at] != '\n') {
        if (text.substr(at).starts_with("\r\n"))
            return at;
        const std::size_t past = past_comment(text, at);
        if (past == at && !is_blank(text[at]))
            return std::nullopt;
        at = past == at ? at + 1 : past;
    }
    return at < text.size() ? std::optional(at) : std::nullopt;
}

/// The line's end at `at`, with the blanks that begin the line of `like`.
std::string new_line(std::string_view text, std::size_t at, std::size_t like) {
    const std::size_t start = line_start(text, like);
    const std::size_t ink = std::min(text.find_first_not_of(" \t", start), text.size());
    return (text[at] == '\r' ? "\r\n" : "\n") + std::string(text.substr(start, ink - start));
}

std::vector<Change> added_last(std::string_view text, const Standing& holder, std::string entry) {
    if (holder.entries.empty()) {
        const std::size_t inside = holder.bytes.begin + 1;
        return {{{inside, inside}, std::move(entry)}};
    }
    const Bytes last = holder.entries.back().bytes;
    const std::optional<std::size_t> end = line_end_after(text, last.end);
    if (!end)
        return {{{last.end, last.end}, ", " + entry}};
    if (*end == last.end)
        return {{{last.end, last.end}, "," + new_line(text, *end, last.begin) + entry}};
    return {{{last.end, last.end}, ","}, {{*end, *end}, new_line(text, *end, last.begin) + entry}};
}

/// Before an entry that is there.
std::vector<Change> added_before(std::string_view text,
                                 const Standing& holder,
                                 std::size_t index,
                                 const std::string& entry) {
    const std::size_t before =
        index == 0 ? holder.bytes.begin + 1
                   : next_ink(text, holder.entries[index - 1].bytes.end) + 1; // past the comma
    if (const std::optional<std::size_t> end = line_end_after(text, before))
        return {
            {{*end, *end}, new_line(text, *end, holder.entries[index].bytes.begin) + entry + ","}};
    return {{{before, before}, index == 0 ? entry + ", " : " " + entry + ","}};
}

/// `cut` widened to the blanks before it in its line, and to the whole line if nothing but remarks
/// stands there besides.
Bytes with_its_line(std::string_view text, Bytes cut) {
    const std::size_t start = line_start(text, cut.begin);
    std::size_t blanks = cut.begin;
    while (blanks > start && (text[blanks - 1] == ' ' || text[blanks - 1] == '\t'))
        --blanks;
    const std::optional<std::size_t> end = line_end_after(text, cut.end);
    const bool remark_in_line =
        end && text.substr(cut.end, *end - cut.end).find('\n') == std::string_view::npos;
    if (blanks == start && remark_in_line)
        return {start, text.find('\n', *end) + 1};
    return {blanks, cut.end};
}

std::vector<Change> removed(std::string_view text, const Standing& holder, std::size_t index) {
    const Bytes entry = holder.entries[index].bytes;
    if (index + 1 < holder.entries.size()) {
        Bytes cut{entry.begin, next_ink(text, entry.end) + 1}; // and its comma
        const Bytes line = with_its_line(text, cut);
        if (line.begin < line_start(text, cut.begin) + 1 && text[line.end - 1] == '\n')
            return {{line, {}}};
        while (text[cut.end] == ' ' || text[cut.end] == '\t')
            ++cut.end;
        return {{cut, {}}};
    }
    if (index == 0)
        return {{with_its_line(text, entry), {}}};
    const std::size_t comma = next_ink(text, holder.entries[index - 1].bytes.end);
    Bytes cut = with_its_line(text, entry);
    cut.begin = std::max(cut.begin, comma + 1);
    return {{{comma, comma + 1}, {}}, {cut, {}}};
}

std::string quoted(const std::string& text) {
    return nlohmann::json(text).dump();
}

/// "{"b": {"c": 1}}" of the parts from `first` on, "b" and "c", and the value 1.
std::string
nested(const std::vector<std::string>& parts, std::size_t first, const std::string& value) {
    std::string text = value;
    for (std::size_t i = parts.size(); i > first; --i)
        text = fmt::format("{{{}: {}}}", quoted(parts[i - 1]), text);
    return text;
}

std::optional<std::size_t> entry_of(const Standing& holder, const std::string& part) {
    if (holder.kind == Kind::list) {
        const std::optional<std::size_t> index = list_index(part);
        return index && *index < holder.entries.size() ? index : std::nullopt;
    }
    for (std::size_t i = 0; i < holder.entries.size(); ++i)
        if (holder.entries[i].key == part)
            return i;
    return std::nullopt;
}

/// What an edit that is known to fit changes in the text.
std::vector<Change> changes_of(std::string_view text, const Edit& edit) {
    const std::vector<std::string> parts = *pointer_parts(edit.pointer);
    const std::string value =
        edit.way == Edit::Way::remove ? std::string() : json_text(edit_value(edit));
    const std::size_t mark = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    const Standing whole = Finder(text).value_at(next_ink(text, mark));
    const Standing* at = &whole;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (at->kind == Kind::null)
            return {{at->bytes, nested(parts, i, value)}};
        const std::optional<std::size_t> index = entry_of(*at, parts[i]);
        if (!index) {
            const std::string entry = nested(parts, i + 1, value);
            return added_last(
                text, *at, at->kind == Kind::object ? quoted(parts[i]) + ": " + entry : entry);
        }
        const bool last = i + 1 == parts.size();
        if (last && edit.way == Edit::Way::remove)
            return removed(text, *at, *index);
        if (last && edit.way == Edit::Way::add && at->kind == Kind::list)
            return added_before(text, *at, *index, value);
        at = &at->entries[*index].value;
    }
    return {{at->bytes, value}};
}

} // namespace

// NOLINTNEXTLINE(misc-no-recursion): as deep as the reader lets a text be
std::string json_text(const JsonValue& value) {
    std::vector<std::string> entries;
    switch (value.kind) {
    case Kind::null:
        return "null";
    case Kind::boolean:
        return value.flag ? "true" : "false";
    case Kind::number:
        return value.text;
    case Kind::text:
        return quoted(value.text);
    case Kind::list:
        for (const JsonValue& item : value.items)
            entries.push_back(json_text(item));
        return fmt::format("[{}]", fmt::join(entries, ", "));
    case Kind::object:
        for (const JsonValue::Member& member : value.members)
            entries.push_back(fmt::format("{}: {}", quoted(member.key), json_text(member.value)));
        return fmt::format("{{{}}}", fmt::join(entries, ", "));
    }
    return {};
}

// NOLINTNEXTLINE(misc-no-recursion): as deep as the reader lets a text be
bool same_json(const JsonValue& a, const JsonValue& b) {
    if (a.kind != b.kind || a.flag != b.flag || a.text != b.text)
        return false;
    const auto same_member = [](const JsonValue::Member& x, const JsonValue::Member& y) {
        return x.key == y.key && same_json(x.value, y.value);
    };
    return std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(), same_json) &&
           std::equal(
               a.members.begin(), a.members.end(), b.members.begin(), b.members.end(), same_member);
}

std::string
edited_text(std::string_view text, const std::string& file, const std::vector<Edit>& edits) {
    JsonValue document = read_json(text, file);
    std::string after(text);
    for (const Edit& edit : edits) {
        std::string expected = edit_at(document, edit);
        if (!expected.empty())
            throw geo::InputError({{.file = file,
                                    .place = edit.pointer,
                                    .found = fmt::format("the edit {}", edit_words(edit)),
                                    .expected = std::move(expected),
                                    .advice = {}}});
        after = changed(after, changes_of(after, edit));
    }
    // What leaves here may be written over somebody's file: it must say what was meant.
    if (!same_json(read_json(after, file), document))
        throw std::logic_error("an edit of the trip file's text does not say what was meant");
    return after;
}

} // namespace tumpline::planner

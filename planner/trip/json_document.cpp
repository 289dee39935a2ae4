#include "planner/trip/json_document.h"

#include "geo/utf8.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <optional>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;
using geo::InputError;
using geo::Problem;

/// "line 3, column 14" of a byte of `text`, counted from 1; columns count characters.
std::string place_of(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, std::min(byte, text.size()));
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const std::size_t newline = before.rfind('\n');
    const std::string_view line =
        newline == std::string_view::npos ? before : before.substr(newline + 1);
    const auto columns = std::count_if(line.begin(), line.end(), [](char letter) {
        return (static_cast<unsigned char>(letter) & 0xC0U) != 0x80U;
    });
    return fmt::format("line {}, column {}", lines + 1, columns + 1);
}

/// What stands there and what may.
struct Refused {
    std::string found;
    std::string expected;
};

[[noreturn]] void refuse(const std::string& file, std::string place, Refused refused) {
    throw InputError({Problem{.file = file,
                              .place = std::move(place),
                              .found = std::move(refused.found),
                              .expected = std::move(refused.expected),
                              .advice = {}}});
}

std::optional<std::size_t> first_byte_not_utf8(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::optional<geo::Utf8Character> character = geo::first_character(text.substr(at));
        if (!character)
            return at;
        at += character->bytes;
    }
    return std::nullopt;
}

/// How far the library has read: the line of the last letter that is not blank. It reads one letter
/// beyond a number, which may be the end of the line.
struct ReadingLine {
    std::size_t line = 1;
    std::size_t ink_line = 1;

    void take(char letter) {
        if (letter == '\n')
            ++line;
        else if (letter != ' ' && letter != '\t' && letter != '\r')
            ink_line = line;
    }
};

/// The letters of a text, each told to a `ReadingLine` as the library passes on from it.
class WatchedLetter {
  public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    WatchedLetter(const char* at, ReadingLine& reading) : at_(at), reading_(&reading) {}

    reference operator*() const { return *at_; }

    WatchedLetter& operator++() {
        reading_->take(*at_++);
        return *this;
    }

    WatchedLetter operator++(int) {
        const WatchedLetter before = *this;
        ++*this;
        return before;
    }

    friend bool operator==(const WatchedLetter& a, const WatchedLetter& b) {
        return a.at_ == b.at_;
    }

    friend bool operator!=(const WatchedLetter& a, const WatchedLetter& b) { return !(a == b); }

  private:
    const char* at_;
    ReadingLine* reading_;
};

/// Builds the document while the library reads; it refuses what is too deep, too much or doubled.
class DocumentBuilder : public nlohmann::json_sax<nlohmann::json> {
  public:
    DocumentBuilder(const JsonLimits& limits, const ReadingLine& reading)
        : limits_(limits), reading_(reading) {}

    bool null() override { return put({}); }

    bool boolean(bool flag) override {
        JsonValue value;
        value.kind = Kind::boolean;
        value.flag = flag;
        return put(std::move(value));
    }

    bool number_integer(std::int64_t number) override {
        return put_number(static_cast<double>(number), true, fmt::format("{}", number));
    }

    bool number_unsigned(std::uint64_t number) override {
        return put_number(static_cast<double>(number), true, fmt::format("{}", number));
    }

    bool number_float(double number, const std::string& written) override {
        return put_number(number, false, written);
    }

    bool string(std::string& text) override {
        JsonValue value;
        value.kind = Kind::text;
        value.text = std::move(text);
        return put(std::move(value));
    }

    bool binary(nlohmann::json::binary_t& /*bytes*/) override { return false; }

    bool start_object(std::size_t /*count*/) override { return open(Kind::object); }

    bool end_object() override { return close(); }

    bool start_array(std::size_t /*count*/) override { return open(Kind::list); }

    bool end_array() override { return close(); }

    bool key(std::string& name) override {
        const JsonValue& object = *open_.back();
        key_ = std::move(name);
        key_open_ = true;
        if (object.find(key_) != nullptr) {
            refused_ = {.found = "this key a second time", .expected = "each key once"};
            return false;
        }
        if (object.members.size() >= limits_.most_members) {
            refused_ = {.found = fmt::format("more than {} keys", limits_.most_members),
                        .expected = "the keys of docs/trip-file.md"};
            return false;
        }
        return true;
    }

    bool parse_error(std::size_t byte,
                     const std::string& last_token,
                     const nlohmann::json::exception& /*error*/) override {
        error_byte_ = byte;
        last_token_ = last_token;
        return false;
    }

    [[nodiscard]] const std::optional<Refused>& refused() const { return refused_; }

    [[nodiscard]] std::size_t error_byte() const { return error_byte_; }

    [[nodiscard]] const std::string& last_token() const { return last_token_; }

    /// Whether a key was read and no value after it.
    [[nodiscard]] bool key_open() const { return key_open_; }

    [[nodiscard]] JsonValue take() { return std::move(root_); }

    /// Where the reading stands: the way of keys and indices to the value last begun.
    [[nodiscard]] std::string pointer() const {
        std::string text;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            const bool last = i + 1 == open_.size();
            if (open_[i]->kind == Kind::list)
                text = pointer_to(text, fmt::format("{}", open_[i]->items.size() - (last ? 0 : 1)));
            else if (last)
                text = pointer_to(text, key_);
            else
                text = pointer_to(text, open_[i]->members.back().key);
        }
        return text;
    }

  private:
    bool put_number(double number, bool whole, std::string written) {
        JsonValue value;
        value.kind = Kind::number;
        value.number = number;
        value.whole = whole;
        value.text = std::move(written);
        return put(std::move(value));
    }

    bool put(JsonValue value) { return place(std::move(value)) != nullptr; }

    /// Puts a value where it belongs; null if there are too many.
    JsonValue* place(JsonValue value) {
        if (++values_ > limits_.most_values) {
            refused_ = {.found = fmt::format("more than {} values", limits_.most_values),
                        .expected = "a trip file of a sensible size"};
            return nullptr;
        }
        key_open_ = false;
        value.line = reading_.ink_line;
        if (open_.empty()) {
            root_ = std::move(value);
            return &root_;
        }
        JsonValue& parent = *open_.back();
        if (parent.kind == Kind::list)
            return &parent.items.emplace_back(std::move(value));
        return &parent.members
                    .emplace_back(
                        JsonValue::Member{.key = std::move(key_), .value = std::move(value)})
                    .value;
    }

    bool open(Kind kind) {
        if (open_.size() >= limits_.deepest) {
            refused_ = {.found = fmt::format("more than {} levels of brackets", limits_.deepest),
                        .expected = "a trip file as docs/trip-file.md describes it"};
            return false;
        }
        JsonValue value;
        value.kind = kind;
        JsonValue* const placed = place(std::move(value));
        if (placed == nullptr)
            return false;
        open_.push_back(placed); // parents grow only when their children are closed
        return true;
    }

    bool close() {
        open_.pop_back();
        return true;
    }

    JsonLimits limits_;
    const ReadingLine& reading_;
    JsonValue root_;
    bool key_open_ = false;
    std::vector<JsonValue*> open_;
    std::string key_;
    std::size_t values_ = 0;
    std::optional<Refused> refused_;
    std::size_t error_byte_ = 0;
    std::string last_token_;
};

/// `text` in signs that a terminal can show.
std::string printable(std::string_view text) {
    std::string clean;
    for (const char letter : text)
        clean += static_cast<unsigned char>(letter) < 0x20U || letter == 0x7F ? ' ' : letter;
    return clean;
}

/// Signs of which words and numbers are made.
bool joins(char letter) {
    return std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '.' ||
           letter == '-' || letter == '+' || letter == '_';
}

/// The start of the word, number or text at which the reading stopped. The library names the last
/// byte that it read, which lies within.
std::size_t start_of_token(std::string_view text, const DocumentBuilder& builder) {
    std::size_t at = builder.error_byte() - std::min<std::size_t>(builder.error_byte(), 1);
    const std::string& token = builder.last_token();
    if (text[at] == '"' && token.size() > 1 && token.front() == '"' && at + 1 >= token.size())
        return at + 1 - token.size(); // a whole text where none may stand
    while (at > 0 && joins(text[at]) && joins(text[at - 1]))
        --at;
    return at;
}

/// What stands there, for the message.
std::string token_at(std::string_view text, std::size_t at) {
    constexpr std::size_t longest = 30;
    if (text[at] == '\n' || text[at] == '\r')
        return "the end of the line within a text";
    const std::optional<geo::Utf8Character> first = geo::first_character(text.substr(at));
    std::size_t end = at + (first ? first->bytes : 0);
    while (end < text.size() && end < at + longest && joins(text[at]) && joins(text[end]))
        ++end;
    const std::string token = printable(text.substr(at, end - at));
    return token == " " ? "a sign that cannot be shown" : fmt::format("'{}'", token);
}

/// One past the last letter before `at` that belongs neither to a comment nor to blanks; 0 if there
/// is none.
std::size_t end_of_ink(std::string_view text, std::size_t at) {
    std::size_t end = 0;
    bool in_text = false;
    for (std::size_t i = 0; i < at; ++i) {
        const std::string_view rest = text.substr(i);
        if (in_text && rest.front() == '\\') {
            end = ++i + 1;
        } else if (in_text || (!rest.starts_with("//") && !rest.starts_with("/*"))) {
            in_text = in_text != (rest.front() == '"');
            end = joins(rest.front()) || std::ispunct(static_cast<unsigned char>(rest.front())) ||
                          static_cast<unsigned char>(rest.front()) >= 0x80
                      ? i + 1
                      : end;
        } else { // on to the end of the comment
            const bool line = rest.starts_with("//");
            i = std::min(at, text.find(line ? "\n" : "*/", i + 2)) + (line ? 0 : 1);
        }
    }
    return std::min(end, at);
}

/// A slip whose own place is known better than where the reading stopped over it.
struct Slip {
    std::size_t at;
    Refused refused;
};

std::optional<Slip>
slip_before(const DocumentBuilder& builder, std::string_view text, std::size_t at) {
    const std::size_t end = end_of_ink(text, at);
    if (end == 0)
        return std::nullopt;
    const char before = text[end - 1];
    const bool opens = text[at] == '"' || text[at] == '{' || text[at] == '[' || joins(text[at]);
    if (before == ',' && (text[at] == '}' || text[at] == ']'))
        return Slip{
            end - 1,
            {fmt::format("a comma before '{}'", text[at]), "no comma after the last entry"}};
    if (!opens)
        return std::nullopt;
    if (builder.key_open() && before == '"')
        return Slip{end, {"no colon after the key", "\"key\": value"}};
    if (before == '"' || before == '}' || before == ']' || joins(before))
        return Slip{
            end,
            {fmt::format("no comma before {}", token_at(text, at)), "a comma between two entries"}};
    return std::nullopt;
}

[[noreturn]] void
refuse_syntax(const DocumentBuilder& builder, std::string_view text, const std::string& file) {
    if (builder.error_byte() > text.size())
        refuse(file,
               place_of(text, text.size()),
               {"the end of the file",
                "the rest of it: a bracket, a text or a comment is still open"});
    const std::size_t at = start_of_token(text, builder);
    if (const std::optional<Slip> slip = slip_before(builder, text, at))
        refuse(file, place_of(text, slip->at), slip->refused);
    refuse(
        file,
        place_of(text, at),
        {token_at(text, at),
         "JSON (keys and texts in double quotation marks, a comma between entries and none after "
         "the last)"});
}

} // namespace

const JsonValue* JsonValue::find(std::string_view key) const {
    const auto found = std::find_if(
        members.begin(), members.end(), [&](const Member& member) { return member.key == key; });
    return found == members.end() ? nullptr : &found->value;
}

JsonValue read_json(std::string_view text, const std::string& file, const JsonLimits& limits) {
    if (text.size() > limits.longest_bytes)
        refuse(file,
               {},
               {fmt::format("{} bytes", text.size()),
                fmt::format("at most {} bytes", limits.longest_bytes)});
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        refuse(file, {}, {"UTF-16 text", "UTF-8 text; save the file as UTF-8"});
    if (text.starts_with("\xEF\xBB\xBF"))
        text.remove_prefix(3);
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        refuse(file, {}, {"an empty file", "a trip (docs/trip-file.md)"});
    if (const std::optional<std::size_t> byte = first_byte_not_utf8(text))
        refuse(file,
               place_of(text, *byte),
               {fmt::format("the byte 0x{:02X}", static_cast<unsigned char>(text[*byte])),
                "UTF-8 text; save the file as UTF-8"});
    ReadingLine reading;
    DocumentBuilder builder(limits, reading);
    const bool read = nlohmann::json::sax_parse(WatchedLetter(text.data(), reading),
                                                WatchedLetter(text.data() + text.size(), reading),
                                                &builder,
                                                nlohmann::json::input_format_t::json,
                                                true, // nothing after the value
                                                true  // comments
    );
    if (builder.refused())
        refuse(file, builder.pointer(), *builder.refused());
    if (!read)
        refuse_syntax(builder, text, file);
    return builder.take();
}

std::string shown(const JsonValue& value, std::size_t longest) {
    std::string text;
    switch (value.kind) {
    case Kind::null:
        return "null";
    case Kind::boolean:
        return value.flag ? "true" : "false";
    case Kind::number:
        text = value.text;
        break;
    case Kind::text:
        text = fmt::format("\"{}\"", printable(value.text));
        break;
    case Kind::list:
        return value.items.empty() ? "an empty list" : "a list";
    case Kind::object:
        return value.members.empty() ? "an empty object" : "an object";
    }
    if (text.size() > longest) {
        std::size_t end = longest;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U)
            --end;
        text = text.substr(0, end) + "...";
    }
    return text;
}

std::string pointer_to(std::string_view parent, std::string_view key) {
    std::string pointer = fmt::format("{}/", parent);
    for (const char letter : key) {
        if (letter == '~')
            pointer.append("~0");
        else if (letter == '/')
            pointer.append("~1");
        else
            pointer.push_back(letter);
    }
    return pointer;
}

} // namespace tumpline::planner

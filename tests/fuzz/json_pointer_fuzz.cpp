// Three lines: a document, a pointer and a value to be set there, as `--set POINTER=VALUE` does. A
// refusal leaves the document as it was; what was set can be found again, unless it was appended.

#include "geo/input_error.h"
#include "planner/trip/json_pointer.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

namespace {

bool same(const tumpline::planner::JsonValue& one, const tumpline::planner::JsonValue& other) {
    if (one.kind != other.kind || one.text != other.text ||
        one.items.size() != other.items.size() || one.members.size() != other.members.size())
        return false;
    for (std::size_t i = 0; i < one.items.size(); ++i)
        if (!same(one.items[i], other.items[i]))
            return false;
    for (std::size_t i = 0; i < one.members.size(); ++i)
        if (one.members[i].key != other.members[i].key ||
            !same(one.members[i].value, other.members[i].value))
            return false;
    return true;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace tumpline::planner;
    const std::string text(reinterpret_cast<const char*>(data), size);
    const std::size_t first = text.find('\n');
    const std::size_t second = first == std::string::npos ? first : text.find('\n', first + 1);
    if (second == std::string::npos)
        return 0;
    const std::string pointer = text.substr(first + 1, second - first - 1);
    JsonValue document;
    try {
        document = read_json(text.substr(0, first), "fuzz.json");
    } catch (const tumpline::geo::InputError&) {
        return 0;
    }
    const JsonValue before = document;
    const std::string refused = set_at(document, pointer, text.substr(second + 1));
    if (!refused.empty() && !same(before, document))
        std::abort();
    if (refused.empty() && pointer.find("/-") == std::string::npos &&
        find_at(document, pointer) == nullptr)
        std::abort();
    return 0;
}

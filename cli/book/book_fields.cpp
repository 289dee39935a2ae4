#include "cli/book/book_fields.h"

#include "cli/book/book_template.h"
#include "cli/words/figures.h"
#include "cli/words/text_width.h"

#include <kainjow/mustache.hpp>

#include <stdexcept>

namespace tumpline::cli {

namespace {

using kainjow::mustache::data;

data to_data(const Fields& fields);

data to_data(const std::vector<Fields>& entries) {
    data list(data::type::list);
    for (const Fields& entry : entries)
        list.push_back(to_data(entry));
    return list;
}

struct ToData {
    data operator()(bool value) const { return data(value); }

    data operator()(const std::string& value) const {
        return value.empty() ? data(false) : data(value);
    }

    data operator()(const Fields::Markup& value) const { return data(value.text); }

    data operator()(const std::vector<Fields>& value) const { return to_data(value); }
};

data to_data(const Fields& fields) {
    data object(data::type::object);
    for (const auto& [name, value] : fields.values())
        object.set(name, std::visit(ToData{}, value));
    return object;
}

/// A template with what {{>name}} asks for put in its place, so that it is parsed once.
std::string with_parts(std::string_view name) {
    constexpr std::string_view tag = "{{>";
    std::string text(book_template(name));
    for (std::size_t at = text.find(tag); at != std::string::npos; at = text.find(tag, at)) {
        const std::size_t end = text.find("}}", at);
        const std::string part = text.substr(at + tag.size(), end - at - tag.size());
        text.replace(at, end + 2 - at, with_parts(part + ".html"));
    }
    return text;
}

} // namespace

Fields& Fields::text(std::string name, std::string_view value) {
    values_.emplace_back(std::move(name), one_line(value));
    return *this;
}

Fields& Fields::truth(std::string name, bool value) {
    values_.emplace_back(std::move(name), value);
    return *this;
}

Fields& Fields::markup(std::string name, std::string value) {
    values_.emplace_back(std::move(name), Markup{std::move(value)});
    return *this;
}

Fields& Fields::list(const std::string& name, std::vector<Fields> entries) {
    for (std::size_t i = 0; i < entries.size(); ++i)
        entries[i].truth("last", i + 1 == entries.size());
    truth("has_" + name, !entries.empty());
    values_.emplace_back(name, std::move(entries));
    return *this;
}

std::string filled(std::string_view template_name, const Fields& fields) {
    kainjow::mustache::mustache page(with_parts(template_name));
    if (!page.is_valid())
        throw std::logic_error("a template of the book is broken: " + page.error_message());
    const data object = to_data(fields);
    kainjow::mustache::context<std::string> names;
    names.push(&object);
    return page.render(names);
}

} // namespace tumpline::cli

#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace tumpline::cli {

/// What fills a template: names with a text, a truth, our own markup, or a list of further fields.
/// A text is made one line on the way in and escaped by the template library on the way out; an
/// empty one counts as false, so that a template can ask for it.
class Fields {
  public:
    struct Markup {
        std::string text;
    };

    using Value = std::variant<bool, std::string, Markup, std::vector<Fields>>;

    Fields& text(std::string name, std::string_view value);
    Fields& truth(std::string name, bool value);
    /// Put in as it is by {{{name}}}: only for what this program wrote itself, escaped.
    Fields& markup(std::string name, std::string value);
    /// Also sets has_NAME, and `last` in the list's last entry.
    Fields& list(const std::string& name, std::vector<Fields> entries);

    [[nodiscard]] const std::vector<std::pair<std::string, Value>>& values() const {
        return values_;
    }

  private:
    std::vector<std::pair<std::string, Value>> values_;
};

/// Fills one of the book's templates (cli/templates); {{>name}} takes in another.
[[nodiscard]] std::string filled(std::string_view template_name, const Fields& fields);

} // namespace tumpline::cli

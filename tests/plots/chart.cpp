#include "tests/plots/chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <string_view>

namespace tumpline::plots {

namespace {

struct Style {
    std::string_view colour;
    std::string_view dash;
};

constexpr std::array<Style, 8> styles = {{
    {"#000000", ""},
    {"#0072b2", "9 4"},
    {"#d55e00", "3 3"},
    {"#009e73", "12 3 3 3"},
    {"#cc79a7", "6 2"},
    {"#56b4e9", "2 5"},
    {"#e69f00", "14 5"},
    {"#777777", "9 3 2 3 2 3"},
}};

// The page, in pixels: the frame of the plot, and to its right the names of the lines.
constexpr double width = 760.0;
constexpr double height = 420.0;
constexpr double left = 62.0;
constexpr double right = 540.0;
constexpr double top = 40.0;
constexpr double bottom = 366.0;

double across(const Axis& axis, double x) {
    return left + (x - axis.from) / (axis.to - axis.from) * (right - left);
}

double down(const Axis& axis, double y) {
    return bottom - (y - axis.from) / (axis.to - axis.from) * (bottom - top);
}

bool shown(const Axis& axis, double value) {
    return std::isfinite(value) && value >= axis.from - 1e-9 && value <= axis.to + 1e-9;
}

std::string escaped(std::string_view text) {
    std::string out;
    for (const char letter : text) {
        if (letter == '&')
            out += "&amp;";
        else if (letter == '<')
            out += "&lt;";
        else
            out += letter;
    }
    return out;
}

std::vector<double> ticks(const Axis& axis) {
    std::vector<double> at;
    const auto count = static_cast<int>(std::floor((axis.to - axis.from) / axis.tick + 1e-9));
    at.reserve(static_cast<std::size_t>(count) + 1);
    for (int tick = 0; tick <= count; ++tick)
        at.push_back(axis.from + tick * axis.tick);
    return at;
}

/// A tick's figure, with no more decimals than the step needs and no minus before zero.
std::string figure(double value, double tick) {
    const int decimals = tick >= 1.0 ? 0 : tick >= 0.1 ? 1 : 2;
    if (std::abs(value) < tick / 1000.0)
        value = 0.0;
    return fmt::format("{:.{}f}", value, decimals);
}

void draw_frame(std::back_insert_iterator<std::string> out, const Chart& chart) {
    for (const double x : ticks(chart.x)) {
        const double at = across(chart.x, x);
        fmt::format_to(out,
                       R"(<path d="M{0:.1f} {1:.1f}V{2:.1f}" stroke="#ddd"/>)"
                       "\n",
                       at,
                       top,
                       bottom);
        fmt::format_to(out,
                       R"(<text x="{:.1f}" y="{:.1f}" text-anchor="middle">{}</text>)"
                       "\n",
                       at,
                       bottom + 18.0,
                       figure(x, chart.x.tick));
    }
    for (const double y : ticks(chart.y)) {
        const double at = down(chart.y, y);
        fmt::format_to(out,
                       R"(<path d="M{0:.1f} {1:.1f}H{2:.1f}" stroke="#ddd"/>)"
                       "\n",
                       left,
                       at,
                       right);
        fmt::format_to(out,
                       R"(<text x="{:.1f}" y="{:.1f}" text-anchor="end">{}</text>)"
                       "\n",
                       left - 8.0,
                       at + 4.0,
                       figure(y, chart.y.tick));
    }
    fmt::format_to(
        out,
        R"(<rect x="{:.1f}" y="{:.1f}" width="{:.1f}" height="{:.1f}" fill="none" stroke="#555"/>)"
        "\n",
        left,
        top,
        right - left,
        bottom - top);
    fmt::format_to(out,
                   R"(<text x="{:.1f}" y="22" font-weight="bold">{}</text>)"
                   "\n",
                   left,
                   escaped(chart.title));
    fmt::format_to(out,
                   R"(<text x="{:.1f}" y="{:.1f}" text-anchor="middle">{}</text>)"
                   "\n",
                   (left + right) / 2.0,
                   bottom + 40.0,
                   escaped(chart.x.title));
    fmt::format_to(
        out,
        R"svg(<text transform="translate(16 {:.1f}) rotate(-90)" text-anchor="middle">{}</text>)svg"
        "\n",
        (top + bottom) / 2.0,
        escaped(chart.y.title));
}

void draw_lines(std::back_insert_iterator<std::string> out, const Chart& chart) {
    double key_y = top + 10.0;
    for (std::size_t i = 0; i < chart.lines.size(); ++i) {
        const Style& style = styles[i % styles.size()];
        std::string path;
        bool lifted = true;
        for (const Point& point : chart.lines[i].points) {
            if (!shown(chart.x, point.x) || !shown(chart.y, point.y)) {
                lifted = true;
                continue;
            }
            fmt::format_to(std::back_inserter(path),
                           "{}{:.1f} {:.1f}",
                           lifted ? 'M' : 'L',
                           across(chart.x, point.x),
                           down(chart.y, point.y));
            lifted = false;
        }
        constexpr std::string_view stroke =
            R"(<path d="{}" fill="none" stroke="{}" stroke-width="2" stroke-dasharray="{}"/>)"
            "\n";
        fmt::format_to(out, stroke, path, style.colour, style.dash);
        const std::string key = fmt::format("M{:.1f} {:.1f}h36", right + 14.0, key_y);
        fmt::format_to(out, stroke, key, style.colour, style.dash);
        fmt::format_to(out,
                       R"(<text x="{:.1f}" y="{:.1f}">{}</text>)"
                       "\n",
                       right + 58.0,
                       key_y + 4.0,
                       escaped(chart.lines[i].name));
        key_y += 22.0;
    }
}

void draw_marks(std::back_insert_iterator<std::string> out, const Chart& chart) {
    for (const Mark& mark : chart.marks) {
        const double x = across(chart.x, mark.at.x);
        const double y = down(chart.y, mark.at.y);
        fmt::format_to(out,
                       R"(<circle cx="{:.1f}" cy="{:.1f}" r="4" fill="#d55e00"/>)"
                       "\n",
                       x,
                       y);
        fmt::format_to(out,
                       R"(<text x="{:.1f}" y="{:.1f}">{}</text>)"
                       "\n",
                       x + 8.0,
                       y - 6.0,
                       escaped(mark.name));
    }
}

} // namespace

std::string to_svg(const Chart& chart) {
    std::string svg = fmt::format(
        R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.0f} {1:.0f}" font-family="sans-serif" font-size="13" role="img">)"
        "\n<title>{2}</title>\n"
        R"(<rect width="{0:.0f}" height="{1:.0f}" fill="#fff"/>)"
        "\n",
        width,
        height,
        escaped(chart.title));
    const std::back_insert_iterator<std::string> out(svg);
    draw_frame(out, chart);
    draw_lines(out, chart);
    draw_marks(out, chart);
    svg += "</svg>\n";
    return svg;
}

} // namespace tumpline::plots

#include "cli/drawing/ground_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string_view>

namespace tumpline::cli {

namespace {

using geo::LandFeature;
using geo::LandShape;
using geo::LandSign;
using geo::LayerKind;

constexpr double tolerance = 0.25;
constexpr double least_area = 1.5; ///< pixels across; smaller waters and grounds do not show
constexpr double beyond = 12.0;    ///< pixels past the window, so that no shore follows its edge
constexpr double arrow_every = 60.0;

/// Lines of one look, drawn as one path.
enum class Look {
    ground,
    lake,
    dry_lake,
    river,
    stream,
    dry_stream,
    arrow,
    building,
    road,
    path,
    unmarked,
    rapid,
    fall
};

/// Draws the features of one view.
class LandDrawing {
  public:
    LandDrawing(const GroundView& view, const geo::MapLayers& land)
        : view_(view), window_{view.window.left - beyond,
                               view.window.top - beyond,
                               view.window.right + beyond,
                               view.window.bottom + beyond} {
        for (const LandFeature& feature : land.features)
            add(feature);
    }

    [[nodiscard]] GroundPicture picture() const;

  private:
    void add(const LandFeature& feature);
    void area(const LandFeature& feature, const std::vector<std::vector<DrawnPoint>>& rings);
    void line(const LandFeature& feature, const std::vector<DrawnPoint>& whole);
    void point(const LandFeature& feature, const DrawnPoint& at);
    void name_along(const LandFeature& feature, const std::vector<DrawnPoint>& line);
    [[nodiscard]] static Look look(const LandFeature& feature);
    [[nodiscard]] std::string path(Look look, const char* style) const;
    [[nodiscard]] std::string lakes(Look look, const char* style) const;

    const GroundView& view_;
    Window window_;
    std::map<Look, std::string> data_;
    std::vector<GroundName> names_;
};

Look LandDrawing::look(const LandFeature& feature) {
    switch (feature.kind) {
    case LayerKind::water:
        if (feature.shape == LandShape::area)
            return feature.intermittent ? Look::dry_lake : Look::lake;
        return Look::river;
    case LayerKind::river:
        if (feature.intermittent)
            return Look::dry_stream;
        return feature.sign == LandSign::stream ? Look::stream : Look::river;
    case LayerKind::path:
        return feature.sign == LandSign::unmarked ? Look::unmarked : Look::path;
    case LayerKind::road:
        return Look::road;
    case LayerKind::rapid:
        return feature.sign == LandSign::plain ? Look::rapid : Look::fall;
    case LayerKind::building:
        return Look::building;
    case LayerKind::protected_ground:
        return Look::ground;
    }
    return Look::ground;
}

void LandDrawing::add(const LandFeature& feature) {
    std::vector<std::vector<DrawnPoint>> parts;
    for (const std::vector<geo::Position>& part : feature.parts) {
        std::vector<DrawnPoint>& drawn = parts.emplace_back();
        drawn.reserve(part.size());
        for (const geo::Position& at : part)
            drawn.push_back(view_.place(view_.projection.to_map(at)));
    }
    switch (feature.shape) {
    case LandShape::area:
        area(feature, parts);
        break;
    case LandShape::line:
        for (const std::vector<DrawnPoint>& part : parts)
            line(feature, part);
        break;
    case LandShape::point:
        for (const std::vector<DrawnPoint>& part : parts)
            if (window_.holds(part.front()))
                point(feature, part.front());
        break;
    }
}

void LandDrawing::area(const LandFeature& feature,
                       const std::vector<std::vector<DrawnPoint>>& rings) {
    std::string data;
    double left = window_.right;
    double right = window_.left;
    double top = window_.bottom;
    double bottom = window_.top;
    for (const std::vector<DrawnPoint>& ring : rings) {
        const std::vector<DrawnPoint> kept = ring_inside(ring, window_);
        for (const DrawnPoint& at : kept) {
            left = std::min(left, at.x);
            right = std::max(right, at.x);
            top = std::min(top, at.y);
            bottom = std::max(bottom, at.y);
        }
        data += fifths(simplified(kept, tolerance), true);
    }
    const double across = std::max(right - left, bottom - top);
    const DrawnPoint middle{(left + right) / 2.0, (top + bottom) / 2.0, 0.0};
    if (feature.kind == LayerKind::building && across < 3.0 && !data.empty())
        return point(feature, middle);
    if (data.empty() || across < least_area)
        return;
    data_[look(feature)] += data;
    constexpr double named_from = 40.0;
    if (!feature.name.empty() && right - left > named_from && feature.kind != LayerKind::building)
        names_.push_back({feature.name,
                          feature.kind == LayerKind::water ? "water-name" : "land-name",
                          {{middle, 0.0}}});
}

void LandDrawing::line(const LandFeature& feature, const std::vector<DrawnPoint>& whole) {
    const Look drawn = look(feature);
    for (const std::vector<DrawnPoint>& run : inside(whole, window_)) {
        const std::vector<DrawnPoint> thin = simplified(run, tolerance);
        data_[drawn] += fifths(thin, false);
        if (feature.kind == LayerKind::river && feature.down_stream)
            for (const Run& at : along(run, arrow_every)) {
                const double turn = at.angle_deg * std::numbers::pi / 180.0;
                const auto corner = [&](double ahead, double aside) {
                    return DrawnPoint{at.middle.x + ahead * std::cos(turn) - aside * std::sin(turn),
                                      at.middle.y + ahead * std::sin(turn) + aside * std::cos(turn),
                                      0.0};
                };
                data_[Look::arrow] +=
                    fifths({corner(3.6, 0.0), corner(-2.4, 2.2), corner(-2.4, -2.2)}, true);
            }
        if (feature.rapid || (feature.kind == LayerKind::rapid && drawn == Look::rapid))
            for (const Run& at : along(run, 5.0)) { // cross bars
                const double turn = at.angle_deg * std::numbers::pi / 180.0;
                data_[Look::rapid] += fifths(
                    {{at.middle.x - 3.0 * std::sin(turn), at.middle.y + 3.0 * std::cos(turn), 0.0},
                     {at.middle.x + 3.0 * std::sin(turn), at.middle.y - 3.0 * std::cos(turn), 0.0}},
                    false);
            }
        name_along(feature, run);
    }
}

void LandDrawing::name_along(const LandFeature& feature, const std::vector<DrawnPoint>& line) {
    if (feature.name.empty() || feature.kind == LayerKind::path)
        return;
    constexpr double letter = 7.0; // pixels, about
    std::vector<Run> tries =
        straight_runs(line, {letter * static_cast<double>(feature.name.size()), 4.0, false});
    for (Run& run : tries) { // above the line
        const double turn = run.angle_deg * std::numbers::pi / 180.0;
        run.middle.x += 7.0 * std::sin(turn);
        run.middle.y -= 7.0 * std::cos(turn);
    }
    if (!tries.empty())
        names_.push_back({feature.name,
                          feature.kind == LayerKind::road ? "land-name" : "water-name",
                          std::move(tries)});
}

void LandDrawing::point(const LandFeature& feature, const DrawnPoint& at) {
    const auto bar = [&](double x, double half) {
        return fifths({{at.x + x, at.y - half, 0.0}, {at.x + x, at.y + half, 0.0}}, false);
    };
    const Look drawn = look(feature);
    std::string word;
    switch (drawn) {
    case Look::rapid:
        data_[drawn] += bar(-3.0, 3.5) + bar(0.0, 3.5) + bar(3.0, 3.5);
        word = feature.grade.empty() ? "rapid" : "rapid " + feature.grade;
        break;
    case Look::fall:
        data_[drawn] += fifths({{at.x - 5.0, at.y, 0.0}, {at.x + 5.0, at.y, 0.0}}, false);
        word = feature.sign == LandSign::weir ? "weir" : "fall";
        break;
    case Look::building:
        data_[drawn] += fifths({{at.x - 1.5, at.y - 1.5, 0.0},
                                {at.x + 1.5, at.y - 1.5, 0.0},
                                {at.x + 1.5, at.y + 1.5, 0.0},
                                {at.x - 1.5, at.y + 1.5, 0.0}},
                               true);
        break;
    default:
        return; // a lake or a way that is only a point has no shape to draw
    }
    if (!word.empty())
        names_.push_back({feature.name.empty() ? word : feature.name + ", " + word,
                          "land-name",
                          {{at, 0.0}},
                          true});
}

std::string LandDrawing::path(Look look, const char* style) const {
    const auto found = data_.find(look);
    if (found == data_.end() || found->second.empty())
        return {};
    return fmt::format(R"(<path class="{}" d="{}"/>)", style, found->second);
}

/// A lake's data stand once; its water lines are strokes of falling width, cut to the lake itself.
std::string LandDrawing::lakes(Look look, const char* style) const {
    const auto found = data_.find(look);
    if (found == data_.end() || found->second.empty())
        return {};
    const std::string id = view_.id + style;
    std::string lines;
    for (const char* const line : {"l1", "p1", "l2", "p2", "shore"})
        lines += fmt::format(R"(<use href="#{}" class="{}"/>)", id, line);
    return fmt::format(
        R"(<clipPath id="{0}c"><path clip-rule="evenodd" d="{1}"/></clipPath><g class="lake {2}"><path id="{0}" fill-rule="evenodd" d="{1}"/><g clip-path='url(#{0}c)'>{3}</g></g>)",
        id,
        found->second,
        style,
        lines);
}

GroundPicture LandDrawing::picture() const {
    std::string markup = path(Look::ground, "guarded") + lakes(Look::dry_lake, "dry") +
                         lakes(Look::lake, "wet") + path(Look::river, "river") +
                         path(Look::stream, "stream") + path(Look::dry_stream, "dry-stream") +
                         path(Look::arrow, "arrow") + path(Look::building, "building") +
                         path(Look::road, "road-case") + path(Look::road, "road-line") +
                         path(Look::path, "trail") + path(Look::unmarked, "unmarked") +
                         path(Look::rapid, "rapid") + path(Look::fall, "fall");
    if (!markup.empty())
        markup = R"(<g class="layers" transform='scale(.2)'>)" + markup + "</g>";
    return {std::move(markup), names_};
}

} // namespace

GroundPicture land_picture(const GroundView& view, const geo::MapLayers& land) {
    return LandDrawing(view, land).picture();
}

} // namespace tumpline::cli

#include "planner/route/traced_line.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <utility>

namespace tumpline::planner {

namespace {

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& letter : result)
        letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    return result;
}

/// Height at a distance along, linear between the recorded neighbours; empty beside a missing one.
std::optional<double> height_along(const TracedLine& whole, double along_m) {
    const std::vector<double>& along = whole.line.along_m();
    const auto next = std::lower_bound(along.begin(), along.end(), along_m);
    const auto after = static_cast<std::size_t>(std::min<std::ptrdiff_t>(
        next - along.begin(), static_cast<std::ptrdiff_t>(along.size()) - 1));
    const std::size_t before = after == 0 ? 0 : after - 1;
    const std::optional<double>& low = whole.heights[before];
    const std::optional<double>& high = whole.heights[after];
    const double span_m = along[after] - along[before];
    if (span_m <= 0.0 || along_m >= along[after])
        return high;
    if (!low || !high)
        return std::nullopt;
    return *low + (*high - *low) * (along_m - along[before]) / span_m;
}

void append(std::vector<geo::Position>& points,
            geo::PointHeights& heights,
            const geo::Track& track) {
    std::size_t count = points.size();
    for (const std::vector<geo::TrackPoint>& part : track.parts)
        count += part.size();
    points.reserve(count);
    heights.reserve(count);
    for (const std::vector<geo::TrackPoint>& part : track.parts) {
        for (const geo::TrackPoint& point : part) {
            points.push_back(point.at);
            heights.push_back(point.height_m);
        }
    }
}

TracedLine finish(std::vector<geo::Position> points, geo::PointHeights heights) {
    if (std::none_of(heights.begin(), heights.end(), [](const auto& h) { return h.has_value(); }))
        heights.clear();
    return {geo::Polyline(std::move(points)), std::move(heights)};
}

} // namespace

std::vector<const geo::Track*> TrackShelf::tracks() const {
    std::vector<const geo::Track*> all;
    for (const geo::TrackFile& file : files)
        for (const geo::Track& track : file.tracks)
            all.push_back(&track);
    return all;
}

const geo::Track* TrackShelf::find(std::string_view name) const {
    const std::vector<const geo::Track*> all = tracks();
    for (const geo::Track* track : all)
        if (track->name == name)
            return track;
    for (const geo::Track* track : all)
        if (lower(track->name) == lower(name))
            return track;
    return nullptr;
}

const geo::Waypoint* TrackShelf::waypoint(std::string_view name) const {
    for (const geo::TrackFile& file : files)
        for (const geo::Waypoint& point : file.waypoints)
            if (point.name == name)
                return &point;
    for (const geo::TrackFile& file : files)
        for (const geo::Waypoint& point : file.waypoints)
            if (lower(point.name) == lower(name))
                return &point;
    return nullptr;
}

TracedLine traced(const geo::Track& track) {
    std::vector<geo::Position> points;
    geo::PointHeights heights;
    append(points, heights, track);
    return finish(std::move(points), std::move(heights));
}

double traced_length_m(const geo::Track& track) {
    double sum_m = 0.0;
    const geo::TrackPoint* last = nullptr;
    for (const std::vector<geo::TrackPoint>& part : track.parts)
        for (const geo::TrackPoint& point : part) {
            if (last != nullptr)
                sum_m += geo::distance_m(last->at, point.at);
            last = &point;
        }
    return sum_m;
}

TracedLine traced_all(const TrackShelf& shelf) {
    std::vector<geo::Position> points;
    geo::PointHeights heights;
    for (const geo::Track* track : shelf.tracks())
        append(points, heights, *track);
    return finish(std::move(points), std::move(heights));
}

TracedLine cut(const TracedLine& whole, double from_m, double to_m) {
    geo::Polyline line = whole.line.cut(from_m, to_m);
    geo::PointHeights heights;
    if (!whole.heights.empty()) {
        const double start_m = std::clamp(from_m, 0.0, whole.line.length_m());
        for (const double along_m : line.along_m())
            heights.push_back(height_along(whole, start_m + along_m));
    }
    return {std::move(line), std::move(heights)};
}

TracedLine reversed(const TracedLine& forward) {
    geo::PointHeights heights(forward.heights.rbegin(), forward.heights.rend());
    return {forward.line.reversed(), std::move(heights)};
}

std::optional<Travel> travel_from_type(std::string_view type) {
    static constexpr std::array<std::pair<std::string_view, Travel>, 16> words{{
        {"portage", Travel::portage},
        {"carry", Travel::portage},
        {"paddl", Travel::paddle},
        {"canoe", Travel::paddle},
        {"kayak", Travel::paddle},
        {"raft", Travel::paddle},
        {"boat", Travel::paddle},
        {"row", Travel::paddle},
        {"river", Travel::paddle},
        {"lake", Travel::paddle},
        {"water", Travel::paddle},
        {"walk", Travel::walk},
        {"hik", Travel::walk},
        {"foot", Travel::walk},
        {"trail", Travel::walk},
        {"path", Travel::walk},
    }};
    const std::string text = lower(type);
    for (const auto& [word, travel] : words)
        if (text.find(word) != std::string::npos)
            return travel;
    return std::nullopt;
}

} // namespace tumpline::planner

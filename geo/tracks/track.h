#pragma once

#include "geo/position.h"

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::geo {

/// Milliseconds since 1970 UTC.
using Instant = std::chrono::sys_time<std::chrono::milliseconds>;

/// What readers take of one file at most: points of tracks (half a gigabyte in memory), and tracks,
/// routes and waypoints together.
inline constexpr std::size_t most_points = 10'000'000;
inline constexpr std::size_t most_named = 100'000;

/// How long the lines of one file may be together: further than round the Earth. What is sampled
/// along a line grows with its length, not with the file.
inline constexpr double most_length_m = 50'000'000.0;

struct TrackPoint {
    Position at;
    std::optional<double> height_m; ///< above the geoid (see TrackFile::heights)
    std::optional<Instant> time;
};

/// What was mended in a track, counted. Every mend is of something a traveller cannot have done.
struct Repairs {
    std::size_t duplicates = 0; ///< consecutive points at the same place, dropped
    std::size_t spikes = 0;     ///< points out and back that could not have been reached, dropped
    std::size_t invalid_points = 0;  ///< coordinates missing or out of bounds, dropped
    std::size_t missing_heights = 0; ///< points without a height in a track that has heights
    std::size_t void_heights = 0; ///< heights that are void markers or beyond the Earth's, dropped
    std::size_t backward_times = 0; ///< time stamps earlier than the one before, dropped
    std::size_t invalid_times = 0;  ///< time stamps that are no times, dropped
    std::size_t antimeridian = 0;   ///< crossings of the 180th meridian
    std::size_t joined_parts = 0;   ///< gaps bridged between the parts of one track

    friend bool operator==(const Repairs&, const Repairs&) = default;
};

Repairs& operator+=(Repairs& sum, const Repairs& more);

enum class TrackKind { track, route, line };

/// One named line as it stands in a file; parts are recorded stretches with gaps between them.
struct Track {
    std::string name; ///< its own name; empty if it has none
    std::string type; ///< free text of the file: "walk", "paddle", ...; may be empty
    TrackKind kind = TrackKind::track;
    std::vector<std::vector<TrackPoint>> parts;
    Repairs repairs;
};

/// A named point of a file.
struct Waypoint {
    std::string name;
    std::string type; ///< free text of the file
    Position at;
    std::optional<double> height_m;
};

/// How the heights of a file were made comparable.
enum class HeightDatum {
    none,      ///< the file holds no heights
    geoid,     ///< they stood above the geoid already (GPX)
    corrected, ///< above the ellipsoid, turned into heights above the geoid by PROJ's grid
    ellipsoid  ///< above the ellipsoid and no grid at hand: only differences are meaningful
};

struct TrackFile {
    std::filesystem::path file;
    std::vector<Track> tracks; ///< in the order of the file
    std::vector<Waypoint> waypoints;
    HeightDatum heights = HeightDatum::none;
    std::vector<std::string>
        left_out; ///< what could not be used, in words ("track 2 Camp with ...")
};

/// All points of a track in one line, its parts joined in order.
[[nodiscard]] std::vector<TrackPoint> joined(const Track& track);

} // namespace tumpline::geo

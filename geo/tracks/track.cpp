#include "geo/tracks/track.h"

#include <cstddef>

namespace tumpline::geo {

Repairs& operator+=(Repairs& sum, const Repairs& more) {
    sum.duplicates += more.duplicates;
    sum.spikes += more.spikes;
    sum.invalid_points += more.invalid_points;
    sum.missing_heights += more.missing_heights;
    sum.void_heights += more.void_heights;
    sum.backward_times += more.backward_times;
    sum.invalid_times += more.invalid_times;
    sum.antimeridian += more.antimeridian;
    sum.joined_parts += more.joined_parts;
    return sum;
}

std::vector<TrackPoint> joined(const Track& track) {
    std::size_t count = 0;
    for (const std::vector<TrackPoint>& part : track.parts)
        count += part.size();
    std::vector<TrackPoint> points;
    points.reserve(count);
    for (const std::vector<TrackPoint>& part : track.parts) {
        // the end of one part and the start of the next are often written twice
        const bool seam = !points.empty() && !part.empty() && points.back().at == part.front().at;
        points.insert(points.end(), part.begin() + (seam ? 1 : 0), part.end());
    }
    return points;
}

} // namespace tumpline::geo

#pragma once

namespace tumpline::cli {

/// A drawing's frame about the map's centre.
struct Frame {
    double width;
    double height;
    double pixels_per_m;
};

} // namespace tumpline::cli

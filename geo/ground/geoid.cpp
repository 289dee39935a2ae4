#include "geo/ground/geoid.h"

#include "geo/gate/proj_gate.h"

#include <proj.h>

#include <cmath>
#include <memory>
#include <optional>

namespace tumpline::geo {

namespace {

struct DestroyOperation {
    void operator()(PJ* operation) const { proj_destroy(operation); }
};

/// PROJ's EGM96 grid, opened once; PROJ's objects belong to one thread.
class Egm96 {
  public:
    Egm96() : context_(make_proj_context()) {
        operation_.reset(
            proj_create(context_.get(), "+proj=vgridshift +grids=egm96_15.gtx +multiplier=1"));
    }

    [[nodiscard]] std::optional<double> height_m(const Position& position) const {
        if (!operation_)
            return std::nullopt;
        const PJ_COORD found = proj_trans(
            operation_.get(),
            PJ_FWD,
            proj_coord(proj_torad(position.lon_deg), proj_torad(position.lat_deg), 0, 0));
        if (!std::isfinite(found.xyz.z))
            return std::nullopt;
        return found.xyz.z;
    }

  private:
    ProjContext context_;
    std::unique_ptr<PJ, DestroyOperation> operation_; // goes before its context
};

} // namespace

std::optional<double> geoid_height_m(const Position& position) {
    if (!is_valid(position))
        return std::nullopt;
    static const thread_local Egm96 grid;
    return grid.height_m(position);
}

} // namespace tumpline::geo

#pragma once

#include "planner/plan.h"
#include "planner/route/route.h"
#include "planner/trip/json_document.h"
#include "planner/trip/json_pointer.h"

#include <filesystem>
#include <memory>
#include <mutex>
#include <string>
#include <utility>
#include <vector>

/// The trip file that a live page shows: read anew for every question, so that the file is the
/// truth; its tracks and heights are read once for each way of laying the route.
namespace tumpline::cli {

/// A plan and what it was made from.
struct LivePlan {
    planner::Plan plan;
    std::shared_ptr<const planner::Route> route;
    planner::JsonValue document; ///< the trip file with the edits made
    planner::Trip on_file;       ///< the trip without them
    std::string seen;            ///< digest of the file's text
    std::string laid;            ///< what the route and its ground follow from
};

class LiveTrip {
  public:
    explicit LiveTrip(std::filesystem::path file) : file_(std::move(file)) {}

    /// Throws: geo::InputError with every problem of the file or the edits.
    [[nodiscard]] LivePlan planned(const std::vector<planner::Edit>& edits);

    /// The file's text. Throws: geo::InputError if it cannot be read.
    [[nodiscard]] std::string text() const;

    /// The text with the edits made. Throws: geo::InputError if they do not fit.
    [[nodiscard]] std::string edited(const std::vector<planner::Edit>& edits) const;

    /// Writes the edits into the file if its text is still the one that was `seen`, whole or not at
    /// all; false if another hand has changed it.
    /// Throws: geo::InputError if the result cannot be planned, or cannot be written.
    [[nodiscard]] bool write(const std::vector<planner::Edit>& edits, const std::string& seen);

    [[nodiscard]] const std::filesystem::path& file() const { return file_; }

  private:
    [[nodiscard]] std::shared_ptr<const planner::Route> route_of(const planner::Trip& trip,
                                                                 const std::string& laid);
    [[nodiscard]] LivePlan planned_from(const std::string& text,
                                        const std::vector<planner::Edit>& edits);

    using Laid = std::pair<std::string, std::shared_ptr<const planner::Route>>;

    std::filesystem::path file_;
    std::mutex laying_;
    std::mutex writing_;
    std::vector<Laid> laid_; ///< the newest last
};

/// FNV-1a, 64 bits, in hexadecimal digits: tells one text from another, keeps no secret.
[[nodiscard]] std::string digest_of(const std::string& text);

} // namespace tumpline::cli

#pragma once

#include "cli/live/loopback_server.h"
#include "cli/words/json_values.h"
#include "geo/input_error.h"
#include "planner/trip/json_pointer.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// What a request of the live page asks, and what is answered where it is none.
namespace tumpline::cli {

/// What is wrong with a request that is none; answered with 400.
struct BadRequest {
    std::string why;
};

/// The body of a request.
struct LiveRequest {
    std::vector<planner::Edit> edits;
    std::vector<planner::Edit> pinned; ///< beside which the edits are shown
    std::vector<std::string> want;     ///< parts of the answer; empty: plan and drawing
    std::string seen;
    std::string ground;            ///< the id of the one that the page has
    std::vector<std::string> have; ///< digests of the drawings that the page has
    std::size_t draws = 400;
    bool narrow = false;

    [[nodiscard]] bool wants(std::string_view part) const;
    [[nodiscard]] bool has(std::string_view drawing) const;
};

/// Throws: BadRequest.
[[nodiscard]] LiveRequest live_request(const std::string& body);

[[nodiscard]] Reply replied(const Json& json, int status = 200);

/// {"problems": [...]}.
[[nodiscard]] Json problems_json(const geo::InputError& error);

/// Answers, and turns what is wrong into its status.
template <typename Work> Reply answered(const Work& work) {
    try {
        return work();
    } catch (const BadRequest& bad) {
        return replied({{"error", bad.why}}, 400);
    } catch (const geo::InputError& error) {
        return replied(problems_json(error), 422);
    }
}

} // namespace tumpline::cli

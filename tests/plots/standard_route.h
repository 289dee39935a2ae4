#pragma once

#include <string>

namespace tumpline::plots {

/// The page docs/models/standard-route.md: the models of walking and of energy on one route.
[[nodiscard]] std::string standard_route_page();

} // namespace tumpline::plots

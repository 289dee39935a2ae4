#pragma once

#include "cli/json/plan_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tumpline::test {

/// A plan as programs read it.
[[nodiscard]] inline nlohmann::json json_of(const planner::Plan& plan) {
    return nlohmann::json::parse(cli::plan_json(plan, "1"));
}

/// Each key of `wanted` has its value in `found`.
inline void expect_values(const nlohmann::json& found, const nlohmann::json& wanted) {
    for (const auto& [key, value] : wanted.items()) {
        ASSERT_TRUE(found.contains(key)) << key;
        if (value.is_number_float())
            EXPECT_NEAR(found[key].get<double>(), value.get<double>(), 1e-9) << key;
        else
            EXPECT_EQ(found[key], value) << key;
    }
}

} // namespace tumpline::test

#pragma once

#include "geo/light/time_zone.h"
#include "planner/caution.h"
#include "planner/quantities/leg_number.h"
#include "planner/quantities/unit_text.h"

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::planner {

inline constexpr std::string_view common_practice = "common practice, no source";

/// Cautions in the order in which they are said, each with the day and leg of which one speaks.
class CautionList {
  public:
    void at(std::optional<int> day, std::optional<LegNumber> leg = {}) {
        day_ = day;
        leg_ = leg;
    }

    /// Of the trip as a whole.
    void anywhere() { at({}); }

    Caution& add(Level level,
                 std::string code,
                 const UnitText& text,
                 std::string_view source = common_practice) {
        list_.push_back({.level = level,
                         .code = std::move(code),
                         .day = day_,
                         .leg = leg_,
                         .text = text.metric,
                         .source = std::string(source),
                         .imperial = imperial_if_other(text)});
        return list_.back();
    }

    void add(const std::vector<Caution>& more) {
        list_.insert(list_.end(), more.begin(), more.end());
    }

    [[nodiscard]] std::vector<Caution> take() { return std::move(list_); }

  private:
    std::optional<int> day_;
    std::optional<LegNumber> leg_;
    std::vector<Caution> list_;
};

/// How bad a caution is: as people read it, and as a number that finds the worst of its code.
inline void set_figure(Caution& caution, const UnitText& figure, double excess) {
    caution.figure = figure.metric;
    caution.figure_imperial = imperial_if_other(figure);
    caution.excess = excess;
}

/// "18:05" in a zone, as every clock time is shown: to the minute.
[[nodiscard]] inline std::string clock_words(geo::sys_seconds at, const std::string& zone) {
    return geo::rfc3339(std::chrono::round<std::chrono::minutes>(at), zone).substr(11, 5);
}

} // namespace tumpline::planner

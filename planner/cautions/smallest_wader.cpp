#include "planner/cautions/smallest_wader.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

constexpr double usual_wader_m = 1.6;

double size_m_kg(const Member& member) {
    return member.height_m.value_or(usual_wader_m) * member.body_kg;
}

} // namespace

Wading smallest_wader(const Trip& trip) {
    const Member& smallest = *std::min_element(
        trip.party.begin(), trip.party.end(), [](const Member& a, const Member& b) {
            return size_m_kg(a) < size_m_kg(b);
        });
    return {.name = smallest.name,
            .wader = {.height_m = smallest.height_m.value_or(usual_wader_m),
                      .body_kg = smallest.body_kg}};
}

} // namespace tumpline::planner

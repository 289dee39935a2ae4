#include "planner/trip/flow_check.h"

#include "planner/trip/river_flow.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

class FlowCheck {
  public:
    FlowCheck(const TripLeg& leg, std::string place, Problems& problems)
        : leg_(leg), flow_(*leg.flow), place_(std::move(place)), problems_(problems) {}

    void run() {
        beside();
        kinds();
        columns();
        runnable();
        levels();
    }

  private:
    struct Wrong {
        std::string found;
        std::string expected;
    };

    void add(const std::string& key, Wrong wrong) {
        good_ = false;
        problems_.add(
            place_ + key,
            {.found = std::move(wrong.found), .expected = std::move(wrong.expected), .advice = {}});
    }

    void beside();
    void kinds();
    void columns();
    void runnable();
    void levels();
    void same_kind(const std::optional<GaugeReading>& reading, const std::string& key);
    void level(const FlowNow& now, const std::string& key);

    const TripLeg& leg_;
    const RiverFlow& flow_;
    std::string place_;
    Problems& problems_;
    std::optional<bool> stage_;
    bool good_ = true;
};

void FlowCheck::beside() {
    if (leg_.current_mps)
        add("", {"\"flow\" beside \"current\"", "one of them: the columns give the current"});
    if (leg_.water && *leg_.water != Water::river)
        add("",
            {"\"flow\" on water that is no river", "it on legs with \"water\": \"river\" only"});
}

void FlowCheck::same_kind(const std::optional<GaugeReading>& reading, const std::string& key) {
    if (!reading)
        return;
    if (stage_ && *stage_ != reading->stage)
        add(key,
            {fmt::format("{}, {}",
                         reading_words(*reading).metric,
                         reading->stage ? "a stage" : "a discharge"),
             fmt::format("{} like the readings before: a gauge tells one kind",
                         *stage_ ? "a stage" : "a discharge")});
    else
        stage_ = reading->stage;
}

void FlowCheck::kinds() {
    for (const FlowLevel level : flow_levels)
        if (flow_.column(level))
            same_kind(flow_.column(level)->reading, fmt::format("/{}/reading", word(level)));
    same_kind(flow_.now.reading, "/now");
    if (flow_.runnable) {
        same_kind((*flow_.runnable)[0], "/runnable/0");
        same_kind((*flow_.runnable)[1], "/runnable/1");
    }
    for (std::size_t i = 0; i < flow_.times.size(); ++i)
        same_kind(flow_.times[i].now.reading, fmt::format("/times/{}/now", i));
}

void FlowCheck::columns() {
    const FlowColumn* before = nullptr;
    std::optional<double> sign;
    for (const FlowLevel level : flow_levels) {
        const std::optional<FlowColumn>& column = flow_.column(level);
        if (!column)
            continue;
        const std::string key = fmt::format("/{}", word(level));
        if (column->current_mps) {
            const double current_mps = *column->current_mps;
            if (current_mps == 0.0 || (sign && (*sign > 0.0) != (current_mps > 0.0)))
                add(key + "/current",
                    {plain_quantity(current_mps, Dimension::speed),
                     "a current that is not 0, with the boat at every level or against it"});
            sign = sign.value_or(current_mps);
        }
        if (before != nullptr && column->reading &&
            before->reading->stage == column->reading->stage &&
            column->reading->value <= before->reading->value)
            add(key + "/reading",
                {reading_words(*column->reading).metric,
                 fmt::format("more than {}, the level before",
                             reading_words(*before->reading).metric)});
        if (column->reading)
            before = &*column;
    }
    if (!sign)
        add("", {"a flow without any current", "at least one level with its \"current\""});
    if (!good_)
        return;
    for (const FlowLevel level : flow_levels)
        if (flow_.column(level) && !flow_state(flow_, {.column = level, .reading = {}}))
            add(fmt::format("/{}", word(level)),
                {"a level whose current cannot be told",
                 "its \"current\", or a discharge as \"reading\" of it and of a level with a "
                 "current, no more than five times apart"});
}

void FlowCheck::runnable() {
    if (flow_.runnable && (*flow_.runnable)[0].value >= (*flow_.runnable)[1].value)
        add("/runnable",
            {fmt::format("{} to {}",
                         reading_words((*flow_.runnable)[0]).metric,
                         reading_words((*flow_.runnable)[1]).metric),
             "the lower reading first, and the higher above it"});
}

void FlowCheck::level(const FlowNow& now, const std::string& key) {
    if (now.column && !flow_.column(*now.column))
        add(key,
            {fmt::format("\"{}\", of which there is no column", word(*now.column)),
             "a level that the flow has, or a reading"});
    else if (!flow_state(flow_, now))
        add(key,
            {level_words(now).metric,
             "a reading between those of the columns, or a discharge no more than five times off "
             "one with a \"current\""});
}

void FlowCheck::levels() {
    if (!good_)
        return;
    level(flow_.now, "/now");
    for (std::size_t i = 0; i < flow_.times.size(); ++i)
        level(flow_.times[i].now, fmt::format("/times/{}/now", i));
}

} // namespace

void check_flows(const Trip& trip, Problems& problems) {
    for (std::size_t i = 0; i < trip.route.legs.size(); ++i)
        if (trip.route.legs[i].flow)
            FlowCheck(trip.route.legs[i], fmt::format("/route/legs/{}/flow", i), problems).run();
}

} // namespace tumpline::planner

#include "planner/trip/river_flow.h"
#include "planner/trip/sections.h"

#include <algorithm>
#include <string>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

constexpr Sensible sensible_discharge{Dimension::flow, 0.001, 400'000.0};
constexpr Sensible sensible_stage{Dimension::length, -50.0, 200.0};

/// A text that reads as a length is a stage; everything else is held to be a discharge.
std::optional<GaugeReading> read_reading(const TripValue& value) {
    const JsonValue& json = value.json();
    if (json.kind == Kind::text && read_quantity(json.text, Dimension::length).value) {
        const std::optional<double> stage_m = value.quantity(sensible_stage);
        return stage_m ? std::optional(GaugeReading{*stage_m, true}) : std::nullopt;
    }
    if (json.kind == Kind::text && read_quantity(json.text, Dimension::flow).value) {
        const std::optional<double> discharge_m3ps = value.quantity(sensible_discharge);
        return discharge_m3ps ? std::optional(GaugeReading{*discharge_m3ps, false}) : std::nullopt;
    }
    value.add_problem("a gauge's reading with a unit: a discharge (m3/s, ft3/s) or a stage (m, ft)",
                      "for instance \"12 m3/s\" or \"1.4 m\"");
    return std::nullopt;
}

std::optional<FlowNow> read_now(const TripValue& value) {
    const JsonValue& json = value.json();
    if (json.kind == Kind::text)
        if (const std::optional<FlowLevel> level = read_flow_level(json.text))
            return FlowNow{.column = level, .reading = {}};
    const bool reading =
        json.kind == Kind::text && (read_quantity(json.text, Dimension::length).value ||
                                    read_quantity(json.text, Dimension::flow).value);
    if (!reading) {
        value.add_problem("\"low\", \"normal\", \"high\" or a gauge's reading with its unit",
                          "for instance \"21 m3/s\" or \"1.4 m\"");
        return std::nullopt;
    }
    const std::optional<GaugeReading> read = read_reading(value);
    return read ? std::optional(FlowNow{.column = {}, .reading = read}) : std::nullopt;
}

void read_runnable(const TripValue& value, RiverFlow& flow) {
    const std::vector<TripValue> items = value.items("a gauge's reading");
    if (items.size() != 2) {
        if (value.json().kind == Kind::list)
            value.add_problem("two readings, the lowest and the highest that can be run",
                              "for instance [\"8 m3/s\", \"60 m3/s\"]");
        return;
    }
    const std::optional<GaugeReading> least = read_reading(items[0]);
    const std::optional<GaugeReading> most = read_reading(items[1]);
    if (least && most)
        flow.runnable = std::array{*least, *most};
}

template <FlowLevel level> void read_column(const TripValue& value, RiverFlow& flow) {
    read_section(
        value, flow_column_section(), flow.columns[static_cast<std::size_t>(level)].emplace());
}

} // namespace

const Section<FlowColumn>& flow_column_section() {
    static const Section<FlowColumn> section{
        "flow_column",
        "a level of the river",
        {
            {"current",
             Need::may,
             [](const TripValue& v, FlowColumn& c) {
                 put(c.current_mps, v.quantity({Dimension::speed, -8.0, 8.0}));
             }},
            {"reading",
             Need::may,
             [](const TripValue& v, FlowColumn& c) { put(c.reading, read_reading(v)); }},
            {"class",
             Need::may,
             [](const TripValue& v, FlowColumn& c) { put(c.river_class, v.river_class()); }},
        }};
    return section;
}

const Section<Release>& release_section() {
    static const Section<Release> section{
        "release",
        "a release of water",
        {
            {"hours",
             Need::must,
             [](const TripValue& v, Release& r) { put(r.hours, read_hours(v)); }},
            {"now", Need::must, [](const TripValue& v, Release& r) { put(r.now, read_now(v)); }},
        }};
    return section;
}

const Section<RiverFlow>& flow_section() {
    static const Section<RiverFlow> section{
        "flow",
        "the flow of a river",
        {
            {"gauge", Need::may, [](const TripValue& v, RiverFlow& f) { put(f.gauge, v.name()); }},
            {"low", Need::may, read_column<FlowLevel::low>},
            {"normal", Need::may, read_column<FlowLevel::normal>},
            {"high", Need::may, read_column<FlowLevel::high>},
            {"now",
             Need::may,
             [](const TripValue& v, RiverFlow& f) {
                 put(f.now, read_now(v));
                 f.now_given = true;
             }},
            {"runnable", Need::may, read_runnable},
            {"times",
             Need::may,
             [](const TripValue& v, RiverFlow& f) {
                 constexpr std::size_t most_releases = 48;
                 if (is_short_enough(v, most_releases, "give the releases of one day"))
                     read_list(v, release_section(), f.times);
             }},
        }};
    return section;
}

} // namespace tumpline::planner

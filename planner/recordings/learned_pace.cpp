#include "planner/recordings/learned_pace.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double sample_s = 600.0;
constexpr double shortest_sample_s = 240.0;
constexpr double sixth = 1.0 / 6.0;
constexpr double step_m = 25.0;
constexpr double longest_rest_s = 1800.0;        // longer is a meal, a camp or a night
constexpr double longest_changeover_s = 14400.0; // beyond that one did something else as well
constexpr double one_place_m = 500.0;            // change-overs happen in one place
constexpr std::array slope_bounds{-1.0, -0.20, -0.10, -0.03, 0.03, 0.10, 0.20, 1.0};
constexpr double s_per_hour = 3600.0;
constexpr double least_moving_s = 3600.0; // below that one halt more or less is the whole figure
constexpr double least_level_s = 600.0;
constexpr std::size_t least_stretches = 6; // an hour
constexpr std::size_t folds = 5;
constexpr double least_margin = 0.005;

struct Weighted {
    double value;
    double weight_s;
};

/// The value below which lies `share` of the weight.
double quantile(const std::vector<Weighted>& sorted, double share) {
    double sum_s = 0.0;
    for (const Weighted& each : sorted)
        sum_s += each.weight_s;
    double below_s = 0.0;
    for (const Weighted& each : sorted) {
        below_s += each.weight_s;
        if (below_s >= share * sum_s)
            return each.value;
    }
    return sorted.back().value;
}

std::optional<LearnedFigure> figure(std::vector<Weighted> samples) {
    if (samples.empty())
        return std::nullopt;
    std::sort(samples.begin(), samples.end(), [](const Weighted& a, const Weighted& b) {
        return a.value < b.value;
    });
    double sum_s = 0.0;
    for (const Weighted& each : samples)
        sum_s += each.weight_s;
    return LearnedFigure{.value = quantile(samples, 0.5),
                         .low = quantile(samples, sixth),
                         .high = quantile(samples, 1.0 - sixth),
                         .hours = sum_s / s_per_hour,
                         .samples = samples.size()};
}

/// Stretches of about ten minutes of one motion.
struct TenMinutes {
    double length_m = 0.0;
    double moving_s = 0.0;
    double model_s = 0.0;
};

std::vector<TenMinutes> stretches(const Recorded& recorded, Motion motion, WalkingModel model) {
    std::vector<TenMinutes> all;
    for (const Run& run : recorded.runs) {
        TenMinutes open;
        const auto close = [&](double least_s) {
            if (open.moving_s >= least_s && open.length_m > 0.0)
                all.push_back(open);
            open = {};
        };
        for (const Window& window : run.windows) {
            if (window.motion != motion) {
                close(shortest_sample_s);
                continue;
            }
            open.length_m += window.to_m - window.from_m;
            open.moving_s += window.lasts_s;
            open.model_s += model_time_s(model, run.profile, window);
            if (open.moving_s >= sample_s)
                close(sample_s);
        }
        close(shortest_sample_s);
    }
    return all;
}

std::optional<LearnedFigure> speed(const Recorded& recorded, Motion motion) {
    std::vector<Weighted> samples;
    for (const TenMinutes& each : stretches(recorded, motion, WalkingModel::constant))
        samples.push_back({each.length_m / each.moving_s, each.moving_s});
    return figure(std::move(samples));
}

std::optional<LearnedFigure> pace_by(const Recorded& recorded, WalkingModel model, double factor) {
    std::vector<Weighted> samples;
    for (const TenMinutes& each : stretches(recorded, Motion::on_foot, model))
        samples.push_back({factor * each.model_s / each.moving_s, each.moving_s});
    return figure(std::move(samples));
}

/// One of each study: its other percentiles and paces differ by little more than a factor.
constexpr std::array compared_models{WalkingModel::swiss_signpost,
                                     WalkingModel::naismith_langmuir,
                                     WalkingModel::langmuir_party,
                                     WalkingModel::tobler,
                                     WalkingModel::irmischer_clarke,
                                     WalkingModel::campbell_2019,
                                     WalkingModel::sullivan_2020,
                                     WalkingModel::din_33466,
                                     WalkingModel::constant};

/// By how much a model misses each stretch, as a share of its time, where its pace is learned from
/// the stretches outside that fifth of the time; in order of time. Empty if there are too few.
std::vector<double> misses(const std::vector<TenMinutes>& stretches) {
    std::vector<double> missed;
    if (stretches.size() < least_stretches)
        return missed;
    for (std::size_t fold = 0; fold < folds; ++fold) {
        const std::size_t first = fold * stretches.size() / folds;
        const std::size_t end = (fold + 1) * stretches.size() / folds;
        std::vector<Weighted> others;
        for (std::size_t i = 0; i < stretches.size(); ++i)
            if (i < first || i >= end)
                others.push_back(
                    {stretches[i].model_s / stretches[i].moving_s, stretches[i].moving_s});
        const double pace = figure(std::move(others)).value_or(LearnedFigure{}).value;
        for (std::size_t i = first; i < end; ++i)
            missed.push_back(std::abs(stretches[i].model_s / pace / stretches[i].moving_s - 1.0));
    }
    return missed;
}

double mean(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values)
        sum += value;
    return sum / static_cast<double>(values.size());
}

/// A model with what it misses, stretch by stretch.
struct TriedModel {
    ModelFit fit;
    std::vector<double> missed;
};

std::optional<TriedModel> tried(const Recorded& recorded, WalkingModel model, double factor) {
    const std::optional<LearnedFigure> pace = pace_by(recorded, model, factor);
    if (!pace)
        return std::nullopt;
    TriedModel tried{.fit = {.model = model,
                             .pace = pace->value,
                             .scatter = 0.5 * (pace->high - pace->low) / pace->value,
                             .off = std::nullopt},
                     .missed = misses(stretches(recorded, Motion::on_foot, model))};
    if (!tried.missed.empty())
        tried.fit.off = mean(tried.missed);
    return tried;
}

/// The best beside `model` (or the next best), by the differences on the same stretches.
std::optional<ModelAdvice> advice(const std::vector<TriedModel>& best_first, WalkingModel model) {
    if (best_first.size() < 2 || !best_first.front().fit.off)
        return std::nullopt;
    const TriedModel& best = best_first.front();
    auto other = std::find_if(best_first.begin(), best_first.end(), [&](const TriedModel& each) {
        return each.fit.model == model;
    });
    if (other == best_first.begin() || other == best_first.end())
        other = best_first.begin() + 1;
    const auto count = static_cast<double>(best.missed.size());
    const double margin = *other->fit.off - *best.fit.off;
    double squares = 0.0;
    for (std::size_t i = 0; i < best.missed.size(); ++i) {
        const double away = other->missed[i] - best.missed[i] - margin;
        squares += away * away;
    }
    const double error = std::sqrt(squares / (count * (count - 1.0)));
    return ModelAdvice{.best = best.fit,
                       .other = other->fit,
                       .margin = margin,
                       .clear = margin > 2.0 * error && margin >= least_margin};
}

void learn_models(const Recorded& recorded, double factor, LearnedPace& learned) {
    std::vector<TriedModel> all;
    for (const WalkingModel model : compared_models)
        if (std::optional<TriedModel> one = tried(recorded, model, factor))
            all.push_back(*std::move(one));
    std::stable_sort(all.begin(), all.end(), [](const TriedModel& a, const TriedModel& b) {
        return a.fit.off.value_or(a.fit.scatter) < b.fit.off.value_or(b.fit.scatter);
    });
    learned.advice = advice(all, learned.model);
    for (const TriedModel& one : all)
        learned.fits.push_back(one.fit);
}

double slope_of(const Run& run, const Window& window) {
    const std::optional<double> start_m = run.profile.height_at(window.from_m);
    const std::optional<double> end_m = run.profile.height_at(window.to_m);
    const double length_m = window.to_m - window.from_m;
    return start_m && end_m && length_m > 0.0 ? (*end_m - *start_m) / length_m : 0.0;
}

/// Time on foot on ground that is level, or whose heights nobody knows.
double level_s(const Recorded& recorded) {
    constexpr double level = 0.03;
    double sum_s = 0.0;
    for (const Run& run : recorded.runs)
        for (const Window& window : run.windows)
            if (window.motion == Motion::on_foot && std::abs(slope_of(run, window)) < level)
                sum_s += window.lasts_s;
    return sum_s;
}

std::vector<SlopePace> by_slope(const Recorded& recorded) {
    std::vector<SlopePace> rows;
    for (std::size_t i = 0; i + 1 < slope_bounds.size(); ++i) {
        std::vector<Weighted> speeds;
        std::vector<Weighted> climbs;
        for (const Run& run : recorded.runs)
            for (const Window& window : run.windows) {
                const double slope = slope_of(run, window);
                if (window.motion != Motion::on_foot || run.profile.heights_m.empty() ||
                    slope < slope_bounds.at(i) || slope >= slope_bounds.at(i + 1))
                    continue;
                const double speed_mps = (window.to_m - window.from_m) / window.lasts_s;
                speeds.push_back({speed_mps, window.lasts_s});
                climbs.push_back({speed_mps * slope, window.lasts_s});
            }
        if (const std::optional<LearnedFigure> speed = figure(std::move(speeds)))
            rows.push_back(
                {.from = slope_bounds.at(i),
                 .to = slope_bounds.at(i + 1),
                 .speed_mps = *speed,
                 .climb_mps = figure(std::move(climbs)).value_or(LearnedFigure{}).value});
    }
    return rows;
}

bool afloat(Motion motion) {
    return motion == Motion::still_water || motion == Motion::flowing_water;
}

/// A window with where it begins and ends.
struct Placed {
    Window window;
    geo::Position from;
    geo::Position to;
};

geo::Position place(const Run& run, double along_m) {
    const auto at = std::lower_bound(run.along_m.begin(), run.along_m.end(), along_m);
    const auto index = std::min<std::ptrdiff_t>(at - run.along_m.begin(),
                                                static_cast<std::ptrdiff_t>(run.line.size()) - 1);
    return run.line[static_cast<std::size_t>(index)];
}

/// Times between the last move on foot and the first afloat, and the other way; the shortest and
/// the longest stand for the spread, since there are few.
void learn_changeovers(const Recorded& recorded, LearnedPace& learned) {
    std::vector<Placed> moves;
    for (const Run& run : recorded.runs)
        for (const Window& window : run.windows)
            moves.push_back({window, place(run, window.from_m), place(run, window.to_m)});
    std::vector<double> to_boat_s, to_boots_s, landing_s;
    for (std::size_t i = 1; i < moves.size(); ++i) {
        const Window& before = moves[i - 1].window;
        const Window& after = moves[i].window;
        const double between_s =
            std::chrono::duration<double>(after.start - before.start).count() - before.lasts_s;
        if (afloat(before.motion) == afloat(after.motion) || between_s < 60.0 ||
            between_s > longest_changeover_s ||
            geo::distance_m(moves[i - 1].to, moves[i].from) > one_place_m)
            continue;
        if (before.motion == Motion::carrying || after.motion == Motion::carrying)
            landing_s.push_back(between_s);
        else
            (afloat(after.motion) ? to_boat_s : to_boots_s).push_back(between_s);
    }
    const auto summed = [](std::vector<double>& times_s) -> std::optional<LearnedFigure> {
        if (times_s.empty())
            return std::nullopt;
        std::sort(times_s.begin(), times_s.end());
        double sum_s = 0.0;
        for (const double each_s : times_s)
            sum_s += each_s;
        return LearnedFigure{.value = times_s[times_s.size() / 2],
                             .low = times_s.front(),
                             .high = times_s.back(),
                             .hours = sum_s / s_per_hour,
                             .samples = times_s.size()};
    };
    learned.boots_to_boat_s = summed(to_boat_s);
    learned.boat_to_boots_s = summed(to_boots_s);
    learned.landing_s = summed(landing_s);
}

void learn_rests(const Recorded& recorded, LearnedPace& learned) {
    double moving_s = 0.0;
    for (const Run& run : recorded.runs)
        for (const Window& window : run.windows)
            moving_s += window.lasts_s;
    double rest_s = 0.0;
    std::size_t rests = 0;
    for (const Halt& halt : recorded.halts) {
        learned.halted_s += halt.lasts_s;
        learned.still_ends_s += halt.at_an_end ? halt.lasts_s : 0.0;
        if (halt.lasts_s <= longest_rest_s && !halt.at_an_end) {
            rest_s += halt.lasts_s;
            ++rests;
        }
    }
    if (moving_s < least_moving_s)
        return;
    const double per_hour_s = rest_s / moving_s * s_per_hour;
    learned.rest_per_hour_s = LearnedFigure{.value = per_hour_s,
                                            .low = per_hour_s,
                                            .high = per_hour_s,
                                            .hours = moving_s / s_per_hour,
                                            .samples = rests};
}

} // namespace

double model_time_s(WalkingModel model, const geo::Profile& profile, const Window& window) {
    const double length_m = window.to_m - window.from_m;
    const int steps = std::max(1, static_cast<int>(std::lround(length_m / step_m)));
    double time_s = 0.0;
    std::optional<double> before_m = profile.height_at(window.from_m);
    for (int i = 1; i <= steps; ++i) {
        const std::optional<double> here_m =
            profile.height_at(window.from_m + length_m * i / steps);
        const double run_m = length_m / steps;
        const double slope =
            before_m && here_m && run_m > 0.0 ? (*here_m - *before_m) / run_m : 0.0;
        time_s += run_m / walking_speed_mps(model, slope);
        before_m = here_m;
    }
    return time_s;
}

LearnedPace learned_pace(const Recorded& recorded, WalkingModel model, const RecordedUnder& under) {
    // The plan's speed is model * pace * load factor / terrain factor.
    const double factor = under.terrain_factor / under.load_factor;
    LearnedPace learned;
    learned.model = model;
    learned.pace = pace_by(recorded, model, factor);
    learned.level_walked = level_s(recorded) >= least_level_s;
    if (learned.pace && learned.level_walked) {
        const double level_mps = walking_speed_mps(model, 0.0);
        LearnedFigure level = *learned.pace;
        level.value *= level_mps;
        level.low *= level_mps;
        level.high *= level_mps;
        learned.level_speed_mps = level;
    }
    learned.slopes = by_slope(recorded);
    learn_models(recorded, factor, learned);
    learned.calm_speed_mps = speed(recorded, Motion::still_water);
    learned.flowing_speed_mps = speed(recorded, Motion::flowing_water);
    learn_changeovers(recorded, learned);
    learn_rests(recorded, learned);
    learned.heights = std::all_of(recorded.runs.begin(), recorded.runs.end(), [](const Run& run) {
        return !run.profile.heights_m.empty() || run.windows.front().motion != Motion::on_foot;
    });
    return learned;
}

} // namespace tumpline::planner

#include "cli/live/live_beside.h"

#include "cli/json/compare_json.h"
#include "cli/json/odds_json.h"
#include "cli/live/live_request.h"
#include "cli/live/long_job.h"
#include "cli/text/nights_text.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/trip/json_pointer.h"

#include <chrono>
#include <exception>
#include <memory>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using std::chrono::milliseconds;

constexpr int most_long_questions = 4;
constexpr milliseconds between_lines{100};

/// A place among the long questions; more than there are is refused.
class LongPlace {
  public:
    explicit LongPlace(std::atomic<int>& taken)
        : taken_(&taken), got_(++taken <= most_long_questions) {}

    ~LongPlace() { --*taken_; }

    LongPlace(const LongPlace&) = delete;
    LongPlace& operator=(const LongPlace&) = delete;

    [[nodiscard]] bool got() const { return got_; }

  private:
    std::atomic<int>* taken_;
    bool got_;
};

Reply too_many() {
    return replied({{"error", "too many long questions are under way already"}}, 503);
}

/// What a long question holds: it is left as soon as the answer is let go.
struct LongWaited {
    LongWaited(std::atomic<int>& taken, std::optional<std::size_t> draws)
        : place(taken), job(std::make_shared<LongJob>(draws)) {}

    ~LongWaited() { job->leave(); }

    LongWaited(const LongWaited&) = delete;
    LongWaited& operator=(const LongWaited&) = delete;

    LongPlace place;
    std::shared_ptr<LongJob> job;
};

Json odds_answer(const planner::Odds& odds, const std::string& seen, const Figures& shown) {
    return {{"seen", seen},
            {"odds", odds_json_value(odds, version())},
            {"view", odds_view(odds, shown)}};
}

Json nights_answer(const planner::NightsPlan& nights,
                   const std::string& seen,
                   const Figures& shown) {
    return {{"seen", seen},
            {"nights", nights_json_value(nights, version())},
            {"view", nights_view(nights, shown)}};
}

/// Whether somebody still waits; a plan that is asked for meanwhile goes before every step.
bool still_waited_for(LiveMaker& maker, LongJob& job, std::size_t done) {
    bool on = job.go_on(done);
    while (on && maker.hand.busy()) {
        std::this_thread::sleep_for(milliseconds(1));
        on = !job.left();
    }
    return on;
}

/// Works until somebody leaves, and ends the job with what came of it, or with what went wrong.
/// `work` answers nothing if it was stopped.
template <typename Work> void work_at(LongJob& job, const Work& work) {
    if (job.left())
        return;
    try {
        if (const std::optional<Json> came = work())
            job.end_with(replied(*came).body);
    } catch (const geo::InputError& error) {
        job.end_with(replied(problems_json(error)).body);
    } catch (const std::exception&) {
        job.end_with(replied({{"error", "a fault of the program"}}).body);
    }
}

Reply told_by_lines(std::shared_ptr<LongWaited> waited) {
    Reply reply;
    reply.type = "application/x-ndjson";
    reply.more = [waited = std::move(waited)] { return waited->job->next(between_lines); };
    return reply;
}

} // namespace

Reply odds_reply(LiveMaker& maker, const std::string& body) {
    const LiveRequest asked = live_request(body);
    auto waited = std::make_shared<LongWaited>(maker.long_questions, asked.draws);
    if (!waited->place.got())
        return too_many();
    const auto live = std::make_shared<const LivePlan>(
        maker.hand.done([&] { return maker.trip.planned(asked.edits); }));
    const planner::OddsOptions options{.draws = asked.draws, .seed = 1, .threads = 1};
    maker.long_hand.begin([&maker, live, options, job = waited->job] {
        work_at(*job, [&]() -> std::optional<Json> {
            const std::optional<planner::Odds> odds = planner::watched_odds_of(
                live->plan.trip, *live->route, options, [&](std::size_t done) {
                    return still_waited_for(maker, *job, done);
                });
            if (!odds)
                return std::nullopt;
            return odds_answer(*odds, live->seen, maker.figures(odds->plan));
        });
    });
    return told_by_lines(std::move(waited));
}

Reply nights_reply(LiveMaker& maker, const std::string& body) {
    const LiveRequest asked = live_request(body);
    auto waited = std::make_shared<LongWaited>(maker.long_questions, std::nullopt);
    if (!waited->place.got())
        return too_many();
    const auto live = std::make_shared<const LivePlan>(
        maker.hand.done([&] { return maker.trip.planned(asked.edits); }));
    maker.long_hand.begin([&maker, live, job = waited->job] {
        work_at(*job, [&]() -> std::optional<Json> {
            const std::optional<planner::NightsPlan> nights =
                planner::watched_nights(live->plan.trip, *live->route, [&](std::size_t weighed) {
                    return still_waited_for(maker, *job, weighed);
                });
            if (!nights)
                return std::nullopt;
            return nights_answer(*nights, live->seen, maker.figures(live->plan));
        });
    });
    return told_by_lines(std::move(waited));
}

Reply compare_reply(LiveMaker& maker, const std::string& body) {
    const LiveRequest asked = live_request(body);
    std::vector<planner::Plan> plans;
    plans.push_back(maker.trip.planned(asked.pinned).plan);
    LivePlan live = maker.trip.planned(asked.edits);
    const Figures shown = maker.figures(live.plan);
    plans.push_back(std::move(live.plan));
    const planner::Comparison comparison = planner::compare(std::move(plans));
    return replied({{"seen", live.seen},
                    {"compare", compare_json_value(comparison, {"pinned", "now"}, version())},
                    {"view", compare_view(comparison, shown)}});
}

} // namespace tumpline::cli

#include "cli/live/live_beside.h"

#include "cli/json/compare_json.h"
#include "cli/json/odds_json.h"
#include "cli/live/live_request.h"
#include "cli/live/odds_job.h"
#include "cli/text/nights_text.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/trip/json_pointer.h"

#include <chrono>
#include <exception>
#include <memory>
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

/// What a question of odds holds: it is left as soon as the answer is let go.
struct OddsWaited {
    explicit OddsWaited(std::atomic<int>& taken, std::size_t draws)
        : place(taken), job(std::make_shared<OddsJob>(draws)) {}

    ~OddsWaited() { job->leave(); }

    OddsWaited(const OddsWaited&) = delete;
    OddsWaited& operator=(const OddsWaited&) = delete;

    LongPlace place;
    std::shared_ptr<OddsJob> job;
};

Json odds_answer(const planner::Odds& odds, const std::string& seen, const Figures& shown) {
    return {{"seen", seen},
            {"odds", odds_json_value(odds, version())},
            {"view", odds_view(odds, shown)}};
}

/// Draws until somebody leaves; a plan that is asked for meanwhile goes before every draw.
void draw(LiveMaker& maker,
          const LivePlan& live,
          const planner::OddsOptions& options,
          OddsJob& job) {
    const auto watch = [&](std::size_t done) {
        bool on = job.go_on(done);
        while (on && maker.hand.busy()) {
            std::this_thread::sleep_for(milliseconds(1));
            on = !job.left();
        }
        return on;
    };
    if (job.left())
        return;
    try {
        const std::optional<planner::Odds> odds =
            planner::watched_odds_of(live.plan.trip, *live.route, options, watch);
        if (odds)
            job.end_with(replied(odds_answer(*odds, live.seen, maker.figures(odds->plan))).body);
    } catch (const geo::InputError& error) {
        job.end_with(replied(problems_json(error)).body);
    } catch (const std::exception&) {
        job.end_with(replied({{"error", "a fault of the program"}}).body);
    }
}

} // namespace

Reply odds_reply(LiveMaker& maker, const std::string& body) {
    const LiveRequest asked = live_request(body);
    const auto waited = std::make_shared<OddsWaited>(maker.long_questions, asked.draws);
    if (!waited->place.got())
        return too_many();
    const auto live = std::make_shared<const LivePlan>(
        maker.hand.done([&] { return maker.trip.planned(asked.edits); }));
    const planner::OddsOptions options{.draws = asked.draws, .seed = 1, .threads = 1};
    maker.long_hand.begin(
        [&maker, live, options, job = waited->job] { draw(maker, *live, options, *job); });
    Reply reply;
    reply.type = "application/x-ndjson";
    reply.more = [waited] { return waited->job->next(between_lines); };
    return reply;
}

Reply nights_reply(LiveMaker& maker, const std::string& body) {
    const LiveRequest asked = live_request(body);
    const LongPlace place(maker.long_questions);
    if (!place.got())
        return too_many();
    const LivePlan live = maker.hand.done([&] { return maker.trip.planned(asked.edits); });
    return maker.long_hand.done([&] {
        const planner::NightsPlan nights = planner::plan_nights(live.plan.trip, *live.route);
        return replied({{"seen", live.seen},
                        {"nights", nights_json_value(nights, version())},
                        {"view", nights_view(nights, maker.figures(live.plan))}});
    });
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

#pragma once

#include "cli/words/figures.h"
#include "cli/words/reader.h"
#include "geo/light/time_zone.h"
#include "planner/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::cli {

/// A page of text about one plan: its headings, figures in the reader's units, times in the trip's
/// zone, and the cautions that are still to be told. One section file adds to it after the other.
class TextPage : public Figures {
  public:
    TextPage(const planner::Plan& plan, const Reader& reader);

    [[nodiscard]] const planner::Plan& plan() const { return plan_; }

    /// A blank line and a heading.
    void heading(std::string_view text);

    /// Text as it is; ended lines.
    void add(std::string_view text) { text_ += text; }

    /// A line, made harmless and broken where it is too long.
    void line(const std::string& text);
    /// An item of a list.
    void item(const std::string& text);

    /// These are empty for 0, so that tables stay calm.
    [[nodiscard]] std::string distance(double length_m) const;
    [[nodiscard]] std::string portage(double length_m) const;
    [[nodiscard]] static std::string duration(double duration_s);
    using Figures::clock;
    /// The same, with "+1" for each day after (or "-1" before) that day of the trip.
    [[nodiscard]] std::string clock(geo::sys_seconds at, planner::Date date) const;
    /// "Sun 2027-08-08".
    [[nodiscard]] static std::string date(planner::Date date);
    /// "day 2, leg 4: Upper river", of an index into Plan::legs + 1.
    [[nodiscard]] std::string leg_place(std::size_t plan_leg) const;

    /// Cautions that belong to `leg` (or, if empty, to the whole of `day`), each told only once.
    [[nodiscard]] std::vector<std::string> cautions(int day, std::optional<std::size_t> leg);
    /// Those that belong to the trip as a whole, and what is left.
    [[nodiscard]] std::vector<std::string> cautions_left();

    [[nodiscard]] std::string take() { return std::move(text_); }

  private:
    const planner::Plan& plan_;
    Reader reader_;
    std::vector<bool> reported_;
    std::string text_;
};

/// Whether a limit holds for a load: on foot only.
[[nodiscard]] bool has_limit(const planner::PlanLeg& leg, const planner::MemberLoad& load);
/// Whether it is over its bearer's limit by more than a gram.
[[nodiscard]] bool over_limit(const planner::PlanLeg& leg, const planner::MemberLoad& load);

/// The sections of a plan, in the order in which they stand; each adds nothing if there is nothing
/// to say.
void add_summary(TextPage& page);
void add_days(TextPage& page);
void add_legs(TextPage& page);
void add_packs(TextPage& page);
/// Packs that are over their limits, and what could be done.
void add_remedies(TextPage& page);
/// The trip by its alternatives.
void add_other_ways(TextPage& page);
/// How the portages of the whole trip are carried, and what other ways would cost.
void add_carrying(TextPage& page);
void add_portages(TextPage& page);
void add_craft(TextPage& page);
/// Every load of every leg by its parts, carries and bags one by one.
void add_loads(TextPage& page);
void add_supplies(TextPage& page);
/// What to put in at the start and at each supply, and what lost days do to it.
void add_boxes(TextPage& page);
void add_water(TextPage& page);
void add_appointments(TextPage& page);
void add_exits(TextPage& page);
void add_turn_rounds(TextPage& page);
void add_stays_home(TextPage& page);
/// Who has what when setting off.
void add_packing(TextPage& page);
void add_assumptions(TextPage& page);
void add_cautions_left(TextPage& page);

} // namespace tumpline::cli

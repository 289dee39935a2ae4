#pragma once

#include "cli/words/figures.h"
#include "cli/words/reader.h"
#include "cli/words/table.h"
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

    /// Whether the reader asked for no section in particular.
    [[nodiscard]] bool first_screen() const { return reader_.show.first_screen(); }

    /// How wide a line may be.
    [[nodiscard]] std::size_t columns() const { return reader_.columns; }

    /// A blank line and a heading.
    void heading(std::string_view text);

    /// Text as it is; ended lines.
    void add(std::string_view text) { text_ += text; }

    void add(const Table& table, std::size_t indent = 2);
    /// An item under `first`, which stands before its first line.
    void hang(const std::string& first, const std::string& text);

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
    /// "day 2, leg 4: Upper river"
    [[nodiscard]] std::string leg_place(planner::PlanLegNumber plan_leg) const;

    /// Cautions that belong to `leg` (or, if empty, to the whole of `day`), each told only once.
    [[nodiscard]] std::vector<std::string> cautions(int day, std::optional<planner::LegNumber> leg);
    /// Those that belong to the trip as a whole, and what is left.
    [[nodiscard]] std::vector<std::string> cautions_left();

    [[nodiscard]] std::string take() { return std::move(text_); }

  private:
    const planner::Plan& plan_;
    Reader reader_;
    std::vector<planner::Caution> told_; ///< what the layers say of several legs, said once
    std::vector<bool> reported_;         ///< of those
    std::string text_;
};

/// "4", of a leg cut by a night "4.2".
[[nodiscard]] std::string leg_number(const planner::PlanLeg& leg);
/// When it gets dark on a day: a time, or why there is none.
[[nodiscard]] std::string dusk_words(const TextPage& page, const planner::PlanDay& day);
/// What one sets off with, in one line: "19.0 kg in the pack (limit 22.0 kg), 2.5 kg worn".
[[nodiscard]] std::string start_load_words(const TextPage& page, const planner::StartLoad& load);
/// Name, dates and length of the trip.
void add_title(TextPage& page);
/// What the plan comes to, and the cautions by their titles.
void add_verdict(TextPage& page);
/// Where each pack is heaviest, and how the portages are carried.
void add_heaviest(TextPage& page);
/// Whether the days end in daylight, in a sentence.
void add_daylight(TextPage& page);
/// What is left on the way and fetched; nothing where the trip leaves nothing.
void add_left(TextPage& page);
/// What is left and fetched on a leg, in words.
[[nodiscard]] std::vector<std::string> left_words(const TextPage& page,
                                                  const planner::PlanLeg& leg);
/// The places of kind "hazard" that one comes to, in order, with their notes.
void add_hazards(TextPage& page);
/// Hazards and notes of a leg's places on its day, and the leg's own note.
[[nodiscard]] std::vector<std::string> hazard_words(const TextPage& page,
                                                    const planner::PlanLeg& leg);
/// What a leader decides by.
void add_first_screen(TextPage& page);
/// What else the command could show.
void add_more(TextPage& page, std::string_view command);

/// The sections of a plan, in the order in which they stand; each adds nothing if there is nothing
/// to say.
void add_days(TextPage& page);
void add_legs(TextPage& page);
void add_packs(TextPage& page);
/// Packs that are over their limits, and what could be done.
void add_remedies(TextPage& page);
/// The trip by its alternatives.
void add_other_ways(TextPage& page);
/// The rivers at each level, and the decision cards.
void add_flow(TextPage& page);
/// The first of the two.
void add_flow_table(TextPage& page);
/// How the portages of the whole trip are carried, and what other ways would cost.
void add_carrying(TextPage& page);
void add_portages(TextPage& page);
void add_craft(TextPage& page);
/// Boats and paddles beside the water; what lies at bow and stern. Nothing where the trip says
/// nothing of them.
void add_suits(TextPage& page);
void add_ends(TextPage& page);
/// Every load of every leg by its parts, carries and bags one by one.
void add_loads(TextPage& page);
void add_supplies(TextPage& page);
/// What to put in at the start and at each supply, and what lost days do to it.
void add_boxes(TextPage& page);
void add_water(TextPage& page);
void add_appointments(TextPage& page);
void add_connections(TextPage& page);
void add_permits(TextPage& page);
/// The same for the first screen.
void add_connections_briefly(TextPage& page);
void add_permits_briefly(TextPage& page);
void add_exits(TextPage& page);
void add_turn_rounds(TextPage& page);
void add_stays_home(TextPage& page);
/// Who has what when setting off.
void add_packing(TextPage& page);
void add_luggage(TextPage& page);
void add_assumptions(TextPage& page);
void add_cautions_left(TextPage& page);

} // namespace tumpline::cli

#include "planner/results/luggage.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {

namespace {

/// Of one member.
class Bringing {
  public:
    Bringing(const Assembly& draft, std::size_t member) : draft_(draft), member_(member) {}

    void add(const PackedItem& item) {
        if (!item.comes || item.bearer != member_ || item.mass_kg <= 0.0)
            return;
        const bool boat = item.part == Part::craft;
        if (boat && draft_.prepared.assumed.craft[item.index].rolls_up) {
            pack_kg_ += item.mass_kg;
            return;
        }
        if (boat || item.at_start == Account::in_use)
            return piece(item.count > 1 ? fmt::format("{} × {}", item.count, item.item) : item.item,
                         item.mass_kg);
        if (item.at_start == Account::worn)
            luggage_.worn_kg += item.mass_kg;
        else
            pack_kg_ += item.mass_kg;
    }

    [[nodiscard]] Luggage take(const StartLoad& start) {
        pack_kg_ += start.food_kg + start.fuel_kg + start.waste_kg;
        luggage_.member = start.member;
        if (pack_kg_ > 0.0) {
            luggage_.pieces.insert(luggage_.pieces.begin(), "pack");
            luggage_.heaviest_kg = std::max(luggage_.heaviest_kg, pack_kg_);
        }
        luggage_.mass_kg += pack_kg_;
        return std::move(luggage_);
    }

  private:
    void piece(std::string name, double mass_kg) {
        luggage_.pieces.push_back(std::move(name));
        luggage_.mass_kg += mass_kg;
        luggage_.heaviest_kg = std::max(luggage_.heaviest_kg, mass_kg);
    }

    const Assembly& draft_;
    std::size_t member_;
    double pack_kg_ = 0.0;
    Luggage luggage_;
};

} // namespace

std::vector<Luggage> plan_luggage(const Assembly& draft,
                                  const std::vector<PackedItem>& items,
                                  const std::vector<StartLoad>& start_loads) {
    std::vector<Luggage> all;
    Luggage party;
    for (std::size_t m = 0; m < start_loads.size(); ++m) {
        Bringing bringing(draft, m);
        for (const PackedItem& item : items)
            bringing.add(item);
        all.push_back(bringing.take(start_loads[m]));
        party.mass_kg += all.back().mass_kg;
        party.worn_kg += all.back().worn_kg;
        party.heaviest_kg = std::max(party.heaviest_kg, all.back().heaviest_kg);
        party.pieces.insert(party.pieces.end(), all.back().pieces.begin(), all.back().pieces.end());
    }
    all.push_back(std::move(party));
    return all;
}

} // namespace tumpline::planner

#include "planner/trip/kit_names.h"

namespace tumpline::planner {

std::string name_with_owner(const KitItem& item) {
    const std::string owner = item.owner + "'s ";
    return item.owner.empty() || item.name.starts_with(owner) ? item.name : owner + item.name;
}

} // namespace tumpline::planner

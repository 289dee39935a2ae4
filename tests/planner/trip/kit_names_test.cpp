#include "planner/trip/kit_names.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(KitNames, SayWhoseAThingIsOnce) {
    KitItem item;
    item.name = "books";
    EXPECT_EQ(name_with_owner(item), "books");
    item.owner = "Ada";
    EXPECT_EQ(name_with_owner(item), "Ada's books");
    item.name = "Ada's boots";
    EXPECT_EQ(name_with_owner(item), "Ada's boots");
    item.owner = "Bo"; // who lends them
    EXPECT_EQ(name_with_owner(item), "Bo's Ada's boots");
}

} // namespace
} // namespace tumpline::planner

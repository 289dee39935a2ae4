#include "planner/models/elevation.h"

#include <array>

namespace tumpline::planner {

std::span<const ModelEntry> elevation_entries() {
    static constexpr std::array<ModelEntry, 5> entries{{
        {.family = elevation_family,
         .name = raster_swings,
         .answers = "How much does a way climb, by the heights of a raster?",
         .source = "SavitzkyGolay1964",
         .covers = "land; swings from 5 m up, summits 500 m and more apart, errors of 1.5 to 2 m",
         .is_default = true,
         .why =
             "errors of a raster mostly shift whole slopes, and a swing of 5 m is above the rest"},
        {.family = elevation_family,
         .name = receiver_swings,
         .answers = "How much does a way climb, by the heights that a satellite receiver recorded?",
         .source = "SavitzkyGolay1964",
         .covers = "land; swings from 10 m up, summits 1 km and more apart, errors of 3 to 5 m",
         .is_default = false,
         .why =
             "taken where no raster covers the way; drifting errors still add metres a kilometre"},
        {.family = elevation_family,
         .name = barometer_swings,
         .answers = "How much does a way climb, by the heights that a barometer recorded?",
         .source = "SavitzkyGolay1964",
         .covers = "land; swings from 5 m up, summits 500 m and more apart; a dry sensor",
         .is_default = false,
         .why =
             "for tracks whose heights come from a barometer: write \"recorder\" into \"route\""},
        {.family = elevation_family,
         .name = lake_median,
         .answers = "How high is a lake?",
         .source = "Arithmetic",
         .covers = "lakes and the sea, level from shore to shore",
         .is_default = true,
         .why = "shores that lean into the heights do not move a median"},
        {.family = elevation_family,
         .name = river_fall,
         .answers = "How does a river fall?",
         .source = "Barlow1972",
         .covers = "rivers; a fall of less than 3 m is within the noise, and drops do not show",
         .is_default = true,
         .why = "a single pit cannot draw down all the river below it, as a running minimum would"},
    }};
    return entries;
}

} // namespace tumpline::planner

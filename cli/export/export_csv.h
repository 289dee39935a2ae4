#pragma once

#include "planner/plan.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// A table and the name of its file.
struct CsvTable {
    std::string name;
    std::string text;
};

/// days.csv, legs.csv, loads.csv, items.csv and cautions.csv: a heading and records of
/// comma-separated values, SI units in the headings, times with their offset. Source: [RFC4180],
/// docs/export.md.
[[nodiscard]] std::vector<CsvTable> export_csv(const planner::Plan& plan);

/// The names of those tables.
[[nodiscard]] std::vector<std::string> csv_table_names();

} // namespace tumpline::cli

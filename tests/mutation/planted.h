// Included before every source of a planted copy of the tree: which fault is switched on, and which
// were passed. tests/mutation/plant.py writes the calls.
#pragma once

#include <cstdlib>

inline constexpr int most_planted = 4096;
inline unsigned char passed_faults[most_planted];

inline int fault_switched_on() {
    static const int number = [] {
        const char* text = std::getenv("TUMPLINE_PLANTED");
        return text ? std::atoi(text) : 0;
    }();
    return number;
}

/// Whether the fault of this number is the one that is switched on.
inline bool planted(int number) {
    passed_faults[number] = 1;
    return number == fault_switched_on();
}

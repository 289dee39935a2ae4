#include "sample-routes/make/samples.h"

#include <cstdlib>
#include <exception>
#include <iostream>

/// Writes the tracks and rasters of the sample routes anew: make_samples sample-routes
int main(int count, char** words) {
    if (count != 2) {
        std::cerr << "usage: make_samples FOLDER\n";
        return EXIT_FAILURE;
    }
    try {
        tumpline::samples::make_samples(words[1]);
    } catch (const std::exception& error) {
        std::cerr << "make_samples: " << error.what() << '\n';
        return EXIT_FAILURE;
    }
    return EXIT_SUCCESS;
}

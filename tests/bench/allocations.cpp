#include "tests/bench/allocations.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {

std::atomic<std::size_t> taken{0};

} // namespace

namespace tumpline::bench {

std::size_t allocations() {
    return taken.load();
}

} // namespace tumpline::bench

// The library's other forms without an alignment end in these.
void* operator new(std::size_t size) {
    ++taken;
    if (void* const memory = std::malloc(size == 0 ? 1 : size))
        return memory;
    throw std::bad_alloc();
}

void operator delete(void* memory) noexcept {
    std::free(memory);
}

void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sim/counted_memory.hpp"

#include <cstdlib>
#include <new>

namespace {

thread_local bool counts = false;
thread_local std::size_t calls = 0;

void* taken(std::size_t size, std::size_t alignment) {
    if (counts) ++calls;
    const std::size_t whole = (size + alignment - 1) / alignment * alignment;
    if (void* memory = std::aligned_alloc(alignment, whole == 0 ? alignment : whole)) return memory;
    throw std::bad_alloc();
}

void given_back(void* memory) noexcept {
    if (counts) ++calls;
    std::free(memory);
}

}  // namespace

// The whole program's; arrays go through these too.
void* operator new(std::size_t size) { return taken(size, alignof(std::max_align_t)); }
void* operator new(std::size_t size, std::align_val_t alignment) {
    return taken(size, static_cast<std::size_t>(alignment));
}
// The library's own would do where it calls the first one, but sanitizers have theirs: what one allots, the other may
// not free.
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    try {
        return taken(size, alignof(std::max_align_t));
    } catch (const std::bad_alloc&) {
        return nullptr;
    }
}
void operator delete(void* memory) noexcept { given_back(memory); }
void operator delete(void* memory, const std::nothrow_t&) noexcept { given_back(memory); }
void operator delete(void* memory, std::size_t) noexcept { given_back(memory); }
void operator delete(void* memory, std::align_val_t) noexcept { given_back(memory); }
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept { given_back(memory); }

namespace tests {

CountedMemory::CountedMemory() {
    calls = 0;
    counts = true;
}

CountedMemory::~CountedMemory() { counts = false; }

std::size_t CountedMemory::asked() const { return calls; }

}  // namespace tests

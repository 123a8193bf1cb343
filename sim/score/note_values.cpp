// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/note_values.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <numeric>

namespace sim::score {
namespace {

struct Tuplet {
    int actual;
    int normal;
};

std::vector<NoteValue> all_values() {
    constexpr std::array<const char*, 9> types{"breve", "whole", "half", "quarter", "eighth",
                                               "16th",  "32nd",  "64th", "128th"};
    constexpr std::array<Tuplet, 4> tuplets{{{1, 1}, {3, 2}, {5, 4}, {7, 4}}};
    std::vector<NoteValue> values;
    for (const Tuplet& tuplet : tuplets)
        for (int dots = 0; dots <= (tuplet.actual == 1 ? 2 : 1); ++dots)
            for (std::size_t i = 0; i < types.size(); ++i) {
                // a breve is eight quarters; a dot adds half, two dots three quarters
                const std::int64_t plain = ticks_a_quarter * 8 * tuplet.normal;
                const std::int64_t parts = (std::int64_t{1} << i) * tuplet.actual * (1 << dots);
                const std::int64_t times = (2 << dots) - 1;
                if (plain * times % parts == 0)
                    values.push_back({plain * times / parts, types[i], dots, tuplet.actual, tuplet.normal});
            }
    // of equal lengths the plainest stands first
    std::ranges::stable_sort(values, std::ranges::greater{}, &NoteValue::ticks);
    return values;
}

/// The longest values that fit, one after another, out of those of one kind of tuplet and plain ones.
std::vector<NoteValue> fitted(std::int64_t ticks, const std::vector<NoteValue>& values, int actual) {
    std::vector<NoteValue> found;
    for (const NoteValue& value : values) {
        if (value.actual != 1 && value.actual != actual) continue;
        for (; value.ticks <= ticks; ticks -= value.ticks) found.push_back(value);
    }
    return ticks == 0 ? found : std::vector<NoteValue>{};
}

/// A length that no usual tuplet has, as one of an unusual one: so many in the time of so many.
NoteValue odd_value(std::int64_t ticks) {
    constexpr std::array<const char*, 7> types{"whole", "half", "quarter", "eighth", "16th", "32nd", "64th"};
    std::int64_t plain = 4 * ticks_a_quarter;
    std::size_t type = 0;
    for (; type + 1 < types.size() && plain / 2 >= ticks && plain % 2 == 0; ++type) plain /= 2;
    const std::int64_t common = std::gcd(ticks, plain);
    return {ticks, types[type], 0, static_cast<int>(plain / common), static_cast<int>(ticks / common)};
}

}  // namespace

std::vector<NoteValue> note_values(std::int64_t ticks) {
    assert(ticks > 0);
    const std::vector<NoteValue> values = all_values();
    std::vector<NoteValue> best;
    for (const int actual : {1, 3, 5, 7}) {
        std::vector<NoteValue> found = fitted(ticks, values, actual);
        if (!found.empty() && (best.empty() || found.size() < best.size())) best = std::move(found);
    }
    if (!best.empty()) return best;
    for (const NoteValue& value : values)
        for (; value.actual == 1 && value.ticks >= ticks_a_quarter && value.ticks < ticks; ticks -= value.ticks)
            best.push_back(value);
    best.push_back(odd_value(ticks));
    return best;
}

}  // namespace sim::score

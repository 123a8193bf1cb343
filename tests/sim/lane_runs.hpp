// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/lanes.hpp"
#include "sim/note.hpp"

#include <cstring>
#include <string>
#include <vector>

namespace tests {

/// The first string of a preset, an octave up, with what a case changes.
inline sim::Note octave_of(const std::string& name, const sim::Friction& friction = {}, const sim::Bow& bow = {}) {
    sim::Preset preset = sim::find_preset(name);
    preset.friction = friction;
    preset.bow = bow;
    return sim::make_note(preset, preset.strings.front(), 12.0);
}

inline constexpr double bowed_place = 0.035;  // m

/// Started strokes that differ in force, as a batch takes them.
inline std::vector<sim::kernel::LaneStroke> lane_strokes(std::size_t count, int steps, double lightest = 0.05) {
    std::vector<sim::kernel::LaneStroke> strokes;
    for (std::size_t i = 0; i < count; ++i)
        strokes.push_back({.speed = sim::rising_profile({0.2, 0.004}),
                           .force = sim::constant_profile(lightest * (1.0 + 0.37 * static_cast<double>(i))),
                           .start = {},
                           .wanted = {.steps = steps, .waveforms = true}});
    return strokes;
}

/// FNV-1a over the bits of everything in the records.
inline std::string hash_of(const std::vector<sim::kernel::Record>& records) {
    std::uint64_t hash = 14695981039346656037ULL;
    const auto add = [&](const auto& value) {
        unsigned char bytes[sizeof(value)];
        std::memcpy(bytes, &value, sizeof(value));
        for (const unsigned char byte : bytes) hash = (hash ^ byte) * 1099511628211ULL;
    };
    for (const sim::kernel::Record& record : records) {
        for (const auto* row : {&record.bridge_force, &record.velocity, &record.friction, &record.temperature})
            for (const double value : *row) add(value);
        for (const char value : record.slipping) add(value);
        for (const sim::kernel::Slip& slip : record.slips) {
            add(slip.start);
            add(slip.end);
            add(slip.distance);
        }
        add(record.slipping_since);
        add(record.slipped_time_late);
        add(record.warmth.layer);
    }
    char text[17];
    std::snprintf(text, sizeof(text), "%016llx", static_cast<unsigned long long>(hash));
    return text;
}

}  // namespace tests

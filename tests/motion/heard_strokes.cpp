// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/heard_strokes.hpp"

#include <algorithm>

namespace tests {

std::vector<std::string> design_presets() {
    return {"division_bass_viol", "treble_viol", "cello", "gut_violin", "tenor_viol", "violone_in_g", "alto_viol"};
}
std::vector<std::string> test_presets() {
    return {"violin", "lyra_bass_viol", "consort_bass_viol", "descant_viol", "seven_string_bass_viol"};
}

std::optional<analysis::RecordedNote> heard_note(const RecordedStroke& stroke, bool note_known) {
    constexpr double late = 0.3;    // s
    constexpr double faded = 0.03;  // s, at the end
    constexpr double least = 0.02;  // s
    const auto recording = analysis::analyse_sound(stroke.sound.samples, stroke.sound.sample_rate,
                                                   {.intended_hz = note_known ? stroke.string_hz : 0.0});
    std::optional<analysis::RecordedNote> best;
    double most = least;
    for (const analysis::RecordedNote& note : recording.notes) {
        const double together =
            std::min(note.span.end, stroke.to - faded) - std::max(note.span.start, stroke.to - late);
        if (together <= most) continue;
        most = together;
        best = note;
    }
    return best;
}

}  // namespace tests

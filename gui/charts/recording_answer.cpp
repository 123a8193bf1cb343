// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "gui/charts/answers.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <filesystem>

namespace gui::charts {
namespace {

constexpr double heard_clarity = 3.0;  // dB, from which a moment's pitch is drawn
constexpr std::size_t partial_sets = 4;

HeardNote chart_note(const analysis::RecordedNote& note) {
    HeardNote result{.from = note.span.start, .to = note.span.end};
    if (!note.tone) return result;
    result.hz = note.tone->hz;
    const double length = note.span.steady_to - note.span.steady_from;
    const double offset = note.span.steady_from + 0.5 * std::max(0.0, length - note.measured);
    for (const analysis::ToneFrame& frame : note.tone->frames)
        if (frame.centroid_hz > 0.0) result.brightness.push_back({offset + frame.time, frame.centroid_hz});
    return result;
}

HeardPartials chart_partials(const analysis::RecordedNote& note, const sim::Tuning& tuning) {
    HeardPartials set{.name = nearest_pitch(note.tone->hz, tuning).name + " at " +
                              sim::fixed_number(note.span.start, 1) + " s"};
    double strongest = 1e-300;
    for (const analysis::Partial& partial : note.tone->partials) strongest = std::max(strongest, partial.amplitude);
    for (const analysis::Partial& partial : note.tone->partials)
        set.levels.push_back({partial.hz, analysis::db_from_ratio(std::max(partial.amplitude / strongest, 1e-6))});
    return set;
}

}  // namespace

RecordingChart recording_chart(const sim::report::AskedRecording& asked, const analysis::Recording& recording) {
    RecordingChart chart;
    chart.title = "Recording: " + std::filesystem::path(asked.file).filename().string();
    chart.subtitle = sim::report::recording_line(recording);
    for (const analysis::TrackPoint& point : recording.track)
        if (point.hz > 0.0 && point.clarity_db >= heard_clarity && point.level >= recording.loudness.least)
            chart.pitch.push_back({point.time, point.hz});
    std::vector<const analysis::RecordedNote*> pitched;
    for (const analysis::RecordedNote& note : recording.notes) {
        chart.notes.push_back(chart_note(note));
        if (note.tone) pitched.push_back(&note);
    }
    // Partials of notes spread over the recording.
    const std::size_t sets = std::min(partial_sets, pitched.size());
    for (std::size_t i = 0; i < sets; ++i)
        chart.partials.push_back(
            chart_partials(*pitched[sets > 1 ? (pitched.size() - 1) * i / (sets - 1) : 0], asked.tuning));
    chart.remarks = recording.warnings;
    return chart;
}

}  // namespace gui::charts

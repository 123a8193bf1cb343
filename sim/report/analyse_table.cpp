// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <cmath>

namespace sim::report {
namespace {

using analysis::db_from_ratio;

std::string motion_cell(const analysis::MotionGuess& guess) {
    std::string name(heard_motion_name(guess.motion));
    for (char& c : name)
        if (c == '_') c = ' ';
    if (guess.motion == analysis::HeardMotion::unclear) return name;
    return name + " (" + fixed_number(100.0 * guess.confidence, 0) + " %)";
}

std::vector<std::string> row_of(const analysis::RecordedNote& note, const Tuning& tuning) {
    std::vector<std::string> row{fixed_number(note.span.start, 2), fixed_number(note.span.end, 2)};
    if (note.tone) {
        const TemperedPitch pitch = nearest_pitch(note.tone->hz, tuning);
        row.insert(row.end(),
                   {pitch.name, fixed_number(note.tone->hz, 2), fixed_number(pitch.cents, 1),
                    fixed_number(note.tone->stability, 1), fixed_number(note.tone->centroid_hz, 0),
                    fixed_number(note.tone->centroid_hz / note.tone->hz, 1), fixed_number(note.tone->clarity_db, 1)});
    } else {
        row.insert(row.end(), {"no pitch", "-", "-", "-", "-", "-", "-"});
    }
    row.push_back(note.level > 0.0 ? fixed_number(db_from_ratio(note.level), 1) : "-");
    row.push_back(note.clean_after ? fixed_number(analysis::ms_from_seconds(*note.clean_after), 0) : "-");
    row.push_back(motion_cell(note.motion));
    return row;
}

}  // namespace

std::string recording_line(const analysis::Recording& recording) {
    const std::size_t notes = recording.notes.size();
    return fixed_number(recording.duration, 1) + " s, " + (recording.channels == 1 ? "one channel" : "two channels") +
           ", " + short_number(recording.sample_rate / 1000.0) + " kHz: " +
           (notes == 0   ? "no notes"
            : notes == 1 ? "1 note"
                         : std::to_string(notes) + " notes");
}

std::string analyse_table(const AskedRecording& asked, const analysis::Recording& recording) {
    const std::string heading = one_line(asked.file) + ": " + recording_line(recording) + "\n";
    if (recording.notes.empty()) return heading;
    Table table({{"from", "s"},
                 {"to", "s"},
                 {"note", "", true},
                 {"pitch", "Hz"},
                 {"off by", "cents"},
                 {"varies", "+- cents"},
                 {"brightness", "Hz"},
                 {"", "x pitch"},
                 {"tone/noise", "dB"},
                 {"level", "dB"},
                 {"clean after", "ms"},
                 {"motion", "", true}});
    for (const analysis::RecordedNote& note : recording.notes) table.add_row(row_of(note, asked.tuning));
    return heading + "\n" + table.text();
}

std::string analyse_in_words(const analysis::Recording& recording) {
    std::string words;
    for (const std::string& warning : recording.warnings) words += warning + "\n";
    bool unclear = false;
    for (const analysis::RecordedNote& note : recording.notes)
        unclear = unclear || note.motion.motion == analysis::HeardMotion::unclear;
    if (unclear)
        words +=
            "Motion \"unclear\": the sound alone doesn't tell how the string moves. Tell the note that was meant by "
            "--note, which helps.\n";
    if (!recording.notes.empty())
        words +=
            "Motions are named from what simulated strokes sound like, over bodies and rooms that are not yours: a "
            "hint, not a verdict. Good tone is taken for S-motion or multiple slip one time in three.\n";
    if (!words.empty()) words.pop_back();
    return words;
}

}  // namespace sim::report

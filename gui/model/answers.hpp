// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/climb_report.hpp"
#include "sim/report/window_report.hpp"
#include "sim/sound/takes.hpp"

#include <memory>

namespace gui {

class Selection;

/// What a study was asked, as the commands would be asked it.
struct NoteQuestion {
    std::shared_ptr<const sim::Preset> preset;
    int string_index = 0;
    double stop = 0.0;   ///< semitones; a climb takes the whole board
    double speed = 0.0;  ///< m/s, in the place of the player's
};
NoteQuestion note_question(const Selection& selection);

/// The preset with the speed in force, and the record by which a command repeats the run.
struct QuestionRun {
    sim::Preset preset;
    sim::report::RunRecord record;
};
QuestionRun run_of(const NoteQuestion& question, const char* command, const sim::MapGrid& grid);
const sim::PresetString& string_of(const QuestionRun& run, const NoteQuestion& question);

/// A climb with everything that its charts, tables and files want.
struct ClimbAnswer {
    sim::report::AskedClimb asked;
    sim::Climb climb;
    bool fine = false;
};
/// The window of one note, likewise.
struct WindowAnswer {
    sim::report::Asked asked;
    sim::Window window;
    bool fine = false;
};
using ClimbAnswerPointer = std::shared_ptr<const ClimbAnswer>;
using WindowAnswerPointer = std::shared_ptr<const WindowAnswer>;

enum class Fineness { coarse, fine };

/// All whole stops up to the end of the board.  A fine answer is the one that the command `climb` gives, and its JSON
/// can be asked again by that command.
ClimbAnswer climb_answer(const NoteQuestion& question, Fineness fineness, const sim::Workers& workers);
/// As the command `window` gives it.
WindowAnswer window_answer(const NoteQuestion& question, Fineness fineness, const sim::Workers& workers);

/// Two takes to compare, one gain for both.
using TakePair = sim::sound::ClimbTakes;

/// The selected note with the bow left behind at one place, and with the bow at another.
struct PairQuestion {
    NoteQuestion note;
    double left_behind = 0.0;  ///< m
    double follows = 0.0;      ///< m
    double force = 0.0;        ///< N
    double seconds = 2.0;
};
TakePair note_pair(const PairQuestion& question, const sim::Workers& workers);

}  // namespace gui

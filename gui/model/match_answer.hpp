// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "sim/report/match_report.hpp"

#include <filesystem>
#include <memory>

namespace gui {

/// Where on the instrument the notes of a recording are looked for.
enum class LookedFor { any_string, this_string, this_stop };

/// A recording to be held against the instrument's strokes.
struct MatchQuestion {
    NoteQuestion note;  ///< instrument and bow speed; its string and stop as far as they are looked for
    std::filesystem::path file;
    LookedFor where = LookedFor::any_string;
    sim::match::SpectraGrid grid;  ///< how finely
};

/// Where the bow may have been, with everything that chart, table and files want.
struct MatchAnswer {
    sim::report::AskedMatch asked;
    sim::match::Match match;
};
using MatchAnswerPointer = std::shared_ptr<const MatchAnswer>;

/// As the command `match` gives it, and its JSON can be asked again by that command.  InputError for a recording that
/// is gone or can't be read and for a stop off the board; Stopped when asked to.
MatchAnswer match_answer(const MatchQuestion& question, const sim::Workers& workers);

}  // namespace gui

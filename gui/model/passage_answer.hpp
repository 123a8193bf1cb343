// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/export.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/sound/passage_takes.hpp"

#include <memory>
#include <string>

namespace gui {

/// A tune on the selected instrument, with everything that chart, table, sounds and files want.
struct PassageAnswer {
    sim::report::AskedPassage asked;
    std::vector<sim::passage::Fingering> found;
    sim::report::BowedPassage bowed;
    sim::sound::PassageTakes takes;  ///< of a fine answer
    std::string wrong;               ///< why the tune can't be read or played here; then the rest is empty
    bool fine = false;

    const sim::passage::Fingering& fingering() const { return found[asked.chosen]; }
};
using PassageAnswerPointer = std::shared_ptr<const PassageAnswer>;

/// As the command `passage` gives it; `tune` is a file, the name of a shipped tune or a line of notes.
PassageAnswer passage_answer(const NoteQuestion& question, const std::string& tune, Fineness fineness,
                             const sim::Workers& workers);

/// Tables, score and sounds, as the command writes them; nothing of a tune that could not be played.
std::vector<Export> passage_files(const PassageAnswerPointer& answer);

/// A tune that comes with the program.
struct ShippedTune {
    QString name;        ///< to be shown: "bass study"
    QString short_name;  ///< for passage_answer: "bass_study"
};
std::vector<ShippedTune> shipped_tunes();

/// How many notes fail with either bow, in a sentence; or what is wrong.
QString passage_sentence(const PassageAnswer& answer);

}  // namespace gui

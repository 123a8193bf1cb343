// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/recording_answer.hpp"

#include <QString>

#include <filesystem>
#include <functional>
#include <vector>

namespace gui {

struct MatchAnswer;
struct StringsAnswer;

/// Something that can be put into a file.
struct Export {
    QString name;       ///< "Table of the climb, CSV"
    QString endings;    ///< for the file dialogue: "Pictures (*.png *.svg *.pdf)"
    QString file_name;  ///< proposed: "climb.csv"
    /// Writes the file whole or not at all; InputError or OutputError where it can't.
    std::function<void(const std::filesystem::path&)> write;
};

// Tables, as the commands write them.
std::vector<Export> climb_tables(const ClimbAnswerPointer& answer);
std::vector<Export> window_tables(const WindowAnswerPointer& answer);
std::vector<Export> strings_tables(const std::shared_ptr<const StringsAnswer>& answer);
std::vector<Export> recording_tables(const RecordingAnswerPointer& answer);
std::vector<Export> match_tables(const std::shared_ptr<const MatchAnswer>& answer);
/// What came in through the microphone.
Export played_sound(std::shared_ptr<const analysis::Signal> sound);
/// WAV or FLAC by the name; none of those that are not there yet.
std::vector<Export> take_sounds(const std::shared_ptr<const TakePair>& note,
                                const std::shared_ptr<const TakePair>& climb);
Export preset_file(const std::shared_ptr<const sim::Preset>& preset);

}  // namespace gui

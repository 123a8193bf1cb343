// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/export.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/output_file.hpp"
#include "gui/model/match_answer.hpp"
#include "gui/model/strings_study.hpp"

#include <QCoreApplication>

namespace gui {
namespace {

/// Words of this file, for the translator.
struct Words {
    Q_DECLARE_TR_FUNCTIONS(gui::Export)
};

Export text(const QString& name, const QString& file_name, std::function<std::string()> made) {
    const QString ending = file_name.section('.', -1);
    return {name, Words::tr("%1 files (*.%2)").arg(ending.toUpper(), ending), file_name,
            [made = std::move(made)](const std::filesystem::path& place) { analysis::write_text_file(place, made()); }};
}

}  // namespace

std::vector<Export> climb_tables(const ClimbAnswerPointer& answer) {
    return {text(Words::tr("Table of the climb, CSV"), "climb.csv",
                 [answer] { return climb_csv(answer->asked, answer->climb); }),
            text(Words::tr("Table of the climb, JSON"), "climb.json",
                 [answer] { return climb_json(answer->asked, answer->climb); })};
}

std::vector<Export> window_tables(const WindowAnswerPointer& answer) {
    return {text(Words::tr("Table of the window, CSV"), "window.csv",
                 [answer] { return window_csv(answer->asked, answer->window); }),
            text(Words::tr("Table of the window, JSON"), "window.json",
                 [answer] { return window_json(answer->asked, answer->window); }),
            text(Words::tr("Every stroke of the window, CSV"), "window_strokes.csv",
                 [answer] { return window_map_csv(answer->asked, answer->window); })};
}

std::vector<Export> strings_tables(const std::shared_ptr<const StringsAnswer>& answer) {
    return {text(Words::tr("Table of the strings, CSV"), "strings.csv",
                 [answer] { return gauges_csv(answer->asked, answer->study); }),
            text(Words::tr("Table of the strings, JSON"), "strings.json",
                 [answer] { return gauges_json(answer->asked, answer->study); })};
}

std::vector<Export> recording_tables(const RecordingAnswerPointer& answer) {
    return {text(Words::tr("Table of the recording's notes, CSV"), "recording.csv",
                 [answer] { return analyse_csv(answer->asked, answer->recording); }),
            text(Words::tr("Table of the recording's notes, JSON"), "recording.json",
                 [answer] { return analyse_json(answer->asked, answer->recording); })};
}

std::vector<Export> match_tables(const std::shared_ptr<const MatchAnswer>& answer) {
    return {text(Words::tr("Table of where the bow was, CSV"), "where_the_bow_was.csv",
                 [answer] { return match_csv(answer->asked, answer->match); }),
            text(Words::tr("Table of where the bow was, JSON"), "where_the_bow_was.json",
                 [answer] { return match_json(answer->asked, answer->match); })};
}

Export played_sound(std::shared_ptr<const analysis::Signal> sound) {
    return {Words::tr("What you played"), Words::tr("Sounds (*.flac *.wav)"), "played.flac",
            [sound = std::move(sound)](const std::filesystem::path& place) { analysis::write_audio(place, *sound); }};
}

std::vector<Export> take_sounds(const std::shared_ptr<const TakePair>& note,
                                const std::shared_ptr<const TakePair>& climb) {
    std::vector<Export> all;
    const auto add = [&](const QString& name, const QString& file, const std::shared_ptr<const TakePair>& pair,
                         analysis::Signal TakePair::*take) {
        if (!pair) return;
        all.push_back(
            {name, Words::tr("Sounds (*.wav *.flac)"), file,
             [pair, take](const std::filesystem::path& place) { analysis::write_audio(place, (*pair).*take); }});
    };
    add(Words::tr("Sound of the note, bow left behind"), "note_left_behind.wav", note, &TakePair::left_behind);
    add(Words::tr("Sound of the note, bow follows"), "note_follows.wav", note, &TakePair::follows);
    add(Words::tr("Sound of the climb, bow left behind"), "climb_left_behind.wav", climb, &TakePair::left_behind);
    add(Words::tr("Sound of the climb, bow follows"), "climb_follows.wav", climb, &TakePair::follows);
    return all;
}

Export preset_file(const std::shared_ptr<const sim::Preset>& preset) {
    return text(Words::tr("Preset of the instrument, JSON"), "my_instrument.json",
                [preset] { return sim::preset_text(*preset); });
}

}  // namespace gui

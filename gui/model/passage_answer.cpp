// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/passage_answer.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "analysis/output_file.hpp"
#include "analysis/units.hpp"
#include "sim/score/shipped_tunes.hpp"

#include <QCoreApplication>

namespace gui {
namespace {

constexpr sim::MapGrid coarse_grid{.contact_points = 12, .player_forces = 6, .more_forces = 0};
constexpr double found_until = 0.7;  // of the work, for the progress bar

/// Words of this file, for the translator.
struct PassageText {
    Q_DECLARE_TR_FUNCTIONS(gui::PassageText)
};

sim::report::AskedPassage asked_of(const NoteQuestion& question, const std::string& tune,
                                   const sim::passage::BowPlan& plan) {
    sim::report::AskedPassage asked{.run = {}, .preset = *question.preset, .tune = {}, .tune_hash = {}};
    asked.preset.player.speed = question.speed;
    asked.run = {.version = BOWBAND_VERSION,
                 .command = "passage",
                 .preset = *question.preset,
                 .settings = sim::report::settings_of(asked.preset)};
    sim::report::Settings& settings = asked.run.settings;
    settings["tune"] = tune;
    settings["bow"] = "yes";
    settings["bow_travel_mm_s"] = analysis::mm_from_metres(plan.travel);
    settings["bow_lifted_mm_s"] = analysis::mm_from_metres(plan.lifted_travel);
    settings["contact_points"] = static_cast<double>(plan.grid.contact_points);
    settings["forces"] = static_cast<double>(plan.grid.player_forces);
    const std::string place = sim::score::tune_place(tune);
    asked.tune = sim::score::read_tune(place);
    asked.tune_hash = std::filesystem::exists(place) ? sim::report::file_hash(place) : sim::report::text_hash(place);
    return asked;
}

void bow_it(PassageAnswer& answer, const sim::passage::BowPlan& plan, const sim::Workers& workers) {
    answer.bowed.bow = find_passage(answer.asked.tune.tune, answer.fingering(), answer.asked.preset, plan,
                                    part_of(workers, {0.0, found_until}));
    const sim::Workers rest = part_of(workers, {found_until, 1.0});
    if (!answer.fine) {
        answer.bowed.played = simulate(answer.bowed.bow, rest);
        return;
    }
    sim::sound::HeardPassage heard = sim::sound::hear_passage(answer.bowed.bow, rest);
    answer.bowed.played = std::move(heard.played);
    answer.takes = std::move(heard.takes);
}

Export text(const QString& name, const QString& file_name, std::function<std::string()> made) {
    const QString ending = file_name.section('.', -1);
    return {name, PassageText::tr("%1 files (*.%2)").arg(ending.toUpper(), ending), file_name,
            [made = std::move(made)](const std::filesystem::path& place) { analysis::write_text_file(place, made()); }};
}

Export sound(const QString& name, const QString& file, const PassageAnswerPointer& answer,
             analysis::Signal sim::sound::PassageTakes::*take) {
    return {name, PassageText::tr("Sounds (*.wav *.flac)"), file,
            [answer, take](const std::filesystem::path& place) { analysis::write_audio(place, answer->takes.*take); }};
}

}  // namespace

PassageAnswer passage_answer(const NoteQuestion& question, const std::string& tune, Fineness fineness,
                             const sim::Workers& workers) {
    sim::passage::BowPlan plan;
    if (fineness == Fineness::coarse) plan.grid = coarse_grid;
    PassageAnswer answer;
    answer.fine = fineness == Fineness::fine;
    try {
        answer.asked = asked_of(question, tune, plan);
        answer.found = sim::passage::find_fingerings(answer.asked.tune.tune, answer.asked.preset);
        bow_it(answer, plan, workers);
    } catch (const analysis::InputError& error) {
        answer.wrong = error.what();
    }
    return answer;
}

std::vector<Export> passage_files(const PassageAnswerPointer& answer) {
    if (!answer || !answer->wrong.empty()) return {};
    using Takes = sim::sound::PassageTakes;
    std::vector<Export> all{text(PassageText::tr("Table of the passage, CSV"), "passage.csv",
                                 [answer] { return passage_csv(answer->asked, answer->found, &answer->bowed); }),
                            text(PassageText::tr("Table of the passage, JSON"), "passage.json",
                                 [answer] { return passage_json(answer->asked, answer->found, &answer->bowed); }),
                            text(PassageText::tr("Score with fingers and bow, MusicXML"), "passage.musicxml", [answer] {
                                return fingered_musicxml(answer->asked.tune,
                                                         passage_marks(answer->fingering(), &answer->bowed));
                            })};
    if (!answer->fine) return all;
    all.push_back(sound(PassageText::tr("Sound of the passage, bow left behind"), "passage_left_behind.wav", answer,
                        &Takes::left_behind));
    all.push_back(
        sound(PassageText::tr("Sound of the passage, bow follows"), "passage_follows.wav", answer, &Takes::follows));
    return all;
}

std::vector<ShippedTune> shipped_tunes() {
    std::vector<ShippedTune> tunes;
    for (const auto& file : sim::score::shipped_tunes()) {
        const QString stem = QString::fromStdString(file.stem().string());
        tunes.push_back({QString(stem).replace('_', ' '), stem});
    }
    return tunes;
}

QString passage_sentence(const PassageAnswer& answer) {
    if (!answer.wrong.empty()) return PassageText::tr("This tune can't be played here. %1").arg(answer.wrong.c_str());
    return QString::fromStdString(failing_in_words(answer.bowed.played));
}

}  // namespace gui

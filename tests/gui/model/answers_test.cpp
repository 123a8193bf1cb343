// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/answers.hpp"

#include "analysis/output_file.hpp"
#include "gui/model/selection.hpp"
#include "gui/model/study.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QTemporaryDir>

namespace {

using gui::Fineness;
using gui::NoteQuestion;

/// expects  what the window exports can be asked again by the command: run record and settings come back as they were
TEST(AnswersTest, AWindowsJsonCanBeAskedAgain) {
    const NoteQuestion question{.preset = tests::division_viol(), .string_index = 0, .stop = 12.0, .speed = 0.25};
    const gui::WindowAnswer answer = gui::window_answer(question, Fineness::coarse, {.threads = 2});
    EXPECT_DOUBLE_EQ(answer.asked.player.speed, 0.25);
    const QTemporaryDir folder;
    const std::filesystem::path file = folder.filePath("window.json").toStdString();
    analysis::write_text_file(file, window_json(answer.asked, answer.window));
    const sim::report::RunRecord again = sim::report::read_run(file, "window");
    EXPECT_EQ(again.settings, answer.asked.run.settings);
    EXPECT_EQ(std::get<double>(again.settings.at("speed_m_s")), 0.25);
    EXPECT_EQ(std::get<double>(again.settings.at("stop_semitones")), 12.0);
    EXPECT_EQ(again.preset.strings, question.preset->strings);
}

/// expects  two takes as long as asked, the one at the better place stronger or not, but both of one gain: the joint
///          peak at -6 dB (0.501)
TEST(AnswersTest, APairOfTakesSharesOneGain) {
    const gui::PairQuestion question{
        .note = {.preset = tests::division_viol(), .string_index = 0, .stop = 12.0, .speed = 0.2},
        .left_behind = 0.118,
        .follows = 0.039,
        .force = 0.2,
        .seconds = 0.5};
    const gui::TakePair pair = gui::note_pair(question, {.threads = 2});
    EXPECT_EQ(pair.left_behind.samples.size(), 24000u);
    EXPECT_EQ(pair.follows.samples.size(), 24000u);
    double peak = 0.0;
    for (const auto* take : {&pair.left_behind, &pair.follows})
        for (const double sample : take->samples) peak = std::max(peak, std::abs(sample));
    EXPECT_NEAR(peak, 0.501, 0.001);
}

/// expects  no work before somebody looks; then a coarse answer and a full one; outdated by another note
TEST(StudyTest, WorksOnlyWhileItIsWatched) {
    gui::Selection selection(tests::division_viol());
    selection.set_stop(17.0);
    gui::WindowStudy study(selection, 2);
    selection.set_stop(19.0);
    QCoreApplication::processEvents();
    EXPECT_FALSE(study.working());
    std::vector<bool> fine;
    QObject::connect(&study, &gui::Study::found, [&] { fine.push_back(study.answer()->fine); });
    study.set_watched(true);
    ASSERT_TRUE(tests::wait_until([&] { return study.up_to_date(); }));
    EXPECT_EQ(fine, (std::vector{false, true}));
    EXPECT_DOUBLE_EQ(study.answer()->asked.note.stop, 19.0);
    selection.set_stop(18.0);
    EXPECT_FALSE(study.up_to_date());
}

}  // namespace

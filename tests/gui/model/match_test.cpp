// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "analysis/sound_blocks.hpp"
#include "gui/model/export.hpp"
#include "gui/model/match_words.hpp"
#include "gui/model/matched_notes.hpp"
#include "gui/model/selection.hpp"
#include "tests/analysis/tones.hpp"
#include "tests/gui/model/model_tools.hpp"
#include "tests/match/one_stroke.hpp"

#include <gtest/gtest.h>
#include <QAbstractItemModelTester>
#include <QTemporaryDir>

namespace {

using gui::LookedFor;
using gui::match_answer;
using gui::MatchedNotes;
using sim::match::BandPlace;
using Mode = QAbstractItemModelTester::FailureReportingMode;

const gui::ScreenText plain_text{QLocale::c()};

struct MatchAnswerTest : testing::Test {
    MatchAnswerTest() { tests::put_stroke(stroke); }

    /// On the octave of the first string.
    gui::MatchQuestion question(LookedFor where) const {
        return {.note = {.preset = tests::division_viol(), .string_index = 0, .stop = 12.0, .speed = 0.2},
                .file = stroke,
                .where = where,
                .grid = {.contact_points = 24, .forces = 8}};
    }

    QTemporaryDir folder;
    std::filesystem::path stroke = folder.filePath("a.wav").toStdString();
};

/// expects  the same bytes as from the library when the command's plan is made by hand, the bow where it was, progress
///          rising to the end
TEST_F(MatchAnswerTest, SaysWhatTheCommandSays) {
    double last = 0.0;
    const auto answer = match_answer(question(LookedFor::this_string), {.threads = 2, .progress = [&](double share) {
                                                                            EXPECT_GE(share, last - 1e-9);
                                                                            last = share;
                                                                        }});
    EXPECT_NEAR(last, 1.0, 0.01);
    const sim::match::KnownPlace first_string{.string = "1", .stop = {}, .end = {}};
    const auto told = match_recording(analysis::blocks_of_file(stroke), *tests::division_viol(),
                                      match_plan(first_string, {24, 8}), {.threads = 1});
    EXPECT_EQ(match_csv(answer.asked, answer.match), match_csv(answer.asked, told));
    EXPECT_EQ(match_json(answer.asked, answer.match), match_json(answer.asked, told));
    ASSERT_EQ(answer.match.notes.size(), 1u);
    ASSERT_EQ(answer.match.notes[0].abstains, "");
    const auto& found = answer.match.notes[0].strings.front();
    EXPECT_EQ(found.place.stop, 12.0);
    EXPECT_LE(found.region->contact.low, 1e-3 * tests::bowed_mm);
    EXPECT_GE(found.region->contact.high, 1e-3 * tests::bowed_mm);
    EXPECT_FALSE(answer.asked.file_hash.empty());
    EXPECT_EQ(answer.asked.run.command, "match");
    for (const gui::Export& table : match_tables(std::make_shared<const gui::MatchAnswer>(answer))) {
        const std::filesystem::path place = folder.filePath(table.file_name).toStdString();
        table.write(place);
        EXPECT_GT(std::filesystem::file_size(place), 100u) << place;
    }
}

/// expects  in the record, so that the command can do it again: all strings, the string, or the string and its stop
TEST_F(MatchAnswerTest, RecordsWhereItLooked) {
    using sim::report::SettingValue;
    const auto settings = [&](LookedFor where) {
        auto asked = question(where);
        asked.grid = {.contact_points = 5, .forces = 3};
        return match_answer(asked, {.threads = 2}).asked.run.settings;
    };
    EXPECT_EQ(settings(LookedFor::any_string).at("string"), SettingValue("all"));
    EXPECT_EQ(settings(LookedFor::this_string).at("string"), SettingValue("1"));
    EXPECT_FALSE(settings(LookedFor::this_string).contains("stop_semitones"));
    EXPECT_EQ(settings(LookedFor::this_stop).at("stop_semitones"), SettingValue(12.0));
    EXPECT_EQ(settings(LookedFor::this_stop).at("region_share"), SettingValue(0.8));
}

TEST_F(MatchAnswerTest, EndsWhenAsked) {
    std::stop_source stop;
    stop.request_stop();
    EXPECT_THROW(match_answer(question(LookedFor::any_string), {.stop = stop.get_token()}), sim::Stopped);
}

/// expects  one line that names what is wrong, for a recording that is gone, one that is none, and a stop off the board
TEST_F(MatchAnswerTest, BadQuestionsAreToldInOneLine) {
    const auto told = [](const gui::MatchQuestion& asked) -> std::string {
        try {
            match_answer(asked, {});
        } catch (const analysis::InputError& error) {
            return error.what();
        }
        return {};
    };
    auto gone = question(LookedFor::any_string);
    gone.file = folder.filePath("gone.wav").toStdString();
    EXPECT_NE(told(gone).find("gone.wav: is no longer there"), std::string::npos) << told(gone);
    auto none = question(LookedFor::any_string);
    none.file = folder.path().toStdString();
    EXPECT_FALSE(told(none).empty());
    auto off = question(LookedFor::this_stop);
    off.note.stop = 40.0;
    EXPECT_NE(told(off).find("off the board"), std::string::npos) << told(off);
    for (const auto& asked : {gone, none, off}) EXPECT_EQ(told(asked).find('\n'), std::string::npos);
}

/// expects  a sentence that doubts the instrument, where a treble's note is held against a bass
TEST_F(MatchAnswerTest, WhatTheInstrumentCantPlayIsDoubted) {
    std::vector<double> sound(9600, 0.0);
    const auto tone = tests::sawtooth({.hz = 1661.2, .sample_rate = 48000.0, .duration = 0.8, .max_hz = 20000.0});
    for (const double sample : tone) sound.push_back(0.2 * sample);
    sound.resize(sound.size() + 9600, 0.0);
    auto asked = question(LookedFor::this_string);
    asked.file = folder.filePath("high.wav").toStdString();
    analysis::write_audio(asked.file, analysis::Signal{sound, 48000.0});
    const auto answer = match_answer(asked, {});
    const QString words = gui::MatchWords(answer, plain_text).summary();
    EXPECT_TRUE(words.contains("high.wav")) << words.toStdString();
    EXPECT_TRUE(words.contains("No note was found") || words.contains("Was it played on this instrument"))
        << words.toStdString();
}

/// An answer made by hand: a note on the octave whose bow was at 30 to 40 mm, and one of which nothing is said.
gui::MatchAnswer made_answer(BandPlace place, sim::Band band) {
    const auto preset = tests::division_viol();
    gui::MatchAnswer answer;
    answer.asked.run.preset = *preset;
    answer.asked.file = "far/away/take.wav";
    answer.match.player = preset->player;
    analysis::RecordedNote heard;
    heard.tone = analysis::Tone{};
    heard.tone->hz = 554.37;
    answer.match.recording.notes = {heard, analysis::RecordedNote{}};
    sim::match::NoteMatch told;
    for (const double share : {0.7, 0.28, 0.02}) {
        sim::match::StrokeRegion region{.contact = {0.030, 0.040}, .force = {0.1, 0.3}};
        region.best_contact = 0.034;
        const std::size_t string = told.strings.size();
        const sim::Note note = make_note(*preset, preset->strings[string], 12.0);
        told.strings.push_back(
            {.place = {.string = preset->strings[string].name, .stop = 12.0, .off_cents = 0.0, .note = note},
             .share = share,
             .region = region});
    }
    told.in_band = place;
    told.band = sim::BandResult{};
    told.band->best = 0.033;
    (place == BandPlace::no_band ? told.band->stretch : told.band->band) = band;
    sim::match::NoteMatch untold;
    untold.abstains = "no steady pitch is heard";
    answer.match.notes = {told, untold};
    return answer;
}

sim::Band band_of(double near, double far) {
    sim::Band band{};
    band.near = near;
    band.far = far;
    return band;
}

/// expects  region, likeliest place and what they mean beside the band, in words for each case
TEST(MatchWordsTest, SayHowTheBowLayToTheBand) {
    const auto words = [](BandPlace place, sim::Band band) {
        return gui::MatchWords(made_answer(place, band), plain_text).of_note(0).toStdString();
    };
    const std::string inside = words(BandPlace::inside, band_of(0.025, 0.050));
    EXPECT_EQ(inside,
              "Note 1: C#5 on string 1, stop 12: bowed 30 to 40 mm from the bridge, most likely at 34 mm; inside the "
              "contact band, which is 25 to 50 mm. The sound does not tell the string: this one has 70 % of the "
              "likelihood.");
    EXPECT_NE(words(BandPlace::partly, band_of(0.035, 0.050)).find("partly inside"), std::string::npos);
    EXPECT_NE(words(BandPlace::outside, band_of(0.045, 0.050)).find("too near the bridge"), std::string::npos);
    EXPECT_NE(words(BandPlace::outside, band_of(0.020, 0.025)).find("too far from the bridge"), std::string::npos);
    EXPECT_NE(
        words(BandPlace::no_band, band_of(0.035, 0.050))
            .find("no place is secure enough for a band, partly inside the most secure stretch, which is 35 to 50"),
        std::string::npos);
}

TEST(MatchWordsTest, CountNotesAndTellDoubts) {
    const gui::MatchAnswer answer = made_answer(BandPlace::outside, band_of(0.020, 0.025));
    const gui::MatchWords words(answer, plain_text);
    EXPECT_EQ(
        words.summary().toStdString(),
        "take.wav against division bass viol. Notes bowed inside the contact band: 0, partly inside: 0, outside: 1; "
        "that can't be told: 1.");
    const gui::MatchAnswer bandless = made_answer(BandPlace::no_band, band_of(0.025, 0.050));
    EXPECT_TRUE(gui::MatchWords(bandless, plain_text)
                    .summary()
                    .endsWith("Notes bowed without a secure band: 1 (inside the most secure stretch: 1, partly inside: "
                              "0, outside: 0); that can't be told: 1."));
    EXPECT_EQ(gui::band_place_word(bandless.match.notes[0]), "no band; in the stretch");
    EXPECT_EQ(words.of_note(1).toStdString(), "Note 2: no pitch: nothing can be said; no steady pitch is heard.");
    EXPECT_TRUE(words.cautions().contains("80 % of the likelihood"));
    EXPECT_TRUE(words.cautions().contains("choose it above"));
}

TEST(MatchWordsTest, NameThePlacesToLookAt) {
    gui::Selection selection(tests::division_viol());
    selection.set_stop(12.0);
    EXPECT_EQ(looked_for_words(selection, LookedFor::any_string), "on any string");
    EXPECT_EQ(looked_for_words(selection, LookedFor::this_string), "on string 1");
    EXPECT_EQ(looked_for_words(selection, LookedFor::this_stop), "on string 1, stop 12 (D5)");
    selection.set_stop(0.0);
    EXPECT_EQ(looked_for_words(selection, LookedFor::this_stop), "on string 1, open (D4)");
}

/// Qt's tester ends the program at the first broken promise of a model.
TEST(MatchedNotesTest, KeepsTheRulesOfItemModelsAndShowsStringsThatAreLikely) {
    MatchedNotes notes(plain_text);
    const QAbstractItemModelTester tester(&notes, Mode::Fatal);
    EXPECT_EQ(notes.rowCount(), 0);
    notes.set_answer(std::make_shared<const gui::MatchAnswer>(made_answer(BandPlace::partly, band_of(0.035, 0.050))));
    ASSERT_EQ(notes.rowCount(), 3);  // two strings of the first note
    const auto shown = [&](int row, int column) { return notes.index(row, column).data().toString().toStdString(); };
    EXPECT_EQ(shown(0, MatchedNotes::region), "30 to 40");
    EXPECT_EQ(shown(0, MatchedNotes::best), "34");
    EXPECT_EQ(shown(0, MatchedNotes::in_band), "partly");
    EXPECT_EQ(shown(0, MatchedNotes::band), "35 to 50");
    EXPECT_EQ(shown(1, MatchedNotes::string), "2");
    EXPECT_EQ(shown(1, MatchedNotes::likely), "28");
    EXPECT_EQ(shown(1, MatchedNotes::in_band), "");
    EXPECT_EQ(shown(2, MatchedNotes::remark), "no steady pitch is heard");
    EXPECT_EQ(shown(2, MatchedNotes::region), "");
    EXPECT_EQ(notes.note_of(1), 0u);
    EXPECT_EQ(notes.line_of(1), 2);
    EXPECT_EQ(notes.line_of(7), std::nullopt);
    for (int column = 0; column < notes.columnCount(); ++column)
        EXPECT_FALSE(notes.headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString().isEmpty()) << column;
    notes.set_answer(nullptr);
    EXPECT_EQ(notes.rowCount(), 0);
}

}  // namespace

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/passage.hpp"

#include "analysis/errors.hpp"
#include "sim/passage/simulated.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;
using namespace sim::passage;

/// Notes on the top string, a quarter each, at 60 quarters a minute.
struct Line {
    score::Tune tune;
    Fingering fingering;

    void add(double stop, double quarters, std::string dynamic = "mf") {
        score::TuneNote note{.duration = quarters, .dynamic = std::move(dynamic)};
        note.start = end_;
        end_ += quarters;
        tune.notes.push_back(note);
        fingering.notes.push_back({.string = 0, .stop = stop});
    }
    void rest(double quarters) { end_ += quarters; }

private:
    double end_ = 0.0;
};

Line line_at(double quarters_a_minute) {
    Line line;
    line.tune.tempos = {{0.0, quarters_a_minute}};
    return line;
}

/// A coarse plan: these tests ask how things hang together, not how sure a place is.
BowPlan coarse() { return {.grid = {.contact_points = 12, .player_forces = 5, .more_forces = 0}}; }

Passage passage_of(const Line& line, const BowPlan& plan, int threads = 2) {
    return find_passage(line.tune, line.fingering, find_preset("division_bass_viol"), plan,
                        {.threads = threads, .progress = {}});
}

Line up_an_octave() {
    Line line = line_at(60.0);
    line.add(0.0, 1.0);
    line.add(7.0, 1.0);
    line.rest(1.0);
    line.add(12.0, 0.5, "f");
    line.add(12.0, 0.5, "f");
    line.add(0.0, 1.0);
    return line;
}

/// The octave on the coarse plan, worked out once for all tests that only look at it.
const Passage& climb() {
    static const Passage passage = passage_of(up_an_octave(), coarse());
    return passage;
}

}  // namespace

/// expects  the bow goes towards the bridge for the octave and away from it again, and is surer there than where it is
///          left behind; equal notes are one kind
TEST(PassageTest, BowFollowsTheClimb) {
    const Passage& passage = climb();
    const BowedNote& low = passage.notes.front();
    const BowedNote& high = passage.notes[2];
    EXPECT_EQ(passage.kinds.size(), 3U);
    EXPECT_EQ(passage.lowest, 0U);
    EXPECT_DOUBLE_EQ(passage.left_behind, *kind_of(passage, low).band.best);
    EXPECT_LT(high.contact, 0.8 * low.contact);
    EXPECT_GT(high.security.security, high.left_behind.security);
    EXPECT_GT(passage.notes.back().contact, high.contact);
    EXPECT_EQ(kind_of(passage, high).player.force_high,
              *dynamic_scale("f") * find_preset("division_bass_viol").player.force_high);
}

/// expects  no piece of the path faster than the bow may travel, in notes and in rests; margin: rounding
TEST(PassageTest, PathKeepsToTheTravelLimit) {
    double secure = 0.0;
    for (const double travel : {0.002, 0.05}) {
        BowPlan plan = coarse();
        plan.travel = travel;
        plan.lifted_travel = 2.0 * travel;
        const Passage passage = passage_of(up_an_octave(), plan);
        const std::vector<Profile::Point>& points = passage.path.points;
        for (std::size_t i = 1; i < points.size(); ++i) {
            const double time = points[i].time - points[i - 1].time;
            const bool rest = points[i - 1].time > 2.0 - 1e-9 && points[i].time < 3.0 + 1e-9;
            EXPECT_LE(std::abs(points[i].value - points[i - 1].value), (rest ? 2.0 : 1.0) * travel * time + 1e-9);
        }
        EXPECT_EQ(points.front().time, 0.0);
        EXPECT_DOUBLE_EQ(points.back().time, 5.0);
        double sum = 0.0;
        for (const BowedNote& note : passage.notes) sum += note.security.security;
        EXPECT_GT(sum, secure);  // more travel is surer
        secure = sum;
    }
}

/// expects  the same passage and the same verdicts for one, two and three threads, bit for bit
TEST(PassageTest, ThreadsChangeNothing) {
    const Passage& one = climb();
    const SimulatedPassage played = simulate(one, {.threads = 2, .progress = {}});
    for (const int threads : {1, 3}) {
        const Passage other = passage_of(up_an_octave(), coarse(), threads);
        EXPECT_EQ(other.notes, one.notes);
        EXPECT_EQ(other.path, one.path);
        EXPECT_EQ(simulate(other, {.threads = threads, .progress = {}}), played);
    }
}

/// expects  the chosen force lies in the stroke's range and among the forces that speak, wherever it is said to
TEST(PassageTest, ChosenForceSpeaks) {
    const Passage& passage = climb();
    int speaking = 0;
    for (const BowedNote& note : passage.notes) {
        const Player& player = kind_of(passage, note).player;
        EXPECT_GE(note.force, player.force_low);
        EXPECT_LE(note.force, player.force_high);
        if (!note.force_speaks) continue;
        ++speaking;
        const ForceInterval& plays = note.speaking.intervals[*note.speaking.main];
        EXPECT_GE(note.force, plays.low);
        EXPECT_LE(note.force, plays.high);
    }
    EXPECT_GT(speaking, 0);
}

/// expects  a stroke that runs out of hair is slower and lighter alike; a short note is told, and its speed rises
/// sooner
TEST(PassageTest, LongAndShortNotes) {
    Line line = line_at(60.0);
    line.add(0.0, 6.0);
    line.add(5.0, 0.1);
    const Passage passage = passage_of(line, coarse());
    const Player usual = find_preset("division_bass_viol").player;
    const BowedNote& longest = passage.notes[0];
    const Player& slow = kind_of(passage, longest).player;
    EXPECT_TRUE(longest.stroke.hair_limited);
    EXPECT_DOUBLE_EQ(slow.speed * longest.duration, usable_hair);
    EXPECT_DOUBLE_EQ(slow.force_high / usual.force_high, slow.speed / usual.speed);
    EXPECT_FALSE(longest.short_note);
    EXPECT_TRUE(passage.notes[1].short_note);
    EXPECT_NEAR(kind_of(passage, passage.notes[1]).player.rise, 0.025, 1e-12);
}

/// expects  what would take hours or gigabytes is refused by what is too much of it
TEST(PassageTest, RefusesWhatNobodyWouldBow) {
    Line notes = line_at(600.0);
    for (std::size_t i = 0; i <= most_bowed_notes; ++i) notes.add(0.0, 1.0);
    Line note = line_at(60.0);
    note.add(0.0, 61.0);
    Line rests = line_at(60.0);
    rests.add(0.0, 1.0);
    rests.rest(1300.0);
    rests.add(0.0, 1.0);
    for (const auto& [line, said] : {std::pair(notes, "2001 notes"), {note, "lasts 61 s"}, {rests, "lasts 1302 s"}}) {
        try {
            passage_of(line, coarse());
            FAIL() << said;
        } catch (const analysis::InputError& error) {
            EXPECT_NE(std::string(error.what()).find(said), std::string::npos) << error.what();
        }
    }
}

/// expects  the ways differ in the place alone; a bow left past 0.45 of a high note's string plays nothing and is told
TEST(PassageTest, BowLeftBehindCanFallOffTheString) {
    Line line = line_at(60.0);
    line.add(0.0, 1.0);
    line.add(17.0, 1.0);
    Passage passage = passage_of(line, coarse());
    const auto follows = note_stroke_of(passage, passage.notes[0], BowWay::follows);
    const auto behind = note_stroke_of(passage, passage.notes[0], BowWay::left_behind);
    ASSERT_TRUE(follows && behind);
    EXPECT_EQ(follows->drive.force, behind->drive.force);
    EXPECT_EQ(follows->drive.speed, behind->drive.speed);
    passage.left_behind = 0.3;
    EXPECT_FALSE(note_stroke_of(passage, passage.notes[1], BowWay::left_behind));
    EXPECT_FALSE(simulate(passage, {.threads = 2, .progress = {}}).left_behind[1].bowed);
}

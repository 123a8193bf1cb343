// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/fingering.hpp"

#include "analysis/errors.hpp"
#include "sim/passage/advice.hpp"
#include "sim/passage/hand_search.hpp"
#include "sim/score/read_tune.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>

namespace {

using namespace sim;
using namespace sim::passage;
using testing::HasSubstr;

Preset preset_named(const std::string& name) { return find_preset(name); }

score::Tune tune_of(const std::string& words) { return score::parse_tune(words, "test"); }

std::vector<int> fingers_of(const Fingering& fingering) {
    std::vector<int> fingers;
    for (const FingeredNote& note : fingering.notes) fingers.push_back(note.finger);
    return fingers;
}

std::vector<std::string> strings_of(const Preset& preset, const Fingering& fingering) {
    std::vector<std::string> names;
    for (const FingeredNote& note : fingering.notes)
        names.push_back(preset.strings[static_cast<std::size_t>(note.string)].name);
    return names;
}

/// Every way through the notes, tried one by one in depth.  A beginning is given up when it costs more than the
/// cheapest whole way so far (at first: than `bound`), even if every note after it cost its least and every step
/// nothing: no term is below 0.  It knows nothing of layers: strings, fingers and places are counted through.
class EveryWay {
public:
    EveryWay(const Hand& hand, double bound) : hand_(hand), cheapest_(bound), least_after_(hand.notes() + 1, 0.0) {
        for (std::size_t i = 0; i < hand.notes(); ++i) all_.push_back(taken(i));
        for (std::size_t i = hand.notes(); i-- > 0;)
            least_after_[i] = least_after_[i + 1] + std::ranges::min_element(all_[i], {}, &Taken::cost)->cost;
        go(0, {}, 0.0);
    }

    double cheapest() const { return cheapest_; }
    bool found() const { return found_; }

private:
    struct Taken {
        HandState state;
        double cost = 0.0;
    };

    std::vector<Taken> taken(std::size_t i) const {
        std::vector<Taken> ways;
        for (int string = 0; string < hand_.strings(); ++string)
            for (int finger = 0; finger <= 4; ++finger)
                for (int place = 0; place <= hand_.places(); ++place)
                    if (const auto cost = hand_.note(i, {string, finger, place}))
                        ways.push_back({{string, finger, place}, *cost});
        return ways;
    }

    void go(std::size_t i, const HandState& before, double so_far) {
        if (so_far + least_after_[i] > cheapest_) return;
        if (i == hand_.notes()) {
            if (so_far + hand_.end(before) > cheapest_) return;
            cheapest_ = so_far + hand_.end(before);
            found_ = true;
            return;
        }
        for (const Taken& way : all_[i]) {
            const auto step = i == 0 ? hand_.begin(way.state) : hand_.move(i, before, way.state);
            if (step) go(i + 1, way.state, so_far + *step + way.cost);
        }
    }

    const Hand& hand_;
    double cheapest_;
    bool found_ = false;
    std::vector<double> least_after_;
    std::vector<std::vector<Taken>> all_;
};

/// A random passage of an instrument: steps and leaps on its strings, lengths and rests of all kinds, at times a
/// finger.
score::Tune random_tune(const Preset& preset, std::mt19937& random, int most_notes) {
    const auto pick = [&](int low, int high) {
        return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
    };
    const int count = pick(1, most_notes);
    std::string words = pick(0, 1) == 0 ? "beats=3/4 " : "beats=6/8 ";
    words += "tempo=" + std::to_string(pick(40, 200));
    int key = 0;
    for (int i = 0; i < count; ++i) {
        const auto& string =
            preset.strings[static_cast<std::size_t>(pick(0, static_cast<int>(preset.strings.size()) - 1))];
        const int low = open_key(string);
        key = i == 0 || pick(0, 3) == 0 ? low + pick(0, 21) : key + pick(-4, 4);
        const int lowest = open_key(preset.strings.back());
        const int highest = open_key(preset.strings.front()) + static_cast<int>(last_stop(preset));
        key = std::clamp(key, lowest, highest);
        constexpr std::array<const char*, 12> names{"C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"};
        words += " " + std::string(names[static_cast<std::size_t>(key % 12)]) + std::to_string(key / 12 - 1) + ":" +
                 std::array{"1/4", "1/2", "1", "2"}[static_cast<std::size_t>(pick(0, 3))];
        if (pick(0, 6) == 0) words += " r:1/2";
    }
    return tune_of(words);
}

/// expects  the search's cheapest way to cost what trying every way finds, over instruments with and without frets
/// margin   rounding of sums only
TEST(FingeringTest, SearchEqualsTryingEveryWay) {
    std::mt19937 random(20261126);
    int passages = 0;
    for (const char* name : {"division_bass_viol", "treble_viol", "violin", "violone_in_g"}) {
        const Preset preset = preset_named(name);
        for (int k = 0; k < 50; ++k, ++passages) {
            const score::Tune tune = random_tune(preset, random, 8);
            const Hand hand(tune, preset, {});
            const std::vector<HandWay> ways = best_ways(hand, 1, 1);
            ASSERT_EQ(ways.size(), 1U);
            EXPECT_NEAR(cost_of(hand, ways[0].states).value(), ways[0].cost, 1e-9);
            // a way cheaper by more than rounding would be found; at least one as cheap must be
            const EveryWay every(hand, ways[0].cost + 1e-9);
            EXPECT_NEAR(every.cheapest(), ways[0].cost, 1e-8) << name << " passage " << k;
            EXPECT_TRUE(every.found()) << name << " passage " << k;
        }
    }
    EXPECT_EQ(passages, 200);
}

/// expects  the same without any bound to begin with, on short passages
TEST(FingeringTest, SearchEqualsTryingEveryWayWithoutAnyBound) {
    std::mt19937 random(7);
    const Preset preset = preset_named("treble_viol");
    for (int k = 0; k < 30; ++k) {
        const score::Tune tune = random_tune(preset, random, 4);
        const Hand hand(tune, preset, {});
        const EveryWay every(hand, std::numeric_limits<double>::infinity());
        EXPECT_NEAR(every.cheapest(), best_ways(hand, 1, 1)[0].cost, 1e-9);
    }
}

TEST(FingeringTest, SameAnswerEachTime) {
    const Preset preset = preset_named("cello");
    const score::Tune tune = tune_of("C3:1/2 E3 G3 C4 E4 G4 C5 G4 E4 C4 G3 E3 C3:2");
    EXPECT_EQ(find_fingerings(tune, preset), find_fingerings(tune, preset));
}

/// expects  the first frets of a bass viol one finger a fret, open strings where there are some
/// source   common practice
TEST(FingeringTest, ViolsFirstFretsTakeAFingerEach) {
    const Preset preset = preset_named("division_bass_viol");
    const Fingering best = find_fingerings(tune_of("D4:1 Eb4 E4 F4 F#4"), preset)[0];
    EXPECT_EQ(fingers_of(best), (std::vector<int>{0, 1, 2, 3, 4}));
    EXPECT_EQ(best.hand_places.size(), 1U);
    EXPECT_EQ(best.hand_places[0].landmark, "fret 1");
    EXPECT_EQ(best.notes[0].hand_place, -1);
}

/// expects  a violin's first place to hold a scale of two strings: 0 1 2 3, 0 1 2 3 or 4 for the open string
/// source   common practice
TEST(FingeringTest, ViolinsFirstPlaceHoldsAScale) {
    const Preset preset = preset_named("violin");
    const Fingering best = find_fingerings(tune_of("D4:1/2 E4 F#4 G4 A4 B4 C#5 D5"), preset)[0];
    EXPECT_EQ(best.hand_places.size(), 1U);
    EXPECT_EQ(best.notes[1].finger, 1);
    EXPECT_EQ(best.notes[3].finger, 3);
    EXPECT_NEAR(best.hand_places[0].stop, 2.0, 1e-9);
}

TEST(FingeringTest, FixedFingersAndStringsAreKept) {
    const Preset preset = preset_named("division_bass_viol");
    for (const Fingering& way : find_fingerings(tune_of("G4:1,finger=4 A4,string=2 B4,string=1,finger=2 C5"), preset)) {
        EXPECT_EQ(way.notes[0].finger, 4);
        EXPECT_EQ(strings_of(preset, way)[1], "2");
        EXPECT_EQ(way.notes[2].finger, 2);
        EXPECT_EQ(strings_of(preset, way)[2], "1");
    }
}

TEST(FingeringTest, AlternativesDifferAndCostNoLess) {
    const Preset preset = preset_named("division_bass_viol");
    const score::Tune tune = tune_of("D4:1/2 E4 F4 G4 A4 B4 C5 D5 E5 F5 G5 A5:2");
    const std::vector<Fingering> ways = find_fingerings(tune, preset, {.alternatives = 4, .weights = {}});
    ASSERT_GE(ways.size(), 2U);
    for (std::size_t a = 1; a < ways.size(); ++a) {
        EXPECT_GE(ways[a].cost, ways[a - 1].cost);
        for (std::size_t b = 0; b < a; ++b) EXPECT_NE(ways[a].notes, ways[b].notes);
    }
}

/// expects  hand places that follow one another without gaps, and a reason for every one but the first
TEST(FingeringTest, EveryShiftHasAReason) {
    const Preset preset = preset_named("treble_viol");
    const Fingering best =
        find_fingerings(tune_of("D5:1/2 E5 F5 G5 A5 B5 C6 D6 E6 F6 G6 A6 G6 E6 C6 A5 F5 D5"), preset)[0];
    ASSERT_GE(best.hand_places.size(), 2U);
    for (std::size_t k = 1; k < best.hand_places.size(); ++k) {
        EXPECT_EQ(best.hand_places[k].first, best.hand_places[k - 1].last + 1);
        EXPECT_THAT(best.hand_places[k].why, testing::Not(testing::IsEmpty()));
    }
    EXPECT_THAT(best.hand_places[1].why, HasSubstr("what the hand reaches from"));
}

/// expects  fret 2 of a quarter-comma instrument under a whole tone (193.2 cents), the bare board just in tune
/// source   derived: 2 fifths of 696.578 cents less an octave
TEST(FingeringTest, TemperedFretsAreFractionalStops) {
    Preset preset = preset_named("division_bass_viol");
    preset.temperament = Temperament::quarter_comma;
    const Fingering best = find_fingerings(tune_of("E4:1,string=1 D5:1,string=1"), preset)[0];
    EXPECT_NEAR(best.notes[0].stop, 1.93157, 1e-4);
    EXPECT_NEAR(best.notes[1].cents, 0.0, 1e-9);
    EXPECT_NEAR(best.notes[1].pitch, written_pitch({'D', 0, 5}, preset), 1e-9);
}

/// expects  F sharp and G flat a diesis of 41 cents apart in quarter comma, alike in equal temperament
/// source   derived: 12 fifths of 696.578 cents fall 41.06 cents short of 7 octaves
TEST(FingeringTest, SpellingCountsInMeantone) {
    Preset preset = preset_named("violin");
    const double equal = written_pitch({'F', 1, 4}, preset);
    EXPECT_DOUBLE_EQ(equal, written_pitch({'G', -1, 4}, preset));
    preset.temperament = Temperament::quarter_comma;
    const double diesis = 1200.0 * std::log2(written_pitch({'G', -1, 4}, preset) / written_pitch({'F', 1, 4}, preset));
    EXPECT_NEAR(diesis, 41.06, 0.01);
}

/// expects  no two fingers of one hand place wider apart than the hand's span and its stretch, at any instrument
TEST(FingeringTest, NoHandPlaceIsWiderThanTheHand) {
    std::mt19937 random(5);
    for (const char* name : {"division_bass_viol", "treble_viol", "violone_in_g", "cello", "descant_viol"}) {
        const Preset preset = preset_named(name);
        const FingeringWeights weights;
        const double widest = preset.player.hand_span * (1.0 + weights.stretch_limit);
        for (int k = 0; k < 20; ++k) {
            const Fingering best = find_fingerings(random_tune(preset, random, 30), preset)[0];
            for (const FingeredNote& note : best.notes) {
                if (note.finger == 0) continue;
                const HandPlace& place = best.hand_places[static_cast<std::size_t>(note.hand_place)];
                EXPECT_LE(std::abs(note.from_nut - place.from_nut), widest) << name;
            }
        }
    }
}

TEST(FingeringTest, OpenStringsThatCheckANoteAreNamed) {
    const Preset preset = preset_named("division_bass_viol");
    const score::Tune tune = tune_of("D5:1,string=1 A4,string=1 E4,string=2");
    const std::vector<NoteAdvice> advice = note_advice(tune, preset, find_fingerings(tune, preset)[0]);
    ASSERT_TRUE(advice[1].check);
    EXPECT_EQ(advice[1].check->interval, "octave");
    EXPECT_EQ(preset.strings[static_cast<std::size_t>(advice[1].check->string)].pitch, "A3");
    EXPECT_EQ(advice[2].check->interval, "octave");
    EXPECT_EQ(advice[0].stop, "bare board, at the guide fret");
}

TEST(FingeringTest, JumpsAndCrowdingAreWarnedOf) {
    const Preset preset = preset_named("division_bass_viol");
    const score::Tune jump = tune_of("E4:1/2,string=1 A5,string=1");
    const auto warnings = fingering_warnings(jump, preset, find_fingerings(jump, preset)[0]);
    ASSERT_EQ(warnings.size(), 1U);
    EXPECT_EQ(warnings[0].kind, "fret_to_bare");
    EXPECT_THAT(warnings[0].text, testing::AllOf(HasSubstr("fret 2"), HasSubstr("guide fret"), HasSubstr("A5")));
    const Preset treble = preset_named("treble_viol");
    const score::Tune narrow = tune_of("A6:1,string=1,finger=1 Bb6,string=1,finger=2");
    const auto crowded = fingering_warnings(narrow, treble, find_fingerings(narrow, treble)[0]);
    ASSERT_EQ(crowded.size(), 1U);
    EXPECT_EQ(crowded[0].kind, "crowded");
}

struct BadTune {
    const char* title;
    const char* words;
    std::vector<const char*> said;
};
void PrintTo(const BadTune& tune, std::ostream* out) { *out << tune.words; }
class BadTuneTest : public testing::TestWithParam<BadTune> {};

/// expects  an error that names bar and note, why, and what would do
TEST_P(BadTuneTest, IsToldWithBarAndNote) {
    const Preset preset = preset_named("division_bass_viol");
    try {
        find_fingerings(tune_of(GetParam().words), preset);
        FAIL() << "no error";
    } catch (const analysis::InputError& error) {
        for (const char* said : GetParam().said) EXPECT_THAT(error.what(), HasSubstr(said));
    }
}

INSTANTIATE_TEST_SUITE_P(
    Tunes, BadTuneTest,
    testing::Values(BadTune{"TooLow", "D2:4 C2:1", {"bar 2, note 1 (C2)", "off", "D2 to C6"}},
                    BadTune{"TooHigh", "D4:1 D6", {"bar 1, note 2 (D6)", "D2 to C6"}},
                    BadTune{"NoSuchString", "D4:1,string=9", {"\"9\"", "1, 2, 3"}},
                    BadTune{"NotOnThatString", "D3:1,string=1", {"string 1", "D4 to C6"}},
                    BadTune{"NoOpenString", "E4:1,finger=0", {"no open string", "1 to 4"}},
                    BadTune{"FourthFingerAtTheFirstFret", "Eb4:1,string=1,finger=4", {"finger 4", "fret 1"}}),
    [](const auto& tune) { return std::string(tune.param.title); });

}  // namespace

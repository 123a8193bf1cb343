// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/hand_search.hpp"

#include "sim/passage/fingering.hpp"
#include "sim/score/read_tune.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>

namespace {

using namespace sim;
using namespace sim::passage;

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
    return score::parse_tune(words, "test");
}

/// expects  the search's cheapest way to cost what trying every way finds, over instruments with and without frets
/// margin   rounding of sums only
TEST(HandSearchTest, SearchEqualsTryingEveryWay) {
    std::mt19937 random(20261126);
    int passages = 0;
    for (const char* name : {"division_bass_viol", "treble_viol", "violin", "violone_in_g"}) {
        const Preset preset = find_preset(name);
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
TEST(HandSearchTest, SearchEqualsTryingEveryWayWithoutAnyBound) {
    std::mt19937 random(7);
    const Preset preset = find_preset("treble_viol");
    for (int k = 0; k < 30; ++k) {
        const score::Tune tune = random_tune(preset, random, 4);
        const Hand hand(tune, preset, {});
        const EveryWay every(hand, std::numeric_limits<double>::infinity());
        EXPECT_NEAR(every.cheapest(), best_ways(hand, 1, 1)[0].cost, 1e-9);
    }
}

/// expects  no two fingers of one hand place wider apart than the hand's span and its stretch, at any instrument
TEST(HandSearchTest, NoHandPlaceIsWiderThanTheHand) {
    std::mt19937 random(5);
    for (const char* name : {"division_bass_viol", "treble_viol", "violone_in_g", "cello", "descant_viol"}) {
        const Preset preset = find_preset(name);
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

}  // namespace
